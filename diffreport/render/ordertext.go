package render

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/console"
)

// OrderText writes an order as a document for the site: what changes, the steps
// with boxes to tick, and what they need. The error is that of the writer.
func OrderText(w io.Writer, o diffreport.Order, opts console.Options) error {
	d := &document{Page: console.New(w, opts), order: o, caution: make(map[string]int)}
	for i, c := range o.Cautions {
		d.caution[c] = i + 1
	}
	d.head()
	d.changes()
	d.clashes()
	d.steps()
	d.cautions()
	d.duties()
	d.outages()
	d.materials()
	d.labels()
	d.tests()
	d.backOut()
	d.findings("Findings that this change introduces", o.Introduced)
	d.findings("Findings that this change clears", o.Cleared)
	d.deciders()
	d.signatures()
	return d.Err()
}

// A document is an order on its way onto a page.
type document struct {
	*console.Page
	order   diffreport.Order
	caution map[string]int
}

// heading opens a part of the document.
func (d *document) heading(text string) {
	d.Blank()
	d.Line(0, 2, console.In(console.Strong, text))
}

func (d *document) head() {
	o := d.order
	d.Line(0, 2, console.In(console.Strong, "Work order "+o.Number))
	terms := [][2]string{{"plant", o.Plant}, {"from", revision(o.Base)}, {"to", revision(o.Head)}, {"work", counts(o.Counts)}}
	for i, c := range o.Commits {
		name := ""
		if i == 0 {
			name = "because of"
		}
		terms = append(terms, [2]string{name, fmt.Sprintf("%s (%s, %s, %s)", c.Subject, c.Author, c.Time.Format("2006-01-02"), short(c.ID))})
		if text := why(c); text != "" {
			terms = append(terms, [2]string{"", text})
		}
	}
	d.Terms(2, terms...)
	d.verdict()
}

// why is what a commit's message says beside its subject: the first paragraph,
// where the author gave one.
func why(c diffreport.Commit) string {
	first, _, _ := strings.Cut(c.Body, "\n\n")
	return cut(strings.Join(strings.Fields(first), " "))
}

// verdict says whether the steps work, and what was shown of them.
func (d *document) verdict() {
	tone := console.Good
	if !d.order.Executable {
		tone = console.Alarm
	}
	d.Line(2, 4, console.In(tone, verdict(&d.order)))
	for _, text := range d.order.Proven {
		d.Line(4, 6, console.Plain(text))
	}
}

func revision(id string) string {
	switch id {
	case "":
		return "nothing: the records begin here"
	case "index":
		return "what is staged"
	case "worktree":
		return "the working tree"
	}
	return "commit " + short(id)
}

// counts lists the classes that there is anything in.
func counts(n diffreport.Counts) string {
	var parts []string
	for _, c := range []struct {
		n         int
		one, many string
	}{
		{n.Moves, "move", "moves"},
		{n.Adds, "add", "adds"},
		{n.Changes, "change", "changes"},
		{n.Removals, "removal", "removals"},
		{n.Relabels, "relabel", "relabels"},
		{n.RecordsOnly, "correction of the records only", "corrections of the records only"},
	} {
		if c.n > 0 {
			parts = append(parts, count(c.n, c.one, c.many))
		}
	}
	if len(parts) == 0 {
		return "none: the records say the same"
	}
	return strings.Join(parts, ", ")
}

func titleOf(c diffreport.Class) string {
	switch c {
	case diffreport.ClassMove:
		return "Moves"
	case diffreport.ClassAdd:
		return "Adds"
	case diffreport.ClassChange:
		return "Changes"
	case diffreport.ClassRemoval:
		return "Removals"
	case diffreport.ClassRelabel:
		return "Relabels"
	case diffreport.ClassRecordsOnly:
		return "Records only: nobody goes to site"
	}
	return "Other"
}

func (d *document) changes() {
	for _, class := range diffreport.Classes() {
		first := true
		for i := range d.order.Changes {
			c := &d.order.Changes[i]
			if c.Class != class {
				continue
			}
			if first {
				d.heading(titleOf(class))
				first = false
			}
			d.change(c)
		}
	}
}

func (d *document) change(c *diffreport.Change) {
	name := c.Label
	if name == "" {
		name = "without a label"
	}
	if c.Former != "" {
		name = c.Former + ", now " + c.Label
	}
	d.Line(2, 6, console.In(console.Strong, name), console.Plain(fmt.Sprintf(", %s: %s", c.Kind, c.Why)))
	var terms [][2]string
	for _, f := range c.AllFields(d.order.Units) {
		if both := c.Before.Record != nil && c.After.Record != nil; both || c.Class != diffreport.ClassRecordsOnly && f.Meaning > schema.Relabelling {
			terms = append(terms, [2]string{f.Name, transition(f.Before, f.After)})
		}
	}
	d.Terms(6, terms...)
}

func (d *document) clashes() {
	if len(d.order.Clashes) == 0 {
		return
	}
	d.heading("Clashes")
	for _, c := range d.order.Clashes {
		d.Line(2, 4, console.In(console.Alarm, c))
	}
}

// steps lists the steps, with a heading for each visit to a room.
func (d *document) steps() {
	if len(d.order.Steps) == 0 {
		return
	}
	d.heading("Steps")
	for _, v := range d.order.Visits() {
		d.Blank()
		d.Line(2, 4, console.In(console.Strong, fmt.Sprintf("Visit %d, in %s", v.Number, place(v.Space))))
		for i := range v.Steps {
			d.step(&v.Steps[i])
		}
	}
}

func place(space string) string {
	if space == "" {
		return "a place that the records do not state"
	}
	return space
}

func (d *document) step(s *diffreport.Step) {
	width := len(fmt.Sprint(len(d.order.Steps)))
	d.Line(2, 9+width, console.Plain(fmt.Sprintf("[ ] %*d  ", width, s.Number)), console.Plain(s.Text))
	var notes []string
	if len(s.After) > 0 {
		notes = append(notes, "after "+numbers("step", s.After))
	}
	if s.RoomFor != "" {
		notes = append(notes, roomFor(s.RoomFor))
	}
	if len(s.Outage) > 0 {
		notes = append(notes, "without service: "+strings.Join(s.Outage, ", "))
	}
	var marks []int
	for _, c := range s.Cautions {
		marks = append(marks, d.caution[c])
	}
	if slices.Sort(marks); len(marks) > 0 {
		notes = append(notes, numbers("caution", marks))
	}
	if len(notes) > 0 {
		d.Line(9+width, 9+width, console.In(console.Quiet, strings.Join(notes, "; ")))
	}
}

// roomFor says why a cable comes off that stays.
func roomFor(cable string) string { return "off for a moment, to make room for " + cable }

// numbers writes numbers with the noun that they number, rows of neighbours
// drawn together.
func numbers(noun string, list []int) string {
	var parts []string
	for i := 0; i < len(list); {
		j := i
		for j+1 < len(list) && list[j+1] == list[j]+1 {
			j++
		}
		switch {
		case j > i+1:
			parts = append(parts, fmt.Sprintf("%d to %d", list[i], list[j]))
		case j > i:
			parts = append(parts, fmt.Sprint(list[i]), fmt.Sprint(list[j]))
		default:
			parts = append(parts, fmt.Sprint(list[i]))
		}
		i = j + 1
	}
	if len(list) > 1 {
		noun += "s"
	}
	return noun + " " + strings.Join(parts, ", ")
}
