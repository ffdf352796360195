package plant

import (
	"slices"

	"homerun/schema"
)

// Strands follows light through the fibre links of a plant. Each fibre of a
// cable may go on to another place, so a cable of twelve is part of several
// channels, where Plant.Channels knows the one of its first port.
type Strands struct {
	links []*Link
	// order is the place of each link among those of the plant: a channel of
	// several links belongs to the first of them.
	order map[*Link]int
}

// Strands returns the fibres of the links that take accepts, in the order of
// the records. A fibre ends where it comes to a link that is not accepted.
func (p *Plant) Strands(take func(*Link) bool) *Strands {
	s := &Strands{links: p.Links, order: make(map[*Link]int)}
	for i, l := range p.Links {
		if take(l) {
			s.order[l] = i
		}
	}
	return s
}

// Any says whether there is any link to follow.
func (s *Strands) Any() bool { return len(s.order) > 0 }

// Takes says whether the fibres of a link are followed.
func (s *Strands) Takes(l *Link) bool {
	_, taken := s.order[l]
	return taken
}

// Each calls do for every link with the channels that belong to it, those
// alike once: most fibres of a cable lie beside each other from end to end.
// The slice of channels is used again after do returns.
func (s *Strands) Each(do func(l *Link, channels []*Channel)) {
	if !s.Any() {
		return
	}
	var channels []*Channel
	w := fibreWalk{Strands: s}
	for _, l := range s.links {
		place, taken := s.order[l]
		if !taken {
			continue
		}
		channels = channels[:0]
		dark := false
		for i := range l.fibres() {
			if l.unplugged(i) {
				if dark {
					continue
				}
				dark = true
			}
			w.least = place
			if c := w.whole(l, i); c != nil {
				channels = addChannel(channels, c)
			}
		}
		if len(channels) > 0 {
			do(l, channels)
		}
	}
}

// Of returns the channels that the fibres of a link are part of, those alike
// once, each from the end of the first of its links.
func (s *Strands) Of(l *Link) []*Channel {
	if !s.Takes(l) {
		return nil
	}
	var channels []*Channel
	for i := range l.fibres() {
		channels = addChannel(channels, s.through(l, i))
	}
	return channels
}

// Through returns the channels of the fibres behind a port, those alike once:
// one but for a port that holds several fibres.
func (s *Strands) Through(port *Port) []*Channel {
	r := port.Rear
	if r == nil {
		r = port.Onward
	}
	if r == nil || !s.Takes(r.Link) {
		return nil
	}
	var channels []*Channel
	for i := range r.Link.fibres() {
		if r.Link.end(r.Link.near(), i).port == port || r.Link.end(r.Link.far(), i).port == port {
			channels = addChannel(channels, s.through(r.Link, i))
		}
	}
	if len(channels) == 0 { // a joint inside the link
		return s.Of(r.Link)
	}
	return channels
}

// through follows one fibre, and again from the first link on its way.
func (s *Strands) through(l *Link, i int) *Channel {
	w := fibreWalk{Strands: s}
	c := w.whole(l, i)
	if w.first == l {
		return c
	}
	return (&fibreWalk{Strands: s}).whole(w.first, w.place)
}

// addChannel adds a channel that is not alike one of those found.
func addChannel(channels []*Channel, c *Channel) []*Channel {
	if slices.ContainsFunc(channels, c.Alike) {
		return channels
	}
	return append(channels, c)
}

// Alike says whether two channels are the same cables in the same order.
func (c *Channel) Alike(other *Channel) bool {
	return slices.EqualFunc(c.Parts, other.Parts, func(a, b Part) bool { return a.Link == b.Link && a.Cord == b.Cord })
}

// mostFibres bounds how many fibres of one port are followed.
const mostFibres = 288

// fibres is how many fibres of the link the records tell apart: as many as its
// longer row of ports has, or where both ends are one port, as its cable has.
func (l *Link) fibres() int {
	n := max(1, len(l.near()), len(l.far()))
	if n > 1 {
		return n
	}
	if cable := l.Lead().Cable; cable != nil {
		strands, _ := schema.CableStrands.In(cable.Record())
		return max(1, min(strands, mostFibres))
	}
	return 1
}

func (l *Link) near() Row { return l.Lead().From }
func (l *Link) far() Row  { return l.Runs[len(l.Runs)-1].To }

// unplugged says whether nothing is plugged in at either end of a fibre: such
// fibres of one cable need no looking at but once.
func (l *Link) unplugged(i int) bool {
	near, far := l.end(l.near(), i).port, l.end(l.far(), i).port
	return (near == nil || near.Front == nil) && (far == nil || far.Front == nil)
}
