package cli

import (
	"slices"

	"homerun/diffreport"
	"homerun/lint"
	"homerun/lint/again"
	"homerun/lint/rules"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// follower lets the linter judge the site between the steps of an order. What
// either plant has against it, or the site has when the work begins, is nothing
// that a step brings about.
func follower(stood, stands *lint.Report, changes []diffreport.Change, today unit.Date) func() diffreport.Follower {
	latter := diffreport.Latter(changes)
	known := make(allowances)
	for _, list := range [][]lint.Finding{stood.Findings, stood.Waived} {
		known.add(list, latter)
	}
	for _, list := range [][]lint.Finding{stands.Findings, stands.Waived} {
		known.add(list, nil)
	}
	site := siteRules(stood.Plant, stands.Plant)
	return func() diffreport.Follower { return known.follow(site, today) }
}

// allowances are findings that are known, with how far beyond their limit they are.
type allowances map[string]float64

func (a allowances) add(findings []lint.Finding, called func(string) string) {
	for i := range findings {
		o := objectionOf(&findings[i], called)
		key := o.Identity()
		if stood, met := a[key]; !met || o.Excess > stood {
			a[key] = o.Excess
		}
	}
}

// follow begins with nothing on site: the first files are how it looks when the
// work begins.
func (a allowances) follow(judges []*lint.Rule, today unit.Date) diffreport.Follower {
	site := again.New(again.Options{Dir: ".", Rules: judges, Known: ruleNames()})
	begun, failed := false, false
	records := make(map[string]int)
	atFirst := make(allowances)
	return func(changed []*schema.File) (objections []diffreport.Objection, looked int) {
		if failed {
			return nil, 0
		}
		list := make([]again.Change, len(changed))
		for i, f := range changed {
			list[i].Path, records[f.Path] = f.Path, len(f.Entries)
			if len(f.Entries) > 0 {
				list[i].File = f
			}
		}
		step, err := site.Step(list, today)
		if err != nil {
			failed = true
			return []diffreport.Objection{{Rule: "failed", Text: err.Error()}}, 0
		}
		if !begun {
			begun = true
			atFirst.add(step.Come, nil)
			return nil, 0
		}
		for i := range step.Come {
			f := &step.Come[i]
			if f.Severity != lint.Nonconformity || f.Waiver != "" {
				continue
			}
			o := objectionOf(f, nil)
			if !a.allow(o) && !atFirst.allow(o) {
				objections = append(objections, o)
			}
		}
		if step.Whole {
			return objections, sum(records)
		}
		return objections, step.Size
	}
}

func sum(counts map[string]int) int {
	all := 0
	for _, n := range counts {
		all += n
	}
	return all
}

func (a allowances) allow(o diffreport.Objection) bool {
	stood, met := a[o.Identity()]
	return met && o.Excess <= stood
}

// objectionOf is a finding as the planner sees it, under other labels.
func objectionOf(f *lint.Finding, called func(string) string) diffreport.Objection {
	o := diffreport.Objection{Rule: f.Rule, Record: f.Record, Key: slices.Clone(f.Key), Excess: f.Excess, Text: f.Message}
	if called != nil {
		o.Record = called(o.Record)
		for i := range o.Key {
			o.Key[i] = called(o.Key[i])
		}
	}
	return o
}

// siteRules are the rules that judge what lies together and what stands there:
// their nonconformities, and what a policy of the owner makes one. Channels are
// left to the two plants: whole ones are theirs, and one that lacks a cord or an
// end carries nothing. Rules about records, waivers, tests and changes judge what
// is written, and a cable that lies between two steps is not abandoned.
func siteRules(plants ...*plant.Plant) []*lint.Rule {
	raised := make(map[string]bool)
	for _, p := range plants {
		if p == nil {
			continue
		}
		for _, e := range p.Policies {
			name, _ := schema.PolicyRule.In(e.Record)
			raised[name] = true
		}
	}
	return slices.DeleteFunc(slices.Clone(rules.All()), func(r *lint.Rule) bool {
		site := slices.Contains([]string{"pathway", "rating", "shielding"}, r.Family()) && r.Name != "rating-abandoned" && r.Name != "shielding-construction" || r.Name == "power-ampacity"
		return !site || r.Review != nil || r.Change || r.Severity != lint.Nonconformity && !raised[r.Name]
	})
}
