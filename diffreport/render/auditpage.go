package render

import (
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"slices"
	"strings"

	"homerun/diffreport/audit"
)

//go:embed page/audit.html
var auditPageText string

//go:embed page/audit.css
var auditStyle string

// AuditPage writes audits as one page of HTML that stands alone: it loads nothing
// and runs nothing, and prints. At most so many rows of each table are on it; 0
// is all of them. The error is that of the writer.
func AuditPage(w io.Writer, reports []*audit.Report, most int) error {
	papers := each(reports, func(r *audit.Report) *auditPaper { return auditPaperOf(r, most) })
	t, err := auditTemplate()
	if err != nil {
		panic("render: the page's own text: " + err.Error())
	}
	var page strings.Builder
	if err = t.ExecuteTemplate(&page, "audit", papers); err != nil {
		panic("render: the page's own text: " + err.Error())
	}
	_, err = io.WriteString(w, page.String())
	return err
}

func auditTemplate() (*template.Template, error) {
	t := template.New("").Funcs(template.FuncMap{
		"number":  func(cell any) bool { _, is := cell.(int); return is },
		"whole":   wholeColumns,
		"counted": auditTable.counted,
	})
	for _, text := range []string{auditPageText, fmt.Sprintf("{{define %q}}%s%s{{end}}", "style", styleText, auditStyle)} {
		if _, err := t.Parse(text); err != nil {
			return nil, err
		}
	}
	return t, nil
}

// wholeColumns are those whose short texts are not broken.
func wholeColumns(heading string) bool {
	switch heading {
	case "Day", "Commit", "Introduced", "Cleared", "Last day", "First", "Last", "Point", "Signature", "Waiver":
		return true
	}
	return false
}

// counted says whether the column below a heading holds numbers.
func (t auditTable) counted(heading string) bool {
	i := slices.Index(t.Headings, heading)
	if i < 0 || len(t.Rows) == 0 {
		return false
	}
	_, number := t.Rows[0][i].(int)
	return number
}
