package cli

import (
	"strings"

	"homerun/diffreport"
	"homerun/lint"
	"homerun/lint/rules"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// objections asks the linter about a plant in the middle of the work: only rules
// about cables that lie together, since only those can be broken by what is
// right before and after. A rule that fails judges nothing here; it has failed
// for the two plants as well, and that is reported.
func objections(today unit.Date) func(*plant.Plant) []diffreport.Objection {
	var together []*lint.Rule
	for _, r := range rules.All() {
		if r.Review == nil && !r.Change && (r.Family() == "pathway" || r.Family() == "power" || r.Name == "rating-heat" || r.Name == "shielding-separation") {
			together = append(together, r)
		}
	}
	return func(p *plant.Plant) []diffreport.Objection {
		report, err := lint.Run(p, together, lint.Options{Today: today})
		if err != nil {
			return []diffreport.Objection{{Rule: "failed", Text: err.Error()}}
		}
		var all []diffreport.Objection
		for i := range report.Findings {
			f := &report.Findings[i]
			if f.Severity == lint.Nonconformity && !strings.HasPrefix(f.Rule, "waiver-") {
				all = append(all, objectionOf(f, nil))
			}
		}
		return all
	}
}
