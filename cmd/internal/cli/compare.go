package cli

import (
	"slices"

	"homerun/diffreport"
	"homerun/lint"
	"homerun/lint/rules"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// lintPlant holds a plant as it is against the rules, without those that judge
// a change.
func lintPlant(p *plant.Plant, today unit.Date) (*lint.Report, error) {
	return lint.Run(p, rules.All(), lint.Options{Today: today})
}

// lintChange holds a plant against the rules, and the change that made it of
// another plant against those that judge a change. Where there is no other
// plant nothing was changed: everything is new.
func lintChange(before, after *plant.Plant, changes []diffreport.Change, today unit.Date) (*lint.Report, error) {
	return lint.Run(after, rules.All(), lint.Options{Today: today, Base: before, Former: diffreport.Former(changes)})
}

// A step is what leads from one base to a plant.
type step struct {
	// before is the plant in the base; nil where the plant is new.
	before *plant.Plant
	// same is set where both are of the same bytes.
	same    bool
	changes []diffreport.Change
}

func newStep(base *snapshot, p *plant.Plant, head *snapshot) step {
	st := step{before: counterpart(base, p)}
	if st.before == nil {
		return st
	}
	if st.same = slices.Equal(base.entries[st.before.Dir], head.entries[p.Dir]); !st.same {
		st.changes = diffreport.Compare(st.before, p, diffreport.Options{})
	}
	return st
}

// sought says what is asked of the states before.
type sought uint8

const (
	// onlyNew asks what of now is new or worse: rules that find nothing now need
	// not be run on what was.
	onlyNew sought = iota
	// alsoGone asks as well what was and is no more.
	alsoGone
)

// lintAgainst holds a plant against the rules and marks what no base had. A
// plant that is in no base is new as a whole.
func lintAgainst(p *plant.Plant, bases []*snapshot, head *snapshot, want sought) (*lint.Report, error) {
	if len(bases) == 0 {
		return lintPlant(p, head.Date)
	}
	steps := make([]step, len(bases))
	for i, base := range bases {
		steps[i] = newStep(base, p, head)
	}
	rep, err := lintSteps(p, steps, head.Date)
	if err != nil {
		return nil, err
	}
	formers := make([]lint.Former, len(steps))
	for i := range steps {
		if formers[i], err = steps[i].former(rep, head.Date, want); err != nil {
			return nil, err
		}
	}
	rep.Against(formers...)
	return rep, nil
}

// lintSteps holds a plant against the rules, and every way that led to it
// against those that judge a change: what one side of a merge had before is not
// the merge's doing.
func lintSteps(p *plant.Plant, steps []step, today unit.Date) (*lint.Report, error) {
	for _, st := range steps {
		if st.before == nil || st.same {
			return lintPlant(p, today)
		}
	}
	rep, err := lintChange(steps[0].before, p, steps[0].changes, today)
	if err != nil {
		return nil, err
	}
	for _, st := range steps[1:] {
		other, err := lintChange(st.before, p, st.changes, today)
		if err != nil {
			return nil, err
		}
		rep.Findings = common(rep.Findings, other.Findings)
		rep.Waived = common(rep.Waived, other.Waived)
	}
	return rep, nil
}

// common keeps of the findings about a change those that both have; findings
// about the state are the same in both.
func common(findings, others []lint.Finding) []lint.Finding {
	same := func(label string) string { return label }
	both := make(map[string]bool, len(others))
	for i := range others {
		both[others[i].Fingerprint(same)] = true
	}
	return slices.DeleteFunc(findings, func(f lint.Finding) bool { return !both[f.Fingerprint(same)] })
}

// former is what the linter found before the step.
func (st *step) former(rep *lint.Report, today unit.Date, want sought) (lint.Former, error) {
	switch {
	case st.before == nil:
		return lint.Former{}, nil
	case st.same:
		// The same bytes: nothing is new, and nothing is gone.
		return lint.Former{Findings: slices.Concat(rep.Findings, rep.Waived)}, nil
	}
	which := rules.All()
	if want == onlyNew {
		which = finders(rep)
	}
	stood, err := lint.Run(st.before, which, lint.Options{Today: today, Known: ruleNames()})
	if err != nil {
		return lint.Former{}, err
	}
	return lint.Former{Findings: slices.Concat(stood.Findings, stood.Waived), Was: diffreport.Former(st.changes)}, nil
}

// finders are the rules that found something. Those that review waivers and
// policies look at what all others found, and need them all.
func finders(rep *lint.Report) []*lint.Rule {
	found := make(map[string]bool)
	for _, list := range [][]lint.Finding{rep.Findings, rep.Waived} {
		for i := range list {
			found[list[i].Rule] = true
		}
	}
	all := rules.All()
	if slices.ContainsFunc(all, func(r *lint.Rule) bool { return r.Review != nil && found[r.Name] }) {
		return all
	}
	return slices.DeleteFunc(all, func(r *lint.Rule) bool { return !found[r.Name] })
}
