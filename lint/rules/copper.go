package rules

import (
	"strings"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// twisted is what the record of a twisted-pair cable type says, as the
// published figures want it.
type twisted struct {
	category standard.Category
	// shield is unscreened, the stricter case, where screenKnown is not set.
	shield      standard.Shield
	screenKnown bool
	wire        unit.Conductor
	wireKnown   bool
}

// copper looks the cable types up once for a pass: most runs share a few.
type copper struct {
	pass *lint.Pass
	of   byCable[twisted]
	// loops are the loop resistances of 100 m by gauge, once they were needed.
	loops map[int]float64
}

func newCopper(p *lint.Pass) *copper {
	k := &copper{pass: p}
	for _, c := range p.Plant.Cables {
		word, stated := c.Category()
		if !stated {
			continue
		}
		category, err := standard.ParseCategory(word)
		if err != nil {
			continue
		}
		t := twisted{category: category}
		t.wire, t.wireKnown = schema.CableConductors.In(c.Record())
		if code, known := c.Screen(); known {
			t.shield, t.screenKnown = standard.ShieldOf(code)
		}
		k.of.set(p.Plant, c, t)
	}
	return k
}

// A copperLink is a permanent link of twisted pair in use.
type copperLink struct {
	*plant.Link
	// low and high are the lowest and the highest category of its cables.
	low, high standard.Category
	shield    standard.Shield
}

// link looks at a permanent link; ok is false where it is withdrawn, not
// twisted pair, or of a category that is not stated.
func (k *copper) link(l *plant.Link) (view copperLink, ok bool) {
	view = copperLink{Link: l, shield: standard.Screened}
	for i, r := range l.Runs {
		t, known := k.of.get(r.Cable)
		if !known || !r.Live() {
			return copperLink{}, false
		}
		if i == 0 || t.category.Weaker(view.low) {
			view.low = t.category
		}
		if i == 0 || view.high.Weaker(t.category) {
			view.high = t.category
		}
		if t.shield == standard.Unscreened {
			view.shield = standard.Unscreened
		}
	}
	return view, true
}

// A copperChannel is a channel of twisted pair whose links state their length.
type copperChannel struct {
	*plant.Channel
	low    standard.Category
	shield standard.Shield
	limits standard.LengthLimits
	// links and cords are the sums of what is recorded, assumed is the rest
	// of the allowance where a cord is not recorded or states no length.
	links, cords, assumed unit.Length
}

// channel looks at a channel; ok is false where a link of it can not be
// judged or the plant's family of standards has no lengths for it.
func (k *copper) channel(c *plant.Channel) (view copperChannel, ok bool) {
	view = copperChannel{Channel: c, shield: standard.Screened}
	for i, l := range c.Links {
		link, known := k.link(l)
		length, stated := l.Length()
		if !known || !stated {
			return copperChannel{}, false
		}
		if i == 0 || link.low.Weaker(view.low) {
			view.low = link.low
		}
		if link.shield == standard.Unscreened {
			view.shield = standard.Unscreened
		}
		view.links = view.links.Plus(length)
	}
	view.limits, ok = standard.Lengths(k.pass.Plant.Regime, view.low)
	if !ok {
		return copperChannel{}, false
	}
	view.cords, view.assumed = c.Corded(view.limits.Cords)
	return view, true
}

// total is the length of the channel with what is assumed.
func (c *copperChannel) total() unit.Length { return c.links.Plus(c.cords).Plus(c.assumed) }

// tooLong says whether the length rules name the channel already: what is
// computed from its length then has that cause and no other.
func (c *copperChannel) tooLong() bool {
	if c.total() > c.limits.Channel {
		return true
	}
	for _, l := range c.Links {
		if length, _ := l.Length(); length > c.limits.PermanentLink {
			return true
		}
	}
	return false
}

// lead is the run by which the channel is known.
func (c *copperChannel) lead() *plant.Run { return c.Links[0].Lead() }

// terms are the lengths that make up the channel, and their sum.
func (c *copperChannel) terms(in unit.System) []lint.Term {
	terms := make([]lint.Term, 0, len(c.Parts)+3)
	sum := make([]string, 0, len(c.Parts)+1)
	add := func(what string, length unit.Length, remark string) {
		sum = append(sum, length.Text(in))
		terms = append(terms, term(what, length.Text(in)+remark))
	}
	for _, part := range c.Parts {
		if part.Link != nil {
			length, _ := part.Link.Length()
			add("link "+schema.Printable(part.Link.Lead().Label), length, "")
			continue
		}
		if length, stated := part.Cord.CordLength(); stated {
			add("cord "+schema.Printable(part.Cord.Label), length, "")
		}
	}
	if c.assumed > 0 {
		remark := " assumed, of " + c.limits.Cords.Text(in) + " in all"
		add("cords not recorded", c.assumed, remark)
	}
	return append(terms, term("channel", strings.Join(sum, " + ")+" = "+c.total().Text(in)))
}

// degree is how a finding counts that rests on a source: what is not confirmed
// is no more than an observation. Zero leaves the rule's own severity.
func degree(src standard.Source) lint.Severity {
	if src.Sure() {
		return 0
	}
	return lint.Observation
}
