package rules

import (
	"fmt"
	"strings"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// RatingFirestop checks that every opening in a rated wall or floor is closed
// by a fire-stop of that rating.
var RatingFirestop = &lint.Rule{
	Name: "rating-firestop", Title: "Checks that a pathway through a rated wall or floor has a fire-stop of that rating",
	Severity: lint.Nonconformity, Reach: lint.Within, Safety: true, Check: ratingFirestop,
}

func ratingFirestop(p *lint.Pass) {
	for _, w := range p.Plant.Pathways {
		for _, in := range w.Inner {
			if in.Kind.Name == schema.KindCrossing {
				crossed(p, w, w.In(in))
			}
		}
	}
}

// crossed judges one crossing.
func crossed(p *lint.Pass, w *plant.Pathway, e schema.Entry) {
	rating, rated := schema.CrossingRating.In(e.Record)
	stopped, stoppedKnown := schema.CrossingStopped.In(e.Record)
	name, _ := schema.CrossingFirestop.In(e.Record)
	named := strings.TrimSpace(name) != ""
	for _, f := range []*schema.Field{schema.CrossingRating.Field, schema.CrossingFirestop.Field, schema.CrossingStopped.Field} {
		if lost(e, f) {
			return
		}
	}
	switch {
	case !rated:
		openCrossing(p, w, e, schema.CrossingRating.Field, "its rating is not stated; whether it needs a fire-stop depends on it")
	case rating <= 0:
	case !named && !stoppedKnown:
		p.Report(unstopped(p, w, e, schema.CrossingFirestop.Field, "no fire-stop is recorded", "no fire-stop"))
	case !stoppedKnown:
		openCrossing(p, w, e, schema.CrossingStopped.Field, fmt.Sprintf("rated %s, the rating of fire-stop %s is not stated", rating, schema.Printable(name)))
	case stopped < rating:
		shown, _ := stopped.Beside(rating, p.Units())
		p.Report(unstopped(p, w, e, schema.CrossingStopped.Field, "its fire-stop is rated "+shown, "fire-stop rated "+shown))
	case !named:
		openCrossing(p, w, e, schema.CrossingFirestop.Field, "its fire-stop has no identifier")
	}
}

// unstopped is the finding about a rated opening that nothing, or too little,
// closes.
func unstopped(p *lint.Pass, w *plant.Pathway, e schema.Entry, field *schema.Field, fact, result string) lint.Finding {
	rating, _ := schema.CrossingRating.In(e.Record)
	stopped, _ := schema.CrossingStopped.In(e.Record)
	name, _ := schema.CrossingFirestop.In(e.Record)
	_, limit := stopped.Beside(rating, p.Units())
	f := lint.About(w.Entry)
	f.At = e.Where(field)
	f.Message = fmt.Sprintf("%s: goes through %s, rated %s; %s", schema.Printable(w.Label), schema.Printable(e.Label), limit, fact)
	f.Working = []lint.Term{
		term("wall or floor", fmt.Sprintf("%s, rated %s (stated)", schema.Printable(e.Label), limit)),
		term("fire-stop", stopText(name, fact)),
		term("cables through it", fmt.Sprint(w.Lying())),
	}
	f.Result, f.Limit = result, "fire-stop rated "+limit
	if src, ok := standard.FirestopRule(p.Plant.Fire, familyThrough(w)); ok {
		f.Source = src.String()
	} else {
		f.Severity = lint.Observation
		f.Source = "common practice: an opening keeps the rating of its wall; the building law of the place decides"
	}
	f.Next = "have the opening closed by a tested system of that rating, and record its identifier and rating; the authority having jurisdiction decides"
	f.Key = []string{e.Label}
	f.Excess = float64(rating - stopped)
	return f
}

// stopText is the fire-stop of a crossing, with its identifier where it has one.
func stopText(name, fact string) string {
	if name = strings.TrimSpace(name); name == "" {
		return fact
	}
	return schema.Printable(name) + ": " + fact
}

// familyThrough is the family of the first cable in a pathway that has one: the
// article of the code goes by it.
func familyThrough(w *plant.Pathway) standard.Family {
	for _, l := range w.Loads {
		if family, ok := familyOf(l.Cable); ok {
			return family
		}
	}
	return standard.Communications
}

// openCrossing names the field without which a crossing can not be judged.
func openCrossing(p *lint.Pass, w *plant.Pathway, e schema.Entry, field *schema.Field, what string) {
	f := lint.About(w.Entry)
	f.At = e.Where(field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: goes through %s, %s", schema.Printable(w.Label), schema.Printable(e.Label), what)
	f.Next = fmt.Sprintf("state %s in its crossing block: %s", field.Name, field.Doc)
	f.Source = "common practice: what is not recorded can not be checked"
	f.Key = []string{e.Label, field.Name}
	p.Report(f)
}
