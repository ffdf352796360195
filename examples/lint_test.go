package examples_test

import (
	"os"
	"path"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/lint"
	"homerun/lint/rules"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// today is the day on which the examples are judged: after the story's end,
// before its waiver's.
func today(t *testing.T) unit.Date {
	t.Helper()
	d, ok := unit.NewDate(2026, 1, 15)
	if !ok {
		t.Fatal("no such day")
	}
	return d
}

func run(t *testing.T, p *plant.Plant, on unit.Date) *lint.Report {
	t.Helper()
	report, err := lint.Run(p, rules.All(), lint.Options{Today: on})
	if err != nil {
		t.Fatal(err)
	}
	return report
}

// rows writes findings as the tables of the README files do.
func rows(findings []lint.Finding) []string {
	var out []string
	for i := range findings {
		f := &findings[i]
		out = append(out, strings.Join([]string{f.Severity.String(), f.Rule, f.Record}, " "))
	}
	slices.Sort(out)
	return out
}

// listed reads the table below a heading of a README, without its last column.
func listed(t *testing.T, dir, heading string) []string {
	t.Helper()
	text, err := os.ReadFile(path.Join(dir, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	_, after, ok := strings.Cut(string(text), "\n## "+heading+"\n")
	if !ok {
		t.Fatalf("%s: no heading %s", dir, heading)
	}
	section, _, _ := strings.Cut(after, "\n## ")
	var out []string
	for line := range strings.Lines(section) {
		cells := strings.Split(line, "|")
		if len(cells) != 6 || strings.Contains(line, "---") || strings.Contains(line, "Severity") {
			continue
		}
		if strings.TrimSpace(cells[4]) == "" {
			t.Errorf("%s: %s is listed without a reason", dir, cells[2])
		}
		out = append(out, strings.TrimSpace(cells[1])+" "+strings.TrimSpace(cells[2])+" "+strings.TrimSpace(cells[3]))
	}
	slices.Sort(out)
	return out
}

// The README of an example lists every finding that is left, and nothing else.
func TestExamplesAreCleanButForWhatTheirReadmeSays(t *testing.T) {
	t.Parallel()
	for _, dir := range []string{"saltmarsh-hall", "granary-court"} {
		report := run(t, build(folder(t, dir)), today(t))
		if diff := cmp.Diff(listed(t, dir, "What the linter still says"), rows(report.Findings)); diff != "" {
			t.Errorf("%s: findings (- listed, + found):\n%s", dir, diff)
		}
		if diff := cmp.Diff(listed(t, dir, "Under a waiver"), rows(report.Waived)); diff != "" {
			t.Errorf("%s: waived findings (- listed, + found):\n%s", dir, diff)
		}
	}
}

// No commit of the story leaves a nonconformity but the attempt that the hook
// refuses, and that one is refused for the cable in the plenum alone.
func TestOnlyTheRefusedCommitIsWrong(t *testing.T) {
	t.Parallel()
	refused := 0
	for _, s := range states(t) {
		var wrong []string
		for _, f := range run(t, build(s.Files), unit.DateOf(s.Commit.When)).Findings {
			if f.Severity == lint.Nonconformity {
				wrong = append(wrong, f.Rule+" "+f.Record)
			}
		}
		var want []string
		if s.Commit.Refused {
			refused++
			want = []string{"rating-listing 1A-K01", "rating-listing 1A-K02", "rating-listing 1A-K03"}
		}
		if diff := cmp.Diff(want, wrong); diff != "" {
			t.Errorf("%s (- wanted, + found):\n%s", s.Commit.Subject, diff)
		}
	}
	if refused != 1 {
		t.Errorf("%d commits are refused, the demo shows one", refused)
	}
}
