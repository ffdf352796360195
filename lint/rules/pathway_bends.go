package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// PathwayBends holds the bends of a conduit between two pull points against
// the most that a cable is pulled around.
var PathwayBends = &lint.Rule{
	Name: "pathway-bends", Title: "Checks that a conduit has no more bends between two pull points than cable can be pulled around",
	Severity: lint.Nonconformity, Reach: lint.Within, Check: pathwayBends,
}

func pathwayBends(p *lint.Pass) {
	limits, byStandard := standard.PullLimitsOf(p.Plant.Regime)
	most, codeSource, byCode := standard.CodeBends(p.Plant.Fire)
	if !byStandard && !byCode {
		return
	}
	for _, w := range p.Plant.Pathways {
		if pathwayKind(w) != "conduit" {
			continue
		}
		bends, known := schema.PathwayBends.In(w.Record())
		switch {
		case !known:
			bendsUnstated(p, w)
		case byCode && bends > most:
			p.Report(bentFinding(p, w, bends, most, codeSource))
		case byStandard && bends > limits.Bends:
			p.Report(bentFinding(p, w, bends, limits.Bends, limits.Source))
		}
	}
}

// bendsUnstated asks for the bends of a conduit whose pull points are recorded.
func bendsUnstated(p *lint.Pass, w *plant.Pathway) {
	if w.Own(schema.PathwayPull.Name) == nil || lost(w.Entry, schema.PathwayBends.Field) || w.Own(schema.PathwayBends.Name) != nil {
		return
	}
	unstatedField(p, w.Entry, schema.PathwayBends.Field, "its pull points are recorded, and whether cable can be pulled between them can not be checked", noField)
}

func bentFinding(p *lint.Pass, w *plant.Pathway, bends, most unit.Angle, src standard.Source) lint.Finding {
	shown, limit := bends.Beside(most, p.Units())
	f := lint.AboutField(w.Entry, schema.PathwayBends.Field)
	f.Severity = degree(src)
	f.Message = fmt.Sprintf("%s: bends of %s between two pull points, limit %s", schema.Printable(w.Label), shown, limit)
	f.Working = []lint.Term{
		term("bends between pull points", shown+" (stated)"),
		term("limit", fmt.Sprintf("%s = %d x 90 deg", limit, int(most/(90*unit.Degree)))),
		term("over", (bends - most).String()),
	}
	f.Result, f.Limit, f.Source = shown, limit, src.String()
	f.Next = "put a pull box between the bends, or correct the angle"
	f.Excess = (bends - most).Degrees()
	return f
}

// PathwayPull holds the distance between two pull points of a conduit against
// the most that cable is pulled over.
var PathwayPull = &lint.Rule{
	Name: "pathway-pull", Title: "Checks that the pull points of a conduit are near enough to each other",
	Severity: lint.Nonconformity, Reach: lint.Within, Limit: lint.GreatestLength, Check: pathwayPull,
}

func pathwayPull(p *lint.Pass) {
	limits, ok := standard.PullLimitsOf(p.Plant.Regime)
	if !ok {
		return
	}
	most, own := p.Most(limits.Length)
	standing := lawOf(limits.LengthSource, own)
	for _, w := range p.Plant.Pathways {
		if pathwayKind(w) != "conduit" {
			continue
		}
		pull, known := schema.PathwayPull.In(w.Record())
		length, measured := schema.PathwayLength.In(w.Record())
		switch {
		case known && pull > most:
			p.Report(longPull(p, w, pull, most, standing.between(pull, feetOfPull, own)))
		case !known && measured && length > most && !lost(w.Entry, schema.PathwayPull.Field):
			unstatedField(p, w.Entry, schema.PathwayPull.Field, fmt.Sprintf("it is %s long, and whether a pull point comes every %s can not be checked",
				length.Text(p.Units()), most.Text(p.Units())), standing.source)
		}
	}
}

func longPull(p *lint.Pass, w *plant.Pathway, pull, most unit.Length, law law) lint.Finding {
	shown, limit := pull.Beside(most, p.Units())
	f := lint.AboutField(w.Entry, schema.PathwayPull.Field)
	f.Severity = law.severity
	f.Message = fmt.Sprintf("%s: %s between two pull points, limit %s", schema.Printable(w.Label), shown, limit)
	f.Working = []lint.Term{term("between pull points", shown+" (stated)"), term("over", (pull - most).Text(p.Units()))}
	f.Result, f.Limit, f.Source = shown, limit, law.source
	f.Next = "put a pull box in between, or correct the distance"
	f.Excess = (pull - most).Metres()
	return f
}
