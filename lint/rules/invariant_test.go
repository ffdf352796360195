package rules_test

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/tools/txtar"

	"homerun/lint"
	"homerun/lint/rules"
	"homerun/schema"
	"homerun/schema/plant"
)

// plants are the texts of all examples and cases, for what holds of every one.
func plants(tb testing.TB) []string {
	tb.Helper()
	var texts []string
	for _, r := range rules.All() {
		page, _ := rules.PageOf(r.Name)
		texts = append(texts, page.Given+"\n"+page.Fails, page.Given+"\n"+page.Passes)
	}
	paths, err := filepath.Glob(filepath.Join(cases, "*", "*.txtar"))
	if err != nil {
		tb.Fatal(err)
	}
	for _, path := range paths {
		archive, err := txtar.ParseFile(path)
		if err != nil {
			tb.Fatal(err)
		}
		var text strings.Builder
		for _, f := range archive.Files {
			if f.Name != "want" && f.Name != "working" {
				// A byte order mark stands at the start of a file only.
				text.WriteString(strings.TrimPrefix(string(f.Data), "\ufeff"))
			}
		}
		texts = append(texts, text.String())
	}
	return texts
}

// verdicts are what a report says without its figures.
func verdicts(findings []lint.Finding) []string {
	out := make([]string, 0, len(findings))
	for i := range findings {
		f := &findings[i]
		verdict := f.Rule + " " + f.Kind + " " + f.Record + " " + f.Severity.String()
		if f.Record != "" { // without a record, the key is the file
			verdict += " " + strings.Join(f.Key, " ")
		}
		out = append(out, verdict)
	}
	slices.Sort(out)
	return out
}

// TestUnitsChangeNoVerdict holds every plant against itself in feet: the foot is
// 0.3048 m by definition, so that no verdict can depend on which is printed.
func TestUnitsChangeNoVerdict(t *testing.T) {
	t.Parallel()
	judged := 0
	for _, text := range plants(t) {
		feet := strings.Replace(text, "standard", "units = \"us\"\n  standard", 1)
		if feet == text || strings.Contains(text, "units ") {
			continue
		}
		judged++
		metric, us := lintText(t, text), lintText(t, feet)
		if diff := cmp.Diff(verdicts(metric.Findings), verdicts(us.Findings)); diff != "" {
			t.Errorf("in feet the verdicts are others (- metric, + feet):\n%s\n%s", diff, text)
		}
		// A limit that must be kept under is met by what equals it, in any unit.
		if m, u := meeting(metric.Findings), meeting(us.Findings); u > m {
			t.Errorf("in feet %d results seem to meet their limit, in metres %d:\n%s", u, m, lines(us.Findings))
		}
	}
	if judged == 0 {
		t.Fatal("no plant was judged in feet")
	}
}

// meeting counts results that are printed like their limits.
func meeting(findings []lint.Finding) int {
	n := 0
	for i := range findings {
		if findings[i].Result != "" && findings[i].Result == findings[i].Limit {
			n++
		}
	}
	return n
}

// TestOrderChangesNoVerdict holds every plant against the same records cut into
// two files: neither order nor file of a record decides what is found.
func TestOrderChangesNoVerdict(t *testing.T) {
	t.Parallel()
	for _, text := range plants(t) {
		cut := strings.LastIndex(text, "\n}\n") // before the last record
		if cut < 0 {
			continue
		}
		if first := strings.LastIndex(text[:cut], "\n}\n"); first >= 0 {
			cut = first
		}
		head, tail := text[:cut+3], text[cut+3:]
		whole := lintFiles(t, head+tail, "")
		apart := lintFiles(t, head, tail)
		if diff := cmp.Diff(verdicts(whole), verdicts(apart)); diff != "" {
			t.Errorf("in two files the verdicts are others (- one, + two):\n%s\n%s", diff, text)
		}
	}
}

// lintFiles holds two texts, as a.hcl and z.hcl, against every rule.
func lintFiles(t *testing.T, a, z string) []lint.Finding {
	t.Helper()
	reader := schema.NewReader()
	files := []*schema.File{reader.ReadFile("z.hcl", z), reader.ReadFile("a.hcl", a)}
	report, err := lint.Run(plant.Build(".", files), rules.All(), lint.Options{Today: today(t)})
	if err != nil {
		t.Fatal(err)
	}
	return report.Findings
}

// FuzzRules holds any text against every rule: no rule may fail on it, and every
// finding must have a place, a message of printable characters and a next step.
func FuzzRules(f *testing.F) {
	for _, text := range plants(f) {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		report := lintText(t, text)
		for i := range report.Findings {
			found := &report.Findings[i]
			if found.At.Path == "" || found.At.Line < 1 || found.Message == "" {
				t.Errorf("a finding without place or message: %+v", found)
			}
			if schema.Printable(found.Message) != found.Message {
				t.Errorf("a message that can not be printed: %q", found.Message)
			}
		}
	})
}
