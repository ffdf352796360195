package diffreport

import (
	"fmt"
	"slices"

	"homerun/schema"
	"homerun/schema/plant"
)

// Contacts that part while they carry the current of power over Ethernet are
// damaged by the spark: common practice, and the reason for the tests of
// IEC 60512-99-002 (from memory). So the port is switched off before.

// isolate makes a task wait until the power that the cable carries is switched
// off, and gives the cautions of what stays in doubt.
func (p *planner) isolate(w *cableWork, t *task, ends []end) []string {
	var cautions []string
	for _, e := range ends {
		for i := range e.row {
			port := supply(&e.row[i])
			if port == nil {
				continue
			}
			kind, _ := schema.EquipmentSupplies.In(port.Holder.Record())
			text := danger("", port.Holder.Label, fmt.Sprintf(" supplies power over Ethernet (%s): contacts parted under load are damaged", kind),
				fmt.Sprintf(" supply power over Ethernet (%s): contacts parted under load are damaged", kind))
			cautions = append(cautions, text)
			if len(t.Outage) == 0 {
				continue // nothing is recorded that could draw power
			}
			off := p.switchOff(w, port)
			off.Cautions = append(off.Cautions, text)
			off.Outage = append(off.Outage, t.Outage...)
			t.wait(off)
			t.urge = cutting
			w.supplied = append(w.supplied, off)
		}
	}
	return cautions
}

// switchOff is the task that switches the power of one port off: that of the
// whole equipment where it is taken out anyhow.
func (p *planner) switchOff(w *cableWork, port *plant.Port) *task {
	label := p.same(port.Holder.Label)
	if off := p.switchedOff[label]; off != nil {
		off.urge = severing
		return off
	}
	at := portSide{label, port.Number, true}
	off := p.isolated[at]
	if off == nil {
		name := p.formerPorts([]end{{plant.Row{*port}, true}})
		off = p.add(&task{phase: toIsolate, urge: severing, group: "isolate " + label, items: []string{name}, undo: back("switch power over Ethernet on again at ", name, ""), Step: Step{
			Action: Isolate, Class: w.class, Space: p.roomNow(roomName(port.Holder)), Text: "switch power over Ethernet off at",
		}})
		off.wait(p.relabel[label])
		p.isolated[at] = off
	}
	off.Class = min(off.Class, w.class)
	off.record(w.label)
	return off
}

func roomName(h *plant.Holder) string {
	if h.Space == nil {
		return ""
	}
	return h.Space.Label
}

// restores makes the tasks that switch on again what was switched off: the
// ports that cables lead to which were without power meanwhile, those that
// still hold a cable, and equipment that is back in its place. It runs when all
// cables are planned.
func (p *planner) restores() {
	p.equipmentBack()
	for _, w := range p.works {
		if len(w.supplied) == 0 {
			continue
		}
		for _, e := range w.after {
			for i := range e.row {
				if port := supply(&e.row[i]); port != nil && serves(port) {
					p.switchOn(port, w.class, w.supplied, w.on).record(w.label)
				}
			}
		}
	}
	for at, off := range p.isolated {
		it, _ := p.head.Find(at.holder)
		h, ok := it.(*plant.Holder)
		if !ok || at.port > len(h.Ports) {
			continue
		}
		port := &h.Ports[at.port-1]
		if supply(port) == port && serves(port) {
			p.switchOn(port, off.Class, []*task{off}, p.taken[at]).record(off.Records...)
		}
	}
	p.equipmentOn()
}

// serves says whether what is plugged into a port of equipment leads to
// anything in service.
func serves(port *plant.Port) bool {
	if port.Front == nil && port.Onward == nil {
		return false
	}
	all := channelsOf(port.Onward, port.Front)
	return len(all) == 0 || slices.ContainsFunc(all, func(ch *plant.Channel) bool { return len(servedPorts(ch)) > 0 })
}

// switchOn makes the task that switches a port of the later plant on, once for
// all cables that lead to it.
func (p *planner) switchOn(port *plant.Port, class Class, after ...[]*task) *task {
	label := port.Holder.Label
	at := portSide{label, port.Number, true}
	on := p.restored[at]
	if p.switchedOff[label] != nil {
		on = p.backOn[label] // it comes back with the whole equipment
	}
	if on == nil {
		on = p.add(&task{phase: toRestore, urge: mending, group: "restore " + label, items: []string{port.String()}, undo: back("switch power over Ethernet off again at ", port.String(), ""), Step: Step{
			Action: Restore, Class: class, Space: roomName(port.Holder), Text: "switch power over Ethernet on again at",
		}})
		on.wait(p.ready[label], p.isolated[at])
		p.restored[at] = on
	}
	on.Class = min(on.Class, class)
	for _, list := range after {
		on.wait(list...)
	}
	return on
}

func (t *task) record(labels ...string) { t.Records = append(t.Records, labels...) }

// equipmentBack makes the tasks that switch equipment on when it is in its new
// place; equipmentOn lets them wait for the cables that are plugged into it.
func (p *planner) equipmentBack() {
	for label, off := range p.switchedOff {
		up := p.ready[label]
		if up == nil {
			continue
		}
		p.backOn[label] = p.add(&task{phase: toRestore, urge: mending, undo: back("switch ", label, " off again"), Step: Step{
			Action: Restore, Class: off.Class, Space: up.Space, Records: []string{label}, Text: "switch " + label + " on again",
		}})
		p.backOn[label].wait(off, up)
	}
}

func (p *planner) equipmentOn() {
	for _, w := range p.works {
		for _, e := range w.after {
			if h := e.holder(); h != nil && p.backOn[h.Label] != nil {
				p.backOn[h.Label].wait(w.on...)
				p.backOn[h.Label].record(w.label)
			}
		}
	}
}
