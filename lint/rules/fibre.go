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
