package render

import (
	"fmt"
	"io"

	"homerun/diffreport/audit"
)

// AuditWorkbook writes audits as one spreadsheet, a sheet for each table and one
// about the report. Every row names its plant. The error is that of the writer, or
// of an audit with more rows than a sheet has.
func AuditWorkbook(w io.Writer, reports []*audit.Report) error {
	var all []sheet
	about := sheet{name: "About", headings: []string{"Plant", "What", "Value"}}
	for i, r := range reports {
		p := auditPaperOf(r, 0)
		about.rows = append(about.rows, aboutRows(p)...)
		for j, t := range p.Tables {
			if i == 0 {
				all = append(all, sheet{name: t.Name, headings: append([]string{"Plant"}, t.Headings...)})
			}
			for _, row := range t.Rows {
				all[j].rows = append(all[j].rows, append([]any{p.Plant}, row...))
			}
		}
	}
	if err := writeWorkbook(w, "Audit of cable records", append([]sheet{about}, all...)); err != nil {
		return fmt.Errorf("writing the report: %w", err)
	}
	return nil
}

func aboutRows(p *auditPaper) [][]any {
	rows := [][]any{{p.Plant, "verdict", p.Verdict}}
	for _, f := range p.Facts {
		rows = append(rows, []any{p.Plant, f.Name, f.Text})
	}
	for _, u := range p.Unknown {
		rows = append(rows, []any{p.Plant, "can not be known", u})
	}
	for _, c := range p.Commands {
		rows = append(rows, []any{p.Plant, c.Name, c.Text})
	}
	return rows
}
