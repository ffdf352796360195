package lint

import (
	"errors"
	"fmt"
	"runtime"
	"slices"
	"sync"

	"homerun/schema/plant"
	"homerun/schema/unit"
)

// Options are what a run of the linter depends on besides plant and rules.
type Options struct {
	// Today decides which waivers have expired. It is required.
	Today unit.Date
	// Known lists every rule name there is, so that a waiver for a rule that
	// is merely not run now is not taken for a mistake; nil takes those run.
	Known []string
	// Base is the plant before the change, for the rules that judge a change;
	// without it they are not checked.
	Base *plant.Plant
	// Former tells what a record is called in Base; nil where nothing was
	// renamed.
	Former func(label string) string
}

// A Report is what a run of the linter found.
type Report struct {
	Plant *plant.Plant
	// Findings are in report order, those covered by a waiver left out.
	Findings []Finding
	// Waived are the findings that a waiver covers, in report order.
	Waived []Finding
	// Gone are the findings of a former state that are no more, in report order,
	// with their places there; none where nothing was compared.
	Gone []Finding
}

// Count returns how many findings have a severity.
func (r *Report) Count(s Severity) int {
	n := 0
	for i := range r.Findings {
		if r.Findings[i].Severity == s {
			n++
		}
	}
	return n
}

// Run holds a plant against the rules. The error names a rule that panicked:
// then the report is not to be relied on, and nil.
func Run(p *plant.Plant, rules []*Rule, o Options) (*Report, error) {
	policies := readPolicies(p, rules)
	found, err := check(p, rules, policies, o)
	if err != nil {
		return nil, err
	}
	leave := LeaveOf(p, o.Today)
	report := &Report{Plant: p}
	report.split(found, leave)
	reviewed, err := leave.review(p, rules, policies, o)
	if err != nil {
		return nil, err
	}
	report.Findings = append(report.Findings, reviewed...)
	Sort(report.Findings)
	Sort(report.Waived)
	return report, nil
}

// changes lists the rules that judge a change.
func changes(rules []*Rule) []string {
	var names []string
	for _, r := range rules {
		if r.Change {
			names = append(names, r.Name)
		}
	}
	return names
}

// fewRuns is how many runs a plant has at most for which it is not worth while to
// run the rules side by side.
const fewRuns = 1000

// Check holds a plant against the rules that check it, and returns what they found
// in the order of the rules, as the owner's policies count it and before any
// waiver. The error names a rule that panicked.
func Check(p *plant.Plant, rules []*Rule, o Options) ([]Finding, error) {
	return check(p, rules, readPolicies(p, rules), o)
}

// check runs the rules side by side where there is much to do, otherwise in turn: they
// only read the plant, and what each found stands in the order of the rules.
func check(p *plant.Plant, rules []*Rule, policies *policies, o Options) ([]Finding, error) {
	pass := Pass{Plant: p, Base: o.Base, Former: o.Former}
	if pass.Former == nil {
		pass.Former = func(label string) string { return label }
	}
	if len(p.Runs) > fewRuns {
		return sideBySide(&pass, rules, policies)
	}
	var failed []error
	for _, r := range rules {
		if !pass.wants(r) {
			continue
		}
		if err := pass.run(r, policies); err != nil {
			failed = append(failed, err)
		}
	}
	if len(failed) > 0 {
		return nil, errors.Join(failed...)
	}
	return pass.found, nil
}

func sideBySide(like *Pass, rules []*Rule, policies *policies) ([]Finding, error) {
	found := make([][]Finding, len(rules))
	failed := make([]error, len(rules))
	var wait sync.WaitGroup
	turns := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i, r := range rules {
		if !like.wants(r) {
			continue
		}
		turns <- struct{}{}
		wait.Go(func() {
			defer func() { <-turns }()
			pass := *like
			failed[i] = pass.run(r, policies)
			found[i] = pass.found
		})
	}
	wait.Wait()
	if err := errors.Join(failed...); err != nil {
		return nil, err
	}
	return slices.Concat(found...), nil
}

// wants says whether a rule is one to check: one about a change only with a base.
func (p *Pass) wants(r *Rule) bool { return r.Check != nil && (!r.Change || p.Base != nil) }

// run adds what one rule finds, as the owner's policies count it. A panic of the rule
// becomes an error that names it.
func (p *Pass) run(r *Rule, policies *policies) (err error) {
	defer rescue(r, &err)
	p.rule, p.policy = r, policies.of(r)
	from := len(p.found)
	r.Check(p)
	p.found = p.found[:from+len(policies.apply(r, p.found[from:]))]
	return nil
}

// rescue turns a panic of a rule into an error; it has to be deferred itself.
func rescue(r *Rule, err *error) {
	if why := recover(); why != nil {
		*err = fmt.Errorf("rule %s failed: %v", r.Name, why)
	}
}

func (r *Report) split(found []Finding, leave *Leave) {
	if len(leave.waivers) == 0 {
		r.Findings = found
		return
	}
	for _, f := range found {
		if label, covered := leave.Cover(f.Rule, f.Record); covered {
			f.Waiver = label
			r.Waived = append(r.Waived, f)
			continue
		}
		r.Findings = append(r.Findings, f)
	}
}
