package diffreport

import (
	"homerun/schema"
)

// The names of what a record is in but does not state.
const fieldBundle = "bundle"

// fields lists the values of a record that differ, a run's with what it
// inherits from its bundle. The record is the same one on both sides.
func (c *comparison) fields(was, is subject) []FieldChange {
	if was.Record == is.Record && len(c.renamed) == 0 {
		return nil
	}
	var found []FieldChange
	for _, f := range is.Kind.Fields {
		if f.Name == fieldFormer && was.Label != is.Label {
			continue // the relabelling itself says it
		}
		b, h := was.Lookup(f), is.Lookup(f)
		if b == nil && h == nil || c.sameValue(was.Record, b, is.Record, h) || defaulted(f, b, h) {
			continue
		}
		if is.Kind.Name == schema.KindBundle && runsState(f) {
			if c.told[told{is.Label, f.Name}] {
				continue // each of its runs says it
			}
			found = append(found, c.paper(f, b, h, "no run takes it from the bundle"))
			continue
		}
		found = append(found, c.field(was, is, f, b, h))
	}
	found = append(found, c.innerFields(was.Record, is.Record)...)
	if is.Kind.Name == schema.KindRun {
		found = c.bundled(found, was, is)
	}
	return found
}

// defaulted says whether a value that is not stated means what the other side
// states: a run without a state is in service.
func defaulted(f *schema.Field, b, h *schema.Value) bool {
	return f == schema.RunState.Field && stateText(b) == stateText(h) && stateText(b) != ""
}

// stateText is the state of a run, empty when it can not be read.
func stateText(v *schema.Value) string {
	switch {
	case v == nil:
		return schema.StateInService
	case v.Bad:
		return ""
	}
	return v.Text
}

// bundled adds the bundle that a run stands in, and remembers which bundles
// have their cable or route told by it.
func (c *comparison) bundled(found []FieldChange, was, is subject) []FieldChange {
	for _, f := range found {
		if f.Name == schema.RunCable.Name || f.Name == schema.RunRoute.Name {
			if c.told == nil {
				c.told = make(map[told]bool)
			}
			c.told[told{c.later(was.bundle()), f.Name}] = true
			c.told[told{is.bundle(), f.Name}] = true
		}
	}
	if c.later(was.bundle()) == is.bundle() {
		return found
	}
	in := func(label string) string {
		if label == "" {
			return "in none"
		}
		return label
	}
	return append(found, FieldChange{
		Name: fieldBundle, Before: in(was.bundle()), After: in(is.bundle()), Meaning: schema.Paper,
		why: "it is recorded in another bundle",
	})
}

// paper is a difference that sends nobody to site.
func (c *comparison) paper(f *schema.Field, b, h *schema.Value, why string) FieldChange {
	change := c.shown(f, b, h)
	change.Meaning, change.why = schema.Paper, why
	return change
}

func (c *comparison) shown(f *schema.Field, b, h *schema.Value) FieldChange {
	change := FieldChange{Name: f.Name, Before: show(b, c.units), After: show(h, c.units), Meaning: f.Site, before: b, after: h}
	if change.Before == change.After && b != nil && h != nil {
		// The same text names another record now, or rounding hides the step.
		if now := show(c.carried(b), c.units); now != change.Before {
			change.Before += ", now " + now
			change.before, change.after = nil, nil
		}
	}
	return change
}

// field weighs one value that differs.
func (c *comparison) field(was, is subject, f *schema.Field, b, h *schema.Value) FieldChange {
	change := c.shown(f, b, h)
	switch {
	case f.Name == fieldFormer:
		change.Meaning, change.why = schema.Paper, "the label itself is the same"
	case is.Kind.Paper:
		change.Meaning = schema.Paper
	case b != nil && b.Bad || h != nil && h.Bad:
		change.why = f.Name + " can not be read on one side"
	case f == schema.RunState.Field:
		change.Meaning, change.why = stateMeaning(stateText(b), stateText(h))
	case f == schema.RunLength.Field:
		change.Meaning, change.why = c.lengthMeaning(was, is, b, h)
	case (b == nil || h == nil) && !tellsWork(f):
		change.Meaning, change.why = schema.Paper, firstWords(f, b)
	}
	return change
}

// tellsWork says whether a value that is stated for the first time, or no
// longer, is work: a cable end or a bond. Anything else was there before
// somebody wrote it down.
func tellsWork(f *schema.Field) bool {
	return f.Site == schema.Rebond || f.Type == schema.PortReference
}

func firstWords(f *schema.Field, before *schema.Value) string {
	if before == nil {
		return "its " + f.Name + " is written down for the first time"
	}
	return "its " + f.Name + " is no longer written down"
}
