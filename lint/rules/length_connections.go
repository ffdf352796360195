package rules

import (
	"fmt"
	"slices"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// LengthConnections counts the connections between the two pieces of equipment
// of a channel. The lengths of a channel were worked out for so many.
var LengthConnections = &lint.Rule{
	Name: "length-connections", Title: "Checks that no channel of twisted pair has more connections than its category allows",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: lengthConnections,
}

func lengthConnections(p *lint.Pass) {
	k := newCopper(p)
	for _, c := range p.Plant.Channels {
		n := c.Connections()
		if n <= fewConnections {
			continue
		}
		category, ok := k.category(c)
		limits, limited := k.limitsOf(category)
		if ok && limited && n > limits.Connections {
			p.Report(connectionsFinding(c, category, n, limits))
		}
	}
}

// fewConnections are allowed in every category.
const fewConnections = 2

// category is the lowest category of a channel's runs; ok is false where a link
// of it is withdrawn or of no category that is known.
func (k *copper) category(c *plant.Channel) (low standard.Category, ok bool) {
	for i, l := range c.Links {
		link, known := k.link(l)
		if !known {
			return 0, false
		}
		if i == 0 || link.low.Weaker(low) {
			low = link.low
		}
	}
	return low, len(c.Links) > 0
}

func connectionsFinding(c *plant.Channel, category standard.Category, n int, limits standard.LengthLimits) lint.Finding {
	lead := c.Links[0].Lead()
	f := lint.About(lead.Entry)
	f.Severity = degree(limits.Source)
	shown, limit := counted(n, "connection", "connections"), counted(limits.Connections, "connection", "connections")
	f.Message = fmt.Sprintf("%s: channel has %s, category %s allows %d", schema.Printable(lead.Label), shown, category, limits.Connections)
	for _, l := range c.Links {
		value := ""
		for _, port := range slices.Concat([]*plant.Port{l.From}, l.Joints, []*plant.Port{l.To}) {
			if port == nil || port.Holder.IsEquipment() {
				continue
			}
			if value != "" {
				value += ", "
			}
			value += schema.Printable(port.String())
		}
		f.Working = append(f.Working, term("link "+schema.Printable(l.Lead().Label), fmt.Sprintf("%s: %d", value, l.Connections())))
		if l.Lead() != lead {
			f.Related = append(f.Related, note(l.Lead().Entry, "is part of the channel"))
		}
	}
	f.Working = append(f.Working, term("channel", shown))
	f.Result, f.Limit, f.Source = shown, limit, limits.Source.String()
	f.Next = "take a cross-connect or a consolidation point out of the channel"
	f.Excess = float64(n - limits.Connections)
	for _, cord := range c.Cords {
		f.Related = append(f.Related, note(cord.Entry, "is part of the channel"))
	}
	return f
}
