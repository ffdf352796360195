package rules

import (
	"slices"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// light looks the fibre cable types up once for a pass, and follows light
// through the plant: every fibre of a cable may go on to another place, so a
// cable of twelve is part of several channels.
type light struct {
	pass *lint.Pass
	of   map[*plant.Cable]standard.Fibre
	// order is the place of each fibre link among the links of the records: a
	// channel of several belongs to the first of them.
	order map[*plant.Link]int
	// reaches are the reaches that were asked for.
	reaches map[lightAsk]lightReach
}

// A lightAsk is an application over a class of fibre.
type lightAsk struct {
	application standard.OpticalApplication
	class       standard.Fibre
}

// A lightReach is the answer, with what a kilometre of the class may attenuate
// at the wavelength; known is false where there is none.
type lightReach struct {
	standard.OpticalReach
	perKilometre unit.Loss
	known        bool
}

// reach looks a reach up once for a pass.
func (g *light) reach(a standard.OpticalApplication, class standard.Fibre) lightReach {
	ask := lightAsk{a, class}
	r, seen := g.reaches[ask]
	if !seen {
		r.OpticalReach, r.known = standard.OpticalReachOf(a, class)
		r.perKilometre, _, _ = standard.Attenuation(g.pass.Plant.Regime, class, r.Wavelength)
		g.reaches[ask] = r
	}
	return r
}

func newLight(p *lint.Pass) *light {
	g := &light{pass: p, of: make(map[*plant.Cable]standard.Fibre)}
	for _, c := range p.Plant.Cables {
		word, stated := schema.CableFibre.In(c.Record())
		class, err := standard.ParseFibre(word)
		if stated && err == nil && c.Medium() == plant.Fibre {
			g.of[c] = class
		}
	}
	if len(g.of) == 0 {
		return g
	}
	g.order, g.reaches = make(map[*plant.Link]int), make(map[lightAsk]lightReach)
	for i, l := range p.Plant.Links {
		if g.whole(l) {
			g.order[l] = i
		}
	}
	return g
}

// whole says whether a link is in use and each of its cables is of a fibre
// class that is known.
func (g *light) whole(l *plant.Link) bool {
	for _, r := range l.Runs {
		if _, known := g.of[r.Cable]; !known || !r.Live() {
			return false
		}
	}
	return true
}

// each calls do for every fibre link with the channels that belong to it, those
// alike once.
func (g *light) each(do func(l *plant.Link, channels []*plant.Channel)) {
	if len(g.order) == 0 {
		return
	}
	var channels []*plant.Channel
	for _, l := range g.pass.Plant.Links {
		if _, known := g.order[l]; !known {
			continue
		}
		channels = channels[:0]
		dark := false
		for i := range max(1, len(l.Lead().From)) {
			if unplugged(l, i) {
				if dark {
					continue
				}
				dark = true
			}
			if c := g.strand(l, i); c != nil && !alike(channels, c) {
				channels = append(channels, c)
			}
		}
		if len(channels) > 0 {
			do(l, channels)
		}
	}
}

// unplugged says whether nothing is plugged in at either end of a fibre: such
// fibres of one cable need no looking at but once.
func unplugged(l *plant.Link, i int) bool {
	first, last := l.Lead().From, l.Runs[len(l.Runs)-1].To
	near, far := at(first, i), at(last, opposite(i, len(first), len(last)))
	return (near == nil || near.Front == nil) && (far == nil || far.Front == nil)
}

// alike says whether a channel of the same cables is among those found: most
// fibres of a cable lie beside each other from end to end.
func alike(channels []*plant.Channel, c *plant.Channel) bool {
	return slices.ContainsFunc(channels, func(other *plant.Channel) bool { return slices.Equal(other.Parts, c.Parts) })
}

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

// A lightChannel is a channel of fibre, as long as the records know it.
type lightChannel struct {
	*plant.Channel
	// low and high are the lowest and the highest class of fibre in it, all of
	// one core.
	low, high standard.Fibre
	// total is the length of the runs and of the cords that state theirs.
	total unit.Length
}

// channel looks at a channel; ok is false where a run states no length, and
// where fibres of different cores meet, of which category-fibre-mixed speaks.
func (g *light) channel(c *plant.Channel) (view lightChannel, ok bool) {
	view = lightChannel{Channel: c}
	see := func(class standard.Fibre) bool {
		if view.low == 0 {
			view.low, view.high = class, class
		}
		joint, _, _ := standard.Join(view.low, class)
		view.low, view.high = min(view.low, class), max(view.high, class)
		return joint == standard.SameCore
	}
	for _, l := range c.Links {
		for _, r := range l.Runs {
			length, stated := r.Length()
			if !stated || !see(g.of[r.Cable]) {
				return lightChannel{}, false
			}
			view.total = plus(view.total, length)
		}
	}
	for _, cord := range c.Cords {
		length, _ := cord.CordLength()
		view.total = plus(view.total, length)
		if class, known := g.of[cord.Cable]; known && !see(class) {
			return lightChannel{}, false
		}
	}
	return view, true
}
