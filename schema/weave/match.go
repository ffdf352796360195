package weave

import (
	"strconv"

	"homerun/schema"
)

// A triple is one item as it stands in the three texts; nil where a text does
// not have it.
type triple struct {
	base, ours, theirs *item
}

// A pairing gives for each item of a text the item of the base that it was, or
// -1 where it is new.
type pairing []int

// pair finds for each item of a text what it was in the base: by its key, among
// several of one key by what they say and then by their order, and a relabelled
// record by its former label or by its two ends.
func pair(base, text []item) pairing {
	found := make(pairing, len(text))
	waiting := make(map[string][]int)
	for i := range base {
		waiting[base[i].key] = append(waiting[base[i].key], i)
	}
	taken := make([]bool, len(base))
	claim := func(n, i int) { found[n], taken[i] = i, true }
	byText := make(map[string][]int)
	for key, all := range waiting {
		if len(all) > 1 {
			for _, i := range all {
				byText[key+base[i].state()] = append(byText[key+base[i].state()], i)
			}
		}
	}
	for n := range text {
		found[n] = -1
		if len(waiting[text[n].key]) > 1 {
			k := text[n].key + text[n].state()
			if same := byText[k]; len(same) > 0 {
				claim(n, same[0])
				byText[k] = same[1:]
			}
		}
	}
	for n := range text {
		key := text[n].key
		for found[n] < 0 && len(waiting[key]) > 0 {
			i := waiting[key][0]
			waiting[key] = waiting[key][1:]
			if !taken[i] {
				claim(n, i)
			}
		}
	}
	relabelled(base, text, found, taken)
	return found
}

// relabelled pairs what is left over: a record that names its former label, and
// a run or cord that joins the same two ends as one that is gone.
func relabelled(base, text []item, found pairing, taken []bool) {
	gone := make(map[string][]int)
	for i := range base {
		if taken[i] || base[i].sort != record {
			continue
		}
		gone[base[i].key] = append(gone[base[i].key], i)
		if ends := endsOf(&base[i]); ends != "" {
			gone[ends] = append(gone[ends], i)
		}
	}
	for n := range text {
		if found[n] >= 0 || text[n].sort != record {
			continue
		}
		for _, key := range []string{formerKey(&text[n]), endsOf(&text[n])} {
			if all := gone[key]; key != "" && len(all) == 1 && !taken[all[0]] {
				found[n], taken[all[0]] = all[0], true
				break
			}
		}
	}
}

// formerKey is the key of the record that an item says it was before.
func formerKey(it *item) string {
	if v := it.stated(schema.RunFormer.Name); v != "" {
		return strconv.Quote(it.block.Kind.Text) + strconv.Quote(v)
	}
	return ""
}

// endsOf is a key that is equal for cables between the same two ports.
func endsOf(it *item) string {
	from, to := it.stated(schema.RunFrom.Name), it.stated(schema.RunTo.Name)
	if from == "" || to == "" {
		return ""
	}
	return it.block.Kind.Text + " " + strconv.Quote(from) + strconv.Quote(to)
}

// stated is the text that a record states in a field.
func (it *item) stated(name string) string {
	for i := range it.block.Fields {
		if it.block.Fields[i].Name.Text == name {
			return it.block.Fields[i].Value.Text
		}
	}
	return ""
}
