package rules

import (
	"fmt"
	"strings"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// CategorySkew adds up by how much the pairs of a channel may differ in delay:
// what leaves at once on four pairs has to arrive nearly at once.
var CategorySkew = &lint.Rule{
	Name: "category-skew", Title: "Checks that the pairs of no channel may differ in delay by more than the limit",
	Severity: lint.Observation, Reach: lint.Along, Check: categorySkew,
}

// skews are the cable types that state a skew, in ns over 100 m.
type skews map[*plant.Cable]int

func categorySkew(p *lint.Pass) {
	of := make(skews)
	for _, c := range p.Plant.Cables {
		if ns, stated := schema.CableSkew.In(c.Record()); stated {
			of[c] = ns
		}
	}
	if len(of) == 0 {
		return // cable that just keeps its standard can not be over the limit in a channel that keeps its length
	}
	k := newCopper(p)
	for _, c := range p.Plant.Channels {
		if !of.any(c) {
			continue
		}
		channel, ok := k.channel(c)
		if !ok || channel.tooLong() {
			continue
		}
		limit, src, limited := standard.ChannelSkewLimit(channel.low)
		sum, known := of.sum(&channel)
		if limited && known && sum.ns > limit {
			p.Report(skewFinding(&channel, sum, limit, src))
		}
	}
}

// any says whether a cable of a channel states its skew.
func (of skews) any(c *plant.Channel) bool {
	for _, l := range c.Links {
		for _, r := range l.Runs {
			if _, stated := of[r.Cable]; stated {
				return true
			}
		}
	}
	for _, cord := range c.Cords {
		if _, stated := of[cord.Cable]; stated {
			return true
		}
	}
	return false
}

// A skewSum is the skew of a channel in ns with its terms.
type skewSum struct {
	ns    float64
	parts []skewPart
	// assumed is set where the standard's maximum stands in for a cable.
	assumed bool
}

// A skewPart is one cable of the sum.
type skewPart struct {
	name    string
	length  unit.Length
	per     float64
	assumed bool
}

func (s skewPart) ns() float64 { return s.length.Metres() / 100 * s.per }

// sum adds the cables up. The most that the standard lets a cable have stands in
// for what a cable does not state; not in classes F and FA, whose cables have
// another that was not found.
func (of skews) sum(c *copperChannel) (sum skewSum, known bool) {
	most, _ := standard.CableSkew()
	add := func(name string, cable *plant.Cable, length unit.Length) {
		own, stated := of[cable]
		part := skewPart{name: name, length: length, per: float64(own)}
		if !stated {
			part.per, part.assumed, sum.assumed = most, true, true
		}
		sum.ns += part.ns()
		sum.parts = append(sum.parts, part)
	}
	for _, l := range c.Links {
		for _, r := range l.Runs {
			length, _ := r.Length()
			add("run "+r.Label, r.Cable, length)
		}
	}
	for _, cord := range c.Cords {
		length, _ := cord.CordLength()
		add("cord "+cord.Label, cord.Cable, length)
	}
	if c.assumed > 0 {
		add("cords not recorded", nil, c.assumed)
	}
	return sum, !sum.assumed || c.low < standard.Cat7
}

func skewFinding(c *copperChannel, sum skewSum, most float64, src standard.Source) lint.Finding {
	shown, limit := floats(sum.ns, most, "ns")
	f := lint.About(c.lead().Entry)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: pairs of the channel may differ by %s, limit %s", schema.Printable(c.lead().Label), shown, limit)
	terms := make([]string, len(sum.parts))
	for i, part := range sum.parts {
		remark := ""
		if part.assumed {
			remark = ", the most that the standard lets a cable have"
		}
		ns := decimals(part.ns(), 3)
		terms[i] = ns
		f.Working = append(f.Working, term(schema.Printable(part.name), fmt.Sprintf("%s/100 m x %s ns%s = %s ns", part.length.Text(unit.Metric), decimals(part.per, 0), remark, ns)))
	}
	f.Working = append(f.Working, term("channel, where the same pair is the slowest in each", strings.Join(terms, " + ")+" = "+shown))
	f.Result, f.Limit, f.Source = shown, limit, src.String()
	if _, from := standard.CableSkew(); src.Sure() && sum.assumed && !from.Sure() {
		f.Source += "; skew of a cable that states none unconfirmed: check the printed standard"
	}
	f.Next = "measure the channel, shorten it, or use cable of less skew"
	f.Excess = sum.ns - most
	f.Related = partNotes(c)
	return f
}
