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

// change is a case of the transition family: the text before and after.
type change struct{ name, before, after string }

func changeCases(t *testing.T) []change {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(cases, "transition-*", "*.txtar"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("no cases: %v", err)
	}
	var all []change
	for _, path := range paths {
		archive, err := txtar.ParseFile(path)
		if err != nil {
			t.Fatal(err)
		}
		c := change{name: path}
		for _, f := range archive.Files {
			switch f.Name {
			case "before/plant.hcl":
				c.before = string(f.Data)
			case "plant.hcl":
				c.after = string(f.Data)
			}
		}
		all = append(all, c)
	}
	return all
}

// transitions are the findings about the change between two texts.
func transitions(t *testing.T, c change) []lint.Finding {
	t.Helper()
	reader := schema.NewReader()
	head := plant.Build(".", []*schema.File{reader.ReadFile("plant.hcl", c.after)})
	report, err := lint.Run(head, rules.All(), changed(t, []*schema.File{reader.ReadFile("plant.hcl", c.before)}, head))
	if err != nil {
		t.Fatalf("%s: %v\n%s\n%s", c.name, err, c.before, c.after)
	}
	var found []lint.Finding
	for _, f := range report.Findings {
		if r, _ := rules.Named(f.Rule); r.Change {
			found = append(found, f)
		}
	}
	return found
}

// TestDamageOnEitherSide spoils each line before the change and each line after
// it in turn: no rule fails, whatever is missing on one side. A value that was
// lost makes no failed test passed and no waiver wider.
func TestDamageOnEitherSide(t *testing.T) {
	t.Parallel()
	for _, c := range changeCases(t) {
		sound := len(transitions(t, c)) > 0
		for _, side := range []*string{&c.before, &c.after} {
			text := *side
			lines := strings.Split(text, "\n")
			for i, whole := range lines {
				for _, damaged := range []string{"", spoil(whole)} {
					lines[i] = damaged
					*side = strings.Join(lines, "\n")
					for _, f := range transitions(t, c) {
						if !sound && f.Severity == lint.Nonconformity && strings.Contains(whole, " = ") && !freeText(whole) {
							t.Errorf("%s: with %q for %q: %s", c.name, damaged, whole, line(&f))
						}
					}
				}
				lines[i] = whole
			}
			*side = text
		}
	}
}

// freeText says whether a line states any words: spoiled it is another text, and
// not one that can not be read.
func freeText(line string) bool {
	name, _, _ := strings.Cut(strings.TrimSpace(line), " ")
	return name == "rule" || name == "records"
}

// TestNothingChanged holds every case against itself, and against a plant that
// is not there: where nothing was changed nothing is said about a change.
func TestNothingChanged(t *testing.T) {
	t.Parallel()
	for _, c := range changeCases(t) {
		for _, f := range transitions(t, change{c.name, c.after, c.after}) {
			t.Errorf("%s: nothing was changed: %s", c.name, line(&f))
		}
		head := plant.Build(".", []*schema.File{schema.NewReader().ReadFile("plant.hcl", c.after)})
		report, err := lint.Run(head, rules.All(), lint.Options{Today: today(t)})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range report.Findings {
			if r, _ := rules.Named(f.Rule); r.Change {
				t.Errorf("%s: there is nothing to compare with: %s", c.name, line(&f))
			}
		}
	}
}

// TestWaiverOfAChangeIsNoLeftover waives a finding about a change: once the
// change is made the waiver matches nothing, as is expected of it.
func TestWaiverOfAChangeIsNoLeftover(t *testing.T) {
	t.Parallel()
	page, _ := rules.PageOf("transition-label-reused")
	page.Fails += "\nwaiver \"W-1\" {\n  rule = \"transition-label-reused\"\n  records = [\"1A-A07\"]\n  reason = \"the cable is out of the building\"\n  granted = \"keeper of the labels, 3 June\"\n  expires = \"2999-12-31\"\n}\n"
	if report := lintPage(t, page, page.Fails); len(report.Findings) != 0 || len(report.Waived) != 1 {
		t.Errorf("while the change is made: %s, %d waived", lines(report.Findings), len(report.Waived))
	}
	page.Before = ""
	if report := lintPage(t, page, page.Fails); len(report.Findings) != 0 {
		t.Errorf("afterwards: %s", lines(report.Findings))
	}
}
