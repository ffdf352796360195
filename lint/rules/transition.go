package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// The rules of this family judge a change: they hold a plant against what it
// was before, and are not checked where there is nothing to compare with.

// TransitionLifecycle finds runs that come into service, as planned or out of
// disuse, without a test that says they may.
var TransitionLifecycle = &lint.Rule{
	Name: "transition-lifecycle", Title: "Checks that a run that comes into service has passed a test first",
	Severity: lint.Nonconformity, Change: true, Check: transitionLifecycle,
}

// acceptance is where it stands that cabling is tested before it is used.
var acceptance = standard.Source{Body: "ANSI/TIA", Edition: "1152-A", Clause: "field testing of installed cabling", Confidence: standard.FromMemory}

func transitionLifecycle(p *lint.Pass) {
	for _, r := range p.Plant.Runs {
		if state, known := r.State(); !known || state != schema.StateInService {
			continue
		}
		before := formerRun(p, r)
		if before == nil || before.Record() == r.Record() {
			continue
		}
		step := lifeStep{pass: p, run: r, before: before}
		if from, known := before.State(); known && (from == schema.StatePlanned || from == schema.StateAbandoned || from == schema.StateTagged) {
			step.from = from
			step.judge()
		}
	}
}

// formerRun is the same run in the plant before the change, nil where there
// was none.
func formerRun(p *lint.Pass, r *plant.Run) *plant.Run {
	item, _ := p.Base.Find(p.Former(r.Label))
	before, _ := item.(*plant.Run)
	return before
}

// lifeStep is one run that comes into service.
type lifeStep struct {
	pass        *lint.Pass
	run, before *plant.Run
	from        string
}

// judge looks at the last test of the link. A value that can not be read may
// hide the test that would do.
func (s *lifeStep) judge() {
	last, readable := lastTest(s.run)
	switch {
	case !readable:
	case last == nil:
		s.report(nil, lint.Observation, "without a test", "no test", acceptance.String(), "measure the link and record the test in the same commit")
	case !passed(last):
		s.report(last, failing(last), "its last test says "+resultOf(last), resultOf(last), verdictSource(last), "mend the link, measure it again and record the test")
	case s.from != schema.StatePlanned && s.stood(last):
		s.report(last, lint.Observation, "its last test is from before", "a test from before", acceptance.String(), "measure the link as it is now and record the test in the same commit")
	}
}

// stood says whether a test was recorded before the change.
func (s *lifeStep) stood(t *plant.Test) bool {
	item, ok := s.pass.Base.Find(s.pass.Former(t.Label))
	if !ok {
		return false
	}
	old, ok := item.(*plant.Test)
	if !ok {
		return false
	}
	was, _ := schema.TestDate.In(old.Record())
	is, _ := schema.TestDate.In(t.Record())
	return was == is
}

func (s *lifeStep) report(last *plant.Test, severity lint.Severity, fact, result, source, next string) {
	f := lint.AboutField(s.run.Entry, schema.RunState.Field)
	f.Severity = severity
	f.Message = fmt.Sprintf("%s: was %s and is in service, %s", schema.Printable(s.run.Label), s.from, fact)
	f.Working = []lint.Term{term("state before", s.from), term("state now", schema.StateInService)}
	f.Related = []schema.Note{note(s.before.Entry, "as it was")}
	if last == nil {
		f.Working = append(f.Working, term("tests of its link", "none"))
	} else {
		date, _ := schema.TestDate.In(last.Record())
		f.Working = append(f.Working, term("last test of its link", fmt.Sprintf("%s of %s: %s", schema.Printable(last.Label), date, resultOf(last))))
		f.Related = append(f.Related, note(last.Entry, "the last test"))
	}
	f.Result, f.Limit, f.Source, f.Next = result, "a test that passed before the run serves", source, next
	s.pass.Report(f)
}

// lastTest is the test of the run's link that was made last, nil without one;
// readable is false where a test does not say when it was made or how it went.
func lastTest(r *plant.Run) (last *plant.Test, readable bool) {
	var on unit.Date
	for _, part := range r.Link.Runs {
		for _, t := range part.Tests {
			date, dated := schema.TestDate.In(t.Record())
			_, judged := schema.TestResult.In(t.Record())
			if !dated || !judged || t.Damaged {
				return nil, false
			}
			if last == nil || !date.Before(on) {
				last, on = t, date
			}
		}
	}
	return last, true
}

func resultOf(t *plant.Test) string {
	word, _ := schema.TestResult.In(t.Record())
	return word
}

// failing is how a test that did not pass counts. How a result within the
// tester's own accuracy counts was not read.
func failing(t *plant.Test) lint.Severity {
	if resultOf(t) == "marginal-fail" {
		return lint.Observation
	}
	return lint.Nonconformity
}

// verdictSource says what a failed test rests on.
func verdictSource(t *plant.Test) string {
	if resultOf(t) == "marginal-fail" {
		return "the last test of the link; that a result within the tester's accuracy counts as failed is unconfirmed: check the printed standard"
	}
	return "the last test of the link"
}

// passed says whether the tester let the link pass, by whatever margin.
func passed(t *plant.Test) bool { return passing(resultOf(t)) }

func passing(result string) bool { return result == "pass" || result == "marginal-pass" }
