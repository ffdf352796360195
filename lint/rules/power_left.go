package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

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
	for i := range parts {
		ohm += parts[i].ohms
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
	for i := range d.parts {
		f.Working = append(f.Working, d.parts[i].term(p.Units()))
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
	remark := ""
	if w.assumed {
		remark = ", assumed"
	}
	return term(w.name(), fmt.Sprintf("%s/100 m x %s ohm (%d AWG at %s%s) = %s ohm", w.length.Text(unit.Metric), decimals(per, 3), w.gauge, w.at.Text(in), remark, decimals(w.ohms, 3)))
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
