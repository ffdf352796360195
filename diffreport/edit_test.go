package diffreport_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"pgregory.net/rapid"
)

// edit draws a few changes of a site, of the sort that a week on site brings.
// Relabelled things state their former label, so that what is the same thing is
// never a matter of guessing.
func edit(t *rapid.T, base world) world {
	w := base.clone()
	relabelled := make(map[int]bool)
	for range rapid.IntRange(0, 6).Draw(t, "edits") {
		edits[rapid.IntRange(0, len(edits)-1).Draw(t, "edit")](t, w, base, relabelled)
	}
	return w
}

var edits = []func(t *rapid.T, w, base world, relabelled map[int]bool){
	func(t *rapid.T, w, _ world, _ map[int]bool) { w.addRun(t, "1A-M", 100) },
	func(t *rapid.T, w, _ world, _ map[int]bool) { w.addCord(t, "1A-D", 3) },
	remove,
	moveEnd,
	swapCords,
	relabel,
	rebundle,
	longer,
	otherCable,
	remark,
	relocate,
	shift,
	exchange,
	otherCord,
	swapCords,
	func(t *rapid.T, w, _ world, _ map[int]bool) { w.addDeskCord(t, "1-D", 4) },
	func(t *rapid.T, w, _ world, _ map[int]bool) { w.addTie(t, "1A-M", 100) },
	func(t *rapid.T, w, _ world, _ map[int]bool) { w.addCordAcross(t, "1A-D", 3) },
}

func pick(t *rapid.T, w world, kinds ...string) (int, bool) {
	ids := w.of(kinds...)
	if len(ids) == 0 {
		return 0, false
	}
	return rapid.SampledFrom(ids).Draw(t, "of "+strings.Join(kinds, " or ")), true
}

func remove(t *rapid.T, w, _ world, _ map[int]bool) {
	if id, ok := pick(t, w, "run", "cord"); ok {
		delete(w, id)
	}
}

func moveEnd(t *rapid.T, w, _ world, _ map[int]bool) {
	id, ok := pick(t, w, "run", "cord")
	if !ok {
		return
	}
	end, kinds := "from", "panel"
	if rapid.Bool().Draw(t, "far end") {
		end, kinds = "to", "outlet"
		if w[id].kind == "cord" {
			kinds = "equipment"
		}
	}
	if free := w.free(w[id].kind, kinds); len(free) > 0 {
		w[id].fields[end] = rapid.SampledFrom(free).Draw(t, "port")
	}
}

func swapCords(t *rapid.T, w, _ world, _ map[int]bool) {
	a, ok := pick(t, w, "cord")
	if !ok {
		return
	}
	b, _ := pick(t, w, "cord")
	w[a].fields["from"], w[b].fields["from"] = w[b].fields["from"], w[a].fields["from"]
}

func relabel(t *rapid.T, w, base world, relabelled map[int]bool) {
	id, ok := pick(t, w, "run", "cord", "panel", "outlet", "space", "pathway", "rack", "equipment", "bundle")
	if !ok || base[id] == nil || relabelled[id] {
		return
	}
	relabelled[id] = true
	// The old label may have gone to something new meanwhile; it may not here,
	// since then the label alone would have to tell two things apart.
	w[id].label = w.fresh(t, "X-")
	w[id].fields["former"] = quoted("%s", base[id].label)
}

func rebundle(t *rapid.T, w, _ world, _ map[int]bool) {
	id, ok := pick(t, w, "run")
	if ok && w[id].in != 0 {
		w[id].in = rapid.SampledFrom(w.of("bundle")).Draw(t, "bundle")
	}
}

func longer(t *rapid.T, w, _ world, _ map[int]bool) {
	if id, ok := pick(t, w, "run"); ok {
		w[id].fields["length"] = quoted("%d m", rapid.IntRange(200, 260).Draw(t, "length"))
	}
}

