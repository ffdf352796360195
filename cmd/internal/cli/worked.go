package cli

import (
	"slices"

	"homerun/diffreport"
	"homerun/lint"
	"homerun/schema/plant"
)

// plan works out one plant's order, with the findings that it brings and those
// that it settles.
func (sp *span) plan(before, after *plant.Plant) (diffreport.Order, error) {
	changes := diffreport.Compare(before, after, diffreport.Options{})
	introduced, cleared, err := sp.findings(before, after, changes)
	if err != nil {
		return diffreport.Order{}, err
	}
	return diffreport.Plan(before, after, changes, diffreport.PlanOptions{
		Base: sp.baseID, Head: sp.head.Name, Commits: sp.commits, Introduced: lines(introduced), Cleared: lines(cleared),
		Judge: judge(sp.head.Date),
	}), nil
}

// findings holds both plants against the rules, on the day of the later.
func (sp *span) findings(before, after *plant.Plant, changes []diffreport.Change) (introduced, cleared []lint.Finding, err error) {
	stood, stands := &lint.Report{}, &lint.Report{}
	if before != nil {
		if stood, err = lintPlant(before, sp.head.Date); err != nil {
			return nil, nil, err
		}
	}
	if after != nil {
		if stands, err = lintChange(before, after, changes, sp.head.Date); err != nil {
			return nil, nil, err
		}
	}
	lint.Introduced(everything(stood), stands.Findings, diffreport.Former(changes))
	introduced = chosenFindings(stands.Findings)
	// What is cleared is what the way back would introduce.
	lint.Introduced(everything(stands), stood.Findings, diffreport.Latter(changes))
	return introduced, chosenFindings(stood.Findings), nil
}

// everything is what a report found, also what a waiver covers.
func everything(r *lint.Report) []lint.Finding {
	return append(slices.Clip(r.Findings), r.Waived...)
}

func chosenFindings(all []lint.Finding) []lint.Finding {
	var some []lint.Finding
	for _, f := range all {
		if f.Introduced {
			some = append(some, f)
		}
	}
	return some
}

func lines(findings []lint.Finding) []diffreport.FindingLine {
	out := make([]diffreport.FindingLine, 0, len(findings))
	for i := range findings {
		f := &findings[i]
		line := diffreport.FindingLine{
			Rule: f.Rule, Severity: f.Severity.String(), Kind: f.Kind, Record: f.Record, Path: f.At.Path, Line: f.At.Line, Column: f.At.Column,
			Message: f.Message, Result: f.Result, Limit: f.Limit, Source: f.Source,
		}
		for _, t := range f.Working {
			line.Working = append(line.Working, diffreport.Term(t))
		}
		for _, n := range f.Related {
			line.Related = append(line.Related, diffreport.Place{Kind: n.Kind, Record: n.Label, Path: n.At.Path, Line: n.At.Line, Column: n.At.Column, Message: n.Message})
		}
		out = append(out, line)
	}
	return out
}
