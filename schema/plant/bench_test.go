package plant_test

import (
	"fmt"
	"testing"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/plant/planttest"
)

// read reads generated files as a cold start does.
func read(files []planttest.File) []*schema.File {
	reader := schema.NewReader()
	out := make([]*schema.File, len(files))
	for i, f := range files {
		out[i] = reader.ReadFile(f.Path, f.Text)
	}
	return out
}

func BenchmarkRead(b *testing.B) {
	files := planttest.Generate(planttest.Options{Runs: 20_000, Files: 60, Seed: 1})
	size := 0
	for _, f := range files {
		size += len(f.Text)
	}
	b.SetBytes(int64(size))
	b.ReportAllocs()
	for b.Loop() {
		read(files)
	}
}

func BenchmarkBuild(b *testing.B) {
	files := read(planttest.Generate(planttest.Options{Runs: 20_000, Files: 60, Seed: 1}))
	b.ReportAllocs()
	for b.Loop() {
		plant.Build(".", files)
	}
}

func TestGeneratedPlantIsSound(t *testing.T) {
	t.Parallel()
	for _, awkward := range []bool{false, true} {
		p := plant.Build(".", read(planttest.Generate(planttest.Options{Runs: 1_000, Files: 7, Seed: 3, Awkward: awkward})))
		if len(p.Problems) > 0 || len(p.Clashes) > 0 || len(p.Runs) != 1_008 || len(p.Links) != 1_008 {
			t.Errorf("awkward %v: %d problems, %d clashes, %d runs, %d links\n%s", awkward, len(p.Problems), len(p.Clashes), len(p.Runs), len(p.Links), problems(p))
		}
	}
}

// BenchmarkBuildFew builds plants as small as those that a single change is judged by:
// there it counts what a plant costs before its first record.
func BenchmarkBuildFew(b *testing.B) {
	for _, few := range planttest.Few() {
		files := read(planttest.Generate(few))
		b.Run(fmt.Sprint(few.Runs), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				plant.Build(".", files)
			}
		})
	}
}
