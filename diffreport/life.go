package diffreport

import (
	"slices"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// AllFields lists what a change of one record says field by field: what
// differs, and for a record that only one plant has, everything that it states.
func (c *Change) AllFields(s unit.System) []FieldChange {
	if c.Before.Record != nil && c.After.Record != nil {
		return c.Fields
	}
	e := c.After
	if e.Record == nil {
		e = c.Before
	}
	if e.Record == nil {
		return nil
	}
	var all []FieldChange
	for _, f := range e.Kind.Fields {
		v := e.Lookup(f)
		switch {
		case v == nil:
		case c.After.Record == nil:
			all = append(all, FieldChange{Name: f.Name, Before: show(v, s), After: notStated, Meaning: f.Site, before: v})
		default:
			all = append(all, FieldChange{Name: f.Name, Before: notStated, After: show(v, s), Meaning: f.Site, after: v})
		}
	}
	return all
}

// WithBundle adds to changes, as Compare found them, what a bundle of the later
// plant states for its runs and what is listed only with them: its cable and
// route. It is for the life of one bundle; an order needs it only once.
func WithBundle(changes []Change, base, head *plant.Plant, label string) []Change {
	c := newComparison(base, head, Options{})
	former := Former(changes)(label)
	b, h := c.place(earlier, key{bundleKind(), former}), c.place(later, key{bundleKind(), label})
	if b < 0 || h < 0 {
		return changes
	}
	for i := range changes {
		if changes[i].Former != "" {
			c.rename(changes[i].Former, changes[i].Label)
		}
	}
	was, is := c.sides[earlier][b], c.sides[later][h]
	var told []FieldChange
	for _, f := range []*schema.Field{schema.BundleCable.Field, schema.BundleRoute.Field} {
		v, w := was.Own(f.Name), is.Own(f.Name)
		if v == nil && w == nil || c.sameValue(was.Record, v, is.Record, w) {
			continue
		}
		told = append(told, c.field(was, is, f, v, w))
	}
	if len(told) == 0 {
		return changes
	}
	for i := range changes {
		if k := &changes[i]; k.Kind == schema.KindBundle && k.Label == label && k.After.Record != nil {
			return withTold(changes, i, told)
		}
	}
	change := Change{Class: ClassRecordsOnly, Kind: schema.KindBundle, Label: label, Before: was.Entry, After: is.Entry, Fields: told, before: was, after: is}
	if former != label {
		change.Former = former
	}
	for _, f := range told {
		change.Meaning = max(change.Meaning, f.Meaning)
	}
	if change.Meaning > schema.Relabelling {
		change.Class = ClassChange
	}
	change.Why = toldWhy + told[0].why
	return append(slices.Clip(changes), change)
}

const toldWhy = "its runs take cable and route from it: "

// withTold puts what the runs tell into a change that the bundle has anyway.
func withTold(changes []Change, i int, told []FieldChange) []Change {
	changes = append([]Change(nil), changes...)
	c := &changes[i]
	named := make(map[string]bool)
	for _, f := range c.Fields {
		named[f.Name] = true
	}
	c.Fields = append([]FieldChange(nil), c.Fields...)
	for _, f := range told {
		if named[f.Name] {
			continue
		}
		c.Fields = append(c.Fields, f)
		c.Meaning = max(c.Meaning, f.Meaning)
		if c.Meaning > schema.Relabelling && c.Class != ClassChange {
			c.Class, c.Why = ClassChange, toldWhy+f.why
		}
	}
	return changes
}

func bundleKind() *schema.Kind {
	k, ok := schema.KindNamed(schema.KindBundle)
	if !ok {
		panic("diffreport: the record language has no bundle")
	}
	return k
}
