package render

import (
	"fmt"
	"io"
	"slices"

	"homerun/diffreport/audit"
)

// AuditWorkbook writes audits as one spreadsheet, a sheet for each table and one
// about the report. Every row names its plant. The error is that of the writer, or
// of an audit with more rows than a sheet has.
func AuditWorkbook(w io.Writer, reports []*audit.Report) error {
	about := sheet{name: "About", headings: []string{"Plant", "What", "Value"}}
	var all []sheet
	for i, r := range reports {
		p := auditPaperOf(r, inSheets, 0)
		about.rows = append(about.rows, aboutRows(p)...)
		for j := range p.Tables {
			t := &p.Tables[j]
			if i == 0 {
				all = append(all, sheet{name: t.Name, headings: append([]string{"Plant"}, t.headings()...)})
			}
			all[j].take(p.Plant, t)
		}
	}
	if err := writeWorkbook(w, "Audit of cable records", append([]sheet{about}, all...)); err != nil {
		return fmt.Errorf("writing the report: %w", err)
	}
	return nil
}

// take adds the rows of a plant's table. Plants have their own points: where the
// headings differ, they stand again above the rows.
func (s *sheet) take(plant string, t *auditTable) {
	headings := t.headings()
	if !slices.Equal(s.headings[1:], headings) && len(t.Rows) > 0 {
		s.rows = append(s.rows, append([]any{plant}, anyTexts(headings)...))
		for len(s.headings) <= len(headings) {
			s.headings = append(s.headings, "")
		}
	}
	if len(t.Rows) == 0 {
		s.rows = append(s.rows, []any{plant, t.None})
	}
	for _, row := range t.Rows {
		s.rows = append(s.rows, append([]any{plant}, row...))
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
