package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
)

// TestsFailed finds runs whose latest measurement did not pass.
var TestsFailed = &lint.Rule{
	Name: "tests-failed", Title: "Checks that the latest measurement of a run has passed",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: testsFailed,
}

func testsFailed(p *lint.Pass) {
	for _, r := range p.Plant.Runs {
		if len(r.Tests) == 0 || !r.Live() {
			continue
		}
		last, sure := latest(r)
		if sure && !last.passed() && !passedSince(r, last) && !perhapsPassed(p.Plant, last) {
			p.Report(failedFinding(r, last))
		}
	}
}

// perhapsPassed says whether a later pass is recorded for a run that could not
// be found: it may be of this one.
func perhapsPassed(p *plant.Plant, failed proof) bool {
	for _, t := range p.Tests {
		if t.Run != nil {
			continue
		}
		when, dated := schema.TestDate.In(t.Record())
		result, stated := schema.TestResult.In(t.Record())
		if !dated || !stated || !when.Before(failed.when) && (proof{result: result}).passed() {
			return true
		}
	}
	return false
}

// looseEnd says whether a link goes on where the records can not follow it: a
// later pass of the whole may then be recorded with a run of it that is not seen.
func looseEnd(l *plant.Link) bool {
	first, last := l.Runs[0], l.Runs[len(l.Runs)-1]
	return loose(l.From, first.Record().Lookup(schema.RunFrom.Field)) || loose(l.To, last.Record().Lookup(schema.RunTo.Field))
}

func loose(end *plant.Port, named *schema.Value) bool {
	if end == nil {
		return named != nil
	}
	return end.Holder.Joins()
}

// passedSince says whether the whole link passed after one of its runs failed:
// the measurement may be recorded with any of them.
func passedSince(r *plant.Run, failed proof) bool {
	for _, other := range r.Link.Runs {
		if other == r || len(other.Tests) == 0 {
			continue
		}
		last, sure := latest(other)
		if !sure {
			return true // what can not be read may be the pass
		}
		text, _ := schema.TestLimit.In(last.test.Record())
		if last.passed() && !last.when.Before(failed.when) && readLimit(text).wholeLink {
			return true
		}
	}
	return false
}

func failedFinding(r *plant.Run, last proof) lint.Finding {
	f := lint.About(r.Entry)
	limit, _ := schema.TestLimit.In(last.test.Record())
	margin, measured := schema.TestMargin.In(last.test.Record())
	f.Message = fmt.Sprintf("%s: %s on %s, limit %s", schema.Printable(r.Label), last.result, last.when, schema.Printable(limit))
	f.Working = []lint.Term{
		term("measurement", fmt.Sprintf("%s of %s, the latest of %s", schema.Printable(last.test.Label), last.when, counted(len(r.Tests), "measurement", "measurements"))),
		term("tester's limit", schema.Printable(limit)),
	}
	if measured {
		f.Working = append(f.Working, term("worst margin", margin.String()))
		f.Excess = -margin.Decibels()
	}
	f.Result, f.Limit, f.Source = last.result, "pass", "the measurement itself, against "+schema.Printable(limit)
	f.Next = "find and mend the fault, measure again, and record the new measurement beside the old one"
	if state, _ := r.State(); state != schema.StateInService {
		f.Severity = lint.Observation
		f.Message += "; it is " + state
		f.Next = "mend it and measure again before it goes into service"
	}
	if looseEnd(r.Link) {
		f.Severity = lint.Observation
		f.Message += "; where its link goes on is not recorded"
	}
	if last.result == "marginal-fail" {
		// How a result within the tester's own accuracy counts was not read.
		f.Severity = lint.Observation
		f.Source += "; that a result within the tester's accuracy counts as failed is unconfirmed: check the printed standard"
	}
	f.Related = []schema.Note{note(last.test.Entry, "the measurement")}
	return f
}
