package render

import (
	"fmt"
	"slices"

	"homerun/diffreport"
	"homerun/schema"
)

type outagePart struct{ Port, When, Service string }

type materialPart struct{ Item, Quantity, Working string }

type labelPart struct {
	Text  string
	Times int
}

// A labelGroup is the labels that are put on so many times each.
type labelGroup struct {
	Times int
	Texts []string
}

// Often says how often each is put on.
func (g labelGroup) Often() string {
	switch g.Times {
	case 1:
		return "once"
	case 2:
		return "twice each"
	}
	return fmt.Sprintf("%d times each", g.Times)
}

type testPart struct{ Record, Limit, Reason string }

// A testGroup is neighbouring tests of several records against one limit, for
// one reason.
type testGroup struct {
	Limit, Reason string
	Records       []string
}

// A backPart is how one step is taken back.
type backPart struct {
	Step        int
	Space, Text string
}

// A backGroup is what is taken back in one space before going elsewhere, numbered
// down from First.
type backGroup struct {
	First int
	Space string
	Steps []backPart
}

type findingPart struct {
	Severity, Rule, Message string
	Working                 []fact
	Source                  string
}

// needs lists what the work takes.
func (p *paper) needs(o *diffreport.Order) {
	for _, out := range o.Outages {
		p.Outages = append(p.Outages, outagePart{schema.Printable(out.Port), schema.Printable(out.When()), schema.Printable(out.Service)})
	}
	for i := range o.Materials {
		m := &o.Materials[i]
		p.Materials = append(p.Materials, materialPart{schema.Printable(m.Item), m.Quantity(o.Units), schema.Printable(m.Working(o.Units))})
	}
	same := func(a, b string) bool { return a == b }
	p.Labels = each(neighbours(printable(o.Labels), same), func(row []string) labelPart { return labelPart{row[0], len(row)} })
	p.LabelCount, p.Strips = len(o.Labels), printable(o.Strips)
	p.Tests = each(o.Tests, func(t diffreport.Test) testPart {
		return testPart{schema.Printable(t.Record), schema.Printable(t.Limit), schema.Printable(t.Reason)}
	})
}

// TestGroups are the tests with each limit said once.
func (p *paper) TestGroups() []testGroup {
	alike := func(a, b testPart) bool { return a.Limit == b.Limit && a.Reason == b.Reason }
	return each(neighbours(p.Tests, alike), func(row []testPart) testGroup {
		return testGroup{row[0].Limit, row[0].Reason, each(row, func(t testPart) string { return t.Record })}
	})
}

// BackGroups are the steps taken back with each space said once.
func (p *paper) BackGroups() []backGroup {
	alike := func(a, b backPart) bool { return a.Space == b.Space && b.Step == a.Step-1 }
	return each(neighbours(p.BackOut, alike), func(row []backPart) backGroup { return backGroup{row[0].Step, row[0].Space, row} })
}

// LabelGroups are the labels by how often each is put on, seldom ones first.
func (p *paper) LabelGroups() []labelGroup {
	often := func(a, b labelPart) int { return a.Times - b.Times }
	sorted := slices.SortedStableFunc(slices.Values(p.Labels), often)
	alike := func(a, b labelPart) bool { return a.Times == b.Times }
	return each(neighbours(sorted, alike), func(row []labelPart) labelGroup {
		return labelGroup{row[0].Times, each(row, func(l labelPart) string { return l.Text })}
	})
}

func findingOf(f diffreport.FindingLine) findingPart {
	part := findingPart{Severity: f.Severity, Rule: f.Rule, Message: schema.Printable(f.Message), Source: schema.Printable(f.Source)}
	for _, t := range f.Working {
		part.Working = append(part.Working, fact{schema.Printable(t.Term), schema.Printable(t.Value)})
	}
	return part
}

// Terms are the working of a finding and what its limit comes from.
func (f *findingPart) Terms() []fact {
	if f.Source == "" {
		return f.Working
	}
	return append(slices.Clip(f.Working), fact{"source", f.Source})
}
