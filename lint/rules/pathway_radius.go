package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// PathwayBendRadius holds the tightest bend of a pathway against the cable in
// it that bears least bending.
var PathwayBendRadius = &lint.Rule{
	Name: "pathway-bend-radius", Title: "Checks that a pathway bends no tighter than the cables in it may",
	Severity: lint.Nonconformity, Reach: lint.Within, Check: pathwayBendRadius,
}

func pathwayBendRadius(p *lint.Pass) {
	var needs byCable[bendNeed]
	for _, w := range p.Plant.Pathways {
		radius, known := schema.PathwayRadius.In(w.Record())
		if !known {
			continue
		}
		if !needs.some {
			for _, c := range p.Plant.Cables {
				needs.set(p.Plant, c, bendNeedOf(p, c))
			}
		}
		stiffest, run := stiffestIn(w, &needs)
		if run != nil && radius < stiffest.least {
			p.Report(tightFinding(p, w, radius, stiffest, run))
		} else {
			ownBend(p, w, radius)
		}
	}
}

// A bendNeed is the least radius that a cable type may be bent to at rest.
type bendNeed struct {
	least  unit.Length
	how    string
	source string
	// sure is set where a verdict may rest on it.
	sure bool
}

// bendNeedOf is what the cable type states, otherwise what the standard makes
// of its diameter; zero where neither is known.
func bendNeedOf(p *lint.Pass, c *plant.Cable) bendNeed {
	if least, stated := schema.CableBend.In(c.Record()); stated {
		return bendNeed{least: least, how: "stated", source: "the data sheet of the cable, as stated", sure: true}
	}
	diameter, known := schema.CableDiameter.In(c.Record())
	if !known || lost(c.Entry, schema.CableBend.Field) {
		return bendNeed{}
	}
	rule, ok := standard.BendRuleOf(p.Plant.Regime, bendingKind(c), standard.AtRest)
	if !ok {
		return bendNeed{}
	}
	least, ok := rule.Least(diameter)
	if !ok {
		return bendNeed{}
	}
	return bendNeed{least: least, how: fmt.Sprintf("%d x %s", rule.Times, diameter.Text(p.Units())), source: rule.Source.String(), sure: rule.Source.Sure()}
}

// bendingKind is the kind of a cable type as far as bending goes; zero for
// coaxial cable, for which no rule was found, and for what does not say.
func bendingKind(c *plant.Cable) standard.Medium {
	switch c.Medium() {
	case plant.TwistedPair:
		pairs, known := schema.CablePairs.Or(c.Record(), 4)
		switch {
		case known && pairs > 4:
			return standard.Multipair
		case known:
			return standard.FourPair
		}
	case plant.Fibre:
		return standard.FibreCable
	case plant.Coax, plant.Unstated:
	}
	return 0
}

// stiffestIn is the run in a pathway whose cable needs the widest bend.
func stiffestIn(w *plant.Pathway, needs *byCable[bendNeed]) (stiffest bendNeed, run *plant.Run) {
	for _, l := range w.Loads {
		if l.Cable == nil || !l.First.Live() {
			continue
		}
		if need := needs.at(l.Cable); need.least > stiffest.least {
			stiffest, run = need, l.First
		}
	}
	return stiffest, run
}

func tightFinding(p *lint.Pass, w *plant.Pathway, radius unit.Length, need bendNeed, r *plant.Run) lint.Finding {
	shown, limit := radius.Beside(need.least, p.Units())
	f := lint.AboutField(w.Entry, schema.PathwayRadius.Field)
	if !need.sure {
		f.Severity = lint.Observation
	}
	f.Message = fmt.Sprintf("%s: bends to a radius of %s, cable %s of run %s needs %s", schema.Printable(w.Label), shown,
		schema.Printable(r.Cable.Label), schema.Printable(r.Label), limit)
	f.Working = []lint.Term{
		term("tightest bend", shown+" (stated)"),
		term("cable", fmt.Sprintf("%s, least radius at rest %s (%s)", schema.Printable(r.Cable.Label), limit, need.how)),
		term("short by", (need.least - radius).Text(p.Units())),
	}
	f.Result, f.Limit, f.Source = shown, limit, need.source
	f.Next = "widen the bend, or lay this cable another way"
	f.Key = []string{r.Cable.Label}
	f.Excess = (need.least - radius).Millimetres()
	f.Related = []schema.Note{beside(r.Cable.Entry, schema.CableBend.Field, "the cable that bears least bending")}
	return f
}

// ownBend holds the bend of a conduit against its own diameter.
func ownBend(p *lint.Pass, w *plant.Pathway, radius unit.Length) {
	bore, known := schema.PathwayDiameter.In(w.Record())
	if !known || pathwayKind(w) != "conduit" {
		return
	}
	least, src, ok := standard.ConduitRadius(p.Plant.Regime, bore)
	if !ok || radius >= least {
		return
	}
	shown, limit := radius.Beside(least, p.Units())
	f := lint.AboutField(w.Entry, schema.PathwayRadius.Field)
	f.Severity = degree(src)
	f.Message = fmt.Sprintf("%s: bends to a radius of %s, a conduit of %s wants %s", schema.Printable(w.Label), shown, bore.Text(p.Units()), limit)
	f.Working = []lint.Term{
		term("tightest bend", shown+" (stated)"),
		term("limit", fmt.Sprintf("%d x %s = %s", int(least/bore), bore.Text(p.Units()), limit)),
	}
	f.Result, f.Limit, f.Source = shown, limit, src.String()
	f.Next = "make the bend wider, or correct the radius"
	f.Key = []string{"conduit"}
	f.Excess = (least - radius).Millimetres()
	p.Report(f)
}
