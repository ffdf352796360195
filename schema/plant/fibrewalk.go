package plant

import "slices"

// A spot is where a fibre is: at a port, and among the fibres of that port where
// it holds several, as that of an array connector does.
type spot struct {
	port  *Port
	fibre int
}

// end is where fibre i of the link is in one of its rows: the fibres are dealt
// out over the ports in order.
func (l *Link) end(row Row, i int) spot {
	n, width := len(row), l.fibres()
	if n == 0 || i >= width {
		return spot{}
	}
	place := i * n / width
	return spot{&row[place], i - firstOf(place, n, width)}
}

// firstOf is the first of width fibres that is at a place of n.
func firstOf(place, n, width int) int { return (place*width + n - 1) / n }

// across follows a fibre from one end of a link to the other; i is its number
// in the link.
func (l *Link) across(at spot) (far spot, i int) {
	near, other := l.near(), l.far()
	if !near.Holds(at.port) {
		near, other = other, near
	}
	if !near.Holds(at.port) {
		return spot{}, 0
	}
	n, width := len(near), l.fibres()
	place := at.port.Number - near[0].Number
	i = min(firstOf(place, n, width)+at.fibre, firstOf(place+1, n, width)-1)
	far = l.end(other, i)
	if len(other) == n {
		far.fibre = at.fibre // the same in both ports, however many the cable states
	}
	return far, i
}

// pass follows a fibre from one end of a cord to the other; a cord of one port
// at one end and several at the other fans the fibres out.
func (c *Cord) pass(at spot) spot {
	near, far := c.FromRow, c.ToRow
	if near.place(at.port) < 0 {
		near, far = far, near
	}
	switch {
	case len(near) == 1 && len(far) > 1:
		return spot{port: far.at(at.fibre)}
	case len(far) == 1 && len(near) > 1:
		return spot{far.at(0), near.place(at.port)}
	}
	return spot{c.Other(at.port), at.fibre}
}

// A fibreWalk is one fibre on its way outwards from a link of which it is part.
type fibreWalk struct {
	*Strands
	// least is the place of the link that the channel has to belong to; a
	// fibre that comes to an earlier link is given up.
	least int
	seen  []*Link
	// first is the earliest link on the way, place the number of the fibre in it.
	first *Link
	place int
}

// whole follows a fibre of a link to both of its ends; nil where the channel
// belongs to a link before the least.
func (w *fibreWalk) whole(l *Link, i int) *Channel {
	w.seen, w.first, w.place = append(w.seen[:0], l), l, i
	near, far := l.end(l.near(), i), l.end(l.far(), i)
	before, start, openStart, ok := w.out(near)
	if !ok {
		return nil
	}
	after, end, openEnd, ok := w.out(far)
	if !ok {
		return nil
	}
	c := &Channel{Start: start, End: end, OpenStart: openStart, OpenEnd: openEnd, Parts: make([]Part, 0, len(before)+1+len(after))}
	c.join(before, Part{Link: l, From: near.port, To: far.port}, after)
	return c
}

// out follows fronts and links until equipment, an open jack or a ring; ok is
// false where it comes to a link before the least.
func (w *fibreWalk) out(at spot) (parts []Part, end *Port, open, ok bool) {
	for at.port != nil && !at.port.Holder.IsEquipment() {
		cord := at.port.Front
		if cord == nil {
			return parts, at.port, !at.port.Holder.Joins(), true
		}
		other := cord.pass(at)
		parts = append(parts, Part{Cord: cord, From: at.port, To: other.port})
		at = other
		if at.port == nil || at.port.Holder.IsEquipment() || at.port.Rear == nil {
			return parts, at.port, false, true
		}
		next := at.port.Rear.Link
		place, taken := w.order[next]
		if !taken || slices.Contains(w.seen, next) {
			return parts, at.port, false, true
		}
		if place < w.least {
			return nil, nil, false, false
		}
		other, i := next.across(at)
		w.seen = append(w.seen, next)
		parts = append(parts, Part{Link: next, From: at.port, To: other.port})
		at = other
		if place < w.order[w.first] {
			w.first, w.place = next, i
		}
	}
	return parts, at.port, false, true
}
