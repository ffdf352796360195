package again_test

import (
	"testing"

	"homerun/lint"
	"homerun/lint/again"
	"homerun/schema"
)

// TestSayingsAreCompared changes each part of a finding by itself: findings are held for
// the same exactly where they are put into the same words.
func TestSayingsAreCompared(t *testing.T) {
	t.Parallel()
	is := lint.Finding{Rule: "rule", Key: []string{"a"}, Working: []lint.Term{{Term: "sum", Value: "1"}}}
	for part, change := range map[string]struct {
		make func(f *lint.Finding)
		said bool
	}{
		"rule":     {func(f *lint.Finding) { f.Rule = "other" }, true},
		"severity": {func(f *lint.Finding) { f.Severity++ }, true},
		"kind":     {func(f *lint.Finding) { f.Kind = "run" }, true},
		"record":   {func(f *lint.Finding) { f.Record = "1A-A01" }, true},
		"message":  {func(f *lint.Finding) { f.Message = "other" }, true},
		"term":     {func(f *lint.Finding) { f.Working = []lint.Term{{Term: "rest", Value: "1"}} }, true},
		"value":    {func(f *lint.Finding) { f.Working = []lint.Term{{Term: "sum", Value: "2"}} }, true},
		"result":   {func(f *lint.Finding) { f.Result = "2" }, true},
		"limit":    {func(f *lint.Finding) { f.Limit = "2" }, true},
		"source":   {func(f *lint.Finding) { f.Source = "other" }, true},
		"key":      {func(f *lint.Finding) { f.Key = []string{"b"} }, true},
		"excess":   {func(f *lint.Finding) { f.Excess = 1 }, true},
		"waiver":   {func(f *lint.Finding) { f.Waiver = "W-1" }, true},
		"nothing":  {func(*lint.Finding) {}, false},
		"place":    {func(f *lint.Finding) { f.At.Line = 7 }, false},
		"advice":   {func(f *lint.Finding) { f.Next = "other" }, false},
		"related":  {func(f *lint.Finding) { f.Related = []schema.Note{{Label: "1A-A02"}} }, false},
	} {
		other := is
		change.make(&other)
		if said := again.Saying(&is) != again.Saying(&other); said != change.said {
			t.Errorf("%s: said is %t", part, said)
		}
		if again.SameSaying(&is, &other) == change.said {
			t.Errorf("%s: held for the same is %t", part, change.said)
		}
	}
}
