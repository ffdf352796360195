package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// RecordShorterThanRoute finds runs that can not lie in their route, and runs
// that are far longer than it.
var RecordShorterThanRoute = &lint.Rule{
	Name: "record-shorter-than-route", Title: "Checks that a run is as long as the pathways it lies in, and not far longer",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: shorterThanRoute,
}

// What a run may have beyond its route before somebody should look: the drops
// at the ends and what is coiled there. Common practice.
const (
	routeTimes = 2
	routeExtra = 20 * unit.Metre
)

func shorterThanRoute(p *lint.Pass) {
	for _, r := range p.Plant.Runs {
		length, known := r.Length()
		slack, readable := schema.RunSpare.Or(r.Record(), 0)
		if !known || !readable || r.Way == nil || !r.Way.Known || len(r.Way.Pathways) == 0 {
			continue
		}
		route := r.Way.Length
		switch {
		case length-slack < route:
			p.Report(shorterFinding(p, r, length, slack))
		// Divided instead of multiplied, so that no length can run over.
		case (length-routeExtra)/routeTimes > route:
			p.Report(longerFinding(p, r, length))
		}
	}
}

func shorterFinding(p *lint.Pass, r *plant.Run, length, slack unit.Length) lint.Finding {
	route := r.Way.Length
	f := lint.AboutField(r.Entry, schema.RunLength.Field)
	laid, limit := (length - slack).Beside(route, p.Units())
	f.Working = append(routeTerms(p, r), term("length of the run", length.Text(p.Units())))
	what := "cable"
	if slack > 0 {
		what = "cable without its coil"
		f.Working = append(f.Working, term("coil at the ends", slack.Text(p.Units())),
			term("left for the route", fmt.Sprintf("%s - %s = %s", length.Text(p.Units()), slack.Text(p.Units()), laid)))
	}
	f.Message = fmt.Sprintf("%s: %s %s, its route is %s", schema.Printable(r.Label), what, laid, limit)
	f.Result, f.Limit, f.Source = laid, limit, "geometry: a cable is not shorter than its route"
	f.Next = "correct the length, the route, or the lengths of the pathways; a pathway that cables leave half-way is best recorded as two"
	f.Key = []string{"short"}
	f.Excess = (route - (length - slack)).Metres()
	return f
}

func longerFinding(p *lint.Pass, r *plant.Run, length unit.Length) lint.Finding {
	most := routeTimes*r.Way.Length + routeExtra
	f := lint.AboutField(r.Entry, schema.RunLength.Field)
	f.Severity = lint.Observation
	shown, limit := length.Beside(most, p.Units())
	f.Message = fmt.Sprintf("%s: cable %s, its route is only %s", schema.Printable(r.Label), shown, r.Way.Length.Text(p.Units()))
	f.Working = append(routeTerms(p, r),
		term("length of the run", shown),
		term("more than", fmt.Sprintf("%d x %s + %s = %s", routeTimes, r.Way.Length.Text(p.Units()), routeExtra.Text(p.Units()), limit)))
	f.Result, f.Limit, f.Source = shown, limit, "common practice"
	f.Next = "correct the length, or add the pathway that the route leaves out"
	f.Key = []string{"long"}
	f.Excess = (length - most).Metres()
	return f
}

// routeTerms are the pathways of a route with their lengths, and the sum.
func routeTerms(p *lint.Pass, r *plant.Run) []lint.Term {
	terms := make([]lint.Term, 0, len(r.Way.Pathways)+4)
	for _, w := range r.Way.Pathways {
		length, _ := schema.PathwayLength.In(w.Record())
		terms = append(terms, term("pathway "+schema.Printable(w.Label), length.Text(p.Units())))
	}
	return append(terms, term("route", r.Way.Length.Text(p.Units())))
}
