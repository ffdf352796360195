package render

import (
	_ "embed"
	"fmt"
	"html/template"
	"io"
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
	papers := each(reports, func(r *audit.Report) *auditPaper { return auditPaperOf(r, onPaper, most) })
	t, err := auditTemplate()
	if err != nil {
		panic("render: the page's own text: " + err.Error())
	}
	return execute(w, t, "audit", papers)
}

func auditTemplate() (*template.Template, error) {
	t := template.New("").Funcs(template.FuncMap{"footing": auditFooting, "pieces": pieces})
	for _, text := range []string{auditPageText, fmt.Sprintf("{{define %q}}%s%s{{end}}", "style", styleText, auditStyle)} {
		if _, err := t.Parse(text); err != nil {
			return nil, err
		}
	}
	return t, nil
}

// auditFooting is what stands at the foot of every sheet, so that one that went
// astray is known again. It is cut to what a line holds.
func auditFooting(papers []*auditPaper) string {
	const longest = 70
	text := []rune("Audit of cable records, " + strings.Join(each(papers, func(p *auditPaper) string { return p.Plant + ", " + p.Period }), "; "))
	if len(text) > longest {
		return string(text[:longest]) + " …"
	}
	return string(text)
}
