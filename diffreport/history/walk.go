package history

import (
	"iter"
	"slices"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// Of tells the life of what is asked from a walk over commits, children before
// their parents, starting at the commit that is asked about. An error of the walk
// ends it and is returned as it is. A label that no commit knows has no events.
//
// A record whose own block is the same text in two commits did not change
// between them, whatever else did.
func Of(asked Asked, steps iter.Seq2[Step, error]) (History, error) {
	w := &walk{asked: asked, traces: make(map[string][]trace), things: make(things), merges: make(map[string]int)}
	first := true
	for step, err := range steps {
		if err != nil {
			return History{}, err
		}
		if first {
			w.traces[step.ID], w.line = []trace{{label: asked.Label}}, step.ID
			first = false
		}
		if err := w.visit(&step); err != nil {
			return History{}, err
		}
	}
	return w.history(), nil
}

// A trace is what is followed into a commit: under which label, and by which
// merge it was reached.
type trace struct{ label, via string }

type walk struct {
	asked  Asked
	traces map[string][]trace
	things things
	events []Event
	// about names the bearer that each event is about.
	about []bearer
	// on are the labels at the commit that is asked for.
	on []string
	// line is the next commit on the line of first parents, merges number those
	// of that line by which something was followed, the newest first.
	line   string
	merges map[string]int
}

// visit compares one commit with its parents and hands the traces on to them.
func (w *walk) visit(step *Step) error {
	traces := w.traces[step.ID]
	delete(w.traces, step.ID)
	main := step.ID == w.line
	if main && len(step.Parents) > 0 {
		w.line = step.Parents[0].ID
	}
	for _, t := range traces {
		if main {
			t.via = "" // whatever side line led here as well
		}
		if step.ID == w.asked.On {
			w.on = append(w.on, t.label)
		}
		look := w.compare
		if len(step.Parents) == 0 {
			look = w.first
		}
		if err := look(step, t); err != nil {
			return err
		}
	}
	return nil
}

// first is an event where a commit without parents holds the record.
func (w *walk) first(step *Step, t trace) error {
	_, here, err := step.look(t.label, w.asked.interest(), -1)
	if err != nil || here == nil {
		return err
	}
	s := w.see(nil, here, t.label)
	about := bearer{step.ID, t.label}
	if w.tells(s.now) {
		w.add(beginning(step, event(step, t, s.now, s.units)), about)
	}
	for _, tie := range s.ties {
		w.add(beginning(step, tieEvent(step, t, &tie, s.units)), about)
	}
	return nil
}

// beginning tells an event at which a clone begins for what it is.
func beginning(step *Step, e Event) Event {
	if step.Boundary {
		e.Class, e.Summary, e.Why = diffreport.ClassRecordsOnly, "it stands here where this clone's history begins", "what came before is not in this clone"
	}
	return e
}

// tells says whether a change of what bears the label is told: where a port is
// asked about, only what its holder came, went or was called.
func (w *walk) tells(c *diffreport.Change) bool {
	return c != nil && (w.asked.Port == 0 || c.Before.Record == nil || c.After.Record == nil || c.Former != "")
}

func (w *walk) compare(step *Step, t trace) error {
	sights := make([]sighting, len(step.Parents))
	untouched := false
	for i, parent := range step.Parents {
		before, after, err := step.look(t.label, w.asked.interest(), i)
		if err != nil {
			return err
		}
		sights[i] = w.see(before, after, t.label)
		if sights[i].nothing() {
			untouched = true
			w.things.join(bearer{step.ID, t.label}, bearer{parent.ID, t.label})
		}
	}
	if !untouched {
		w.record(step, t, sights)
	}
	for i, parent := range step.Parents {
		if untouched && !sights[i].nothing() {
			continue // the merge took the record from the other side
		}
		next := t
		if i > 0 && next.via == "" {
			next.via = step.ID
			if w.merges[step.ID] == 0 {
				w.merges[step.ID] = len(w.merges) + 1
			}
		}
		w.handOn(parent.ID, next, sights[i].now)
	}
	return nil
}

// handOn follows a trace into a parent: a relabelled record under its former
// label, and the label that was asked about, whoever bore it before.
func (w *walk) handOn(parent string, t trace, now *diffreport.Change) {
	if now != nil && now.Former != "" {
		w.follow(parent, trace{now.Former, t.via})
	}
	if now == nil || now.Before.Record != nil && now.Former == "" || t.label == w.asked.Label {
		w.follow(parent, t)
	}
}

// record adds the event of a commit that differs from all its parents, and that
// of the earlier bearer of the label where the commit gave it to another.
func (w *walk) record(step *Step, t trace, sights []sighting) {
	s, parent := sights[0], step.Parents[0].ID
	at := bearer{step.ID, t.label}
	before := bearer{parent, t.label}
	switch c := s.now; {
	case c == nil && s.left == nil:
		w.things.join(at, before) // only what is tied to it came or went
	case c != nil && c.Former != "":
		before = bearer{parent, c.Former}
		w.things.join(at, before)
	case c != nil && c.Before.Record != nil:
		w.things.join(at, before)
	}
	if w.tells(s.now) {
		w.add(event(step, t, s.now, s.units), at)
	}
	for _, tie := range common(sights) {
		about := at
		if s.now == nil && s.left != nil {
			about = before
		}
		w.add(tieEvent(step, t, &tie, s.units), about)
	}
	if c := s.now; c != nil && (c.Before.Record != nil && c.Former == "" || t.label != w.asked.Label) {
		return
	}
	if w.tells(s.left) {
		w.add(event(step, t, s.left, s.units), bearer{parent, t.label})
	}
}

// common are the ties that a commit made or cut against each of its parents:
// what one side of a merge did is not the merge's doing.
func common(sights []sighting) []tie {
	var all []tie
	for _, one := range sights[0].ties {
		if !slices.ContainsFunc(sights[1:], func(s sighting) bool { return !slices.ContainsFunc(s.ties, one.same) }) {
			all = append(all, one)
		}
	}
	return all
}

// add keeps an event once, however many traces came by it.
func (w *walk) add(e Event, about bearer) {
	for i := len(w.events) - 1; i >= 0 && w.events[i].ID == e.ID; i-- {
		if have := &w.events[i]; have.Kind == e.Kind && have.Label == e.Label && have.Former == e.Former && have.Class == e.Class && have.Part == e.Part && have.Place == e.Place {
			w.things.join(w.about[i], about)
			return
		}
	}
	w.events, w.about = append(w.events, e), append(w.about, about)
}

// follow adds a trace to a commit. Where several merges lead there, the oldest
// brought it.
func (w *walk) follow(id string, t trace) {
	for i := range w.traces[id] {
		if have := &w.traces[id][i]; have.label == t.label {
			if w.merges[t.via] > w.merges[have.via] {
				have.via = t.via
			}
			return
		}
	}
	w.traces[id] = append(w.traces[id], t)
}

// history numbers the lives from the oldest.
func (w *walk) history() History {
	h := History{Record: w.asked.Label, Port: w.asked.Port, Events: w.events, On: w.on}
	number := make(map[bearer]int)
	for i := len(h.Events) - 1; i >= 0; i-- {
		thing := w.things.root(w.about[i])
		if number[thing] == 0 {
			number[thing] = len(number) + 1
		}
		h.Events[i].Life = number[thing]
	}
	h.Lives = len(number)
	for i := range h.Events {
		if e := &h.Events[i]; e.Part == Own {
			h.Kind = e.Kind
			break
		}
	}
	return h
}

// lookup finds the block that a label stands for, nil without one.
func lookup(p *plant.Plant, label string) *schema.Record {
	if p == nil {
		return nil
	}
	e, _ := entryOf(p, label)
	return e.Record
}

// unitsOf is the system in which a plant's quantities are printed.
func unitsOf(p *plant.Plant) unit.System {
	if p == nil {
		return unit.Metric
	}
	return p.Units
}
