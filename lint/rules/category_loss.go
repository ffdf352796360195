package rules

import (
	"fmt"
	"math"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// CategoryInsertionLoss adds up what a channel loses as it is built, with its
// warm cable and thin cords, and holds it against the limit of its category.
var CategoryInsertionLoss = &lint.Rule{
	Name: "category-insertion-loss", Title: "Checks that no channel loses more than its category allows, with the heat on its way and its cords as they are",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: categoryInsertionLoss,
}

// lossGrain is the least that counts as over the limit, in dB: below it is
// the rounding of the sum itself.
const lossGrain = 1e-6

func categoryInsertionLoss(p *lint.Pass) {
	k := newCopper(p)
	check := lossCheck{pass: p, copper: k, heats: newHeats(), budgets: make(map[standard.Category]lossBudget)}
	for _, c := range p.Plant.Channels {
		if channel, ok := k.channel(c); ok && !channel.tooLong() {
			check.channel(&channel)
		}
	}
}

type lossCheck struct {
	pass    *lint.Pass
	copper  *copper
	heats   *heats
	budgets map[standard.Category]lossBudget
}

// A lossBudget is the limit of a category at its top frequency, and the
// length of cool cable, all connections counted, that is certainly within it.
type lossBudget struct {
	limit float64
	src   standard.Source
	per   float64
	each  float64
	ok    bool
}

func (c *lossCheck) budget(category standard.Category) lossBudget {
	b, seen := c.budgets[category]
	if seen {
		return b
	}
	regime, top := c.pass.Plant.Regime, category.Top()
	var cable, hardware bool
	b.limit, b.src, b.ok = standard.ChannelLossLimit(regime, category, top)
	b.per, _, cable = standard.CableLoss(regime, category, top)
	b.each, _, hardware = standard.ConnectionLoss(regime, category, top)
	b.ok = b.ok && cable && hardware
	c.budgets[category] = b
	return b
}

// mostDerating is more than any cord loses beyond fixed cable.
const mostDerating = 2

// spare says in one multiplication whether a channel is certainly within its
// limit: most are, and their sum need not be written out.
func (c *lossCheck) spare(channel *copperChannel, b *lossBudget, k float64) bool {
	cable := k*channel.links.Metres() + mostDerating*(channel.cords+channel.assumed).Metres()
	return cable/100*b.per+float64(channel.Connections())*b.each <= b.limit
}

func (c *lossCheck) channel(channel *copperChannel) {
	budget := c.budget(channel.low)
	if !budget.ok {
		return
	}
	hot := c.hottest(channel.Channel)
	k := 1.0
	if hot.where != nil {
		k, _ = standard.HeatFactor(c.pass.Plant.Regime, hot.high, standard.Unscreened)
	}
	if c.uniform(channel) && c.spare(channel, &budget, k) {
		return
	}
	parts, ok := c.parts(channel, budget)
	if !ok {
		return
	}
	sum, ok := standard.LossOfChannel(parts)
	if ok && sum.Total > budget.limit+lossGrain {
		c.pass.Report(c.finding(channel, &budget, &sum, hot))
	}
}

// uniform says whether every cable and jack is of the channel's category, and
// solid: only then is one multiplication certain.
func (c *lossCheck) uniform(channel *copperChannel) bool {
	for _, l := range channel.Links {
		for _, r := range l.Runs {
			if t := c.copper.of.at(r.Cable); t.category != channel.low || t.wire.Stranded {
				return false
			}
		}
	}
	for _, cord := range channel.Cords {
		if t, known := c.copper.of.get(cord.Cable); known && t.category.Weaker(channel.low) {
			return false
		}
	}
	return true
}

func (c *lossCheck) hottest(channel *plant.Channel) heat {
	var hot heat
	for _, l := range channel.Links {
		if h := c.heats.of(l); h.where != nil && (hot.where == nil || h.high > hot.high) {
			hot = h
		}
	}
	return hot
}

// parts lists what the channel is made of; ok is false where a conductor has
// no figure, or a part is below the channel's category, of which
// category-weakest speaks.
func (c *lossCheck) parts(channel *copperChannel, budget lossBudget) (parts standard.ChannelParts, ok bool) {
	parts = standard.ChannelParts{Regime: c.pass.Plant.Regime, Frequency: channel.low.Top()}
	for _, l := range channel.Links {
		hot := c.heats.of(l)
		for _, r := range l.Runs {
			part, known := c.cable("run "+schema.Printable(r.Label), c.copper.of.at(r.Cable), channel.low)
			if !known {
				return parts, false
			}
			part.Length, _ = r.Length()
			if hot.where != nil {
				part.Temperature = hot.high
			}
			parts.Cables = append(parts.Cables, part)
		}
	}
	assumed, _, ok := standard.AssumedCordDerating(c.pass.Plant.Regime)
	if !ok {
		return parts, false
	}
	for _, cord := range channel.Cords {
		part := standard.CablePart{Name: "cord " + schema.Printable(cord.Label), Category: channel.low, Derating: assumed}
		if t, known := c.copper.of.get(cord.Cable); known {
			if part, ok = c.cable(part.Name, t, channel.low); !ok {
				return parts, false
			}
			if !t.wireKnown {
				part.Derating = assumed
			}
		}
		part.Length, _ = cord.CordLength()
		parts.Cables = append(parts.Cables, part)
	}
	if channel.assumed > 0 {
		parts.Cables = append(parts.Cables, standard.CablePart{Name: "cords not recorded, assumed", Category: channel.low, Length: channel.assumed, Derating: assumed})
	}
	for range channel.Connections() {
		parts.Connections = append(parts.Connections, channel.low)
	}
	return parts, budget.ok
}

// cable is one length of cable, judged as the channel's category: a better one
// loses no more.
func (c *lossCheck) cable(name string, t twisted, low standard.Category) (standard.CablePart, bool) {
	part := standard.CablePart{Name: name, Category: low, Shield: t.shield}
	if t.category.Weaker(low) {
		return part, false
	}
	if t.wireKnown {
		percent, _, ok := standard.CordDerating(t.category, t.wire)
		if !ok {
			return part, false
		}
		part.Derating = percent
	}
	return part, true
}

func (c *lossCheck) finding(channel *copperChannel, b *lossBudget, sum *standard.ChannelLoss, hot heat) lint.Finding {
	shown, limit := floats(sum.Total, b.limit, "dB")
	run := channel.lead()
	f := lint.About(run.Entry)
	f.Severity = degree(b.src)
	if sum.Confidence != standard.Confirmed {
		f.Severity = lint.Observation
	}
	top := channel.low.Top()
	f.Message = fmt.Sprintf("%s: channel loses %s at %s, limit %s", schema.Printable(run.Label), shown, top, limit)
	f.Working = []lint.Term{term("category", channel.low.String()+", top frequency "+top.String())}
	if hot.where != nil {
		f.Working = append(f.Working, term("hottest space on its way", schema.Printable(hot.where.Label)+", "+hot.high.Text(c.pass.Units())))
	}
	for i := range sum.Terms {
		f.Working = append(f.Working, lossTerm(&sum.Terms[i], c.pass.Units()))
	}
	f.Working = append(f.Working, term("channel", shown))
	f.Result, f.Limit, f.Source = shown, limit, b.src.String()
	if b.src.Sure() && sum.Confidence != standard.Confirmed {
		f.Source += "; figures of the sum unconfirmed: check the printed standard"
	}
	f.Next = "shorten the link or the cords, use cords of thicker conductors, or lead the cable past the hot space"
	f.Excess = sum.Total - b.limit
	f.Related = partNotes(channel)
	if hot.where != nil && hot.high > coolest {
		f.Related = append(f.Related, note(hot.where.Entry, "the hottest space on its way"))
	}
	return f
}

// lossTerm writes one line of the sum with its numbers put in.
func lossTerm(t *standard.LossTerm, in unit.System) lint.Term {
	loss := decimals(math.Round(t.Loss*100)/100, 2) + " dB"
	if t.Count > 0 {
		return term(t.Name, fmt.Sprintf("%d x %s dB = %s", t.Count, decimals(t.PerHundred, 3), loss))
	}
	value := fmt.Sprintf("%s/100 m x %s dB", t.Length.Text(unit.Metric), decimals(t.PerHundred, 2))
	if t.Derating != 1 {
		value += " x " + decimals(t.Derating, 2)
	}
	if t.Heat != 1 {
		value += " x " + decimals(t.Heat, 4)
	}
	if in == unit.US {
		value = t.Length.Text(in) + ": " + value
	}
	return term(t.Name, value+" = "+loss)
}
