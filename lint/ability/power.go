package ability

import (
	"fmt"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// A feed is a device that asks for power over a channel, and what supplies it.
type feed struct {
	source, device *plant.Holder
	class          standard.PowerClass
	// needs is what the device takes at its port: what it states, or else what
	// its class lets it take.
	needs  unit.Power
	supply standard.PowerType
}

// feedOf finds who powers whom over a channel; ok is false where neither end
// supplies power, or the other asks for none.
func feedOf(c *plant.Channel) (f feed, ok bool) {
	if c.Start == nil || c.End == nil {
		return f, false
	}
	for _, ends := range [...][2]*plant.Port{{c.Start, c.End}, {c.End, c.Start}} {
		f.source, f.device = ends[0].Holder, ends[1].Holder
		if f.source == f.device || !f.source.IsEquipment() || !f.device.IsEquipment() {
			return f, false
		}
		word, _ := schema.EquipmentSupplies.In(f.source.Record())
		f.supply, _ = standard.ParsePowerType(word)
		if f.supply != 0 && f.ask() {
			return f, true
		}
	}
	return f, false
}

// ask reads what the device asks for; false where it says nothing, or more than
// any class grants.
func (f *feed) ask() (ok bool) {
	needs, hasNeeds := schema.EquipmentNeeds.In(f.device.Record())
	class, hasClass := schema.EquipmentClass.In(f.device.Record())
	if hasClass {
		f.class, ok = standard.PowerClassOf(class)
	} else if hasNeeds {
		f.class, ok = standard.ClassFor(needs)
	}
	f.needs = f.class.DevicePower
	if hasNeeds {
		f.needs = needs
	}
	return ok
}

// powerMargin is what is left of the power of the source at the device, over the
// resistance of the channel as it is built and as warm as it gets.
func (c *Channel) powerMargin(k *copper) {
	f, ok := feedOf(c.Channel)
	if !ok {
		return
	}
	granted, _, ok := f.supply.Grants(f.class.Class)
	figures, known := f.supply.Figures()
	wire, gap := k.wire()
	if gap.What != "" || !ok || !known {
		if gap.What != "" {
			c.Gaps = append(c.Gaps, Gap{gap.Record, gap.What + ", which the power at " + schema.Printable(f.device.Label) + " needs"})
		}
		return
	}
	pairs := max(granted.Pairs, figures.LeastPairs)
	ohms, ok := standard.PathOhms(wire.ohms, pairs)
	flow, delivered := standard.Deliver(granted.Power, figures.Volts, ohms)
	if !ok {
		return
	}
	m := f.margin(granted, flow, ohms)
	m.Over = ohms > granted.Ohms && (!delivered || flow.DeviceWatts < f.needs.Watts()) || f.needs > granted.DevicePower
	m.Working = append(f.terms(granted, figures.Volts), wire.terms...)
	m.Working = append(m.Working, pathTerms(granted, flow, wire.ohms, ohms, pairs)...)
	if !wire.sure {
		m.Source += "; resistance of warm or assumed conductors unconfirmed: check the printed standard"
	}
	c.Margins = append(c.Margins, m)
}

// margin is the power at the device beside what it needs. A path within the
// resistance that the standard counts with leaves what the class grants, though
// the printed figures are rounded.
func (f *feed) margin(granted standard.PowerClass, flow standard.PowerFlow, ohms float64) Margin {
	watts := flow.DeviceWatts
	if ohms <= granted.Ohms {
		watts = max(watts, granted.DevicePower.Watts())
	}
	shown, limit := figures(watts, f.needs.Watts(), "W")
	return Margin{
		What: fmt.Sprintf("power at %s, class %d", schema.Printable(f.device.Label), granted.Class), Value: shown, Limit: limit, Least: true,
		Left: fmt.Sprintf("%.2f W", watts-f.needs.Watts()), Source: granted.Source.String(),
	}
}

func (f *feed) terms(granted standard.PowerClass, volts float64) []Term {
	return []Term{{
		schema.Printable(f.source.Label) + " supplies",
		fmt.Sprintf("%s, for class %d %s at %.1f V at the least", f.supply, granted.Class, granted.Power, volts),
	}}
}

// pathTerms are the path of the power, the current in it and what it costs.
func pathTerms(granted standard.PowerClass, flow standard.PowerFlow, loop, ohms float64, pairs int) []Term {
	terms := []Term{{"path", fmt.Sprintf("%.3f ohm/%d pairs = %.3f ohm", loop, pairs, ohms)}}
	if flow.Volts == 0 {
		return append(terms, Term{"left", "nothing: the path takes the whole voltage"})
	}
	return append(terms,
		Term{"current", fmt.Sprintf("%.2f W/%.1f V = %.4f A", granted.Power.Watts(), flow.Volts, flow.Amperes)},
		Term{"lost", fmt.Sprintf("(%.4f A)^2 x %.3f ohm = %.3f W", flow.Amperes, ohms, flow.Lost)},
		Term{"left", fmt.Sprintf("%.2f W - %.3f W = %.3f W", granted.Power.Watts(), flow.Lost, flow.DeviceWatts)})
}

// A wire is one pair of a channel there and back.
type wire struct {
	ohms  float64
	terms []Term
	// sure is unset where a part is warmer than 20 C or its gauge or length
	// is assumed.
	sure bool
}

// wire adds up the resistance of the channel, each run at the temperature of
// the hottest space on its way.
func (k *copper) wire() (w wire, gap Gap) {
	const cool = 20 * unit.DegreeCelsius
	w.sure = k.assumed == 0
	add := func(what string, gauge int, length unit.Length, at unit.Temperature) {
		ohm, _ := standard.LoopResistance(gauge, length, at)
		per, _ := standard.LoopResistance(gauge, 100*unit.Metre, at)
		w.ohms, w.sure = w.ohms+ohm, w.sure && at == cool
		w.terms = append(w.terms, Term{what, fmt.Sprintf("%s/100 m x %.3f ohm (%d AWG at %s) = %.3f ohm", length.Text(unit.Metric), per, gauge, at.Text(k.plant.Units), ohm)})
	}
	for _, l := range k.Links {
		for _, r := range l.Runs {
			conductors, stated := schema.CableConductors.In(r.Cable.Record())
			if !stated {
				return w, Gap{schema.Printable(r.Cable.Label), "states no conductors"}
			}
			length, _ := r.Length()
			one := copper{}
			one.warm(r)
			add("run "+schema.Printable(r.Label), conductors.Gauge, length, max(cool, one.high))
		}
	}
	for _, cord := range k.Cords {
		length, _ := cord.CordLength()
		gauge := cordGauge
		conductors, stated := unit.Conductor{}, false
		if cord.Cable != nil {
			conductors, stated = schema.CableConductors.In(cord.Cable.Record())
		}
		if stated {
			gauge = conductors.Gauge
		}
		w.sure = w.sure && stated
		add("cord "+schema.Printable(cord.Label), gauge, length, cool)
	}
	if k.assumed > 0 {
		add("cords not recorded", cordGauge, k.assumed, cool)
	}
	return w, Gap{}
}
