package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// LengthConsolidationPoint holds the distance from the room to a consolidation
// point against the smallest one.
var LengthConsolidationPoint = &lint.Rule{
	Name: "length-consolidation-point", Title: "Checks that a consolidation point is far enough from the room",
	Severity: lint.Nonconformity, Reach: lint.Along, Limit: lint.SmallestLength, Check: consolidationPoint,
}

func consolidationPoint(p *lint.Pass) {
	if p.Plant.Regime == 0 {
		return
	}
	k := newCopper(p)
	minimum, src := standard.ConsolidationMinimum(p.Plant.Regime)
	least, own := p.Least(minimum)
	for _, l := range p.Plant.Links {
		if len(l.Joints) == 0 {
			continue
		}
		if _, ok := k.link(l); !ok {
			continue
		}
		point, fixed, known := firstPoint(l)
		if !known || fixed >= least {
			continue
		}
		rests := lawOf(src, own)
		if own == "" && p.Plant.Regime == standard.TIA {
			// ANSI/TIA recommends what ISO/IEC requires.
			rests.severity = lint.Observation
			rests.source += " (a recommendation there)"
		}
		p.Report(pointTooNear(p, l, point, fixed, least, rests))
	}
}

// firstPoint is the first consolidation point of a link, and the cable up to
// it; known where each run before it states its length.
func firstPoint(l *plant.Link) (point *plant.Port, fixed unit.Length, known bool) {
	for i, joint := range l.Joints {
		length, stated := l.Runs[i].Length()
		if !stated {
			return nil, 0, false
		}
		fixed = fixed.Plus(length)
		if joint.Holder.Kind.Name == schema.KindConsolidation {
			return joint, fixed, true
		}
	}
	return nil, 0, false
}

func pointTooNear(p *lint.Pass, l *plant.Link, point *plant.Port, fixed, least unit.Length, law law) lint.Finding {
	shown, limit := fixed.Beside(least, p.Units())
	f := lint.AboutField(l.Lead().Entry, schema.RunLength.Field)
	f.Severity = law.severity
	holder := schema.Printable(point.Holder.Label)
	f.Message = fmt.Sprintf("%s: %s of cable to the consolidation point %s, at least %s", schema.Printable(l.Lead().Label), shown, holder, limit)
	for _, r := range l.Runs {
		length, _ := r.Length()
		f.Working = append(f.Working, term("run "+schema.Printable(r.Label)+" to "+schema.Printable(r.To.String()), length.Text(p.Units())))
		if to := r.To.First(); to == point {
			break
		}
	}
	f.Result, f.Limit, f.Source = shown, limit, law.source
	f.Next = "move the consolidation point away from the room, or lay the cable to it with a coil that makes up the length"
	f.Key = []string{point.Holder.Label}
	f.Excess = (least - fixed).Metres()
	f.Related = []schema.Note{note(point.Holder.Entry, "the consolidation point")}
	return f
}

// LengthTested compares the recorded length with the measured one.
var LengthTested = &lint.Rule{
	Name: "length-tested", Title: "Checks that the recorded length of a run agrees with the last one that was measured",
	Severity: lint.Observation, Reach: lint.Along, Check: lengthTested,
}

// leastTolerance is the smallest difference that is worth a look: the cords
// of the tester and what the ends take up. Common practice.
const leastTolerance = 2 * unit.Metre

func lengthTested(p *lint.Pass) {
	for _, r := range p.Plant.Runs {
		if len(r.Tests) == 0 || !r.Live() {
			continue
		}
		test, measured := lastLength(r)
		recorded, known := r.Length()
		if test == nil || !known || agrees(recorded, measured) {
			continue
		}
		// A test through a consolidation point measures the whole link.
		if whole, stated := r.Link.Length(); stated && agrees(whole, measured) {
			continue
		}
		p.Report(testedFinding(p, r, test, recorded, measured))
	}
}

// lastLength is the latest test that states a length.
func lastLength(r *plant.Run) (last *plant.Test, length unit.Length) {
	var when unit.Date
	for _, t := range r.Tests {
		measured, stated := schema.TestLength.In(t.Record())
		date, dated := schema.TestDate.In(t.Record())
		if stated && dated && (last == nil || !date.Before(when)) {
			last, length, when = t, measured, date
		}
	}
	return last, length
}

// tolerance is how far a tester may be off: a tenth, for the twist and its
// setting of the velocity, and not less than two metres.
func tolerance(recorded unit.Length) unit.Length {
	longest, _ := standard.TestedTolerance(recorded)
	return max(leastTolerance, longest-recorded)
}

func agrees(recorded, measured unit.Length) bool {
	difference := measured - recorded
	return max(difference, -difference) <= tolerance(recorded)
}

func testedFinding(p *lint.Pass, r *plant.Run, test *plant.Test, recorded, measured unit.Length) lint.Finding {
	difference := max(measured-recorded, recorded-measured)
	shown, limit := difference.Beside(tolerance(recorded), p.Units())
	_, src := standard.TestedTolerance(recorded)
	f := lint.AboutField(r.Entry, schema.RunLength.Field)
	f.Message = fmt.Sprintf("%s: recorded %s, measured %s, they may differ by %s", schema.Printable(r.Label),
		recorded.Text(p.Units()), measured.Text(p.Units()), limit)
	date, _ := schema.TestDate.In(test.Record())
	f.Working = []lint.Term{
		term("recorded length", recorded.Text(p.Units())),
		term("measured on "+date.String(), measured.Text(p.Units())),
		term("difference", shown),
		term("tolerance", fmt.Sprintf("10 %% of %s, at least %s = %s", recorded.Text(p.Units()), leastTolerance.Text(p.Units()), limit)),
	}
	f.Result, f.Limit, f.Source = shown, limit, src.String()+"; the 2 m are common practice"
	f.Next = "correct the record, or see whether the tester was on another cable"
	f.Excess = (difference - tolerance(recorded)).Metres()
	f.Related = []schema.Note{note(test.Entry, "the measurement")}
	return f
}