func otherCord(t *rapid.T, w, _ world, _ map[int]bool) {
	if id, ok := pick(t, w, "cord"); ok {
		w[id].fields["length"] = quoted("%d m", rapid.IntRange(5, 9).Draw(t, "length"))
	}
}

func otherCable(t *rapid.T, w, _ world, _ map[int]bool) {
	id, ok := pick(t, w, "run", "bundle")
	if ok && w[id].in == 0 {
		w[id].fields["cable"] = ref(rapid.SampledFrom(w.of("cable")).Draw(t, "cable"))
	}
}

func remark(t *rapid.T, w, _ world, _ map[int]bool) {
	if id, ok := pick(t, w, "run", "cord", "panel", "outlet", "space", "bundle", "pathway"); ok {
		w[id].fields["note"] = quoted("sheet %d", rapid.IntRange(1, 9).Draw(t, "sheet"))
	}
}

func relocate(t *rapid.T, w, _ world, _ map[int]bool) {
	if id, ok := pick(t, w, "outlet"); ok {
		w[id].fields["space"] = ref(rapid.SampledFrom(w.of("space")).Draw(t, "space"))
	}
}

func shift(t *rapid.T, w, _ world, _ map[int]bool) {
	if id, ok := pick(t, w, "panel"); ok {
		w[id].fields["unit"] = fmt.Sprint(rapid.IntRange(20, 30).Draw(t, "unit"))
	}
}

func exchange(t *rapid.T, w, _ world, _ map[int]bool) {
	if id, ok := pick(t, w, "panel"); ok {
		w[id].fields["category"] = rapid.SampledFrom([]string{`"6"`, `"6A"`}).Draw(t, "category")
	}
}

// effective are the values of a thing, a run's with those of its bundle, but
// for the former label.
func (w world) effective(id int) map[string]string {
	fields := maps.Clone(w[id].fields)
	delete(fields, "former")
	if in := w[id].in; in != 0 {
		fields["bundle"] = ref(in)
		for _, name := range []string{"cable", "route"} {
			if fields[name] == "" {
				fields[name] = w[in].fields[name]
			}
		}
	}
	return fields
}

// differing lists the names of the values that differ between a thing in two
// worlds, by what they refer to and not by its label.
func differing(base, head world, id int) []string {
	b, h := base.effective(id), head.effective(id)
	var names []string
	for name := range mergeKeys(b, h) {
		if b[name] != h[name] {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}

func mergeKeys(a, b map[string]string) map[string]bool {
	all := make(map[string]bool)
	for _, m := range []map[string]string{a, b} {
		for k := range m {
			all[k] = true
		}
	}
	return all
}

// expected lists what two worlds differ in, as "kind former>label: fields".
func expected(base, head world) []string {
	var all []string
	for id, t := range head {
		if base[id] == nil {
			all = append(all, fmt.Sprintf("%s >%s", t.kind, t.label))
			continue
		}
		names := differing(base, head, id)
		if t.kind == "bundle" {
			names = untold(base, head, id, names)
		}
		if len(names) > 0 || base[id].label != t.label {
			all = append(all, fmt.Sprintf("%s %s>%s: %s", t.kind, base[id].label, t.label, strings.Join(names, " ")))
		}
	}
	for id, t := range base {
		if head[id] == nil {
			all = append(all, fmt.Sprintf("%s %s>", t.kind, t.label))
		}
	}
	slices.Sort(all)
	return all
}

// untold leaves out of a bundle's values the cable or route that one of its
// runs already shows as changed.
func untold(base, head world, bundle int, names []string) []string {
	return slices.DeleteFunc(names, func(name string) bool {
		for id, t := range head {
			if t.kind == "run" && base[id] != nil && (t.in == bundle || base[id].in == bundle) && slices.Contains(differing(base, head, id), name) {
				return name == "cable" || name == "route"
			}
		}
		return false
	})
}
