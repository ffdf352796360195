package diffreport

import (
	"fmt"
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
)

// A cableWork is one run or cord and what has to be done to it.
type cableWork struct {
	// label is the cable's label in the later plant, was that in the earlier.
	label, was string
	id         string
	class      Class
	change     *Change
	before     [2]end
	after      [2]end
	// renew is set where the cable itself is taken out and another one laid.
	renew bool
	run   struct{ before, after *plant.Run }
	cord  struct{ before, after *plant.Cord }
}

// cables makes the tasks of every run and cord that is worked on: those that
// changed, and those that come off hardware which is exchanged or moved.
func (p *planner) cables() {
	for _, r := range p.head.Runs {
		if w := p.work(r.Label, r); w != nil {
			w.run.after = r
			w.after = runEnds(r)
			if was, ok := p.formerly(w).(*plant.Run); ok {
				w.run.before, w.before = was, runEnds(was)
			}
			p.runTasks(w)
		}
	}
	for _, r := range p.base.Runs {
		if c := p.before[r.Label]; c != nil && c.After.Record == nil && c.before.item == plant.Item(r) && c.onSite() {
			w := &cableWork{label: r.Label, was: r.Label, id: r.Label + gone, class: c.Class, change: c, before: runEnds(r)}
			w.run.before = r
			p.runTasks(w)
		}
	}
	for _, r := range p.head.Cords {
		if w := p.work(r.Label, r); w != nil {
			w.cord.after = r
			w.after = cordEnds(r)
			if was, ok := p.formerly(w).(*plant.Cord); ok {
				w.cord.before, w.before = was, cordEnds(was)
			}
			p.cordTasks(w)
		}
	}
	for _, r := range p.base.Cords {
		if c := p.before[r.Label]; c != nil && c.After.Record == nil && c.before.item == plant.Item(r) {
			w := &cableWork{label: r.Label, was: r.Label, id: r.Label + gone, class: c.Class, change: c, before: cordEnds(r)}
			w.cord.before = r
			p.cordTasks(w)
		}
	}
	p.patches()
}

// work says whether a cable of the later plant is worked on at all.
func (p *planner) work(label string, item plant.Item) *cableWork {
	c := p.after[label]
	if c != nil && c.after.item != item {
		c = nil
	}
	w := &cableWork{label: label, was: label, id: label, change: c, class: ClassChange}
	if c != nil {
		w.was, w.class = c.was(), c.Class
	}
	if c != nil && c.onSite() || p.nearDisturbed(item) {
		return w
	}
	return nil
}

// formerly is the cable in the earlier plant, nil when it is new.
func (p *planner) formerly(w *cableWork) plant.Item {
	if w.change != nil {
		return w.change.before.item
	}
	it, ok := p.base.Find(w.was)
	if !ok {
		return nil
	}
	return it
}

// nearDisturbed says whether a cable ends at hardware that is exchanged, moved
// or gone.
func (p *planner) nearDisturbed(item plant.Item) bool {
	if len(p.disturbed) == 0 {
		return false
	}
	var ends [2]end
	switch it := item.(type) {
	case *plant.Run:
		ends = runEnds(it)
	case *plant.Cord:
		ends = cordEnds(it)
	}
	return p.comesOff(item, ends[0]) || p.comesOff(item, ends[1])
}

// comesOff says whether a cable comes off at one end because of the hardware
// there.
func (p *planner) comesOff(item plant.Item, e end) bool {
	kind := cordsOff
	if _, isRun := item.(*plant.Run); isRun {
		kind = runsOff
	}
	h := e.holder()
	return h != nil && p.disturbed[h.Label]&kind != 0
}

// plan compares the ends of a cable: which come off, which go on.
func (w *cableWork) plan(p *planner) (off, on [2]bool) {
	for i := range w.before {
		was, is := p.sides(earlier, w.before[i]), p.sides(later, w.after[i])
		for _, s := range append(append([]portSide(nil), was...), is...) {
			p.touched[s.holder] = true
		}
		stays := !w.renew && equalSides(was, is) && !p.comesOff(w.item(), w.after[i])
		off[i], on[i] = len(was) > 0 && !stays, len(is) > 0 && !stays
	}
	return off, on
}

