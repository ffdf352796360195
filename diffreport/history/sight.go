package history

import (
	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// A sighting is what happened to a label between a parent and a commit: now is
// the change of the record that bears it, left that of the record that bore it
// and does not any more, ties are what came to it and what went.
type sighting struct {
	now, left *diffreport.Change
	ties      []tie
	units     unit.System
}

// nothing says whether nothing happened.
func (s *sighting) nothing() bool { return s.now == nil && s.left == nil && len(s.ties) == 0 }

// A tie is a record that came to a place or went from it.
type tie struct {
	change *diffreport.Change
	part   Part
	// place is what the record was tied to, as it was called then, field how.
	place, field string
}

func (t tie) same(o tie) bool {
	return t.part == o.part && t.change.Kind == o.change.Kind && t.change.Label == o.change.Label
}

// see compares two plants, as far as they are about a label.
func (w *walk) see(before, after *plant.Plant, label string) sighting {
	if before == after {
		return sighting{}
	}
	ties := w.asked.interest() == Ties
	still := alike(lookup(before, label), lookup(after, label))
	if !ties && still {
		return sighting{}
	}
	all := changes(before, after, label)
	s := sighting{units: unitsOf(after)}
	if !still {
		s.now, s.left = find(all, label)
	}
	if ties {
		s.ties = w.ties(all, label, s.now)
	}
	return s
}

func find(changes []diffreport.Change, label string) (now, left *diffreport.Change) {
	for i := range changes {
		c := &changes[i]
		switch {
		case c.After.Record != nil && c.Label == label:
			now = c
		case c.After.Record == nil && c.Label == label, c.Former == label:
			left = c
		}
	}
	return now, left
}

// ties lists what lies at the place in one of two plants only.
func (w *walk) ties(changes []diffreport.Change, label string, now *diffreport.Change) []tie {
	former := label
	if now != nil && now.Former != "" {
		former = now.Former
	}
	var all []tie
	for i := range changes {
		c := &changes[i]
		was, is := w.asked.tied(c.Before.Record, former), w.asked.tied(c.After.Record, label)
		switch {
		case was == "" && is != "":
			all = append(all, tie{c, Came, label, is})
		case was != "" && is == "":
			all = append(all, tie{c, Went, former, was})
		}
	}
	return all
}

// changes compares two plants. What a bundle states for its runs is listed with
// the runs; for the life of the bundle it is put back.
func changes(base, head *plant.Plant, label string) []diffreport.Change {
	if base == nil {
		base = &plant.Plant{}
	}
	if head == nil {
		head = &plant.Plant{}
	}
	all := diffreport.Compare(base, head, diffreport.Options{})
	if h := lookup(head, label); h != nil && h.Kind.Name == schema.KindBundle {
		all = diffreport.WithBundle(all, base, head, label)
	}
	return all
}

func event(step *Step, t trace, c *diffreport.Change, units unit.System) Event {
	e := Event{
		Revision: step.Revision, Class: c.Class, Kind: c.Kind, Label: c.Label, Former: c.Former,
		Summary: summary(c, units), Why: c.Why, Meaning: c.Meaning, Fields: c.AllFields(units), Via: t.via, Merge: len(step.Parents) > 1,
		Whole: c.Before.Record == nil || c.After.Record == nil,
	}
	base := ""
	for i, p := range step.Parents {
		e.Parents = append(e.Parents, p.ID)
		if i == 0 {
			base = p.ID
		}
	}
	e.Order = diffreport.OrderNumber(base, step.ID)
	if c.After.Record == nil {
		e.Label = t.label
	}
	return e
}

func tieEvent(step *Step, t trace, one *tie, units unit.System) Event {
	e := event(step, t, one.change, units)
	e.Label, e.Part, e.Place, e.End = one.change.Label, one.part, one.place, one.field
	return e
}
