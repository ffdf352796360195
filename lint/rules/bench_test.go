package rules_test

import (
	"fmt"
	"slices"
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
func BenchmarkRules(b *testing.B) { eachRule(b, planttest.Options{Runs: 20_000, Files: 60, Seed: 1}) }

// BenchmarkRulesFew is what each rule costs where there is next to nothing to judge.
func BenchmarkRulesFew(b *testing.B) { eachRule(b, planttest.Few()[0]) }

func eachRule(b *testing.B, o planttest.Options) {
	b.Helper()
	p := plant.Build(".", readCold(planttest.Generate(o)))
	for _, r := range rules.All() {
		b.Run(r.Name, func(b *testing.B) { runs(b, p, []*lint.Rule{r}, nil) })
	}
}

func runs(b *testing.B, p *plant.Plant, which []*lint.Rule, base *plant.Plant) {
	b.Helper()
	today, _ := unit.NewDate(2026, 3, 2)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := lint.Run(p, which, lint.Options{Today: today, Base: base}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkFew holds plants as small as those that a single change is judged by against
// the rules: all that judge a state, or those that judge a change.
func BenchmarkFew(b *testing.B) {
	state := slices.DeleteFunc(rules.All(), func(r *lint.Rule) bool { return r.Check == nil || r.Change })
	change := slices.DeleteFunc(rules.All(), func(r *lint.Rule) bool { return !r.Change })
	for _, few := range planttest.Few() {
		read := readCold(planttest.Generate(few))
		p, base := plant.Build(".", read), plant.Build(".", read)
		b.Run(fmt.Sprint("state/", few.Runs), func(b *testing.B) { runs(b, p, state, nil) })
		b.Run(fmt.Sprint("change/", few.Runs), func(b *testing.B) { runs(b, p, change, base) })
	}
}
