package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// linkSum is what a fibre link loses where each part of it is no better than its
// standard allows: the limit of a test of the link.
func (g *light) linkSum(l *plant.Link, w standard.Wavelength) (standard.FibreLoss, bool) {
	parts, ok := g.linkParts(nil, l)
	if !ok {
		return standard.FibreLoss{}, false
	}
	regime := g.pass.Plant.Regime
	return standard.LossOfFibre(standard.FibreLink{Regime: regime, Wavelength: w, Parts: parts, Joints: jointsOf(regime, l)})
}

// channelSum is the same for a channel with its cords. A cord that states no
// class counts as the lowest of the channel, one without a length as nothing.
func (g *light) channelSum(c *lightChannel, w standard.Wavelength) (standard.FibreLoss, bool) {
	sum := standard.FibreLink{Regime: g.pass.Plant.Regime, Wavelength: w, Joints: jointsOf(g.pass.Plant.Regime, c.Links...)}
	for _, part := range c.Parts {
		if part.Cord != nil {
			sum.Parts = append(sum.Parts, g.cordPart(part.Cord, c.low))
			continue
		}
		var ok bool
		if sum.Parts, ok = g.linkParts(sum.Parts, part.Link); !ok {
			return standard.FibreLoss{}, false
		}
	}
	return standard.LossOfFibre(sum)
}

// cordsSum is what the cords of a channel lose, without their connections, which
// a test of the links between them has measured.
func (g *light) cordsSum(c *lightChannel, w standard.Wavelength) (standard.FibreLoss, bool) {
	sum := standard.FibreLink{Regime: g.pass.Plant.Regime, Wavelength: w}
	for _, cord := range c.Cords {
		sum.Parts = append(sum.Parts, g.cordPart(cord, c.low))
	}
	return standard.LossOfFibre(sum)
}

func (g *light) cordPart(cord *plant.Cord, low standard.Fibre) standard.FibrePart {
	class, known := g.of.get(cord.Cable)
	if !known {
		class = low
	}
	length, _ := cord.CordLength()
	return standard.FibrePart{Name: "cord " + schema.Printable(cord.Label), Fibre: class, Length: length}
}

func (g *light) linkParts(parts []standard.FibrePart, l *plant.Link) (all []standard.FibrePart, ok bool) {
	for _, r := range l.Runs {
		length, stated := r.Length()
		if !stated {
			return nil, false
		}
		parts = append(parts, standard.FibrePart{Name: "run " + schema.Printable(r.Label), Fibre: g.of.at(r.Cable), Length: length})
	}
	return parts, true
}

// A jointCount is what joins the fibre of some links.
type jointCount struct {
	connections, splices int
	// known are splices whose loss was measured.
	known []standard.FibreJoints
}

// jointsOf counts the connections and splices of links. A splice whose loss was
// measured counts with that.
func jointsOf(regime standard.Regime, links ...*plant.Link) []standard.FibreJoints {
	var n jointCount
	for _, l := range links {
		for _, end := range [...]*plant.Port{l.From, l.To} {
			n.end(end)
		}
		for _, joint := range l.Joints {
			n.joint(joint)
		}
	}
	return append(n.known, standard.Connections(regime, n.connections), standard.Splices(regime, n.splices))
}

func (n *jointCount) end(end *plant.Port) {
	switch {
	case end == nil || end.Holder.IsEquipment():
	case end.Holder.Kind.Name == schema.KindClosure:
		n.splices++
	default:
		n.connections++
	}
}

func (n *jointCount) joint(joint *plant.Port) {
	if joint.Holder.Kind.Name != schema.KindClosure {
		n.connections++
		return
	}
	loss, known := schema.ClosureLoss.In(joint.Holder.Record())
	if !known || loss < 0 {
		n.splices++
		return
	}
	n.known = append(n.known, standard.FibreJoints{
		Name: "splice in " + schema.Printable(joint.Holder.Label) + ", measured", Count: 1, Each: loss,
		Source: standard.Source{Body: "the record", Clause: "measured loss", Confidence: standard.Confirmed},
	})
}

// fibreTerms writes a sum with its numbers put in.
func fibreTerms(sum *standard.FibreLoss, p *lint.Pass) []lint.Term {
	terms := make([]lint.Term, 0, len(sum.Terms)+1)
	for i := range sum.Terms {
		t := &sum.Terms[i]
		loss := decimals(t.Loss, 4) + " dB"
		if t.Count > 0 {
			terms = append(terms, term(t.Name, fmt.Sprintf("%d x %s = %s", t.Count, t.Each, loss)))
			continue
		}
		value := fmt.Sprintf("%s/1 km x %s = %s (%s)", t.Length.Text(unit.Metric), t.PerKilometre, loss, t.Fibre)
		if p.Units() == unit.US {
			value = t.Length.Text(unit.US) + ": " + value
		}
		terms = append(terms, term(t.Name, value))
	}
	return append(terms, term("sum", decimals(sum.Total, 4)+" dB"))
}
