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
	Severity: lint.Nonconformity, Reach: lint.Along, Check: powerDelivered,
}

func powerDelivered(p *lint.Pass) {
	all := feeds(p)
	if len(all) == 0 {
		return
	}
	check := deliveryCheck{pass: p, copper: newCopper(p), heats: newHeats(), told: make(map[*plant.Cable]bool), ohms: make(map[wireAt]float64)}
	for i := range all {
		check.feed(&all[i])
	}
}

type deliveryCheck struct {
	pass   *lint.Pass
	copper *copper
	heats  *heats
	told   map[*plant.Cable]bool
	// ohms are the resistances of 100 m of pair, by gauge and temperature.
	ohms map[wireAt]float64
	// parts is kept from one device to the next.
	parts []wirePart
}

// A wireAt is a gauge at a temperature.
type wireAt struct {
	gauge int
	at    unit.Temperature
}

// A wirePart is one cable of the loop.
type wirePart struct {
	wireAt
	run     *plant.Run
	cord    *plant.Cord // neither: cords that are not recorded
	length  unit.Length
	ohms    float64
	assumed bool // its length, or its gauge
}

// name is the part as the working names it.
func (w *wirePart) name() string {
	switch {
	case w.run != nil:
		return "run " + schema.Printable(w.run.Label)
	case w.cord != nil:
		return "cord " + schema.Printable(w.cord.Label)
	}
	return "cords not recorded"
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
	if !c.list(x) {
		return
	}
	d := delivery{feed: x, class: granted, needs: granted.DevicePower, parts: c.parts}
	if x.ask.hasNeeds {
		d.needs = x.ask.needs
	}
	figures, _ := x.supply.Figures()
	d.volts, d.pairs = figures.Volts, max(granted.Pairs, figures.LeastPairs)
	if short, _ := d.short(c.parts); !short {
		return
	}
	f := d.finding(c.pass)
	if sure, _ := d.short(c.certain()); !sure {
		f.Severity = lint.Observation
		f.Source += "; resistance of warm or assumed conductors unconfirmed: check the printed standard"
	}
	c.pass.Report(f)
}

// certain are the parts at 20 C without what is assumed: what the published
// resistance of copper alone says.
func (c *deliveryCheck) certain() []wirePart {
	var sure []wirePart
	for _, part := range c.parts {
		if !part.assumed {
			part.at = coolest
			sure = append(sure, c.measure(part))
		}
	}
	return sure
}

// measure works out the resistance of a part. That of 100 m of a gauge is looked
// up once: it takes a power.
func (c *deliveryCheck) measure(part wirePart) wirePart {
	per, seen := c.ohms[part.wireAt]
	if !seen {
		per, _ = standard.LoopResistance(part.gauge, 100*unit.Metre, part.at)
		c.ohms[part.wireAt] = per
	}
	part.ohms = part.length.Metres() / 100 * per
	return part
}

// list makes the parts those between a source and its device; it returns false
// where a length or a gauge is missing, which is named once for each cable type.
func (c *deliveryCheck) list(x *feed) bool {
	c.parts = c.parts[:0]
	if x.cord != nil {
		return c.cord(x.cord)
	}
	view, ok := c.copper.channel(x.channel)
	if !ok {
		return false
	}
	for _, l := range x.channel.Links {
		for _, r := range l.Runs {
			t := c.copper.of.at(r.Cable)
			if !t.wireKnown {
				c.unstated(x, r)
				return false
			}
			part := wirePart{wireAt: wireAt{t.wire.Gauge, coolest}, run: r}
			part.length, _ = r.Length()
			if hot := c.heats.along(r); hot.where != nil && hot.high > coolest {
				part.at = hot.high
			}
			c.parts = append(c.parts, c.measure(part))
		}
	}
	for _, cord := range x.channel.Cords {
		c.cord(cord)
	}
	if view.assumed > 0 {
		c.parts = append(c.parts, c.measure(wirePart{wireAt: wireAt{assumedCord, coolest}, length: view.assumed, assumed: true}))
	}
	return true
}

// cord adds a cord; it returns false where that states no length.
func (c *deliveryCheck) cord(cord *plant.Cord) bool {
	length, stated := cord.CordLength()
	if !stated {
		return false
	}
	part := wirePart{wireAt: wireAt{assumedCord, coolest}, cord: cord, length: length, assumed: true}
	if t := c.copper.of.at(cord.Cable); t.wireKnown {
		part.gauge, part.assumed = t.wire.Gauge, false
	}
	c.parts = append(c.parts, c.measure(part))
	return true
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
