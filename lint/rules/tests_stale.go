package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
)

// TestsStale finds runs that were pulled after their last measurement: it was
// of the cable before.
var TestsStale = &lint.Rule{
	Name: "tests-stale", Title: "Checks that a run has been measured since it was pulled",
	Severity: lint.Observation, Reach: lint.Along, Check: testsStale,
}

func testsStale(p *lint.Pass) {
	for _, r := range p.Plant.Runs {
		if len(r.Tests) == 0 || !r.Live() {
			continue
		}
		pulled, stated := schema.RunYear.In(r.Record())
		last, sure := latest(r)
		if !stated || !sure || last.when.Year() >= pulled {
			continue
		}
		f := lint.AboutField(r.Entry, schema.RunYear.Field)
		f.Message = fmt.Sprintf("%s: pulled in %d, last measured on %s", schema.Printable(r.Label), pulled, last.when)
		f.Working = []lint.Term{
			term("pulled", fmt.Sprintf("%d (stated)", pulled)),
			term("last measured", fmt.Sprintf("%s, %s", last.when, schema.Printable(last.test.Label))),
		}
		f.Result, f.Limit, f.Source = fmt.Sprint(last.when.Year()), fmt.Sprintf("%d or later", pulled), "common practice: a measurement is of the cable that it was made on"
		f.Next = "measure the cable that is there now, or correct the year"
		f.Excess = float64(pulled - last.when.Year())
		f.Related = []schema.Note{note(last.test.Entry, "the last measurement")}
		p.Report(f)
	}
}
