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
	tasks := p.takeOff(w, off, "unplug")
	if w.cord.after == nil || w.renew {
		for _, t := range tasks {
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
	if w.cord.before == nil || w.relabelled() {
		p.labels = append(p.labels, w.label)
	}
}

// patches makes the tasks that plug cords in, each after the tests of the runs
// that it connects.
func (p *planner) patches() {
	for _, w := range p.plugs {
		_, on := w.plan(p)
		tasks := p.putOn(w, on, Step{Action: Patch, Text: "plug %s into %s"}, toPatch, nil)
		for _, t := range tasks {
			for _, e := range w.after {
				for i := range e.row {
					t.after = append(t.after, p.testsBehind(&e.row[i])...)
				}
			}
			if len(t.Cautions) == 0 {
				t.Cautions = p.lightCautions(w.medium())
			}
		}
		if len(tasks) == 0 && w.relabelled() {
			p.add(fmt.Sprintf("label %d %s", w.class, w.after[0].space()), &task{phase: toLabel, items: []string{"cord " + w.name()}, Step: Step{
				Action: Affix, Class: w.class, Space: w.after[0].space(), Records: []string{w.label}, Text: "label",
			}})
		}
	}
	p.waitForSides()
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
