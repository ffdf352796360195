package render_test

import (
	"fmt"
	"io"
	"testing"

	"homerun/diffreport"
	"homerun/diffreport/render"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/plant/planttest"
)

// fromNothing is the order that installs a generated plant.
func fromNothing(b *testing.B, runs int) render.Job {
	b.Helper()
	reader := schema.NewReader()
	var files []*schema.File
	for _, f := range planttest.Generate(planttest.Options{Runs: runs, Files: 60, Seed: 1}) {
		files = append(files, reader.ReadFile(f.Path, f.Text))
	}
	head := plant.Build(".", files)
	return render.Job{Head: head, Order: diffreport.Plan(nil, head, diffreport.Compare(nil, head, diffreport.Options{}), diffreport.PlanOptions{})}
}

// A counter counts what is written.
type counter int64

func (c *counter) Write(p []byte) (int, error) {
	*c += counter(len(p))
	return len(p), nil
}

// BenchmarkOrderPage writes the page of everything that a large plant needs. The
// time and the size of the page grow with the runs.
func BenchmarkOrderPage(b *testing.B) {
	for _, runs := range []int{2000, 20_000} {
		b.Run(fmt.Sprint(runs), func(b *testing.B) {
			jobs := []render.Job{fromNothing(b, runs)}
			b.ReportAllocs()
			var written counter
			for b.Loop() {
				written = 0
				if err := render.OrderPage(&written, jobs); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(written), "bytes/page")
		})
	}
}

// BenchmarkOrderWorkbook does the same with the spreadsheet.
func BenchmarkOrderWorkbook(b *testing.B) {
	jobs := []render.Job{fromNothing(b, 20_000)}
	b.ReportAllocs()
	for b.Loop() {
		if err := render.OrderWorkbook(io.Discard, jobs); err != nil {
			b.Fatal(err)
		}
	}
}
