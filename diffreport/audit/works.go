package audit

import (
	"cmp"
	"slices"

	"homerun/diffreport/history"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// Often is how many commits have to change a record for it to be listed as
// changed again and again.
const Often = 4

// An Untested is a run in use whose cable was pulled or terminated anew after its
// last test, as far as the records say.
type Untested struct {
	Label string
	// Changed is the last commit that changed the cable or its ends, Class what
	// kind of work it was.
	Changed history.Revision
	Class   string
	// Tested is the day of the newest test and Test its label; zero where there is
	// none, or none that says a day.
	Tested unit.Date
	Test   string
	// EnteredSince is set where that test was first written down with the change or
	// after it: the day may then lie before the commit and the test after the work.
	EnteredSince bool
}

// A Repeated is a record that many commits changed.
type Repeated struct {
	Kind, Label string
	// Times is how many commits changed it; First and Last are the outer ones.
	Times       int
	First, Last history.Revision
}

// works follows what was done to records, over all branches.
type works struct {
	physical map[string]physical
	// entered is when each test was written down, in commits taken. What was
	// reworded later was not tested anew.
	entered map[string]int
	taken   int
	changed map[[2]string]*changed
}

// physical is the last work on a cable, changed what became of a record. Either is
// kept of every record there ever was, so they share their revisions.
type physical struct {
	*history.Revision
	class string
	taken int
}

type changed struct {
	times       int
	first, last *history.Revision
}

func (w *works) begin() {
	w.physical = make(map[string]physical)
	w.entered = make(map[string]int)
	w.changed = make(map[[2]string]*changed)
}

// take follows records under the labels that they have; a commit that gives
// labels on in a circle is read before any is given.
func (w *works) take(step *Step) {
	w.taken++
	moved := make(map[string]physical)
	again := make(map[[2]string]*changed)
	for i := range step.Deeds {
		d := &step.Deeds[i]
		old := d.Label
		if d.Former != "" {
			old = d.Former
		}
		key := [2]string{d.Kind, old}
		if r := w.changed[key]; r != nil {
			again[[2]string{d.Kind, d.Label}] = r
			delete(w.changed, key)
		}
		if p, ok := w.physical[old]; ok && d.Kind == schema.KindRun {
			moved[d.Label] = p
			delete(w.physical, old)
		}
	}
	at := step.Revision
	for i := range step.Deeds {
		w.note(step, &at, &step.Deeds[i], again, moved)
	}
}

func (w *works) note(step *Step, at *history.Revision, d *Deed, again map[[2]string]*changed, moved map[string]physical) {
	if d.Gone {
		return
	}
	key := [2]string{d.Kind, d.Label}
	r := again[key]
	if r == nil {
		r = &changed{first: at, times: -1}
	}
	// The commit that brings a record is not a change of it.
	r.times++
	r.last = at
	w.changed[key] = r
	switch {
	case d.physical() && !step.Root:
		w.physical[d.Label] = physical{at, d.Class.String(), w.taken}
	default:
		if p, ok := moved[d.Label]; ok {
			w.physical[d.Label] = p
		}
	}
	if d.Kind == schema.KindTest && d.New {
		w.entered[d.Label] = w.taken
	}
}

// untested lists the runs in use of which the newest test is older than the last
// work on the cable.
func (w *works) untested(head *plant.Plant) []Untested {
	var list []Untested
	if head == nil {
		return nil
	}
	for _, r := range head.Runs {
		p, worked := w.physical[r.Label]
		if !worked || !r.Live() {
			continue
		}
		u := Untested{Label: r.Label, Changed: *p.Revision, Class: p.class}
		for _, t := range r.Tests {
			if day, ok := schema.TestDate.In(t.Record()); ok && !day.Before(u.Tested) {
				u.Tested, u.Test = day, t.Label
				u.EnteredSince = w.entered[t.Label] >= p.taken
			}
		}
		if u.Tested.Before(unit.DateOf(p.Time)) {
			list = append(list, u)
		}
	}
	slices.SortStableFunc(list, func(a, b Untested) int {
		return cmp.Or(a.Changed.Time.Compare(b.Changed.Time), cmp.Compare(a.Label, b.Label))
	})
	return list
}

// repeated lists the records that were changed again and again, most often first.
func (w *works) repeated() []Repeated {
	var list []Repeated
	for key, r := range w.changed {
		if r.times >= Often {
			list = append(list, Repeated{Kind: key[0], Label: key[1], Times: r.times, First: *r.first, Last: *r.last})
		}
	}
	slices.SortFunc(list, func(a, b Repeated) int {
		return cmp.Or(cmp.Compare(b.Times, a.Times), cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Label, b.Label))
	})
	return list
}
