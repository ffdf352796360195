package render

import (
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"strings"
)

//go:embed page/page.html
var pageText string

//go:embed page/drawing.html
var drawingText string

//go:embed page/page.css
var styleText string

// OrderPage writes orders as one page of HTML that stands alone: it loads
// nothing and runs nothing, prints with a sheet for each visit, and reads on a
// telephone. The error is that of the writer.
func OrderPage(w io.Writer, jobs []Job) error {
	papers := make([]*paper, len(jobs))
	for i, j := range jobs {
		papers[i] = paperOf(j)
	}
	t, err := pageTemplate()
	if err != nil {
		panic("render: the page's own text: " + err.Error())
	}
	var page strings.Builder
	if err = t.ExecuteTemplate(&page, "page", papers); err != nil {
		panic("render: the page's own text: " + err.Error())
	}
	_, err = io.WriteString(w, page.String())
	return err
}

// pageTemplate is the page's text with the functions that it calls. What the
// records hold is escaped by the template for the place where it stands.
func pageTemplate() (*template.Template, error) {
	t := template.New("").Funcs(drawingFuncs()).Funcs(template.FuncMap{
		"numbered": func(at int, part any) within { return within{At: at, Paper: part} },
		"titled":   func(title string, items []findingPart) titled { return titled{title, items} },
		"names":    list,
		"pieces":   pieces,
	})
	for _, text := range []string{pageText, drawingText, fmt.Sprintf("{{define %q}}%s{{end}}", "style", styleText)} {
		if _, err := t.Parse(text); err != nil {
			return nil, err
		}
	}
	return t, nil
}

// within is a part of one of the page's orders, which keeps the links inside
// the page apart.
type within struct {
	At    int
	Paper any
}

type titled struct {
	Title string
	Items []findingPart
}
