package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// PathwaySupports holds the distance between hooks against the most that cable
// hangs free.
var PathwaySupports = &lint.Rule{
	Name: "pathway-supports", Title: "Checks that the hooks of a pathway are near enough to each other",
	Severity: lint.Nonconformity, Reach: lint.Within, Limit: lint.GreatestLength, Wakes: []func(*schema.Record) bool{keepsSupports}, Check: pathwaySupports,
}

func pathwaySupports(p *lint.Pass) {
	spacing, src, ok := standard.SupportSpacing(p.Plant.Regime)
	if !ok {
		return
	}
	most, own := p.Most(spacing)
	standing := lawOf(src, own)
	var silent []*plant.Pathway
	kept := false
	for _, w := range p.Plant.Pathways {
		if pathwayKind(w) != "hooks" {
			continue
		}
		apart, known := schema.PathwaySupports.In(w.Record())
		kept = kept || known
		switch {
		case known && apart > most:
			p.Report(farSupports(p, w, apart, most, standing.between(apart, feetOfSupports, own)))
		case !known && !lost(w.Entry, schema.PathwaySupports.Field):
			silent = append(silent, w)
		}
	}
	if !kept {
		return // a plant that records no supports anywhere is left in peace
	}
	for _, w := range silent {
		unstatedField(p, w.Entry, schema.PathwaySupports.Field, "other hooks of the plant state theirs, and whether cable hangs free here can not be checked", standing.source)
	}
}

// keepsSupports says whether a record is of hooks and states how far they are apart.
func keepsSupports(r *schema.Record) bool {
	kind, _ := schema.PathwayKind.In(r)
	_, known := schema.PathwaySupports.In(r)
	return known && kind == "hooks"
}

func farSupports(p *lint.Pass, w *plant.Pathway, apart, most unit.Length, law law) lint.Finding {
	shown, limit := apart.Beside(most, p.Units())
	f := lint.AboutField(w.Entry, schema.PathwaySupports.Field)
	f.Severity = law.severity
	f.Message = fmt.Sprintf("%s: hooks %s apart, limit %s", schema.Printable(w.Label), shown, limit)
	f.Working = []lint.Term{term("between supports", shown+" (stated)"), term("over", (apart - most).Text(p.Units())), term("cables on them", fmt.Sprint(w.Lying()))}
	f.Result, f.Limit, f.Source = shown, limit, law.source
	f.Next = "set more hooks in between: cable that hangs free sags, and its own weight presses it where it bends"
	f.Excess = (apart - most).Metres()
	return f
}
