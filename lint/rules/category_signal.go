package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// CategoryDelay adds up the time that a signal takes through a channel.
var CategoryDelay = &lint.Rule{
	Name: "category-delay", Title: "Checks that no channel delays a signal by more than the limit, connections counted",
	Severity: lint.Observation, Reach: lint.Along, Check: categoryDelay,
}

// delayAt is the frequency at which the limit is stated.
const delayAt = 10 * unit.Megahertz

func categoryDelay(p *lint.Pass) {
	if p.Plant.Regime != standard.TIA {
		return // the figures are those of ANSI/TIA
	}
	k := newCopper(p)
	for _, c := range p.Plant.Channels {
		n := c.Connections()
		if n <= limitConnections {
			continue
		}
		channel, ok := k.channel(c)
		if !ok || channel.tooLong() {
			continue
		}
		delay, src, ok := standard.ChannelDelay(channel.total(), n, delayAt)
		most, _, limited := standard.ChannelDelayLimit(channel.low, delayAt)
		if ok && limited && delay > most+delayGrain {
			p.Report(delayFinding(p, &channel, n, delay, most, src))
		}
	}
}

// limitConnections are the connections of the channel that the limit was made
// of: with these, a channel that keeps its length keeps its delay.
const limitConnections = 4

// delayGrain is the least that counts as over the limit, in ns. The printed
// limit is rounded down from 100 m of cable and four connections, 555.38 ns,
// which a standard channel may well have.
const delayGrain = 0.5

func delayFinding(p *lint.Pass, c *copperChannel, n int, delay, most float64, src standard.Source) lint.Finding {
	per, _, _ := standard.CableDelay(delayAt)
	each, _ := standard.ConnectionDelay()
	shown, limit := floats(delay, most, "ns")
	f := lint.About(c.lead().Entry)
	f.Message = fmt.Sprintf("%s: channel delays %s at %s, limit %s", schema.Printable(c.lead().Label), shown, delayAt, limit)
	f.Working = append(c.terms(p.Units()),
		term("delay of 100 m of cable", fmt.Sprintf("534 + 36/sqrt(10) = %s ns", decimals(per, 2))),
		term("cable", fmt.Sprintf("%s/100 m x %s ns = %s ns", c.total().Text(unit.Metric), decimals(per, 2), decimals(c.total().Metres()/100*per, 2))),
		term("connections", fmt.Sprintf("%d x %s ns = %s ns", n, decimals(each, 1), decimals(float64(n)*each, 1))),
		term("channel delay", shown))
	f.Result, f.Limit, f.Source = shown, limit, src.String()
	f.Next = "take connections out of the channel, or shorten it"
	f.Excess = delay - most
	f.Related = partNotes(c)
	return f
}

// CategoryLoopResistance adds up the resistance of a pair there and back: it
// decides what power over the cable arrives.
var CategoryLoopResistance = &lint.Rule{
	Name: "category-loop-resistance", Title: "Checks that the loop resistance of no channel is over the limit, by the gauge of its conductors",
	Severity: lint.Observation, Reach: lint.Along, Check: categoryLoopResistance,
}

// assumedCord is what a cord that is not recorded is taken to be made of.
const assumedCord = 24

func categoryLoopResistance(p *lint.Pass) {
	k := newCopper(p)
	if !k.anyThin() {
		return
	}
	for _, c := range p.Plant.Channels {
		channel, ok := k.channel(c)
		if !ok || channel.tooLong() {
			continue
		}
		limits, ok := standard.LoopResistanceLimits(channel.low)
		if !ok {
			continue
		}
		loop, known := k.loop(&channel)
		if known && loop > limits.Channel {
			p.Report(loopFinding(p, k, &channel, loop, limits))
		}
	}
}

// anyThin says whether any cable type is so thin that 100 m of it are over the
// limit of 25 ohm: without one, no channel that keeps its length can be.
func (k *copper) anyThin() bool {
	strictest, _ := standard.LoopResistanceLimits(standard.Cat6A)
	for t := range k.of.all() {
		if t.wireKnown && k.loopOf(t.wire.Gauge, 100*unit.Metre) > strictest.Channel {
			return true
		}
	}
	return false
}

// loop is the resistance of the channel's loop in ohm at 20 C; known where
// every run states its conductors.
func (k *copper) loop(c *copperChannel) (ohm float64, known bool) {
	for _, l := range c.Links {
		for _, r := range l.Runs {
			t := k.of.at(r.Cable)
			if !t.wireKnown {
				return 0, false
			}
			length, _ := r.Length()
			ohm += k.loopOf(t.wire.Gauge, length)
		}
	}
	for _, cord := range c.Cords {
		length, _ := cord.CordLength()
		ohm += k.loopOf(k.cordGauge(cord.Cable), length)
	}
	return ohm + k.loopOf(assumedCord, c.assumed), true
}

// loopOf is the resistance of a length of cable, there and back, at 20 C. The
// resistance of a gauge is worked out once: it takes a power and a root.
func (k *copper) loopOf(gauge int, length unit.Length) float64 {
	ohm, seen := k.loops[gauge]
	if !seen {
		ohm, _ = standard.LoopResistance(gauge, 100*unit.Metre, coolest)
		if k.loops == nil {
			k.loops = make(map[int]float64)
		}
		k.loops[gauge] = ohm
	}
	return length.Metres() / 100 * ohm
}

func (k *copper) cordGauge(cable *plant.Cable) int {
	if t, known := k.of.get(cable); known && t.wireKnown {
		return t.wire.Gauge
	}
	return assumedCord
}

func loopFinding(p *lint.Pass, k *copper, c *copperChannel, loop float64, limits standard.LoopLimits) lint.Finding {
	shown, limit := floats(loop, limits.Channel, "ohm")
	f := lint.About(c.lead().Entry)
	f.Message = fmt.Sprintf("%s: loop resistance %s, limit %s", schema.Printable(c.lead().Label), shown, limit)
	add := func(what string, gauge int, length unit.Length, remark string) {
		per := k.loopOf(gauge, 100*unit.Metre)
		f.Working = append(f.Working, term(what, fmt.Sprintf("%s/100 m x %s ohm (%d AWG%s) = %s ohm",
			length.Text(unit.Metric), decimals(per, 2), gauge, remark, decimals(k.loopOf(gauge, length), 2))))
	}
	for _, l := range c.Links {
		for _, r := range l.Runs {
			length, _ := r.Length()
			add("run "+schema.Printable(r.Label), k.of.at(r.Cable).wire.Gauge, length, "")
		}
	}
	for _, cord := range c.Cords {
		length, _ := cord.CordLength()
		remark := ""
		if t, known := k.of.get(cord.Cable); !known || !t.wireKnown {
			remark = ", assumed"
		}
		add("cord "+schema.Printable(cord.Label), k.cordGauge(cord.Cable), length, remark)
	}
	if c.assumed > 0 {
		add("cords not recorded", assumedCord, c.assumed, ", assumed")
	}
	f.Working = append(f.Working, term("channel, at "+coolest.Text(p.Units()), shown))
	f.Result, f.Limit, f.Source = shown, limit, limits.Source.String()
	f.Next = "use cable of thicker conductors, or shorten the channel"
	f.Excess = loop - limits.Channel
	f.Related = partNotes(c)
	return f
}
