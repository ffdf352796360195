package render

import (
	"bufio"
	_ "embed"
	"fmt"
	"html/template"
	"io"
)

//go:embed page/page.html
var pageText string

//go:embed page/drawing.html
var drawingText string

//go:embed page/page.css
var styleText string

// OrderPage writes orders as one page of HTML that stands alone: it loads
// nothing and runs nothing, prints with the steps of a visit kept together, and
// reads on a telephone. The error is that of the writer.
func OrderPage(w io.Writer, jobs []Job) error {
	sheets := make([]*orderSheets, len(jobs))
	for i := range jobs {
		sheets[i] = sheetsOf(i, &jobs[i])
	}
	t, err := pageTemplate()
	if err != nil {
		panic("render: the page's own text: " + err.Error())
	}
	return execute(w, t, "page", sheets)
}

// pageTemplate is the page's text with the functions that it calls. What the
// records hold is escaped by the template for the place where it stands.
func pageTemplate() (*template.Template, error) {
	t := template.New("").Funcs(mapFuncs()).Funcs(template.FuncMap{
		"titled": func(title string, items []findingPart) titled { return titled{title, items} },
		"names":  list,
		"pieces": pieces,
		"few":    few,
		"frames": frames,
	})
	for _, text := range []string{pageText, drawingText, fmt.Sprintf("{{define %q}}%s{{end}}", "style", styleText)} {
		if _, err := t.Parse(text); err != nil {
			return nil, err
		}
	}
	return t, nil
}

type titled struct {
	Title string
	Items []findingPart
}

// execute writes a page as it is made: one of a large order does not have to be
// held. Anything but the writer's failure is a mistake in the page's own text.
func execute(w io.Writer, t *template.Template, name string, data any) error {
	out := &keeper{w: w}
	buffered := bufio.NewWriterSize(out, 1<<16)
	err := t.ExecuteTemplate(buffered, name, data)
	if err == nil {
		err = buffered.Flush()
	}
	if err != nil && out.err == nil {
		panic("render: the page's own text: " + err.Error())
	}
	return out.err
}

// A keeper keeps the first error of a writer.
type keeper struct {
	w   io.Writer
	err error
}

func (k *keeper) Write(p []byte) (int, error) {
	n, err := k.w.Write(p)
	if k.err == nil {
		k.err = err
	}
	return n, err
}
