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

// latest is the latest measurement of a run. Sure is false where one can not be
// read: it may be the latest.
func latest(r *plant.Run) (last proof, sure bool) {
	t, sure := r.Latest()
	if t == nil {
		return proof{}, sure
	}
	last.test = t
	last.when, _ = schema.TestDate.In(t.Record())
	last.result, _ = schema.TestResult.In(t.Record())
	return last, sure
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
	Severity: lint.Observation, Reach: lint.Along, Wakes: []func(*schema.Record) bool{isTest}, Check: testsMissing,
}

// untested counts the runs without a measurement under one record, so that a
// bundle that nobody measured is one finding and not twenty-four.
type untested struct {
	about schema.Entry
	// named are the first of them, as many as a finding names.
	named                []*plant.Run
	unmeasured, measured int
}

func testsMissing(p *lint.Pass) {
	if len(p.Plant.Tests) == 0 || testsAstray(p.Plant) {
		return
	}
	var groups []*untested
	byRecord := make(map[*schema.Record]*untested)
	var last *untested // runs of a bundle follow each other
	for _, r := range p.Plant.Runs {
		if !inService(r) {
			continue
		}
		about := r.Entry
		if r.Bundle != nil {
			about = r.Bundle.Entry
		}
		if last == nil || last.about.Record != about.Record {
			if last = byRecord[about.Record]; last == nil {
				last = &untested{about: about}
				byRecord[about.Record] = last
				groups = append(groups, last)
			}
		}
		last.count(r)
	}
	for _, g := range groups {
		if g.unmeasured > 0 {
			p.Report(g.finding())
		}
	}
}

func (g *untested) count(r *plant.Run) {
	if measured(r.Link) {
		g.measured++
		return
	}
	if g.unmeasured++; len(g.named) < mostNamed {
		g.named = append(g.named, r)
	}
}

func isTest(r *schema.Record) bool { return r.Kind.Name == schema.KindTest }

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
	all := g.unmeasured + g.measured
	alone := g.named[0].Record() == g.about.Record
	if alone {
		f.Message = schema.Printable(g.about.Label) + ": in service, no measurement is recorded"
	} else {
		f.Message = fmt.Sprintf("%s: no measurement is recorded for %d of its %s in service: %s",
			schema.Printable(g.about.Name()), g.unmeasured, counted(all, "run", "runs"), runNames(g.named, g.unmeasured))
	}
	f.Working = []lint.Term{
		term("runs in service", fmt.Sprint(all)), term("measured", fmt.Sprint(g.measured)),
		term("not measured", fmt.Sprintf("%d - %d = %d", all, g.measured, g.unmeasured)),
	}
	f.Result, f.Limit = fmt.Sprintf("%d without a measurement", g.unmeasured), "every run in service measured"
	f.Source = "ANSI/TIA-1152-A, field testing of installed cabling; unconfirmed: check the printed standard"
	f.Next = "measure them and record the result in a test record, or set the state of what is not in service"
	f.Excess = float64(g.unmeasured)
	if !alone {
		f.Related = []schema.Note{note(g.named[0].Entry, "the first of them")}
	}
	return f
}

// runNames lists the first of all runs, and how many there are more.
func runNames(first []*plant.Run, all int) string {
	names := make([]string, 0, len(first))
	for _, r := range first {
		names = append(names, schema.Printable(r.Label))
	}
	text := strings.Join(names, ", ")
	if more := all - len(first); more > 0 {
		text += fmt.Sprintf(" and %d more", more)
	}
	return text
}
