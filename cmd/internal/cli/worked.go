package cli

import (
	"slices"
	"sync"

	"homerun/diffreport"
	"homerun/lint"
	"homerun/schema/plant"
)

// plan works out one plant's order, with the findings that it brings and those
// that it settles. The plant before is held against the rules while the two are
// compared.
func (sp *span) plan(before, after *plant.Plant) (diffreport.Order, error) {
	var changes []diffreport.Change
	var compared sync.WaitGroup
	compared.Go(func() { changes = diffreport.Compare(before, after, diffreport.Options{}) })
	stood, err := sp.lint(before, nil, nil)
	compared.Wait()
	if err != nil {
		return diffreport.Order{}, err
	}
	stands, err := sp.lint(after, before, changes)
	if err != nil {
		return diffreport.Order{}, err
	}
	return diffreport.Plan(before, after, changes, diffreport.PlanOptions{
		Base: sp.baseID, Head: sp.head.Name, Commits: sp.commits,
		Judge: objections(sp.head.Date), Follow: follower(stood, stands, changes, sp.head.Date),
		// What is cleared is what the way back would introduce.
		Introduced: lines(introduced(stood, stands, diffreport.Former(changes))),
		Cleared:    lines(introduced(stands, stood, diffreport.Latter(changes))),
	}), nil
}

// lint holds one plant against the rules on the day of the later, and the change
// that led to it; a plant that is only on one side finds nothing on the other.
func (sp *span) lint(p, before *plant.Plant, changes []diffreport.Change) (*lint.Report, error) {
	switch {
	case p == nil:
		return &lint.Report{}, nil
	case before == nil:
		return lintPlant(p, sp.head.Date)
	}
	return lintChange(before, p, changes, sp.head.Date)
}

// introduced are the findings of one report that the other does not have, not
// even under a waiver.
func introduced(without, with *lint.Report, former func(string) string) []lint.Finding {
	lint.Introduced(append(slices.Clip(without.Findings), without.Waived...), with.Findings, former)
	var some []lint.Finding
	for _, f := range with.Findings {
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
