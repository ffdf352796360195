package render

import (
	"fmt"
	"strings"

	"homerun/diffreport"
	"homerun/schema/console"
)

func (d *document) cautions() {
	if len(d.order.Cautions) == 0 {
		return
	}
	d.heading("Cautions")
	for i, c := range d.order.Cautions {
		d.Line(2, 6, console.In(console.Notice, fmt.Sprintf("%d  ", i+1)), console.Plain(c))
	}
}

func (d *document) duties() {
	if len(d.order.Duties) == 0 {
		return
	}
	d.heading("Duties")
	for _, text := range d.order.Duties {
		d.Line(2, 4, console.Plain(text))
	}
}

func (d *document) outages() {
	if len(d.order.Outages) == 0 {
		return
	}
	d.heading("Without service")
	var terms [][2]string
	for _, o := range d.order.Outages {
		text := o.When()
		if o.Service != "" {
			text += ": " + o.Service
		}
		terms = append(terms, [2]string{o.Port, text})
	}
	d.Terms(2, terms...)
}

func (d *document) materials() {
	if len(d.order.Materials) == 0 {
		return
	}
	d.heading("Material")
	for i := range d.order.Materials {
		m := &d.order.Materials[i]
		d.Line(2, 6, console.In(console.Strong, m.Quantity(d.order.Units)), console.Plain("  "+m.Item))
		d.Line(6, 6, console.In(console.Quiet, m.Working(d.order.Units)))
	}
}

func (d *document) labels() {
	if len(d.order.Labels) == 0 {
		return
	}
	d.heading(fmt.Sprintf("Labels to print: %d", len(d.order.Labels)))
	var all []string
	for i := 0; i < len(d.order.Labels); {
		j := i
		for j < len(d.order.Labels) && d.order.Labels[j] == d.order.Labels[i] {
			j++
		}
		text := d.order.Labels[i]
		if j-i > 1 {
			text += fmt.Sprintf(" (%d times)", j-i)
		}
		all = append(all, text)
		i = j
	}
	d.Line(2, 2, console.Plain(strings.Join(all, ", ")))
	if len(d.order.Strips) > 0 {
		d.Line(2, 2, console.Plain("port strips: "+strings.Join(d.order.Strips, ", ")))
	}
}

func (d *document) tests() {
	if len(d.order.Tests) == 0 {
		return
	}
	d.heading("Tests")
	for _, t := range d.order.Tests {
		d.Line(2, 6, console.Plain("[ ] "), console.In(console.Strong, t.Record), console.Plain(": "+t.Limit+"; "+t.Reason))
	}
}

// backOut lists how the steps are taken back, the last one first.
func (d *document) backOut() {
	if len(d.order.BackOut) == 0 {
		return
	}
	d.heading("If the work has to be taken back, from the last step done backwards")
	width := len(fmt.Sprint(len(d.order.Steps)))
	for _, b := range d.order.BackOut {
		text := b.Text
		if b.Space != "" {
			text += ", in " + b.Space
		}
		d.Line(2, 9+width, console.Plain(fmt.Sprintf("[ ] %*d  ", width, b.Step)), console.Plain(text))
	}
}

func (d *document) findings(title string, list []diffreport.FindingLine) {
	if len(list) == 0 {
		return
	}
	d.heading(title)
	for i := range list {
		f := &list[i]
		d.Line(2, 6, console.Plain(f.Severity+", "+f.Rule+": "), console.In(console.Strong, f.Message))
		terms := make([][2]string, 0, len(f.Working)+1)
		for _, t := range f.Working {
			terms = append(terms, [2]string{t.Term, t.Value})
		}
		if f.Source != "" {
			terms = append(terms, [2]string{"source", f.Source})
		}
		d.Terms(6, terms...)
	}
}

func (d *document) deciders() {
	d.heading("Who decides")
	for _, text := range diffreport.Deciders() {
		d.Line(2, 4, console.Plain(text))
	}
}

// signatures are the lines that are signed on site.
func (d *document) signatures() {
	if len(d.order.Steps) == 0 {
		return
	}
	d.heading("Signed")
	for _, role := range []string{"ordered", "carried out", "tested", "accepted"} {
		line := strings.Repeat("_", 24)
		d.Line(2, 2, console.Plain(fmt.Sprintf("%-12s", role)+" name "+line+" date "+strings.Repeat("_", 12)))
	}
}