// item is the cable in the graph of the later plant, or of the earlier where it
// is gone.
func (w *cableWork) item() plant.Item {
	switch {
	case w.run.after != nil:
		return w.run.after
	case w.cord.after != nil:
		return w.cord.after
	case w.run.before != nil:
		return w.run.before
	}
	return w.cord.before
}

func equalSides(a, b []portSide) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// name is what the crew finds on the cable now, with what it is to be called.
func (w *cableWork) name() string {
	if w.was != w.label {
		return w.was + " (to be " + w.label + ")"
	}
	return w.label
}

// ends visits the chosen ends of a cable room by room.
func byRoom(ends [2]end, chosen [2]bool, visit func(space string, ends []end)) {
	switch {
	case chosen[0] && chosen[1] && ends[0].space() == ends[1].space():
		visit(ends[0].space(), ends[:])
	default:
		for i := range ends {
			if chosen[i] {
				visit(ends[i].space(), ends[i:i+1])
			}
		}
	}
}

func portNames(ends []end) string {
	names := make([]string, len(ends))
	for i, e := range ends {
		names[i] = e.row.String()
	}
	return strings.Join(names, " and ")
}

// takeOff makes the tasks that take a cable off its ports.
func (p *planner) takeOff(w *cableWork, off [2]bool, verb string) []*task {
	var tasks []*task
	outage := p.loses(w)
	byRoom(w.before, off, func(space string, ends []end) {
		t := &task{phase: toDisconnect, Step: Step{
			Action: Disconnect, Class: w.class, Space: space, Records: []string{w.label},
			Text: fmt.Sprintf("%s %s from %s", verb, w.name(), portNames(ends)), Outage: outage,
		}}
		for _, e := range ends {
			for _, s := range p.sides(earlier, e) {
				t.frees = append(t.frees, hold{s, w.id})
				p.freed[s] = append(p.freed[s], t)
			}
		}
		t.Cautions = append(p.endCautions(w.medium(), ends), p.loadCautions(ends)...)
		tasks = append(tasks, p.add("", t))
	})
	return tasks
}

// putOn makes the tasks that connect a cable, each after what it needs: the
// hardware in place and the side free.
func (p *planner) putOn(w *cableWork, on [2]bool, as Step, at phase, after []*task) []*task {
	var tasks []*task
	verb := as.Text
	byRoom(w.after, on, func(space string, ends []end) {
		t := &task{phase: at, Step: as, after: append([]*task(nil), after...)}
		t.Class, t.Space, t.Records = w.class, space, []string{w.label}
		t.Text = fmt.Sprintf(verb, w.label, portNames(ends))
		for _, e := range ends {
			if ready := p.ready[e.holder().Label]; ready != nil {
				t.after = append(t.after, ready)
			}
			for _, s := range p.sides(later, e) {
				t.takes = append(t.takes, hold{s, w.id})
			}
		}
		t.Cautions = p.endCautions(w.medium(), ends)
		tasks = append(tasks, p.add("", t))
	})
	return tasks
}

// waitForSides lets every task that connects something wait for what frees the
// side, and hardware wait for the cables that leave it. It runs when all tasks
// are known.
func (p *planner) waitForSides() {
	for _, t := range p.tasks {
		for _, h := range t.takes {
			t.after = append(t.after, p.freed[h.side]...)
		}
	}
	for _, l := range p.leaving {
		label := p.same(l.holder.Label)
		for i := range l.holder.Ports {
			for _, front := range []bool{false, true} {
				l.task.after = append(l.task.after, p.freed[portSide{label, l.holder.Ports[i].Number, front}]...)
			}
		}
	}
}

// medium is what the cable is, as the later plant has it, or the earlier where
// it is gone.
func (w *cableWork) medium() plant.Medium {
	switch {
	case w.run.after != nil:
		return w.run.after.Cable.Medium()
	case w.run.before != nil:
		return w.run.before.Cable.Medium()
	case w.cord.after != nil:
		return w.cord.after.Cable.Medium()
	case w.cord.before != nil:
		return w.cord.before.Cable.Medium()
	}
	return plant.Unstated
}

// changed says whether the change has a field that means at least this much.
func (w *cableWork) changed(names ...string) bool {
	if w.change == nil {
		return false
	}
	for _, f := range w.change.Fields {
		for _, name := range names {
			if f.Name == name && f.Meaning > schema.Relabelling {
				return true
			}
		}
	}
	return false
}
