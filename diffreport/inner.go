package diffreport

import (
	"cmp"
	"slices"
	"strings"

	"homerun/schema"
)

// innerName is what a block inside a record is called in a change: its kind,
// and its label where it has one, under the label of the later plant where it
// names another record.
func (c *comparison) innerName(s side, in *schema.Record) string {
	switch {
	case in.Label == "":
		return in.Kind.Name
	case len(in.Kind.Refers) > 0:
		return in.Kind.Name + " " + c.canon(s, in.Label)
	}
	return in.Kind.Name + " " + in.Label
}

// block is one inner block with what pairs it.
type innerBlock struct {
	name, sum string
	record    *schema.Record
}

func (c *comparison) innerBlocks(s side, r *schema.Record) []innerBlock {
	var blocks []innerBlock
	for _, in := range r.Inner {
		if in.Kind.Name != schema.KindRun {
			blocks = append(blocks, innerBlock{c.innerName(s, in), c.recordKey(s, in), in})
		}
	}
	slices.SortStableFunc(blocks, func(a, b innerBlock) int {
		return cmp.Or(cmp.Compare(a.name, b.name), cmp.Compare(a.sum, b.sum))
	})
	return blocks
}

// innerFields compares the blocks inside two records. Their order does not
// matter: of several with one name, equal ones belong together.
func (c *comparison) innerFields(was, is *schema.Record) []FieldChange {
	if len(was.Inner) == 0 && len(is.Inner) == 0 || was == is && len(c.renamed) == 0 {
		return nil
	}
	before, after := withoutEqual(c.innerBlocks(earlier, was), c.innerBlocks(later, is))
	var found []FieldChange
	for len(before) > 0 || len(after) > 0 {
		switch {
		case len(after) == 0 || len(before) > 0 && before[0].name < after[0].name:
			found = append(found, c.wholeBlock(before[0], earlier))
			before = before[1:]
		case len(before) == 0 || after[0].name < before[0].name:
			found = append(found, c.wholeBlock(after[0], later))
			after = after[1:]
		default:
			found = append(found, c.blockFields(before[0], after[0])...)
			before, after = before[1:], after[1:]
		}
	}
	return found
}

// withoutEqual takes out of two sorted lists what stands in both. A note does
// not make blocks unequal here, so pairs that differ only in it are kept.
func withoutEqual(before, after []innerBlock) (b, a []innerBlock) {
	for len(before) > 0 && len(after) > 0 {
		x, y := before[0], after[0]
		order := cmp.Or(cmp.Compare(x.name, y.name), cmp.Compare(x.sum, y.sum))
		switch {
		case order == 0:
			if noteText(x.record) != noteText(y.record) {
				b, a = append(b, x), append(a, y)
			}
			before, after = before[1:], after[1:]
		case order < 0:
			b, before = append(b, x), before[1:]
		default:
			a, after = append(a, y), after[1:]
		}
	}
	return append(b, before...), append(a, after...)
}

func noteText(r *schema.Record) string {
	if v := r.Own(fieldNote); v != nil {
		return v.Text
	}
	return ""
}

// blockFields lists what differs between two blocks under one name.
func (c *comparison) blockFields(b, h innerBlock) []FieldChange {
	var found []FieldChange
	for _, f := range h.record.Kind.Fields {
		v, w := b.record.Own(f.Name), h.record.Own(f.Name)
		if v == nil && w == nil || c.sameValue(b.record, v, h.record, w) {
			continue
		}
		change := c.shown(f, v, w)
		change.Name = h.name + " " + f.Name
		if (v == nil || w == nil) && !tellsWork(f) {
			change.Meaning, change.why = schema.Paper, innerWords(h.name+" "+f.Name, statedBy(v))
		}
		found = append(found, change)
	}
	return found
}

// wholeBlock is a block that only one side has.
func (c *comparison) wholeBlock(b innerBlock, s side) FieldChange {
	change := FieldChange{Name: b.name, Before: notStated, After: notStated, Meaning: schema.Paper}
	var stated []string
	for i := range b.record.Values {
		v := &b.record.Values[i]
		stated = append(stated, v.Field.Name+" "+show(v, c.units))
		if tellsWork(v.Field) {
			change.Meaning = max(change.Meaning, v.Field.Site)
		}
	}
	text := strings.Join(stated, ", ")
	if text == "" {
		text = "stated"
	}
	if s == earlier {
		change.Before = text
	} else {
		change.After = text
	}
	if change.Meaning == schema.Paper {
		change.why = innerWords(b.name, s)
	}
	return change
}

// statedBy is the side that states a value where the other does not.
func statedBy(before *schema.Value) side {
	if before == nil {
		return later
	}
	return earlier
}

// innerWords says that a block or a value in one is written down on one side
// only: what it tells of was there before.
func innerWords(name string, s side) string {
	if s == later {
		return name + " is written down for the first time"
	}
	return name + " is no longer written down"
}
