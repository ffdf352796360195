package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// TransitionTestEdited finds recorded measurements that were changed after they
// had been recorded.
var TransitionTestEdited = &lint.Rule{
	Name: "transition-test-edited", Title: "Checks that no recorded test result is changed afterwards",
	Severity: lint.Nonconformity, Change: true, Check: transitionTestEdited,
}

func transitionTestEdited(p *lint.Pass) {
	for _, t := range p.Plant.Tests {
		item, _ := p.Base.Find(p.Former(t.Label))
		was, stood := item.(*plant.Test)
		if !stood || was.Record() == t.Record() {
			continue
		}
		if edits := testEdits(p, was.Entry, t.Entry); len(edits) > 0 {
			p.Report(editedFinding(was.Entry, t.Entry, edits))
		}
	}
}

// edit is one value of a test that is another than before.
type edit struct {
	field    *schema.Field
	was, now string
}

// testEdits compares what was measured, in the order of the record language.
// What was not stated before is added, not edited; what can not be read is no
// value.
func testEdits(p *lint.Pass, was, is schema.Entry) []edit {
	var edits []edit
	for _, field := range []*schema.Field{
		schema.TestRun.Field, schema.TestLimit.Field, schema.TestResult.Field, schema.TestLength.Field,
		schema.TestMargin.Field, schema.TestLoss.Field, schema.TestDate.Field,
	} {
		b, h := was.Lookup(field), is.Lookup(field)
		if b == nil || b.Bad || h != nil && h.Bad || b.Same(h) {
			continue
		}
		if h != nil && field == schema.TestRun.Field && p.Former(h.Text) == b.Text {
			continue // the run was relabelled, and the test follows it
		}
		edits = append(edits, edit{field, b.Show(unit.Metric), h.Show(unit.Metric)})
	}
	return edits
}

// editedFinding is a nonconformity where a failed test now says that it passed;
// anything else may be a slip of the pen put right.
func editedFinding(was, is schema.Entry, edits []edit) lint.Finding {
	first := edits[0]
	severity := lint.Observation
	before, _ := schema.TestResult.In(was.Record)
	if now, known := schema.TestResult.In(is.Record); known && before != "" && !passing(before) && passing(now) {
		severity = lint.Nonconformity
		first = edit{schema.TestResult.Field, before, now}
	}
	f := lint.AboutField(is, first.field)
	f.Severity = severity
	f.Message = fmt.Sprintf("%s: %s was recorded as %s and now is %s", schema.Printable(is.Label), first.field.Name, schema.Printable(first.was), schema.Printable(first.now))
	for _, e := range edits {
		f.Working = append(f.Working, term(e.field.Name+" before", schema.Printable(e.was)), term(e.field.Name+" now", schema.Printable(e.now)))
		f.Key = append(f.Key, e.field.Name)
	}
	f.Result, f.Limit, f.Source = schema.Printable(first.now), schema.Printable(first.was), "the test as it was recorded"
	f.Next = "put the test back as it was, and record a new measurement as a test of its own"
	f.Related = []schema.Note{note(was, "as it was recorded")}
	return f
}
