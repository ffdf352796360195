package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// PowerBundle holds the size of a bundle that carries power against the
// guideline of ANSI/TIA.
var PowerBundle = &lint.Rule{
	Name: "power-bundle", Title: "Checks that a bundle that carries power has no more cables than the guideline advises",
	Severity: lint.Observation, Reach: lint.Along, Gathers: carriesPower, Check: powerBundle,
}

func powerBundle(p *lint.Pass) {
	most, src, ok := standard.BundleGuideline(p.Plant.Regime)
	if !ok {
		return
	}
	for _, b := range p.Plant.Bundles {
		word, stated := schema.BundlePower.In(b.Record())
		if !stated || len(b.Runs) <= most {
			continue
		}
		n := powered(b)
		if n <= most {
			continue
		}
		f := lint.About(b.Entry)
		f.Message = fmt.Sprintf("%s: %d cables that carry power in one bundle, guideline %d", schema.Printable(b.Label), n, most)
		f.Working = []lint.Term{term("power", word), term("runs in use, planned or spare", fmt.Sprintf("%d of %d", n, len(b.Runs)))}
		f.Result, f.Limit, f.Source = fmt.Sprintf("%d cables", n), fmt.Sprintf("%d cables", most), src.String()
		f.Next = "divide the bundle, or leave the cables loose"
		f.Excess = float64(n - most)
		p.Report(f)
	}
}

// carriesPower says whether a bundle states that it carries power.
func carriesPower(bundle *schema.Record) bool { return bundle.Own(schema.BundlePower.Name) != nil }

// powered counts the runs of a bundle that may carry power.
func powered(b *plant.Bundle) int {
	n := 0
	for _, r := range b.Runs {
		if mayCarry(r) {
			n++
		}
	}
	return n
}

// mayCarry says whether a run may carry power: what is withdrawn carries none
// and adds no heat, nor does fibre.
func mayCarry(r *plant.Run) bool { return r.Live() && r.Cable.Medium() == plant.TwistedPair }
