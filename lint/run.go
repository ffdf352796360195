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
	found, err := Check(p, rules, o)
	if err != nil {
		return nil, err
	}
	leave := LeaveOf(p, o.Today)
	report := &Report{Plant: p}
	report.split(found, leave)
	reviewed, err := leave.Review(p, rules, o)
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

// check runs the rules side by side where there is much to do: they only read the
// plant, and what each found is put together in the order of the rules.
func check(p *plant.Plant, rules []*Rule, policies *policies, o Options) ([]Finding, error) {
	former := o.Former
	if former == nil {
		former = func(label string) string { return label }
	}
	found := make([][]Finding, len(rules))
	failed := make([]error, len(rules))
	var wait sync.WaitGroup
	turns := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i, r := range rules {
		if r.Check == nil || r.Change && o.Base == nil {
			continue
		}
		one := func() {
			pass := &Pass{Plant: p, Base: o.Base, Former: former, rule: r, policy: policies.of(r)}
			failed[i] = guard(r, func() { r.Check(pass) })
			found[i] = policies.apply(r, pass.found)
		}
		if len(p.Runs) <= fewRuns {
			one()
			continue
		}
		turns <- struct{}{}
		wait.Go(func() {
			defer func() { <-turns }()
			one()
		})
	}
	wait.Wait()
	if err := errors.Join(failed...); err != nil {
		return nil, err
	}
	return slices.Concat(found...), nil
}

// guard turns a panic of a rule into an error that names it.
func guard(r *Rule, check func()) (err error) {
	defer func() {
		if why := recover(); why != nil {
			err = fmt.Errorf("rule %s failed: %v", r.Name, why)
		}
	}()
	check()
	return nil
}

func (r *Report) split(found []Finding, leave *Leave) {
	for _, f := range found {
		if label, covered := leave.Cover(f.Rule, f.Record); covered {
			f.Waiver = label
			r.Waived = append(r.Waived, f)
			continue
		}
		r.Findings = append(r.Findings, f)
	}
}
