package render

import (
	"strings"

	"homerun/diffreport"
	"homerun/diffreport/drawing"
	"homerun/schema"
	"homerun/schema/plant"
)

// A Job is an order with the two plants that it leads between, of which its
// drawings are made. Base is nil where the records begin, Head where they end.
type Job struct {
	Order      diffreport.Order
	Base, Head *plant.Plant
}

// A paper is an order put into words, for the documents that are not text for a
// terminal. Every text in it can be printed: what a record holds is escaped here
// and nowhere else, so that no document can forget to. Markup is the document's
// own affair.
type paper struct {
	Number, Plant string
	Facts         []fact
	Reasons       []reason
	Verdict       string
	Executable    bool
	Clashes       []string
	Classes       []classPart
	Route         *drawing.Map
	Visits        []visitPart
	Cautions      []caution
	Outages       []outagePart
	Materials     []materialPart
	Labels        []labelPart
	LabelCount    int
	Tests         []testPart
	Introduced    []findingPart
	Cleared       []findingPart
	Duties        []string
	Proven        []string
	BackOut       []backPart
	Deciders      []string
	Roles         []string
}

type fact struct{ Name, Text string }

type reason struct{ Subject, Author, Day, Commit, Why string }

type classPart struct {
	Title string
	Items []changePart
}

type changePart struct {
	Name, Kind, Why string
	Fields          []fact
}

type caution struct {
	Number int
	Text   string
}

type outagePart struct{ Port, When, Service string }

type materialPart struct{ Item, Quantity, Working string }

type labelPart struct {
	Text  string
	Times int
}

type testPart struct{ Record, Limit, Reason string }

// A backPart is how one step is taken back.
type backPart struct {
	Step        int
	Space, Text string
}

type findingPart struct {
	Severity, Rule, Message string
	Working                 []fact
	Source                  string
}

// paperOf puts an order into words.
func paperOf(j Job) *paper {
	o := &j.Order
	p := &paper{
		Number: schema.Printable(o.Number), Plant: schema.Printable(o.Plant), Executable: o.Executable,
		Facts:   []fact{{"from", schema.Printable(revision(o.Base))}, {"to", schema.Printable(revision(o.Head))}, {"work", counts(o.Counts)}},
		Clashes: printable(o.Clashes),
		Route:   drawing.Route(o, j.Base, j.Head),
		Duties:  printable(o.Duties), Proven: printable(o.Proven), Deciders: diffreport.Deciders(),
	}
	p.Verdict = verdict(o)
	if len(o.Steps) > 0 {
		p.Roles = roles()
	}
	for i, text := range printable(o.Cautions) {
		p.Cautions = append(p.Cautions, caution{i + 1, text})
	}
	for _, c := range o.Commits {
		p.Reasons = append(p.Reasons, reason{schema.Printable(c.Subject), schema.Printable(c.Author), c.Time.Format("2006-01-02"), short(schema.Printable(c.ID)), schema.Printable(why(c))})
	}
	p.classes(o)
	p.visits(&j)
	p.needs(o)
	for _, b := range o.BackOut {
		p.BackOut = append(p.BackOut, backPart{b.Step, schema.Printable(b.Space), schema.Printable(b.Text)})
	}
	p.Introduced, p.Cleared = findingParts(o.Introduced), findingParts(o.Cleared)
	return p
}

func printable(list []string) []string { return each(list, schema.Printable) }

func verdict(o *diffreport.Order) string {
	switch {
	case !o.Executable:
		return "This change can not be carried out as it is recorded: see the clashes."
	case len(o.Steps) == 0:
		return "Nobody has to go to site."
	}
	return "The steps can be carried out in their order: no port side is used twice."
}

// roles are who signs.
func roles() []string { return []string{"ordered", "carried out", "tested", "accepted"} }

func (p *paper) classes(o *diffreport.Order) {
	for _, class := range diffreport.Classes() {
		part := classPart{Title: titleOf(class)}
		for i := range o.Changes {
			if c := &o.Changes[i]; c.Class == class {
				part.Items = append(part.Items, changeOf(o, c))
			}
		}
		if len(part.Items) > 0 {
			p.Classes = append(p.Classes, part)
		}
	}
}

func changeOf(o *diffreport.Order, c *diffreport.Change) changePart {
	part := changePart{Name: schema.Printable(c.Label), Kind: c.Kind, Why: schema.Printable(c.Why)}
	if c.Label == "" {
		part.Name = "without a label"
	}
	if c.Former != "" {
		part.Name = schema.Printable(c.Former) + ", now " + part.Name
	}
	for _, f := range c.AllFields(o.Units) {
		if tells(c, &f) {
			part.Fields = append(part.Fields, fact{f.Name, schema.Printable(transition(f.Before, f.After))})
		}
	}
	return part
}

// tells says whether a field is worth a line: every one that differs, and of
// records that came or went those that somebody on site acts on.
func tells(c *diffreport.Change, f *diffreport.FieldChange) bool {
	if c.Before.Record != nil && c.After.Record != nil {
		return true
	}
	return c.Class != diffreport.ClassRecordsOnly && f.Meaning > schema.Relabelling
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
	for _, text := range printable(o.Labels) {
		if n := len(p.Labels); n > 0 && p.Labels[n-1].Text == text {
			p.Labels[n-1].Times++
			continue
		}
		p.Labels = append(p.Labels, labelPart{text, 1})
	}
	for _, holder := range printable(o.Strips) {
		p.Labels = append(p.Labels, labelPart{"a strip for the ports of " + holder, 1})
	}
	p.LabelCount = len(o.Labels)
	for _, t := range o.Tests {
		p.Tests = append(p.Tests, testPart{schema.Printable(t.Record), schema.Printable(t.Limit), schema.Printable(t.Reason)})
	}
}

func findingParts(list []diffreport.FindingLine) []findingPart {
	return each(list, func(f diffreport.FindingLine) findingPart {
		part := findingPart{Severity: f.Severity, Rule: f.Rule, Message: schema.Printable(f.Message), Source: schema.Printable(f.Source)}
		for _, t := range f.Working {
			part.Working = append(part.Working, fact{schema.Printable(t.Term), schema.Printable(t.Value)})
		}
		return part
	})
}

// list joins a few names into one text.
func list(names []string) string { return strings.Join(names, ", ") }
