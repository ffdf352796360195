package render_test

import (
	"bytes"
	"io"
	"testing"

	"homerun/diffreport/render"
	"homerun/schema/console"
)

// TestTheSameOrderIsTheSameBytes reads the records, makes out the order and
// writes it twice, from the beginning each time, in every form.
func TestTheSameOrderIsTheSameBytes(t *testing.T) {
	t.Parallel()
	forms := map[string]func(io.Writer, []render.Job) error{
		"text":     func(w io.Writer, jobs []render.Job) error { return render.OrderText(w, jobs[0], console.Options{}) },
		"document": func(w io.Writer, jobs []render.Job) error { return render.OrderJSON(w, jobs[0].Order) },
		"comment":  render.OrderMarkdown, "page": render.OrderPage, "spreadsheet": render.OrderWorkbook,
	}
	again := caseJobs(t)
	for name, job := range caseJobs(t) {
		for form, write := range forms {
			var first, second bytes.Buffer
			if err := write(&first, []render.Job{job}); err != nil {
				t.Fatal(err)
			}
			if err := write(&second, []render.Job{again[name]}); err != nil {
				t.Fatal(err)
			}
			if first.Len() == 0 || !bytes.Equal(first.Bytes(), second.Bytes()) {
				t.Errorf("%s: two runs gave two forms of the %s", name, form)
			}
		}
	}
}

// TestAWriterThatFailsIsAnError has every form hand on what its writer says.
func TestAWriterThatFailsIsAnError(t *testing.T) {
	t.Parallel()
	jobs := []render.Job{harmlessJob()}
	for form, write := range map[string]func(io.Writer, []render.Job) error{
		"comment": render.OrderMarkdown, "page": render.OrderPage, "spreadsheet": render.OrderWorkbook,
		"text": func(w io.Writer, jobs []render.Job) error { return render.OrderText(w, jobs[0], console.Options{}) },
	} {
		if err := write(failing{}, jobs); err == nil {
			t.Errorf("%s: nothing is said", form)
		}
	}
}
