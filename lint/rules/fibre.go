package rules

import (
	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// light looks the fibre cable types up once for a pass, and follows the fibres
// of every link that is in use and of a class that is known.
type light struct {
	*plant.Strands
	pass *lint.Pass
	of   byCable[standard.Fibre]
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
	g := &light{pass: p}
	for _, c := range p.Plant.Cables {
		word, stated := schema.CableFibre.In(c.Record())
		if !stated || c.Medium() != plant.Fibre {
			continue
		}
		if class, err := standard.ParseFibre(word); err == nil {
			g.of.set(p.Plant, c, class)
		}
	}
	if !g.of.some {
		g.Strands = &plant.Strands{}
		return g
	}
	g.reaches = make(map[lightAsk]lightReach)
	g.Strands = p.Plant.Strands(g.whole)
	return g
}

// whole says whether a link is in use and each of its cables is of a fibre
// class that is known.
func (g *light) whole(l *plant.Link) bool {
	for _, r := range l.Runs {
		if _, known := g.of.get(r.Cable); !known || !r.Live() {
			return false
		}
	}
	return true
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
			if !stated || !see(g.of.at(r.Cable)) {
				return lightChannel{}, false
			}
			view.total = view.total.Plus(length)
		}
	}
	for _, cord := range c.Cords {
		length, _ := cord.CordLength()
		view.total = view.total.Plus(length)
		if class, known := g.of.get(cord.Cable); known && !see(class) {
			return lightChannel{}, false
		}
	}
	return view, true
}
