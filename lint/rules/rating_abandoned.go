package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// RatingAbandoned finds cable that is out of use and carries no tag for future
// use: it is fuel that serves nobody.
var RatingAbandoned = &lint.Rule{
	Name: "rating-abandoned", Title: "Checks that cable out of use is removed or tagged for future use",
	Severity: lint.Nonconformity, Reach: lint.Along, Safety: true, Check: ratingAbandoned,
}

func ratingAbandoned(p *lint.Pass) {
	if p.Plant.Fire == 0 {
		return // who states no fire code asks for no judgement by one
	}
	for _, r := range p.Plant.Runs {
		state, known := r.State()
		if !known || state != schema.StateAbandoned || lost(r.Entry, schema.RunFrom.Field) || lost(r.Entry, schema.RunTo.Field) {
			continue
		}
		near, known := endingOf(r, r.From, schema.RunFrom.Field)
		far, also := endingOf(r, r.To, schema.RunTo.Field)
		if known && also {
			p.Report(abandonedFinding(p, r, near, far))
		}
	}
}

// endingOf is what an end of a run is terminated at; not known where the end
// names a port that could not be found.
func endingOf(r *plant.Run, end plant.Row, field *schema.Field) (e standard.Ending, known bool) {
	switch {
	case len(end) > 0 && end[0].Holder.IsEquipment():
		return standard.AtEquipment, true
	case len(end) > 0:
		return standard.AtConnector, true
	}
	return standard.NotTerminated, r.Record().Lookup(field) == nil
}

func abandonedFinding(p *lint.Pass, r *plant.Run, near, far standard.Ending) lint.Finding {
	f := lint.AboutField(r.Entry, schema.RunState.Field)
	f.Working = []lint.Term{
		term("state", schema.StateAbandoned+" (stated)"),
		term("one end", endingText(near, r.From)), term("other end", endingText(far, r.To)),
	}
	f.Limit = "removed, or tagged for future use"
	f.Next = "take it out as far as it can be reached, or tag it and set its state to tagged; the authority having jurisdiction decides"
	family, _ := familyOf(r.Cable)
	verdict, src, ok := standard.AbandonmentOf(p.Plant.Fire, family, near, far)
	if !ok {
		f.Severity = lint.Observation
		f.Source = "common practice: cable out of use is taken out"
		f.Message = schema.Printable(r.Label) + ": abandoned and not tagged, still in place"
		f.Result = "in place, not tagged"
		return f
	}
	f.Source = src.String()
	f.Working = append(f.Working, term("by the definition of the code", verdict.String()))
	switch verdict {
	case standard.Abandoned:
		f.Message = schema.Printable(r.Label) + ": abandoned and not tagged, the part that can be reached has to come out"
		f.Result = "abandoned, in place, not tagged"
	case standard.InUse:
		f.Severity = lint.Observation
		f.Message = schema.Printable(r.Label) + ": recorded as abandoned, not tagged; terminated at both ends, so not yet abandoned by the code"
		f.Result = "out of use, not tagged"
	case standard.Unclear:
		f.Severity = lint.Observation
		f.Message = schema.Printable(r.Label) + ": recorded as abandoned, not tagged; terminated at equipment at one end, which the code leaves open"
		f.Result = "out of use, not tagged"
	}
	return f
}

func endingText(e standard.Ending, at plant.Row) string {
	switch e {
	case standard.AtEquipment:
		return fmt.Sprintf("at equipment, %s", schema.Printable(at.String()))
	case standard.AtConnector:
		return fmt.Sprintf("at a connector, %s", schema.Printable(at.String()))
	case standard.NotTerminated:
	}
	return "not terminated"
}
