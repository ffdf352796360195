package ability

import (
	"fmt"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// twistedPair fills in what can be said about a channel of twisted pair.
func (c *Channel) twistedPair() {
	k, gap := copperOf(c.Plant, c.Channel)
	if gap.What != "" {
		c.Gaps = append(c.Gaps, gap)
		return
	}
	c.Assumed = k.assumed
	for _, a := range standard.Applications() {
		c.Answers = append(c.Answers, k.judge(a))
	}
	if !k.known {
		return
	}
	for _, l := range k.Links {
		c.linkMargin(k, l)
	}
	c.lengthMargin("channel", k.total(), k.limits.Channel, k.limits.Source)
	c.lossMargin(k)
	c.delayMargin(k)
	c.loopMargin(k)
	c.powerMargin(k)
	c.heatGap(k)
}

func (c *Channel) lengthMargin(what string, length, limit unit.Length, src standard.Source) {
	shown, bound := length.Beside(limit, c.Plant.Units)
	c.Margins = append(c.Margins, Margin{What: what, Value: shown, Limit: bound, Left: (limit - length).Text(c.Plant.Units), Over: length > limit, Source: src.String()})
}

// linkMargin holds a permanent link against its limit, and against that of the
// hottest space on its way.
func (c *Channel) linkMargin(k *copper, l *plant.Link) {
	length, _ := l.Length()
	name := "permanent link " + schema.Printable(l.Lead().Label)
	c.lengthMargin(name, length, k.limits.PermanentLink, k.limits.Source)
	if k.hot == nil || k.high <= 20*unit.DegreeCelsius {
		return
	}
	if hot, ok := standard.HotLengthOf(k.plant.Regime, k.cables, min(k.high, 60*unit.DegreeCelsius), k.shield); ok {
		c.lengthMargin(fmt.Sprintf("%s at %s", name, k.high.Text(c.Plant.Units)), length, hot.Most, hot.Source)
	}
}

func (c *Channel) lossMargin(k *copper) {
	loss, ok := k.loss(k.cables)
	if !ok {
		c.Gaps = append(c.Gaps, Gap{k.lead(), "no figure for the insertion loss of its parts, category " + k.cables.String()})
		return
	}
	shown, limit := decibels(loss.total, loss.limit)
	c.Margins = append(c.Margins, Margin{
		What: "insertion loss at " + k.cables.Top().String(), Value: shown, Limit: limit, Left: fmt.Sprintf("%.2f dB", loss.limit-loss.total),
		Over: loss.total > loss.limit+lossGrain, Source: loss.source(), Working: loss.terms(k),
	})
}

func (c *Channel) delayMargin(k *copper) {
	const at = 10 * unit.Megahertz
	delay, src, ok := standard.ChannelDelay(k.total(), k.Connections(), at)
	most, _, limited := standard.ChannelDelayLimit(k.cables, at)
	if !ok || !limited || k.plant.Regime != standard.TIA {
		return
	}
	per, _, _ := standard.CableDelay(at)
	each, _ := standard.ConnectionDelay()
	shown, limit := figures(delay, most, "ns")
	c.Margins = append(c.Margins, Margin{
		What: "delay at " + at.String(), Value: shown, Limit: limit, Left: fmt.Sprintf("%.2f ns", most-delay),
		// The limit is rounded down from that of a full channel, 555.38 ns.
		Over: delay > most+0.5, Source: src.String(),
		Working: []Term{
			{"cable", fmt.Sprintf("%s/100 m x %.2f ns = %.2f ns", k.total().Text(unit.Metric), per, k.total().Metres()/100*per)},
			{"connections", fmt.Sprintf("%d x %.1f ns = %.1f ns", k.Connections(), each, float64(k.Connections())*each)},
		},
	})
}

// cordGauge stands in for the conductors of a cord that does not state them.
const cordGauge = 24

// loopMargin adds up the resistance of a pair there and back, at 20 C.
func (c *Channel) loopMargin(k *copper) {
	limits, limited := standard.LoopResistanceLimits(k.cables)
	total := 0.0
	var terms []Term
	add := func(what string, gauge int, length unit.Length, remark string) {
		ohm, _ := standard.LoopResistance(gauge, length, 20*unit.DegreeCelsius)
		per, _ := standard.LoopResistance(gauge, 100*unit.Metre, 20*unit.DegreeCelsius)
		total += ohm
		terms = append(terms, Term{what, fmt.Sprintf("%s/100 m x %.2f ohm (%d AWG%s) = %.2f ohm", length.Text(unit.Metric), per, gauge, remark, ohm)})
	}
	for _, l := range k.Links {
		for _, r := range l.Runs {
			wire, stated := schema.CableConductors.In(r.Cable.Record())
			if !stated {
				c.Gaps = append(c.Gaps, Gap{schema.Printable(r.Cable.Label), "states no conductors, which the loop resistance needs"})
				return
			}
			length, _ := r.Length()
			add("run "+schema.Printable(r.Label), wire.Gauge, length, "")
		}
	}
	for _, cord := range k.Cords {
		length, _ := cord.CordLength()
		gauge, remark := cordGauge, ", assumed"
		if cord.Cable != nil {
			if wire, stated := schema.CableConductors.In(cord.Cable.Record()); stated {
				gauge, remark = wire.Gauge, ""
			}
		}
		add("cord "+schema.Printable(cord.Label), gauge, length, remark)
	}
	if k.assumed > 0 {
		add("cords not recorded", cordGauge, k.assumed, ", assumed")
	}
	if !limited {
		return
	}
	shown, limit := figures(total, limits.Channel, "ohm")
	c.Margins = append(c.Margins, Margin{
		What: "loop resistance at 20 C", Value: shown, Limit: limit, Left: fmt.Sprintf("%.2f ohm", limits.Channel-total),
		Over: total > limits.Channel, Source: limits.Source.String(), Working: terms,
	})
}

// heatGap says that nobody states how warm it is on the way.
func (c *Channel) heatGap(k *copper) {
	if k.hot != nil {
		return
	}
	for _, l := range k.Links {
		if spaces := l.Lead().Spaces(); len(spaces) > 0 {
			c.Gaps = append(c.Gaps, Gap{schema.Printable(spaces[0].Label), "no space on its way states a temperature, counted as 20 C"})
			return
		}
	}
}
