package diffreport

import (
	"homerun/schema/plant"
)

// apart keeps old and new cables of one channel from meeting: what is put on
// waits until what the cables that stay lead to is off, where that goes. So a
// channel that is whole in the middle of the work is whole in the earlier or in
// the later plant as well, and was judged there.
func (p *planner) apart() {
	byID := make(map[string]*cableWork, len(p.works))
	for _, w := range p.works {
		byID[w.id] = w
	}
	for _, w := range p.works {
		if len(w.on) == 0 {
			continue
		}
		for _, e := range w.after {
			for i := range e.row {
				for _, off := range p.beyond(&e.row[i], e.front, byID) {
					for _, on := range w.on {
						on.wait(off)
					}
				}
			}
		}
	}
}

// beyond follows a channel of the later plant from one side of a port outwards
// over cables that stay, and gives the tasks that take off the first that goes.
func (p *planner) beyond(port *plant.Port, front bool, works map[string]*cableWork) []*task {
	for range maxHops {
		if port == nil || port.Holder.IsEquipment() {
			return nil
		}
		opposite := portSide{port.Holder.Label, port.Number, !front}
		if off := p.freed[opposite]; len(off) > 0 {
			return off
		}
		item := occupant(port, !front)
		if item == nil || len(p.taken[opposite]) > 0 {
			return nil // nothing is there before its own time comes
		}
		if w := works[item.Record().Label]; w != nil && len(w.off)+len(w.on) > 0 {
			return w.off // one that is only labelled anew stays, and leads on
		}
		port, front = across(item, port)
	}
	return nil
}

// maxHops bounds how many cables of one channel are followed: a ring of the
// records would have no end.
const maxHops = 64

// occupant is the cable on one side of a port, nil when there is none.
func occupant(port *plant.Port, front bool) plant.Item {
	switch {
	case !front && port.Rear != nil:
		return port.Rear
	case front && port.Front != nil:
		return port.Front
	case front && port.Onward != nil:
		return port.Onward
	}
	return nil
}

// across is the port at the other end of a cable, and whether it is there on
// the front.
func across(item plant.Item, from *plant.Port) (port *plant.Port, front bool) {
	switch it := item.(type) {
	case *plant.Cord:
		return it.Other(from), true
	case *plant.Run:
		ends := runEnds(it)
		for i, e := range ends {
			for k := range e.row {
				if other := ends[1-i]; &e.row[k] == from && len(other.row) > 0 {
					return &other.row[min(k, len(other.row)-1)], other.front
				}
			}
		}
	}
	return nil, false
}
