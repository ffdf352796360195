package diffreport_test

import (
	"fmt"
	"strings"
	"testing"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/plant/planttest"
)

// large reads a generated plant with one file edited, by a reader that knows
// both sides as a command's does.
func large(b *testing.B, runs, changed int) (base, head *plant.Plant) {
	b.Helper()
	return retouched(b, planttest.Options{Runs: runs, Files: 60, Seed: 1}, changed)
}

func retouched(b *testing.B, o planttest.Options, changed int) (base, head *plant.Plant) {
	b.Helper()
	reader := schema.NewReader()
	files := planttest.Generate(o)
	var before, after []*schema.File
	left := changed
	for _, f := range files {
		before = append(before, reader.ReadFile(f.Path, f.Text))
		blocks := strings.SplitAfter(f.Text, "\n  run ")
		for i := 1; i < len(blocks) && left > 0; i++ {
			if cut := strings.Replace(blocks[i], "length = \"", "length = \"1", 1); cut != blocks[i] {
				blocks[i] = cut
				left--
			}
		}
		after = append(after, reader.ReadFile(f.Path, strings.Join(blocks, "")))
	}
	if left > 0 {
		b.Fatalf("%d runs were left to change", left)
	}
	return plant.Build(".", before), plant.Build(".", after)
}

func BenchmarkCompare(b *testing.B) {
	for _, changed := range []int{10, 1000, 10000} {
		b.Run(fmt.Sprint(changed), func(b *testing.B) {
			base, head := large(b, 20000, changed)
			for b.Loop() {
				diffreport.Compare(base, head, diffreport.Options{})
			}
		})
	}
}

// BenchmarkCompareFew compares plants as small as those that a single change is judged
// by, which differ in one record.
func BenchmarkCompareFew(b *testing.B) {
	for _, few := range planttest.Few() {
		base, head := retouched(b, few, 1)
		b.Run(fmt.Sprint(few.Runs), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				diffreport.Compare(base, head, diffreport.Options{})
			}
		})
	}
}

func BenchmarkPlan(b *testing.B) {
	for _, changed := range []int{10, 1000, 10000} {
		b.Run(fmt.Sprint(changed), func(b *testing.B) {
			base, head := large(b, 20000, changed)
			changes := diffreport.Compare(base, head, diffreport.Options{})
			for b.Loop() {
				diffreport.Plan(base, head, changes, diffreport.PlanOptions{})
			}
		})
	}
}

func BenchmarkPlanFromNothing(b *testing.B) {
	for _, runs := range []int{2000, 20000} {
		b.Run(fmt.Sprint(runs), func(b *testing.B) {
			_, head := large(b, runs, 0)
			changes := diffreport.Compare(nil, head, diffreport.Options{})
			for b.Loop() {
				diffreport.Plan(nil, head, changes, diffreport.PlanOptions{})
			}
		})
	}
}
