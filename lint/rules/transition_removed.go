package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
)

// TransitionTestRemoved finds measurements that were taken out of the records
// while the cable that they measured stays.
var TransitionTestRemoved = &lint.Rule{
	Name: "transition-test-removed", Title: "Checks that no recorded test is taken out while its run stays",
	Severity: lint.Nonconformity, Change: true, Check: transitionTestRemoved,
}

func transitionTestRemoved(p *lint.Pass) {
	if len(p.Base.Tests) == 0 || lostTests(p.Plant) {
		return
	}
	kept := make(map[string]bool, len(p.Plant.Tests))
	for _, t := range p.Plant.Tests {
		kept[p.Former(t.Label)] = true
	}
	for _, r := range p.Plant.Runs {
		before := formerRun(p, r)
		if before == nil {
			continue
		}
		for _, t := range before.Tests {
			if !kept[t.Label] && !standsOtherwise(t, r) {
				p.Report(removedFinding(t, r))
			}
		}
	}
}

// lostTests says whether a test can not be read: then it may be the one that is
// missing.
func lostTests(p *plant.Plant) bool {
	for _, t := range p.Tests {
		if run := t.Lookup(schema.TestRun.Field); t.Damaged || run == nil || run.Bad || t.Run == nil {
			return true
		}
	}
	return false
}

// standsOtherwise says whether the run still has the measurement under another
// label.
func standsOtherwise(was *plant.Test, r *plant.Run) bool {
	for _, t := range r.Tests {
		if sameMeasurement(was.Entry, t.Entry) {
			return true
		}
	}
	return false
}

// sameMeasurement holds two tests of one run against each other. What one of
// them does not state, or can not be read, tells nothing apart.
func sameMeasurement(a, b schema.Entry) bool {
	for _, field := range []*schema.Field{schema.TestDate.Field, schema.TestResult.Field, schema.TestLength.Field, schema.TestMargin.Field, schema.TestLoss.Field} {
		x, y := a.Lookup(field), b.Lookup(field)
		if x != nil && y != nil && !x.Bad && !y.Bad && !x.Same(y) {
			return false
		}
	}
	return true
}

// removedFinding is a nonconformity where the test had failed: without it the
// link looks as if nobody had ever found fault with it.
func removedFinding(t *plant.Test, r *plant.Run) lint.Finding {
	result, _ := schema.TestResult.In(t.Record())
	f := lint.About(r.Entry)
	if result == "" || passing(result) {
		f.Severity = lint.Observation
	}
	shown := result
	if shown == "" {
		shown = "not stated"
	}
	f.Message = fmt.Sprintf("%s: its test %s, result %s, was taken out of the records", schema.Printable(r.Label), schema.Printable(t.Label), shown)
	f.Working = []lint.Term{term("result as recorded", shown), term("state of the run", "still recorded")}
	if date, dated := schema.TestDate.In(t.Record()); dated {
		f.Working = append(f.Working, term("date as recorded", date.String()))
	}
	f.Key = []string{t.Label}
	f.Result, f.Limit, f.Source = "taken out", "recorded tests stay", "the test as it was recorded"
	f.Next = "put the test back, and record a new measurement as a test of its own"
	f.Related = []schema.Note{note(t.Entry, "as it was recorded")}
	return f
}
