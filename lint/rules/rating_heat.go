package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// RatingHeat checks that no space is hotter than the jacket of a cable in it
// is made for.
var RatingHeat = &lint.Rule{
	Name: "rating-heat", Title: "Checks that no space on a run's way is hotter than its cable is rated for",
	Severity: lint.Nonconformity, Reach: lint.Along, Safety: true, Check: ratingHeat,
}

// leastRating is what a cable is taken to bear where its rating is not stated
// and no code says: a figure for asking, not for judging. Common practice.
const leastRating = 60 * unit.DegreeCelsius

func ratingHeat(p *lint.Pass) {
	hs := newHeats()
	var ratings byCable[jacket]
	for _, c := range p.Plant.Cables {
		ratings.set(p.Plant, c, jacketOf(c))
	}
	told := make(map[*plant.Cable]bool)
	for _, r := range p.Plant.Runs {
		if r.Cable == nil {
			continue
		}
		j := ratings.at(r.Cable)
		hot := hs.along(r)
		switch {
		case hot.where == nil || j.lost || hot.high <= j.rated:
		case j.stated:
			p.Report(overheated(p, r, hot, j.rated))
		case !told[r.Cable] && p.Plant.Fire != 0:
			told[r.Cable] = true
			p.Report(unratedFinding(p, r, hot))
		}
	}
}

// A jacket is what a cable type says of the heat that it bears.
type jacket struct {
	rated        unit.Temperature
	stated, lost bool
}

func jacketOf(c *plant.Cable) jacket {
	rated, stated := schema.CableRated.In(c.Record())
	if !stated {
		return jacket{rated: leastRating, lost: lost(c.Entry, schema.CableRated.Field)}
	}
	return jacket{rated: rated, stated: true}
}

func overheated(p *lint.Pass, r *plant.Run, hot heat, rated unit.Temperature) lint.Finding {
	shown, limit := hot.high.Beside(rated, p.Units())
	f := lint.About(r.Entry)
	f.Message = fmt.Sprintf("%s: %s in space %s, its jacket is rated for %s", schema.Printable(r.Label), shown, schema.Printable(hot.where.Label), limit)
	f.Working = []lint.Term{
		term("hottest space", schema.Printable(hot.where.Label)+", "+shown+" (stated)"),
		term("cable", schema.Printable(r.Cable.Label)+", rated "+limit+" (stated)"),
	}
	f.Result, f.Limit, f.Source = shown, limit, "the rating of the jacket, as printed on it"
	f.Next = "lay it another way, keep the space cooler, or pull cable of a higher temperature rating"
	f.Excess = (hot.high - rated).Celsius()
	f.Related = []schema.Note{
		beside(hot.where.Entry, schema.SpaceTemperature.Field, "the hottest space"),
		beside(r.Cable.Entry, schema.CableRated.Field, "the rating"),
	}
	return f
}

func unratedFinding(p *lint.Pass, r *plant.Run, hot heat) lint.Finding {
	shown, limit := hot.high.Beside(leastRating, p.Units())
	f := lint.AboutField(r.Cable.Entry, schema.CableRated.Field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: temperature rating not stated; run %s lies at %s in %s, and %s is all that can be taken for granted",
		schema.Printable(r.Cable.Label), schema.Printable(r.Label), shown, schema.Printable(hot.where.Label), limit)
	f.Working = []lint.Term{term("hottest space", schema.Printable(hot.where.Label)+", "+shown+" (stated)"), term("least rating", limit)}
	f.Result, f.Limit, f.Source = shown, limit, "common practice"
	if _, src, ok := standard.JacketRating(p.Plant.Fire); ok {
		f.Source = src.String()
	}
	f.Next = "state rated: " + schema.CableRated.Doc
	f.Key = []string{schema.CableRated.Name}
	f.Related = []schema.Note{beside(hot.where.Entry, schema.SpaceTemperature.Field, "the hottest space")}
	return f
}
