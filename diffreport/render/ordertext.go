package render

import (
	"fmt"
	"io"
	"strings"

	"homerun/schema/console"
)

// OrderText writes an order as a document for the site: what changes, what it
// needs, the steps with boxes to tick. The error is that of the writer.
func OrderText(w io.Writer, j Job, opts console.Options) error {
	d := &document{Page: console.New(w, opts), paper: paperOf(j)}
	d.head()
	d.texts("Clashes", console.Alarm, d.Clashes)
	d.cautions()
	d.texts("Duties", console.Ordinary, d.Duties)
	d.texts("Who decides", console.Ordinary, d.Deciders)
	d.changes()
	d.outages()
	d.materials()
	d.labels()
	d.findings("Findings that this change introduces", d.Introduced)
	d.findings("Findings that this change clears", d.Cleared)
	d.steps()
	d.tests()
	d.signatures()
	d.backOut()
	return d.Err()
}

// A document is an order on its way onto a page of text.
type document struct {
	*console.Page
	*paper
}

// heading opens a part of the document.
func (d *document) heading(text string) {
	d.Blank()
	d.Line(0, 2, console.In(console.Strong, text))
}

func (d *document) head() {
	d.Line(0, 2, console.In(console.Strong, "Work order "+d.Number))
	terms := append([]fact{{"plant", d.Plant}}, d.Facts...)
	for i, r := range d.Reasons {
		name := ""
		if i == 0 {
			name = "because of"
		}
		terms = append(terms, fact{name, fmt.Sprintf("%s (%s, %s, %s)", r.Subject, r.Author, r.Day, r.Commit)})
		if r.Why != "" {
			terms = append(terms, fact{"", r.Why})
		}
	}
	d.terms(2, terms)
	tone := console.Good
	if !d.Executable {
		tone = console.Alarm
	}
	d.Line(2, 4, console.In(tone, d.Verdict))
	for _, text := range d.Proven {
		d.Line(4, 6, console.Plain(text))
	}
}

func (d *document) terms(indent int, facts []fact) {
	d.Terms(indent, each(facts, func(f fact) [2]string { return [2]string{f.Name, f.Text} })...)
}

// texts lists sentences below a heading.
func (d *document) texts(title string, tone console.Tone, list []string) {
	if len(list) == 0 {
		return
	}
	d.heading(title)
	for _, text := range list {
		d.Line(2, 4, console.In(tone, text))
	}
}

func (d *document) changes() {
	for _, class := range d.Classes {
		d.heading(class.Title)
		for _, g := range class.Groups() {
			if name := g.Single(); name != "" {
				d.Line(2, 6, console.In(console.Strong, name), console.Plain(", "+g.Kind+": "+g.Why))
				d.terms(6, g.Rows[0].Fields)
				continue
			}
			d.Line(2, 6, console.Plain(g.Kind+": "+g.Why))
			for _, row := range g.Rows {
				d.changeRow(row)
			}
		}
	}
}

// changeRow writes records of a group, and their fields one after the other.
func (d *document) changeRow(row changeRow) {
	line := []console.Span{console.In(console.Strong, strings.Join(row.Names, "; "))}
	for i, f := range row.Fields {
		sep := "; "
		if i == 0 {
			sep = ": "
		}
		line = append(line, console.Plain(sep), console.In(console.Quiet, f.Name), console.Plain(" "+f.Text))
	}
	d.Line(4, 8, line...)
}

// steps lists the steps, with a heading for each visit to a room.
func (d *document) steps() {
	if len(d.Visits) == 0 {
		return
	}
	d.heading("Steps")
	width := len(fmt.Sprint(lastStep(d.paper)))
	for i := range d.Visits {
		v := &d.Visits[i]
		d.Blank()
		heading := []console.Span{console.In(console.Strong, fmt.Sprintf("Visit %d, in %s", v.Number, v.Space))}
		if v.Title != "" {
			heading = append(heading, console.Plain(", "+v.Title))
		}
		d.Line(2, 4, heading...)
		for k := range v.Steps {
			s := &v.Steps[k]
			d.boxed(width, s.Number, s.Text)
			if notes := s.Notes(); len(notes) > 0 {
				d.Line(9+width, 9+width, console.In(console.Quiet, strings.Join(notes, "; ")))
			}
		}
	}
}

// boxed is a numbered step with a box to tick.
func (d *document) boxed(width, number int, text string) {
	d.Line(2, 9+width, console.Plain(fmt.Sprintf("[ ] %*d  ", width, number)), console.Plain(text))
}
