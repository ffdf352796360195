package diffreport

import (
	"cmp"
	"fmt"
	"slices"
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
	// off and on are the tasks that take the cable off its ports and put it on,
	// onAt those that put on its two ends.
	off, on []*task
	onAt    [2]*task
	// tagging is set where a task takes the run out of use and leaves it there.
	tagging bool
	// supplied are the tasks that switch off the power that it carries.
	supplied []*task
}

// cables makes the tasks of every run and cord that is worked on: those that
// changed, and those that come off hardware which is exchanged or moved.
func (p *planner) cables() {
	runs, cords := p.changedCables()
	if len(p.disturbed) > 0 {
		runs, cords = p.everyCable()
	}
	for _, list := range [][]*cableWork{runs, cords} {
		slices.SortFunc(list, func(a, b *cableWork) int { return cmp.Compare(a.id, b.id) })
	}
	for _, w := range runs {
		p.runTasks(w)
	}
	for _, w := range cords {
		p.cordTasks(w)
	}
	p.patches()
	p.waitForSides()
}

// changedCables are the runs and cords that the changes name.
func (p *planner) changedCables() (runs, cords []*cableWork) {
	for i := range p.changes {
		c := &p.changes[i]
		w := p.work(c.Label, c.after.item)
		if c.After.Record == nil {
			w = c.takenAway()
		}
		if w == nil {
			continue
		}
		switch c.Kind {
		case schema.KindRun:
			runs = append(runs, w)
		case schema.KindCord:
			cords = append(cords, w)
		}
	}
	return runs, cords
}

// everyCable looks at all runs and cords: any of them may end at the hardware
// that is worked on.
func (p *planner) everyCable() (runs, cords []*cableWork) {
	for _, r := range p.head.Runs {
		if w := p.work(r.Label, r); w != nil {
			runs = append(runs, w)
		}
	}
	for _, r := range p.head.Cords {
		if w := p.work(r.Label, r); w != nil {
			cords = append(cords, w)
		}
	}
	for i := range p.changes {
		if w := p.changes[i].takenAway(); w == nil {
			continue
		} else if w.run.before != nil {
			runs = append(runs, w)
		} else {
			cords = append(cords, w)
		}
	}
	return runs, cords
}

// takenAway is the work on a cable that the later plant does not have.
func (c *Change) takenAway() *cableWork {
	if c.After.Record != nil || !c.onSite() {
		return nil
	}
	w := &cableWork{label: c.was(), was: c.was(), id: c.was() + gone, class: c.Class, change: c}
	switch it := c.before.item.(type) {
	case *plant.Run:
		w.run.before, w.before = it, runEnds(it)
	case *plant.Cord:
		w.cord.before, w.before = it, cordEnds(it)
	default:
		return nil
	}
	return w
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
	if (c == nil || !c.onSite()) && !p.nearDisturbed(item) {
		return nil
	}
	was := p.formerly(w)
	switch it := item.(type) {
	case *plant.Run:
		w.run.after, w.after = it, runEnds(it)
		if r, ok := was.(*plant.Run); ok {
			w.run.before, w.before = r, runEnds(r)
		}
	case *plant.Cord:
		w.cord.after, w.after = it, cordEnds(it)
		if c, ok := was.(*plant.Cord); ok {
			w.cord.before, w.before = c, cordEnds(c)
		}
	default:
		return nil
	}
	return w
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
	if w.relabelled() {
		return w.was + " (to be " + w.label + ")"
	}
	return w.label
}

