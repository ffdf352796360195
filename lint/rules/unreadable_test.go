package rules_test

import (
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"

	"homerun/lint"
	"homerun/lint/rules"
	"homerun/schema"
	"homerun/schema/plant"
)

// TestUnreadableValueIsNotJudged spoils each value of each case about rating,
// shielding, pathways and tests in turn. What can not be read may take a nonconformity of these
// rules away, and never brings one: no verdict rests on a value that is lost.
func TestUnreadableValueIsNotJudged(t *testing.T) {
	t.Parallel()
	var paths []string
	for family := range judged {
		found, err := filepath.Glob(filepath.Join(cases, family+"-*", "*.txtar"))
		if err != nil || len(found) == 0 {
			t.Fatalf("no cases of %s: %v", family, err)
		}
		paths = append(paths, found...)
	}
	for _, path := range paths {
		archive, err := txtar.ParseFile(path)
		if err != nil {
			t.Fatal(err)
		}
		lines := strings.Split(string(archive.Files[0].Data), "\n")
		before := nonconformities(t, strings.Join(lines, "\n"))
		for i, whole := range lines {
			if !strings.Contains(whole, " = ") {
				continue
			}
			lines[i] = spoil(whole)
			for found := range nonconformities(t, strings.Join(lines, "\n")) {
				if !before[found] {
					t.Errorf("%s: with %q for %q: %s", path, lines[i], whole, found)
				}
			}
			lines[i] = whole
		}
	}
}

// judged are the families whose verdicts the test looks at.
var judged = map[string]bool{"rating": true, "shielding": true, "pathway": true, "tests": true}

// nonconformities of the judged families, by rule, record and
// what tells them apart.
func nonconformities(t *testing.T, text string) map[string]bool {
	t.Helper()
	p := plant.Build(".", []*schema.File{schema.NewReader().ReadFile("plant.hcl", text)})
	report, err := lint.Run(p, rules.All(), lint.Options{Today: today(t)})
	if err != nil {
		t.Fatal(err)
	}
	found := make(map[string]bool)
	for i := range report.Findings {
		f := &report.Findings[i]
		rule, _ := rules.Named(f.Rule)
		if f.Severity == lint.Nonconformity && judged[rule.Family()] {
			found[f.Rule+" "+f.Record+" "+strings.Join(f.Key, " ")] = true
		}
	}
	return found
}
