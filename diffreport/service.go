package diffreport

import (
	"slices"

	"homerun/schema/plant"
)

// prefer states what should be ready before a cable comes off: the place that
// it goes to, and whatever else will take the side that it leaves. So service
// is not cut before what replaces it has passed its test, and a cord goes from
// port to port without lying about.
func (p *planner) prefer() {
	cords := make(map[*plant.Cord]*cableWork)
	for _, w := range p.works {
		if w.cord.before != nil && len(w.on) > 0 {
			cords[w.cord.before] = w
		}
	}
	for _, w := range p.works {
		own := p.needs(w, w)
		for _, off := range w.off {
			off.want(own...)
			off.want(w.leaving(cords)...)
			if len(off.Outage) > 0 {
				for _, f := range off.frees {
					for _, next := range p.taken[f.side] {
						if next.work != w {
							off.want(p.needs(next.work, w)...)
						}
					}
				}
			}
			for _, dark := range w.supplied {
				dark.want(off.prefer...)
			}
		}
	}
}

// leaving are the tasks that take off the cords which leave the channel of a
// run for another place: with them its service goes, and then nobody misses it.
func (w *cableWork) leaving(cords map[*plant.Cord]*cableWork) []*task {
	if w.run.before == nil {
		return nil
	}
	var all []*task
	for _, ch := range w.channels() {
		for _, c := range ch.Cords {
			if other := cords[c]; other != nil {
				all = append(all, other.off...)
			}
		}
	}
	return all
}

// needs is what a cable waits for before it is put on, but for what takes it or
// another off, and for hardware that this other has to leave first.
func (p *planner) needs(w, other *cableWork) []*task {
	var all []*task
	for _, on := range w.on {
		for _, t := range on.after {
			if t.work == w || t.work == other || slices.ContainsFunc(other.before[:], func(e end) bool {
				return t.holder != "" && e.holder() != nil && p.same(e.holder().Label) == t.holder
			}) {
				continue
			}
			all = append(all, t)
		}
	}
	return all
}

// want adds preferences; what has to wait for the task anyhow is none.
func (t *task) want(others ...*task) {
	for _, o := range others {
		if o != t && !slices.Contains(o.after, t) {
			t.prefer = append(t.prefer, o)
		}
	}
}

// handOvers makes for each service that is cut and comes back the task that
// tells its owner so.
func (p *planner) handOvers() {
	cut := make(map[string][]*task)
	for _, t := range p.tasks {
		for _, port := range t.Outage {
			cut[port] = append(cut[port], t)
		}
	}
	for port, cuts := range cut {
		cables, at := p.regained(port)
		if len(cables) == 0 {
			continue
		}
		item := port
		if was, ok := p.base.FindPort(port); ok {
			if service := services(was); service != "" {
				item += " (" + service + ")"
			}
		}
		if len(at) > 0 {
			item += ", now at " + inWords(at)
		}
		t := p.add(&task{phase: toHandOver, urge: reporting, floats: true, group: "hand over", items: []string{item}, tail: ": service is back and has been tried", Step: Step{
			Action: HandOver, Class: cuts[0].Class, Text: "hand over",
		}})
		for _, c := range cuts {
			t.Class = min(t.Class, c.Class)
			t.record(c.Records...)
		}
		for _, cable := range cables {
			t.wait(p.connects[cable]...)
		}
	}
}

// connectedBy finds for each cable of the later plant the tasks that connect,
// test or feed it.
func (p *planner) connectedBy() {
	for _, t := range p.tasks {
		switch t.Action {
		case Terminate, Measure, Patch, Restore:
			for _, label := range tidy(slices.Clone(t.Records)) {
				p.connects[label] = append(p.connects[label], t)
			}
		case Isolate, Disconnect, Remove, Tag, Install, Bond, Pull, Affix, Swap, HandOver:
		}
	}
}

// regained are the cables of the later plant over which the service of a port
// comes back, and where, if not at the port itself. Service goes where its cords
// go.
func (p *planner) regained(port string) (cables, at []string) {
	if cables = p.cablesBehind(port); len(cables) > 0 {
		return cables, nil
	}
	was, ok := p.base.FindPort(port)
	if !ok {
		return nil, nil
	}
	for _, c := range cordsBehind(was) {
		it, _ := p.head.Find(p.same(c.Label))
		now, ok := it.(*plant.Cord)
		if !ok {
			continue
		}
		for _, ch := range channelsOf(nil, now) {
			if ports := servedPorts(ch); len(ports) > 0 {
				return cablesOf(ch), tidy(ports)
			}
		}
	}
	return nil, nil
}