// byRoom visits the chosen ends of a cable room by room, with the place of the
// first of them.
func byRoom(ends [2]end, chosen [2]bool, visit func(first int, ends []end)) {
	if chosen[0] && chosen[1] && ends[0].space() == ends[1].space() {
		visit(0, ends[:])
		return
	}
	for i := range ends {
		if chosen[i] {
			visit(i, ends[i:i+1])
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

// formerPorts names ports of the earlier plant as they are labelled when the
// work begins: hardware that stays where it is has its new label by then.
func (p *planner) formerPorts(ends []end) string {
	names := make([]string, len(ends))
	for i, e := range ends {
		names[i] = e.row.String()
		if h := e.holder(); h != nil && p.relabel[p.same(h.Label)] != nil && p.ready[p.same(h.Label)] == nil {
			names[i] = p.same(h.Label) + strings.TrimPrefix(names[i], h.Label) + " (until now " + names[i] + ")"
		}
	}
	return strings.Join(names, " and ")
}

// room is the label of an end's room as the later plant has it.
func (p *planner) room(s side, e end) string {
	if s == earlier {
		return p.roomNow(e.space())
	}
	return e.space()
}

// roomNow is what a room of the earlier plant is called in the later.
func (p *planner) roomNow(label string) string { return shown(p.same(label)) }

// takeOff makes the tasks that take a cable off its ports.
func (p *planner) takeOff(w *cableWork, off [2]bool, verb, again string) {
	outage := p.loses(w)
	byRoom(w.before, off, func(_ int, ends []end) {
		ports := p.formerPorts(ends)
		t := &task{phase: toDisconnect, work: w, ports: ports, urge: building, Step: Step{
			Action: Disconnect, Class: w.class, Space: p.room(earlier, ends[0]), Records: []string{w.label},
			Text: fmt.Sprintf("%s %s from %s", verb, w.name(), ports), Outage: outage,
		}}
		t.undo = back(again+" ", w.name()+" "+onto(again)+" "+ports, "")
		if len(outage) > 0 {
			t.urge = severing
		}
		for _, e := range ends {
			for _, s := range p.sides(earlier, e) {
				t.frees = append(t.frees, hold{s, w.id})
				p.freed[s] = append(p.freed[s], t)
			}
			if h := e.holder(); h != nil && p.ready[p.same(h.Label)] == nil {
				t.wait(p.relabel[p.same(h.Label)])
			}
		}
		t.Cautions = append(p.endCautions(w.medium(), ends), p.isolate(w, t, ends)...)
		w.off = append(w.off, p.add(t))
	})
}

// onto is the word between a cable and its port.
func onto(verb string) string {
	if verb == "plug" {
		return "into"
	}
	return "on"
}

// putOn makes the tasks that connect a cable, each after what it needs: the
// cable off its old ports, the hardware in place and the side free.
func (p *planner) putOn(w *cableWork, on [2]bool, as Step, at phase, after []*task) {
	verb := as.Text
	byRoom(w.after, on, func(first int, ends []end) {
		t := &task{phase: at, work: w, urge: building, Step: as}
		t.wait(after...)
		t.wait(w.off...)
		if len(w.off) > 0 {
			t.urge = mending
		}
		ports := portNames(ends)
		t.ports = ports
		t.Class, t.Space, t.Records = w.class, p.room(later, ends[0]), []string{w.label}
		t.Text = fmt.Sprintf("%s %s %s %s", verb, w.name(), onto(verb), ports)
		parting := map[bool]string{true: "unplug ", false: "disconnect "}[verb == "plug"]
		t.undo = back(parting, w.name()+" from "+ports, "")
		for _, e := range ends {
			t.wait(p.ready[e.holder().Label], p.relabel[e.holder().Label])
			for _, s := range p.sides(later, e) {
				t.takes = append(t.takes, hold{s, w.id})
			}
		}
		t.Cautions = p.endCautions(w.medium(), ends)
		w.on = append(w.on, p.add(t))
		for i := range ends {
			w.onAt[first+i] = t
		}
	})
}

// waitForSides lets every task that connects something wait for what frees the
// side, and hardware wait for the cables that leave it. It runs when all tasks
// are known.
func (p *planner) waitForSides() {
	for _, t := range p.tasks {
		for _, h := range t.takes {
			t.wait(p.freed[h.side]...)
			p.taken[h.side] = append(p.taken[h.side], t)
		}
	}
	for _, l := range p.leaving {
		label := p.same(l.holder.Label)
		for i := range l.holder.Ports {
			for _, front := range []bool{false, true} {
				l.task.wait(p.freed[portSide{label, l.holder.Ports[i].Number, front}]...)
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
