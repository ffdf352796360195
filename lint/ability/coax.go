package ability

import (
	"fmt"
	"slices"

	"homerun/schema"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// coax fills in what can be said about a channel of coaxial cable: no standard
// says which applications it carries, only how much it loses.
func (c *Channel) coax() {
	if !c.Known {
		return
	}
	for _, at := range coaxFrequencies(c) {
		c.coaxMargin(at)
	}
}

// coaxFrequencies are the highest frequency that the equipment at its ends
// states, or else the ends of the table of losses.
func coaxFrequencies(c *Channel) []unit.Frequency {
	var all []unit.Frequency
	for _, s := range c.Stations {
		if s.Port == nil || !s.Port.Holder.IsEquipment() {
			continue
		}
		if top, stated := schema.EquipmentTop.In(s.Port.Holder.Record()); stated && !slices.Contains(all, top) {
			all = append(all, top)
		}
	}
	if len(all) == 0 {
		all = []unit.Frequency{55 * unit.Megahertz, 1000 * unit.Megahertz}
	}
	return all
}

func (c *Channel) coaxMargin(at unit.Frequency) {
	total, source := 0.0, ""
	var terms []Term
	add := func(name string, word string, length unit.Length, stated bool) bool {
		series, err := standard.ParseSeries(word)
		loss, src, ok := standard.CoaxLossOver(series, length, at)
		per, _, _ := standard.CoaxLoss(series, at)
		if err != nil || !ok || !stated {
			return false
		}
		total, source = total+loss, src.String()
		terms = append(terms, Term{name, fmt.Sprintf("%s/100 ft x %.2f dB (series %s) = %.2f dB", length.Text(unit.US), per, series, loss)})
		return true
	}
	for _, s := range c.Stations {
		ok := true
		switch {
		case s.Run != nil:
			word, _ := schema.CableSeries.In(s.Run.Cable.Record())
			length, stated := s.Run.Length()
			ok = add("run "+schema.Printable(s.Run.Label), word, length, stated)
		case s.Cord != nil && s.Cord.Cable != nil:
			word, _ := schema.CableSeries.In(s.Cord.Cable.Record())
			length, stated := s.Cord.CordLength()
			ok = add("cord "+schema.Printable(s.Cord.Label), word, length, stated)
		}
		if !ok {
			c.Gaps = append(c.Gaps, Gap{"loss at " + at.String(), "a cable without series or length, or a frequency outside the table"})
			return
		}
	}
	c.Margins = append(c.Margins, Margin{What: "loss at " + at.String(), Value: fmt.Sprintf("%.1f dB", total), Limit: "by the level at its ends", Source: source, Working: terms})
}
