package rules_test

import (
	"testing"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"homerun/lint"
	"homerun/lint/rules"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/plant/planttest"
	"homerun/schema/unit"
)

// The benchmarks below run on one plant each time, so that their figures can be
// divided by each other: what matters is the ratio of a cold lint to a bare
// parse of the same files by the HCL parser, in one run.

func generated(runs int, awkward bool) []planttest.File {
	return planttest.Generate(planttest.Options{Runs: runs, Files: 60, Seed: 1, Awkward: awkward})
}

func readCold(files []planttest.File) []*schema.File {
	texts := make([]schema.Document, len(files))
	for i, f := range files {
		texts[i] = schema.Document(f)
	}
	return schema.NewReader().ReadFiles(texts)
}

func lintCold(b *testing.B, files []planttest.File) {
	b.Helper()
	read := readCold(files)
	today, _ := unit.NewDate(2026, 3, 2)
	if _, err := lint.Run(plant.Build(".", read), rules.All(), lint.Options{Today: today}); err != nil {
		b.Fatal(err)
	}
}

func bareParse(b *testing.B, files []planttest.File) {
	b.Helper()
	for _, f := range files {
		if _, diags := hclsyntax.ParseConfig([]byte(f.Text), f.Path, hcl.InitialPos); diags.HasErrors() {
			b.Fatal(diags.Error())
		}
	}
}

func benchmark(b *testing.B, runs int, awkward bool, do func(*testing.B, []planttest.File)) {
	b.Helper()
	files := generated(runs, awkward)
	size := 0
	for _, f := range files {
		size += len(f.Text)
	}
	b.SetBytes(int64(size))
	b.ReportAllocs()
	for b.Loop() {
		do(b, files)
	}
}

func BenchmarkBareParse(b *testing.B)        { benchmark(b, 20_000, false, bareParse) }
func BenchmarkLint(b *testing.B)             { benchmark(b, 20_000, false, lintCold) }
func BenchmarkBareParseAwkward(b *testing.B) { benchmark(b, 20_000, true, bareParse) }
func BenchmarkLintAwkward(b *testing.B)      { benchmark(b, 20_000, true, lintCold) }
func BenchmarkLint100k(b *testing.B)         { benchmark(b, 100_000, false, lintCold) }

// BenchmarkRules is the time of the rules alone, on a plant that is in memory.
func BenchmarkRules(b *testing.B) {
	files := generated(20_000, false)
	p := plant.Build(".", readCold(files))
	today, _ := unit.NewDate(2026, 3, 2)
	for _, r := range rules.All() {
		b.Run(r.Name, func(b *testing.B) {
			for b.Loop() {
				if _, err := lint.Run(p, []*lint.Rule{r}, lint.Options{Today: today}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
