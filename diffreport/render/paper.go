package render

import (
	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
)

// A Job is an order with the two plants that it leads between, of which its
// drawings are made. Base is nil where the records begin, Head where they end.
type Job struct {
	Order      diffreport.Order
	Base, Head *plant.Plant
}

// A paper is an order put into words, for the documents that people read. Every
// text in it can be printed: what a record holds is escaped here and nowhere
// else, so that no document can forget to. Markup is the document's own affair.
type paper struct {
	Number, Plant string
	Facts         []fact
	Reasons       []reason
	Verdict       string
	Executable    bool
	Clashes       []string
	Classes       []classPart
	Visits        []visitPart
	Cautions      []caution
	Outages       []outagePart
	Materials     []materialPart
	Labels        []labelPart
	LabelCount    int
	Strips        []string // what has a strip of labels for its ports
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

// A reason is a commit that led to the order.
type reason struct{ Subject, Author, Day, Commit, Why string }

// A caution is numbered, and named by its number where it matters.
type caution struct {
	Number int
	Text   string
}

// paperOf puts an order into words.
func paperOf(j Job) *paper {
	o := &j.Order
	p := &paper{
		Number: schema.Printable(o.Number), Plant: schema.Printable(o.Plant), Executable: o.Executable, Verdict: verdict(o),
		Facts:   []fact{{"from", schema.Printable(revision(o.Base))}, {"to", schema.Printable(revision(o.Head))}, {"work", counts(o.Counts)}},
		Clashes: printable(o.Clashes), Duties: printable(o.Duties), Proven: printable(o.Proven), Deciders: diffreport.Deciders(),
	}
	if len(o.Steps) > 0 {
		p.Roles = []string{"ordered", "carried out", "tested", "accepted"}
	}
	for i, text := range printable(o.Cautions) {
		p.Cautions = append(p.Cautions, caution{i + 1, text})
	}
	p.Reasons = each(o.Commits, reasonOf)
	p.classes(o)
	p.visits(&j)
	p.needs(o)
	p.BackOut = each(o.BackOut, func(b diffreport.Back) backPart {
		return backPart{b.Step, schema.Printable(b.Space), schema.Printable(b.Text)}
	})
	p.Introduced, p.Cleared = each(o.Introduced, findingOf), each(o.Cleared, findingOf)
	return p
}

func printable(list []string) []string { return each(list, schema.Printable) }

func reasonOf(c diffreport.Commit) reason {
	return reason{schema.Printable(c.Subject), schema.Printable(c.Author), c.Time.Format("2006-01-02"), short(schema.Printable(c.ID)), schema.Printable(why(c))}
}
