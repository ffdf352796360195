package diffreport

import (
	"fmt"

	"homerun/schema"
	"homerun/schema/plant"
)

// cordTasks makes the tasks that unplug a cord; what is plugged in comes last,
// when every test is known.
func (p *planner) cordTasks(w *cableWork) {
	w.renew = w.changed(schema.CordLength.Name, schema.CordCable.Name)
	off, _ := w.plan(p)
	p.works = append(p.works, w)
	p.takeOff(w, off, "unplug", "plug")
	if w.cord.after == nil || w.renew {
		for _, t := range w.off {
			t.Text += " and take it away"
		}
	}
	if w.cord.after == nil {
		return
	}
	if w.cord.before == nil || w.renew {
		p.used.cord(w.cord.after)
	}
	p.plugs = append(p.plugs, w)
	if w.cord.before == nil || w.renew || w.relabelled() {
		p.toPrint(schema.KindCord, w.label)
	}
}

// patches makes the tasks that plug cords in, each after the tests of the runs
// that it connects.
func (p *planner) patches() {
	for _, w := range p.plugs {
		_, on := w.plan(p)
		p.putOn(w, on, Step{Action: Patch, Text: "plug"}, toPatch, nil)
		for _, t := range w.on {
			for _, e := range w.after {
				for i := range e.row {
					t.wait(p.testsBehind(&e.row[i])...)
				}
			}
			if len(t.Cautions) == 0 {
				t.Cautions = p.lightCautions(w.medium())
			}
		}
		if w.relabelled() && !w.renew {
			t := &task{phase: toLabel, urge: building, group: fmt.Sprintf("label %d", w.class), items: []string{"cord " + w.label + " (until now " + w.was + ")"}, Step: Step{
				Action: Affix, Class: w.class, Space: p.room(later, w.after[0]), Records: []string{w.label}, Text: "label",
			}}
			t.undo = back("put the former labels back: ", "cord "+w.was, "")
			t.wait(w.off...)
			p.add(t)
		}
	}
}

// testsBehind are the tests of the run behind a port.
func (p *planner) testsBehind(port *plant.Port) []*task {
	if port.Rear == nil {
		return nil
	}
	if t := p.tested[port.Rear.Label]; t != nil {
		return []*task{t}
	}
	return nil
}
