package history

import (
	"iter"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// Of tells the life of a label from a walk over commits, children before their
// parents, starting at the commit that is asked about. An error of the walk ends
// it and is returned as it is. A label that no commit knows has no events.
//
// A record whose own block is the same text in two commits did not change
// between them, whatever else did.
func Of(label string, steps iter.Seq2[Step, error]) (History, error) {
	w := &walk{asked: label, traces: make(map[string][]trace), things: make(things)}
	first := true
	for step, err := range steps {
		if err != nil {
			return History{}, err
		}
		if first {
			w.traces[step.ID] = []trace{{label: label}}
			first = false
		}
		w.visit(&step)
	}
	return w.history(), nil
}

// A trace is what is followed into a commit: under which label, and by which
// merge it was reached.
type trace struct{ label, via string }

type walk struct {
	asked  string
	traces map[string][]trace
	things things
	events []Event
	// about names the bearer that each event is about.
	about []bearer
}

// visit compares one commit with its parents and hands the traces on to them.
func (w *walk) visit(step *Step) {
	traces := w.traces[step.ID]
	delete(w.traces, step.ID)
	for _, t := range traces {
		if len(step.Parents) == 0 {
			w.first(step, t)
			continue
		}
		w.compare(step, t)
	}
}

// first is an event where a commit without parents holds the record.
func (w *walk) first(step *Step, t trace) {
	changes := diffreport.Compare(nil, step.Plant, diffreport.Options{})
	if c := find(changes, t.label).now; c != nil {
		e := event(step, t, c)
		if step.Boundary {
			e.Class, e.Summary, e.Why = diffreport.ClassRecordsOnly, "it stands here where this clone's history begins", "what came before is not in this clone"
		}
		w.add(e, bearer{step.ID, t.label})
	}
}

// A sighting is what happened to a label between a parent and a commit: now is
// the change of the record that bears it, left that of the record that bore it
// and does not any more.
type sighting struct{ now, left *diffreport.Change }

func find(changes []diffreport.Change, label string) sighting {
	var s sighting
	for i := range changes {
		c := &changes[i]
		switch {
		case c.After.Record != nil && c.Label == label:
			s.now = c
		case c.After.Record == nil && c.Label == label, c.Former == label:
			s.left = c
		}
	}
	return s
}

func (w *walk) compare(step *Step, t trace) {
	sights := make([]sighting, len(step.Parents))
	untouched := false
	for i, parent := range step.Parents {
		if !same(parent.Plant, step.Plant, t.label) {
			sights[i] = find(changes(parent.Plant, step.Plant, t.label), t.label)
		}
		if sights[i] == (sighting{}) {
			untouched = true
			w.things.join(bearer{step.ID, t.label}, bearer{parent.ID, t.label})
		}
	}
	if !untouched {
		w.record(step, t, sights[0])
	}
	for i, parent := range step.Parents {
		if untouched && sights[i] != (sighting{}) {
			continue // the merge took the record from the other side
		}
		next := t
		if i > 0 && next.via == "" {
			next.via = step.ID
		}
		w.handOn(parent.ID, next, sights[i].now)
	}
}

// handOn follows a trace into a parent: a relabelled record under its former
// label, and the label that was asked about, whoever bore it before.
func (w *walk) handOn(parent string, t trace, now *diffreport.Change) {
	if now != nil && now.Former != "" {
		w.follow(parent, trace{now.Former, t.via})
	}
	if now == nil || now.Before.Record != nil && now.Former == "" || t.label == w.asked {
		w.follow(parent, t)
	}
}

// record adds the event of a commit that differs from all its parents, and that
// of the earlier bearer of the label where the commit gave it to another.
func (w *walk) record(step *Step, t trace, s sighting) {
	parent := step.Parents[0].ID
	if c := s.now; c != nil {
		at := bearer{step.ID, t.label}
		w.add(event(step, t, c), at)
		switch {
		case c.Former != "":
			w.things.join(at, bearer{parent, c.Former})
		case c.Before.Record != nil:
			w.things.join(at, bearer{parent, t.label})
			return
		}
		if t.label != w.asked {
			return
		}
	}
	if s.left != nil {
		w.add(event(step, t, s.left), bearer{parent, t.label})
	}
}

// add keeps an event once, however many traces came by it.
func (w *walk) add(e Event, about bearer) {
	for i := len(w.events) - 1; i >= 0 && w.events[i].ID == e.ID; i-- {
		if have := &w.events[i]; have.Label == e.Label && have.Former == e.Former && have.Class == e.Class {
			w.things.join(w.about[i], about)
			return
		}
	}
	w.events, w.about = append(w.events, e), append(w.about, about)
}

// follow adds a trace to a commit. Where several ways lead there, the line of
// first parents counts.
func (w *walk) follow(id string, t trace) {
	for i := range w.traces[id] {
		if have := &w.traces[id][i]; have.label == t.label {
			if t.via == "" {
				have.via = ""
			}
			return
		}
	}
	w.traces[id] = append(w.traces[id], t)
}

// history numbers the lives from the oldest.
func (w *walk) history() History {
	h := History{Record: w.asked, Events: w.events}
	number := make(map[bearer]int)
	for i := len(h.Events) - 1; i >= 0; i-- {
		thing := w.things.root(w.about[i])
		if number[thing] == 0 {
			number[thing] = len(number) + 1
		}
		h.Events[i].Life = number[thing]
	}
	h.Lives = len(number)
	if len(h.Events) > 0 {
		h.Kind = h.Events[0].Kind
	}
	return h
}

// same says whether the label's record is the same block of text in both
// plants, or in neither.
func same(base, head *plant.Plant, label string) bool {
	return base == head || lookup(base, label) == lookup(head, label)
}

func lookup(p *plant.Plant, label string) *schema.Record {
	if p == nil {
		return nil
	}
	if it, ok := p.Find(label); ok {
		return it.Record()
	}
	if p.Entry.Record != nil && p.Entry.Label == label {
		return p.Entry.Record
	}
	return nil
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

func event(step *Step, t trace, c *diffreport.Change) Event {
	e := Event{
		Revision: step.Revision, Class: c.Class, Kind: c.Kind, Label: c.Label, Former: c.Former,
		Summary: summary(c, step.units()), Why: c.Why, Meaning: c.Meaning, Fields: c.AllFields(step.units()), Via: t.via, Merge: len(step.Parents) > 1,
		Whole: c.Before.Record == nil || c.After.Record == nil,
	}
	if c.After.Record == nil {
		e.Label = t.label
	}
	return e
}

// units is the system in which the plant's quantities are printed.
func (s *Step) units() unit.System {
	if s.Plant == nil {
		return unit.Metric
	}
	return s.Plant.Units
}
