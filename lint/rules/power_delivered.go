package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// PowerDelivered works out what is left of the power of a source at the device,
// over the resistance of the channel as it is built.
var PowerDelivered = &lint.Rule{
	Name: "power-delivered", Title: "Checks that a powered device gets what it needs over the resistance of its channel",
	Severity: lint.Nonconformity, Check: powerDelivered,
}

func powerDelivered(p *lint.Pass) {
	all := feeds(p)
	if len(all) == 0 {
		return
	}
	check := deliveryCheck{pass: p, copper: newCopper(p), heats: newHeats(), told: make(map[*plant.Cable]bool)}
	for i := range all {
		check.feed(&all[i])
	}
}

type deliveryCheck struct {
	pass   *lint.Pass
	copper *copper
	heats  *heats
	told   map[*plant.Cable]bool
}

// A wirePart is one cable of the loop.
type wirePart struct {
	name    string
	gauge   int
	length  unit.Length
	at      unit.Temperature
	assumed bool // its length, or its gauge
}

func (c *deliveryCheck) feed(x *feed) {
	class, ok := x.ask.wants()
	if !ok || x.supply == 0 {
		return
	}
	granted, less, ok := x.supply.Grants(class.Class)
	if !ok || less || x.ask.hasNeeds && x.ask.needs > granted.DevicePower {
		return // power-type names it
	}
	parts, ok := c.parts(x)
	if !ok {
		return
	}
	d := delivery{feed: x, class: granted, needs: granted.DevicePower, parts: parts}
	if x.ask.hasNeeds {
		d.needs = x.ask.needs
	}
	figures, _ := x.supply.Figures()
	d.volts, d.pairs = figures.Volts, max(granted.Pairs, figures.LeastPairs)
	if short, _ := d.short(parts); !short {
		return
	}
	f := d.finding(c.pass)
	if sure, _ := d.short(certainParts(parts)); !sure {
		f.Severity = lint.Observation
		f.Source += "; resistance of warm or assumed conductors unconfirmed: check the printed standard"
	}
	c.pass.Report(f)
}

// certainParts are the parts at 20 C without what is assumed: what the published
// resistance of copper alone says.
func certainParts(parts []wirePart) []wirePart {
	var sure []wirePart
	for _, part := range parts {
		if !part.assumed {
			part.at = coolest
			sure = append(sure, part)
		}
	}
	return sure
}

// parts lists the cables between a source and its device; ok is false where a
// length or a gauge is missing, which is named once for each cable type.
func (c *deliveryCheck) parts(x *feed) (parts []wirePart, ok bool) {
	if x.cord != nil {
		length, stated := x.cord.CordLength()
		return []wirePart{c.cord(x.cord, length)}, stated
	}
	view, ok := c.copper.channel(x.channel)
	if !ok {
		return nil, false
	}
	for _, l := range x.channel.Links {
		for _, r := range l.Runs {
			t := c.copper.of[r.Cable]
			if !t.wireKnown {
				c.unstated(x, r)
				return nil, false
			}
			part := wirePart{name: "run " + schema.Printable(r.Label), gauge: t.wire.Gauge, at: coolest}
			part.length, _ = r.Length()
			if hot := c.heats.along(r); hot.where != nil && hot.high > coolest {
				part.at = hot.high
			}
			parts = append(parts, part)
		}
	}
	for _, cord := range x.channel.Cords {
		if length, stated := cord.CordLength(); stated {
			parts = append(parts, c.cord(cord, length))
		}
	}
	if view.assumed > 0 {
		parts = append(parts, wirePart{name: "cords not recorded", gauge: assumedCord, length: view.assumed, at: coolest, assumed: true})
	}
	return parts, true
}

func (c *deliveryCheck) cord(cord *plant.Cord, length unit.Length) wirePart {
	part := wirePart{name: "cord " + schema.Printable(cord.Label), gauge: assumedCord, length: length, at: coolest, assumed: true}
	if t := c.copper.of[cord.Cable]; t.wireKnown {
		part.gauge, part.assumed = t.wire.Gauge, false
	}
	return part
}

