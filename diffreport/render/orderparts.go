package render

import (
	"fmt"
	"strings"

	"homerun/schema/console"
)

func (d *document) cautions() {
	if len(d.Cautions) == 0 {
		return
	}
	d.heading("Cautions")
	for _, c := range d.Cautions {
		d.Line(2, 6, console.In(console.Notice, fmt.Sprintf("%d  ", c.Number)), console.Plain(c.Text))
	}
}

func (d *document) outages() {
	if len(d.Outages) == 0 {
		return
	}
	d.heading("Without service")
	d.terms(2, each(d.Outages, func(o outagePart) fact {
		if o.Service != "" {
			return fact{o.Port, o.When + ": " + o.Service}
		}
		return fact{o.Port, o.When}
	}))
}

func (d *document) materials() {
	if len(d.Materials) == 0 {
		return
	}
	d.heading("Material")
	for _, m := range d.Materials {
		d.Line(2, 6, console.In(console.Strong, m.Quantity), console.Plain("  "+m.Item))
		d.Line(6, 6, console.In(console.Quiet, m.Working))
	}
}

func (d *document) labels() {
	if len(d.Labels)+len(d.Strips) == 0 {
		return
	}
	d.heading(fmt.Sprintf("Labels to print: %d", d.LabelCount))
	for _, g := range d.LabelGroups() {
		d.Line(2, 4, console.In(console.Quiet, g.Often()+": "), console.Plain(list(g.Texts)))
	}
	if len(d.Strips) > 0 {
		d.Line(2, 4, console.In(console.Quiet, "strips for the ports of: "), console.Plain(list(d.Strips)))
	}
}

func (d *document) tests() {
	if len(d.Tests) == 0 {
		return
	}
	d.heading("Tests")
	for _, g := range d.TestGroups() {
		about := g.Limit + "; " + g.Reason
		if len(g.Records) == 1 {
			d.Line(2, 6, console.Plain("[ ] "), console.In(console.Strong, g.Records[0]), console.Plain(": "+about))
			continue
		}
		d.Line(2, 6, console.Plain(about))
		for _, record := range g.Records {
			d.Line(4, 8, console.Plain("[ ] "), console.In(console.Strong, record))
		}
	}
}

// backOut lists how the steps are taken back, the last one first.
func (d *document) backOut() {
	if len(d.BackOut) == 0 {
		return
	}
	d.heading("If the work has to be taken back, from the last step done backwards")
	width := len(fmt.Sprint(lastStep(d.paper)))
	for _, b := range d.BackOut {
		text := b.Text
		if b.Space != "" {
			text += ", in " + b.Space
		}
		d.boxed(width, b.Step, text)
	}
}

func (d *document) findings(title string, list []findingPart) {
	if len(list) == 0 {
		return
	}
	d.heading(title)
	for i := range list {
		f := &list[i]
		d.Line(2, 6, console.Plain(f.Severity+", "+f.Rule+": "), console.In(console.Strong, f.Message))
		d.terms(6, f.Terms())
	}
}

// signatures are the lines that are signed on site.
func (d *document) signatures() {
	if len(d.Roles) == 0 {
		return
	}
	d.heading("Signed")
	for _, role := range d.Roles {
		line := strings.Repeat("_", 24)
		d.Line(2, 2, console.Plain(fmt.Sprintf("%-12s", role)+" name "+line+" date "+strings.Repeat("_", 12)))
	}
}
