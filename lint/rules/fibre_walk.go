package rules

import (
	"slices"

	"homerun/schema/plant"
)

// strand follows the fibre at one position of a link to both of its ends; nil
// where the channel belongs to another link.
func (g *light) strand(l *plant.Link, i int) *plant.Channel {
	first, last := l.Lead().From, l.Runs[len(l.Runs)-1].To
	w := lightWalk{light: g, owner: l, seen: []*plant.Link{l}}
	before, start, openStart, ok := w.out(at(first, i))
	if !ok {
		return nil
	}
	after, end, openEnd, ok := w.out(at(last, opposite(i, len(first), len(last))))
	if !ok {
		return nil
	}
	c := &plant.Channel{Start: start, End: end, OpenStart: openStart, OpenEnd: openEnd, Parts: make([]plant.Part, 0, len(before)+1+len(after))}
	for _, part := range slices.Backward(before) {
		c.Parts = append(c.Parts, part)
	}
	c.Parts = append(c.Parts, plant.Part{Link: l})
	c.Parts = append(c.Parts, after...)
	for _, part := range c.Parts {
		if part.Link != nil {
			c.Links = append(c.Links, part.Link)
		} else {
			c.Cords = append(c.Cords, part.Cord)
		}
	}
	return c
}

// lightWalk is one fibre on its way outwards from its link.
type lightWalk struct {
	*light
	owner *plant.Link
	seen  []*plant.Link
}

// out follows fronts and links until equipment, an open jack or a ring; ok is
// false where it meets a link that comes before its own.
func (w *lightWalk) out(port *plant.Port) (parts []plant.Part, end *plant.Port, open, ok bool) {
	for port != nil && !port.Holder.IsEquipment() {
		cord := port.Front
		if cord == nil {
			return parts, port, !port.Holder.Joins(), true
		}
		parts = append(parts, plant.Part{Cord: cord})
		port = cord.Other(port)
		if port == nil || port.Holder.IsEquipment() || port.Rear == nil {
			return parts, port, false, true
		}
		next := port.Rear.Link
		place, known := w.order[next]
		if !known || w.met(next) {
			return parts, port, false, true
		}
		if place < w.order[w.owner] {
			return nil, nil, false, false
		}
		w.seen = append(w.seen, next)
		parts = append(parts, plant.Part{Link: next})
		port = across(next, port)
	}
	return parts, port, false, true
}

func (w *lightWalk) met(l *plant.Link) bool { return slices.Contains(w.seen, l) }

// across is the port at the other end of a link, of the fibre that is at a port
// of this end.
func across(l *plant.Link, port *plant.Port) *plant.Port {
	near, far := l.Lead().From, l.Runs[len(l.Runs)-1].To
	if !holds(near, port) {
		near, far = far, near
	}
	if !holds(near, port) {
		return nil
	}
	return at(far, opposite(port.Number-near[0].Number, len(near), len(far)))
}

func holds(row plant.Row, port *plant.Port) bool {
	if len(row) == 0 || row[0].Holder != port.Holder {
		return false
	}
	n := port.Number - row[0].Number
	return n >= 0 && n < len(row)
}

// opposite is the place in a row of ports of the fibre that is at place i of a row
// of another number of ports: an array connector takes all fibres in one port.
func opposite(i, near, far int) int {
	if near == far || near == 0 {
		return i
	}
	return i * far / near
}

func at(row plant.Row, i int) *plant.Port {
	if i < 0 || i >= len(row) {
		return nil
	}
	return &row[i]
}
