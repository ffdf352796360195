package render

import (
	"fmt"
	"io"
	"strings"
)

// mostComment is how many bytes of Markdown are written at most: the places that
// show it below a change refuse more than 65,536 characters (common practice).
const mostComment = 60_000

// OrderMarkdown writes orders as Markdown for a comment on a change: the verdict
// and the counts first, everything long folded. What does not fit into a comment
// is counted and said. The error is that of the writer.
func OrderMarkdown(w io.Writer, jobs []Job) error {
	room := mostComment / max(1, len(jobs))
	var all strings.Builder
	for i, j := range jobs {
		if i > 0 {
			all.WriteString("\n---\n\n")
		}
		m := &markdown{room: room}
		m.order(paperOf(j))
		all.WriteString(m.String())
	}
	_, err := io.WriteString(w, all.String())
	return err
}

// A markdown is one order on its way into a comment.
type markdown struct {
	strings.Builder
	room int
}

func (m *markdown) line(format string, args ...any) {
	_, _ = fmt.Fprintf(m, format+"\n", args...) // a builder takes everything
}

// order writes the parts, the shortest and most telling first.
func (m *markdown) order(p *paper) {
	m.head(p)
	m.part("Clashes", "clash", "clashes", plainItems(p.Clashes), open)
	m.part("Findings that this change introduces", "finding", "findings", findingItems(p.Introduced), folded)
	m.part("Findings that this change clears", "finding", "findings", findingItems(p.Cleared), folded)
	m.part("Without service", "port", "ports", outageItems(p), folded)
	m.part("Cautions", "caution", "cautions", cautionItems(p), folded)
	m.part("Duties", "duty", "duties", plainItems(p.Duties), folded)
	m.part("What changes", "record", "records", changeItems(p), folded)
	m.part("Steps", "step", "steps", stepItems(p), folded)
	m.part("Taking the work back", "step", "steps", backItems(p), folded)
	m.part("Material", "item", "items", materialItems(p), folded)
	m.part("Labels to print", "label", "labels", labelItems(p), folded)
	m.part("Tests", "test", "tests", testItems(p), folded)
	m.line("")
	for _, text := range p.Deciders {
		m.line("> %s  ", escape(text))
	}
}

func (m *markdown) head(p *paper) {
	m.line("### Work order %s", code(p.Number))
	m.line("")
	m.line("Plant %s, %s", code(p.Plant), escape(p.Facts[0].Name+" "+p.Facts[0].Text+" "+p.Facts[1].Name+" "+p.Facts[1].Text))
	m.line("")
	m.line("**%s**", escape(p.Facts[2].Text))
	m.line("")
	m.line("%s", escape(p.Verdict))
	if n := len(p.Visits); n > 0 {
		m.line("%s in %s, %s without service meanwhile, %s to print, %s to run.", count(lastStep(p), "step", "steps"), count(n, "visit", "visits"),
			count(len(p.Outages), "port", "ports"), count(p.LabelCount, "label", "labels"), count(len(p.Tests), "test", "tests"))
	}
	if len(p.Proven) > 0 {
		m.line("")
	}
	for _, text := range p.Proven {
		m.line("- %s", escape(text))
	}
	const most = 20
	if len(p.Reasons) > 0 {
		m.line("\n**Because of**\n")
	}
	for i, r := range p.Reasons {
		if i == most {
			m.line("- and %s more", count(len(p.Reasons)-most, "commit", "commits"))
			break
		}
		because := ""
		if r.Why != "" {
			because = "<br>" + escape(r.Why)
		}
		m.line("- <b>%s</b> (%s, %s, %s)%s", escape(cut(r.Subject)), escape(cut(r.Author)), r.Day, code(r.Commit), because)
	}
}

// lastStep is the highest number of a step, 0 where there is none.
func lastStep(p *paper) int {
	if len(p.Visits) == 0 {
		return 0
	}
	last := p.Visits[len(p.Visits)-1].Steps
	return last[len(last)-1].Number
}

// A fold says whether a part of a comment is closed at first.
type fold uint8

const (
	folded fold = iota
	open
)

// An item is a few lines of Markdown; heading ones are not counted.
type item struct {
	text    string
	heading string
}

// part writes a part with as many of its items as there is room for.
func (m *markdown) part(title, one, many string, items []item, f fold) {
	if len(items) == 0 {
		return
	}
	const reserve = 4000 // for the parts that follow, each of which says what it leaves out
	m.line("")
	if f == folded {
		m.line("<details><summary>%s (%d)</summary>", title, len(items))
	} else {
		m.line("**%s (%d)**", title, len(items))
	}
	m.line("")
	heading := ""
	for i, it := range items {
		if m.Len()+len(it.text)+len(it.heading) > m.room-reserve {
			m.line("")
			m.line("%s more, too much for a comment: the page and the spreadsheet of this order list them.", count(len(items)-i, one, many))
			break
		}
		if it.heading != "" && it.heading != heading {
			m.line("\n%s\n", it.heading)
		}
		heading = it.heading
		m.line("%s", it.text)
	}
	if f == folded {
		m.line("")
		m.line("</details>")
	}
}
