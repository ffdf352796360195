package diffreport

import (
	"fmt"

	"homerun/schema"
)

// unitOf names the place in a rack that hardware takes, nothing where the
// records do not say.
func (p *planner) unitOf(s side, e schema.Entry) string {
	rack, unit := e.Own("rack"), e.Own("unit")
	if rack == nil || unit == nil || rack.Bad || unit.Bad {
		return ""
	}
	label := rack.Text
	if s == earlier {
		label = p.same(label)
	}
	return fmt.Sprintf("%s unit %d", label, unit.Number)
}

// placing lets hardware wait for its place: for the rack that it goes into and
// for what was there before, a rack for what it holds, a busbar for nothing, and
// a pathway for the cables that leave it. It runs when all tasks are known.
func (p *planner) placing() {
	for _, r := range p.up {
		if v := r.change.After.Own("rack"); v != nil && !v.Bad {
			r.task.wait(p.ready[v.Text])
		}
		if at := p.unitOf(later, r.change.After); at != "" {
			r.task.wait(p.vacated[at]...)
		}
	}
	for label, t := range p.down {
		t.wait(p.inRack[label]...)
		t.wait(p.outOf[label]...)
	}
	for label, t := range p.bonds {
		// An opening is closed when nothing is pulled through it any more.
		t.wait(p.through[label]...)
		t.wait(p.outOf[label]...)
	}
	p.clearing()
	if p.mode.outFirst {
		p.clearAll()
	}
}

// clearAll lets nothing be put up or pulled before everything that goes is out.
func (p *planner) clearAll() {
	t := &task{phase: toClear, urge: building, floats: true, tail: " before anything is put up: both together are not allowed", Step: Step{
		Action: Remove, Text: "make sure that everything is out that goes:",
	}}
	for _, o := range p.tasks {
		if o.phase >= toDisconnect && o.phase < toClear {
			t.wait(o)
			t.Class = o.Class
			t.Records = append(t.Records, o.Records...)
			if o.phase >= toRemoveCable {
				t.items = append(t.items, o.Records...)
			}
		}
	}
	if len(t.items) == 0 {
		return
	}
	for _, o := range p.tasks {
		if o.phase > toClear {
			o.wait(t)
		}
	}
	p.add(t)
}

// clearing lets cables be pulled only when the old ones are out, where both
// together are more than a pathway may hold.
func (p *planner) clearing() {
	for _, label := range p.mode.full {
		out, in := p.outOf[label], p.through[label]
		if len(out) == 0 || len(in) == 0 {
			continue
		}
		t := &task{phase: toClear, urge: building, floats: true, tail: " before a cable is pulled in: old and new together are too many", Step: Step{
			Action: Remove, Class: in[0].Class, Records: []string{label}, Text: "make sure that " + label + " is clear of",
		}}
		for _, o := range out {
			t.items = append(t.items, o.Records...)
		}
		t.wait(out...)
		p.add(t)
		for _, pull := range in {
			pull.wait(t)
		}
	}
}
