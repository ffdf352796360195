package render

import (
	"fmt"
	"io"
	"slices"

	"homerun/diffreport/audit"
	"homerun/schema/workbook"
)

// AuditWorkbook writes audits as one spreadsheet, a sheet for each table and one
// about the report. Every row names its plant. The error is that of the writer, or
// of an audit with more rows than a sheet has.
func AuditWorkbook(w io.Writer, reports []*audit.Report) error {
	about := workbook.Sheet{Name: "About", Headings: []string{"Plant", "What", "Value"}}
	var all []workbook.Sheet
	for i, r := range reports {
		p := auditPaperOf(r, inSheets, 0)
		about.Rows = append(about.Rows, aboutRows(p)...)
		for j := range p.Tables {
			t := &p.Tables[j]
			if i == 0 {
				all = append(all, workbook.Sheet{Name: t.Name, Headings: append([]string{"Plant"}, t.headings()...)})
			}
			take(&all[j], p.Plant, t)
		}
	}
	if err := workbook.Write(w, "Audit of cable records", append([]workbook.Sheet{about}, all...)); err != nil {
		return fmt.Errorf("writing the report: %w", err)
	}
	return nil
}

// take adds the rows of a plant's table. Plants have their own points: where the
// headings differ, they stand again above the rows.
func take(s *workbook.Sheet, plant string, t *auditTable) {
	headings := t.headings()
	if !slices.Equal(s.Headings[1:], headings) && len(t.Rows) > 0 {
		s.Rows = append(s.Rows, append([]any{plant}, anyTexts(headings)...))
		for len(s.Headings) <= len(headings) {
			s.Headings = append(s.Headings, "")
		}
	}
	if len(t.Rows) == 0 {
		s.Rows = append(s.Rows, []any{plant, t.None})
	}
	for _, row := range t.Rows {
		s.Rows = append(s.Rows, append([]any{plant}, row...))
	}
}

func aboutRows(p *auditPaper) [][]any {
	rows := [][]any{{p.Plant, "verdict", p.Verdict}}
	for _, g := range p.Glance {
		rows = append(rows, []any{p.Plant, "in short", g.Text})
	}
	for _, f := range p.Facts {
		rows = append(rows, []any{p.Plant, f.Name, f.Text})
	}
	for _, u := range p.Unknown {
		rows = append(rows, []any{p.Plant, "can not be known", u})
	}
	for _, c := range p.Commands {
		rows = append(rows, []any{p.Plant, c.Name, c.Text})
	}
	for _, d := range p.Deciders {
		rows = append(rows, []any{p.Plant, "caution", d})
	}
	return rows
}
