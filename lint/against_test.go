package lint_test

import (
	"fmt"
	"strings"
	"testing"

	"homerun/lint"
)

// standing are findings of one rule, each a label and how far it is beyond its
// limit.
func standing(pairs ...any) []lint.Finding {
	var all []lint.Finding
	for i := 0; i < len(pairs); i += 2 {
		all = append(all, lint.Finding{Rule: "r", Record: fmt.Sprint(pairs[i]), Excess: float64(pairs[i+1].(int))})
	}
	return all
}

// states says of each finding whether it is new, worse or as before.
func states(r *lint.Report) string {
	var all []string
	for _, part := range [][]lint.Finding{r.Findings, r.Waived} {
		for _, f := range part {
			state := "same"
			switch {
			case f.Worse:
				state = "worse"
			case f.Introduced:
				state = "new"
			}
			all = append(all, f.Record+" "+state)
		}
	}
	for _, f := range r.Gone {
		all = append(all, f.Record+" gone")
	}
	return strings.Join(all, ", ")
}

// TestAgainst compares a report with states that it came of.
func TestAgainst(t *testing.T) {
	t.Parallel()
	renamed := func(label string) string {
		if label == "NEW" {
			return "OLD"
		}
		return label
	}
	for _, c := range []struct {
		name          string
		found, waived []lint.Finding
		formers       []lint.Former
		want          string
	}{
		{"nothing before", standing("A", 1), nil, nil, "A new"},
		{"a plant that was not there", standing("A", 1), nil, []lint.Former{{}}, "A new"},
		{"as before", standing("A", 1), nil, []lint.Former{{Findings: standing("A", 1)}}, "A same"},
		{"better", standing("A", 1), nil, []lint.Former{{Findings: standing("A", 2)}}, "A same"},
		{"worse", standing("A", 2), nil, []lint.Former{{Findings: standing("A", 1)}}, "A worse"},
		{"gone", standing("A", 1), nil, []lint.Former{{Findings: standing("B", 1, "A", 1)}}, "A same, B gone"},
		{"waived since", nil, standing("A", 1), []lint.Former{{Findings: standing("A", 1)}}, "A same"},
		{"renamed", standing("NEW", 1), nil, []lint.Former{{Findings: standing("OLD", 1), Was: renamed}}, "NEW same"},
		{"one more of the same", standing("A", 1, "A", 1), nil, []lint.Former{{Findings: standing("A", 1)}}, "A same, A new"},
		{"one less of the same", standing("A", 1), nil, []lint.Former{{Findings: standing("A", 1, "A", 1)}}, "A same, A gone"},
		{"one of two is worse", standing("A", 3, "A", 2), nil, []lint.Former{{Findings: standing("A", 1, "A", 2)}}, "A worse, A same"},
		{"from one side of a merge", standing("A", 1), nil, []lint.Former{{}, {Findings: standing("A", 1)}}, "A same"},
		{"worse than on both sides", standing("A", 3), nil, []lint.Former{{Findings: standing("A", 1)}, {Findings: standing("A", 2)}}, "A worse"},
		{"worse than on one side", standing("A", 2), nil, []lint.Former{{Findings: standing("A", 1)}, {Findings: standing("A", 2)}}, "A same"},
		{"gone from both sides", nil, nil, []lint.Former{{Findings: standing("A", 1)}, {Findings: standing("A", 2)}}, "A gone"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			r := &lint.Report{Findings: c.found, Waived: c.waived}
			r.Against(c.formers...)
			if got := states(r); got != c.want {
				t.Errorf("got %s, want %s", got, c.want)
			}
		})
	}
}
