package render

import (
	"fmt"
	"strings"

	"homerun/diffreport/audit"
	"homerun/diffreport/history"
	"homerun/schema"
)

// An auditTable is one part of an audit. Rows hold numbers and texts; the first
// Shown of them are for paper, all of them for a spreadsheet.
type auditTable struct {
	// Name is short and for a sheet, Title and Lead are for people; None is what to
	// say of an empty one. Number is that of the section.
	Name, Title, Lead, None string
	Number                  int
	Columns                 []column
	Rows                    [][]any
	Shown                   int
	// Chart draws the table's figures, where it has one.
	Chart *chart
	// whole tables are summaries, and never cut.
	whole bool
}

// A column is what stands below one heading.
type column struct {
	Name string
	// Said is how a cell of it goes on with the sentence that a row is, where a page
	// is too narrow for columns; %v is the cell.
	Said string
	// Number columns stand to the right, texts in Whole ones are not torn, and Long
	// ones hold sentences.
	Number, Whole, Long bool
}

func texted(name, said string) column { return column{Name: name, Said: said} }

func long(name, said string) column { return column{Name: name, Said: said, Long: true} }

func whole(name, said string) column { return column{Name: name, Said: said, Whole: true} }

func counted(name, said string) column { return column{Name: name, Said: said, Number: true} }

// settle makes every text printable and says how many rows are shown; 0 is all.
func (t *auditTable) settle(most int) {
	for i := range t.Columns {
		t.Columns[i].Name = schema.Printable(t.Columns[i].Name)
	}
	for _, row := range t.Rows {
		for i, cell := range row {
			if text, is := cell.(string); is {
				row[i] = schema.Printable(text)
			}
		}
	}
	t.Title = schema.Printable(t.Title)
	t.Lead, t.None = schema.Printable(t.Lead), schema.Printable(t.None)
	t.Shown = len(t.Rows)
	if most > 0 && !t.whole {
		t.Shown = min(t.Shown, most)
	}
}

// Left is how many rows paper does not show.
func (t *auditTable) Left() int { return len(t.Rows) - t.Shown }

// Paper is the rows that paper shows.
func (t *auditTable) Paper() [][]any { return t.Rows[:t.Shown] }

// Short says whether the rows can stand on one sheet of paper together.
func (t *auditTable) Short() bool {
	const most = 12
	return t.Shown <= most
}

// headings are the names of the columns.
func (t *auditTable) headings() []string {
	return each(t.Columns, func(c column) string { return c.Name })
}

// said is a row as a sentence, but for its first cell.
func (t *auditTable) said(row []any) string {
	var b strings.Builder
	for i, cell := range row[1:] {
		if text := fmt.Sprint(cell); text != "" {
			b.WriteString(strings.Replace(t.Columns[i+1].Said, "%v", text, 1))
		}
	}
	return strings.TrimPrefix(strings.TrimPrefix(b.String(), "; "), ", ")
}

// revisionColumns head a commit's cells.
func revisionColumns() []column {
	return []column{whole("Day", ""), whole("Commit", "%v"), texted("Author", " by %v"), long("Subject", ": %v")}
}

func revisionCells(r history.Revision) []any {
	return []any{audit.Day(r), short(r.ID), r.Author, r.Subject}
}
