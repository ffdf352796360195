package render

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"homerun/diffreport/audit"
	"homerun/schema/console"
)

// AuditOptions say how an audit is laid out as text.
type AuditOptions struct {
	console.Options
	// Most is how many rows of each table are listed; 0 is all of them.
	Most int
}

// AuditText writes audits for people. The error is that of the writer.
func AuditText(w io.Writer, reports []*audit.Report, o AuditOptions) error {
	page := console.New(w, o.Options)
	for i, r := range reports {
		if i > 0 {
			page.Blank()
		}
		auditText(page, auditPaperOf(r, onPaper, o.Most))
	}
	return page.Err()
}

func auditText(page *console.Page, p *auditPaper) {
	page.Line(0, 2, console.In(console.Strong, "Audit of the cable records of "+p.Plant))
	page.Terms(2, each(p.Facts, func(f fact) [2]string { return [2]string{f.Name, f.Text} })...)
	page.Blank()
	page.Line(0, 2, console.In(console.Strong, p.Verdict))
	for _, g := range p.Glance {
		page.Line(2, 4, console.Plain("- "+g.Text), console.In(console.Quiet, fmt.Sprintf(" (section %d)", g.Section)))
	}
	for i := range p.Tables {
		tableText(page, &p.Tables[i])
	}
	heading(page, p.After(1), "What can not be known")
	for _, u := range p.Unknown {
		page.Line(2, 4, console.Plain("- "+u))
	}
	heading(page, p.After(2), "Commands that give the figures again")
	for _, c := range p.Commands {
		page.Line(2, 4, console.Plain(c.Name+":"))
		page.Line(4, 6, console.Plain(c.Text))
	}
	page.Blank()
	for _, d := range p.Deciders {
		page.Line(0, 0, console.Plain(d))
	}
}

func heading(page *console.Page, number int, title string) {
	page.Blank()
	page.Line(0, 3, console.In(console.Strong, fmt.Sprintf("%d  %s", number, title)))
}

// tableText writes a table as columns where it is narrow enough, and otherwise
// a sentence a row.
func tableText(page *console.Page, t *auditTable) {
	heading(page, t.Number, t.Title)
	if len(t.Rows) == 0 {
		page.Line(2, 2, console.Plain(t.None))
		return
	}
	if t.Lead != "" {
		page.Line(2, 2, console.In(console.Quiet, t.Lead))
	}
	rows := t.Paper()
	if widths, narrow := columnWidths(t.headings(), rows); narrow {
		page.Line(2, 4, console.Plain(headingText(t, widths)))
		for _, row := range rows {
			page.Line(2, 4, console.Plain(columns(row, widths)))
		}
	} else {
		for _, row := range rows {
			page.Line(2, 4, console.In(console.Strong, fmt.Sprint(row[0])), console.Plain("  "+t.said(row)))
		}
	}
	if left := t.Left(); left > 0 {
		page.Line(2, 4, console.Plain(fmt.Sprintf("and %d more: --most 0 lists all", left)))
	}
}

func anyTexts(list []string) []any { return each(list, func(s string) any { return s }) }

// columnWidths are how wide the columns have to be, and whether all of them fit
// a page beside each other.
func columnWidths(headings []string, rows [][]any) (widths []int, narrow bool) {
	widths = make([]int, len(headings))
	for _, row := range append([][]any{anyTexts(headings)}, rows...) {
		for i, cell := range row {
			widths[i] = max(widths[i], utf8.RuneCountInString(fmt.Sprint(cell)))
		}
	}
	sum := 2
	for _, w := range widths {
		sum += w + 2
	}
	return widths, sum-2 <= console.DefaultWidth
}

// columns puts cells beside each other: numbers to the right, texts to the left.
// A page does not break at these spaces.
func columns(row []any, widths []int) string {
	var b strings.Builder
	for i, cell := range row {
		text := fmt.Sprint(cell)
		pad := strings.Repeat(" ", widths[i]-utf8.RuneCountInString(text))
		if _, number := cell.(int); number {
			text = pad + text
		} else {
			text += pad
		}
		b.WriteString(text + "  ")
	}
	return strings.TrimRight(b.String(), " ")
}

// headingText puts headings above their columns.
func headingText(t *auditTable, widths []int) string {
	row := anyTexts(t.headings())
	for i, c := range t.Columns {
		if c.Number {
			row[i] = strings.Repeat(" ", widths[i]-utf8.RuneCountInString(c.Name)) + c.Name
		}
	}
	return columns(row, widths)
}
