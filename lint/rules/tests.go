package rules

import (
	"fmt"
	"strings"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// The rules of this family hold the measurements of a run against what it is
// there for. They judge what is recorded and never measure anew.

// A proof is what the latest of some measurements says.
type proof struct {
	test   *plant.Test
	when   unit.Date
	result string
}

// passed says whether the tester let the run pass, with whatever margin.
func (p proof) passed() bool { return p.result == "pass" || p.result == "marginal-pass" }

// latest is the latest measurement of a run that says a day and a result; of
// two on one day the one recorded later. Sure is false where a measurement can
// not be read: it may be the latest.
func latest(r *plant.Run) (last proof, sure bool) {
	for _, t := range r.Tests {
		when, dated := schema.TestDate.In(t.Record())
		result, stated := schema.TestResult.In(t.Record())
		if !dated || !stated || t.Damaged {
			return proof{}, false
		}
		if last.test == nil || !when.Before(last.when) {
			last = proof{test: t, when: when, result: result}
		}
	}
	return last, true
}

// inService says whether the run carries something now.
func inService(r *plant.Run) bool {
	state, known := r.State()
	return known && state == schema.StateInService
}

// TestsMissing finds runs in service that nobody measured, in a plant that
// keeps its measurements.
var TestsMissing = &lint.Rule{
	Name: "tests-missing", Title: "Checks that a run in service has been measured",
	Severity: lint.Observation, Check: testsMissing,
}

// untested counts the runs without a measurement under one record, so that a
// bundle that nobody measured is one finding and not twenty-four.
type untested struct {
	about    schema.Entry
	runs     []*plant.Run
	measured int
}

func testsMissing(p *lint.Pass) {
	if len(p.Plant.Tests) == 0 || testsAstray(p.Plant) {
		return
	}
	var groups []*untested
	byRecord := make(map[*schema.Record]*untested)
	for _, r := range p.Plant.Runs {
		if !inService(r) {
			continue
		}
		about := r.Entry
		if r.Bundle != nil {
			about = r.Bundle.Entry
		}
		g := byRecord[about.Record]
		if g == nil {
			g = &untested{about: about}
			byRecord[about.Record] = g
			groups = append(groups, g)
		}
		if measured(r.Link) {
			g.measured++
		} else {
			g.runs = append(g.runs, r)
		}
	}
	for _, g := range groups {
		if len(g.runs) > 0 {
			p.Report(g.finding())
		}
	}
}

// testsAstray says whether a measurement names no run that could be found: it
// may be of any.
func testsAstray(p *plant.Plant) bool {
	for _, t := range p.Tests {
		if t.Run == nil {
			return true
		}
	}
	return false
}

// measured says whether any run of a link was: a measurement through a
// consolidation point or splices is that of the whole link.
func measured(l *plant.Link) bool {
	for _, r := range l.Runs {
		if len(r.Tests) > 0 {
			return true
		}
	}
	return false
}

// mostNamed bounds how many runs one finding names.
const mostNamed = 6

func (g *untested) finding() lint.Finding {
	f := lint.About(g.about)
	all := len(g.runs) + g.measured
	if g.runs[0].Record() == g.about.Record {
		f.Message = schema.Printable(g.about.Label) + ": in service, no measurement is recorded"
	} else {
		f.Message = fmt.Sprintf("%s: no measurement is recorded for %d of its %s in service: %s",
			schema.Printable(g.about.Name()), len(g.runs), counted(all, "run", "runs"), runNames(g.runs))
	}
	f.Working = []lint.Term{
		term("runs in service", fmt.Sprint(all)), term("measured", fmt.Sprint(g.measured)),
		term("not measured", fmt.Sprintf("%d - %d = %d", all, g.measured, len(g.runs))),
	}
	f.Result, f.Limit = fmt.Sprintf("%d without a measurement", len(g.runs)), "every run in service measured"
	f.Source = "ANSI/TIA-1152-A, field testing of installed cabling; unconfirmed: check the printed standard"
	f.Next = "measure them and record the result in a test record, or set the state of what is not in service"
	f.Excess = float64(len(g.runs))
	if g.runs[0].Record() != g.about.Record {
		f.Related = []schema.Note{note(g.runs[0].Entry, "the first of them")}
	}
	return f
}

// runNames lists runs, cut short.
func runNames(runs []*plant.Run) string {
	names := make([]string, 0, mostNamed)
	for _, r := range runs[:min(len(runs), mostNamed)] {
		names = append(names, schema.Printable(r.Label))
	}
	text := strings.Join(names, ", ")
	if more := len(runs) - mostNamed; more > 0 {
		text += fmt.Sprintf(" and %d more", more)
	}
	return text
}
