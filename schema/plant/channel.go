package plant

import (
	"slices"

	"homerun/schema/unit"
)

// A Channel is what a signal travels from equipment to equipment: links joined
// by cords, with a cord at each end. It starts at the From side of the first
// link that the records name.
type Channel struct {
	// Parts are its cables in order.
	Parts []Part
	// Links are its permanent links in order.
	Links []*Link
	// Cords are its cords in order.
	Cords []*Cord
	// Start and End are the outermost ports; nil where an end is not recorded.
	Start, End *Port
	// OpenStart and OpenEnd are set where the records stop at a jack: no
	// cord is recorded there, so the standard's allowance has to stand in.
	OpenStart, OpenEnd bool
}

// A Part is one cable of a channel: a link or a cord, never both.
type Part struct {
	Link *Link
	Cord *Cord
}

// CordLength is the sum of the recorded cords, known when each states its own.
func (c *Channel) CordLength() (unit.Length, bool) {
	var sum unit.Length
	for _, cord := range c.Cords {
		length, ok := cord.CordLength()
		if !ok {
			return 0, false
		}
		sum = addLength(sum, length)
	}
	return sum, true
}

// LinkLength is the sum of the links, known when each run states its length.
func (c *Channel) LinkLength() (unit.Length, bool) {
	var sum unit.Length
	for _, l := range c.Links {
		length, ok := l.Length()
		if !ok {
			return 0, false
		}
		sum = addLength(sum, length)
	}
	return sum, true
}

// Connections counts every connection between the two pieces of equipment,
// without those in the equipment itself.
func (c *Channel) Connections() int {
	n := 0
	for _, l := range c.Links {
		n += l.Connections()
	}
	return n
}

// CrossConnected says whether a cord joins two panels in the channel.
func (c *Channel) CrossConnected() bool {
	for _, cord := range c.Cords {
		if cord.From != nil && cord.To != nil && !cord.From.Holder.IsEquipment() && !cord.To.Holder.IsEquipment() {
			return true
		}
	}
	return false
}

// findChannels follows every link outwards from both of its ends.
func (p *Plant) findChannels() {
	for _, l := range p.Links {
		if l.Channel == nil {
			p.Channels = append(p.Channels, newChannel(l))
		}
	}
}

func newChannel(l *Link) *Channel {
	c := &Channel{}
	l.Channel = c
	before, start, openStart := c.walk(l.From)
	after, end, openEnd := c.walk(l.To)
	c.Parts = make([]Part, 0, len(before)+1+len(after))
	for _, b := range slices.Backward(before) {
		c.Parts = append(c.Parts, b)
	}
	c.Parts = append(c.Parts, Part{Link: l})
	c.Parts = append(c.Parts, after...)
	for _, part := range c.Parts {
		if part.Link != nil {
			c.Links = append(c.Links, part.Link)
		} else {
			c.Cords = append(c.Cords, part.Cord)
		}
	}
	c.Start, c.End, c.OpenStart, c.OpenEnd = start, end, openStart, openEnd
	return c
}

// walk follows the fronts outwards from a link's outer port. A link that
// already belongs to this channel closes a ring and ends the walk.
func (c *Channel) walk(port *Port) (parts []Part, end *Port, open bool) {
	for port != nil && !port.Holder.IsEquipment() {
		cord := port.Front
		if cord == nil {
			return parts, port, !port.Holder.Joins()
		}
		parts = append(parts, Part{Cord: cord})
		port = cord.Other(port)
		if port == nil || port.Holder.IsEquipment() || port.Rear == nil || port.Rear.Link.Channel != nil {
			return parts, port, false
		}
		next := port.Rear.Link
		next.Channel = c
		parts = append(parts, Part{Link: next})
		if next.From == port {
			port = next.To
		} else {
			port = next.From
		}
	}
	return parts, port, false
}
