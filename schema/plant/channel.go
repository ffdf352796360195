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
	// From and To are the ports at its ends, in the order of the channel; nil
	// where an end is not recorded or not found.
	From, To *Port
}

// turned is the part as seen from the other end of the channel.
func (p Part) turned() Part {
	p.From, p.To = p.To, p.From
	return p
}

// Runs are the runs of a link in the order of the channel; none for a cord.
func (p Part) Runs() []*Run {
	if p.Link == nil {
		return nil
	}
	runs := slices.Clone(p.Link.Runs)
	if p.back() {
		slices.Reverse(runs)
	}
	return runs
}

// Joints are the ports between the runs of a link, in the order of the channel.
func (p Part) Joints() []*Port {
	if p.Link == nil {
		return nil
	}
	joints := slices.Clone(p.Link.Joints)
	if p.back() {
		slices.Reverse(joints)
	}
	return joints
}

// back says whether the channel passes a link from its To end to its From end.
func (p Part) back() bool {
	near, far := p.Link.near(), p.Link.far()
	return far.Holds(p.From) || !near.Holds(p.From) && near.Holds(p.To)
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
func (p *builder) findChannels() {
	channels := make([]Channel, 0, len(p.Links))
	p.Channels = make([]*Channel, 0, len(p.Links))
	var before, after []Part
	for _, l := range p.Links {
		if l.Channel != nil {
			continue
		}
		c := put(&channels, Channel{})
		l.Channel = c
		before, c.Start, c.OpenStart = c.walk(before[:0], l.From)
		after, c.End, c.OpenEnd = c.walk(after[:0], l.To)
		p.makeRoom(c, before, after)
		c.join(before, Part{Link: l, From: l.From, To: l.To}, after)
		p.Channels = append(p.Channels, c)
	}
}

// makeRoom lets a channel take a link and what lies before and after it.
func (p *builder) makeRoom(c *Channel, before, after []Part) {
	links, cords := 1, 0
	for _, parts := range [][]Part{before, after} {
		for i := range parts {
			if parts[i].Cord != nil {
				cords++
			} else {
				links++
			}
		}
	}
	c.Parts, c.Links, c.Cords = p.parts.list(links+cords), p.linked.list(links), p.corded.list(cords)
}

// join puts together what was found outwards from both ends of a link, and
// lists it by what it is.
func (c *Channel) join(before []Part, link Part, after []Part) {
	for _, part := range slices.Backward(before) {
		c.Parts = append(c.Parts, part.turned())
	}
	c.Parts = append(c.Parts, link)
	c.Parts = append(c.Parts, after...)
	for _, part := range c.Parts {
		if part.Link != nil {
			c.Links = append(c.Links, part.Link)
		} else {
			c.Cords = append(c.Cords, part.Cord)
		}
	}
}

// walk follows the fronts outwards from a link's outer port and adds what it comes to. A
// link that already belongs to this channel closes a ring and ends the walk.
func (c *Channel) walk(way []Part, port *Port) (parts []Part, end *Port, open bool) {
	parts = way
	for port != nil && !port.Holder.IsEquipment() {
		cord := port.Front
		if cord == nil {
			return parts, port, !port.Holder.Joins()
		}
		other := cord.Other(port)
		parts = append(parts, Part{Cord: cord, From: port, To: other})
		port = other
		if port == nil || port.Holder.IsEquipment() || port.Rear == nil || port.Rear.Link.Channel != nil {
			return parts, port, false
		}
		next := port.Rear.Link
		next.Channel = c
		other = next.From
		if next.From == port {
			other = next.To
		}
		parts = append(parts, Part{Link: next, From: port, To: other})
		port = other
	}
	return parts, port, false
}