// unstated names a cable type whose gauge would allow the check, once.
func (c *deliveryCheck) unstated(x *feed, r *plant.Run) {
	if c.told[r.Cable] || lost(r.Cable.Entry, schema.CableConductors.Field) {
		return
	}
	c.told[r.Cable] = true
	f := lint.AboutField(r.Cable.Entry, schema.CableConductors.Field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: conductors not stated, so the power that %s gets over run %s is not judged", schema.Printable(r.Cable.Label),
		schema.Printable(x.device.Label), schema.Printable(r.Label))
	f.Next = fmt.Sprintf("state conductors: %s", schema.CableConductors.Doc)
	f.Source = classSource(x.ask)
	f.Key = []string{schema.CableConductors.Name}
	f.Related = []schema.Note{note(r.Entry, "the first run"), note(x.device.Entry, "is powered over it")}
	c.pass.Report(f)
}

// A delivery is what a device gets.
type delivery struct {
	*feed
	class standard.PowerClass
	needs unit.Power
	volts float64
	pairs int
	parts []wirePart
}

// loop is the resistance of one pair there and back.
func loop(parts []wirePart) float64 {
	ohm := 0.0
	for _, part := range parts {
		r, _ := standard.LoopResistance(part.gauge, part.length, part.at)
		ohm += r
	}
	return ohm
}

// short says whether the device gets too little over some parts. A path within
// the resistance that the standard counts with never is: its printed figures
// are rounded.
func (d *delivery) short(parts []wirePart) (short bool, flow standard.PowerFlow) {
	ohms, ok := standard.PathOhms(loop(parts), d.pairs)
	if !ok {
		return false, flow
	}
	flow, ok = standard.Deliver(d.class.Power, d.volts, ohms)
	if !ok {
		flow.Ohms = ohms
	}
	return ohms > d.class.Ohms && (!ok || flow.DeviceWatts < d.needs.Watts()), flow
}

func (d *delivery) finding(p *lint.Pass) lint.Finding {
	_, flow := d.short(d.parts)
	shown, limit := floats(flow.DeviceWatts, d.needs.Watts(), "W")
	f := lint.About(d.device.Entry)
	f.Message = fmt.Sprintf("%s: %s left at the device, needs %s", schema.Printable(d.device.Label), shown, limit)
	f.Working = append(d.askTerms(), term(schema.Printable(d.source.Label)+" supplies",
		fmt.Sprintf("%s, %s at %s V at the least for class %d", d.supply, d.class.Power, decimals(d.volts, 1), d.class.Class)))
	for _, part := range d.parts {
		f.Working = append(f.Working, part.term(p.Units()))
	}
	f.Working = append(f.Working, d.sum(&flow, loop(d.parts))...)
	f.Result, f.Limit, f.Source = shown, limit, d.class.Source.String()
	f.Next = "use cable of thicker conductors, shorten the channel, or power the device from closer by"
	f.Excess = d.needs.Watts() - flow.DeviceWatts
	f.Key = []string{d.source.Label}
	f.Related = d.notes()
	return f
}

func (w *wirePart) term(in unit.System) lint.Term {
	per, _ := standard.LoopResistance(w.gauge, 100*unit.Metre, w.at)
	ohm, _ := standard.LoopResistance(w.gauge, w.length, w.at)
	remark := ""
	if w.assumed {
		remark = ", assumed"
	}
	return term(w.name, fmt.Sprintf("%s/100 m x %s ohm (%d AWG at %s%s) = %s ohm", w.length.Text(unit.Metric), decimals(per, 3), w.gauge, w.at.Text(in), remark, decimals(ohm, 3)))
}

// sum is the rest of the working: current, loss and what is left.
func (d *delivery) sum(flow *standard.PowerFlow, loop float64) []lint.Term {
	terms := []lint.Term{
		term("loop of one pair", decimals(loop, 3)+" ohm"),
		term("path", fmt.Sprintf("%s ohm/%d pairs = %s ohm", decimals(loop, 3), d.pairs, decimals(flow.Ohms, 3))),
	}
	if flow.Volts == 0 {
		return append(terms, term("left at the device", "nothing: the path takes the whole voltage"))
	}
	return append(terms,
		term("current", fmt.Sprintf("%s W/%s V = %s A", decimals(d.class.Power.Watts(), 2), decimals(d.volts, 1), decimals(flow.Amperes, 4))),
		term("lost", fmt.Sprintf("(%s A)^2 x %s ohm = %s W", decimals(flow.Amperes, 4), decimals(flow.Ohms, 3), decimals(flow.Lost, 3))),
		term("left at the device", fmt.Sprintf("%s W - %s W = %s W", decimals(flow.Watts, 2), decimals(flow.Lost, 3), decimals(flow.DeviceWatts, 3))))
}
