package rules_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/tools/txtar"

	"homerun/diffreport"
	"homerun/lint"
	"homerun/lint/rules"
	"homerun/schema"
	"homerun/schema/plant"
)

// cases is where the cases stand: a folder for each rule, a text archive for
// each case. Its comment says what the case shows and where the figures stand;
// its files are those of a plant, those below "before/" those of the plant before
// the change, for the rules that judge one; "want" holds the findings of all rules, one
// line each; "working", where there is one, the sum of the first finding of the
// folder's rule, with its result, limit and source.
const cases = "../../testdata/lint"

// TestCases holds every case against its rule.
func TestCases(t *testing.T) {
	t.Parallel()
	paths, err := filepath.Glob(filepath.Join(cases, "*", "*.txtar"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("no cases: %v", err)
	}
	for _, path := range paths {
		rule := filepath.Base(filepath.Dir(path))
		t.Run(rule+"/"+strings.TrimSuffix(filepath.Base(path), ".txtar"), func(t *testing.T) {
			t.Parallel()
			if _, ok := rules.Named(rule); !ok {
				t.Fatalf("there is no rule %s", rule)
			}
			runCase(t, path, rule)
		})
	}
}

func runCase(t *testing.T, path, rule string) {
	t.Helper()
	archive, err := txtar.ParseFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if len(strings.TrimSpace(string(archive.Comment))) == 0 {
		t.Error("the case does not say what it shows and where its figures stand")
	}
	var files, before []*schema.File
	var want, working string
	asked := false
	reader := schema.NewReader()
	for _, f := range archive.Files {
		switch f.Name {
		case "want":
			want, asked = string(f.Data), true
		case "working":
			working = string(f.Data)
		default:
			if name, old := strings.CutPrefix(f.Name, "before/"); old {
				before = append(before, reader.ReadFile(name, string(f.Data)))
				continue
			}
			files = append(files, reader.ReadFile(f.Name, string(f.Data)))
		}
	}
	if !asked {
		t.Fatal("the case has no want")
	}
	report, err := lint.Run(plant.Build(".", files), rules.All(), changed(t, before, plant.Build(".", files)))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, lines(report.Findings)); diff != "" {
		t.Errorf("findings (- want, + got):\n%s", diff)
	}
	if working == "" {
		return
	}
	for i := range report.Findings {
		if f := &report.Findings[i]; f.Rule == rule {
			if diff := cmp.Diff(working, sum(f)); diff != "" {
				t.Errorf("sum (- want, + got):\n%s", diff)
			}
			return
		}
	}
	t.Error("a sum is wanted, and there is no finding")
}

// changed are the options for holding a plant against what it was before; as
// the commands do it, the comparison tells what was relabelled.
func changed(t *testing.T, before []*schema.File, head *plant.Plant) lint.Options {
	t.Helper()
	o := lint.Options{Today: today(t)}
	if len(before) > 0 {
		o.Base = plant.Build(".", before)
		o.Former = diffreport.Former(diffreport.Compare(o.Base, head, diffreport.Options{}))
	}
	return o
}

// line writes a finding as cases want it. Where a finding counts for less than
// its rule, the line says so.
func line(f *lint.Finding) string {
	text := fmt.Sprintf("%s:%d:%d %s %s", f.At.Path, f.At.Line, f.At.Column, f.Rule, f.Message)
	if r, ok := rules.Named(f.Rule); ok && r.Severity != f.Severity {
		text += " (" + f.Severity.String() + ")"
	}
	return text
}

func sum(f *lint.Finding) string {
	var b strings.Builder
	for _, t := range f.Working {
		b.WriteString(t.Term + ": " + t.Value + "\n")
	}
	b.WriteString("result: " + f.Result + "\nlimit: " + f.Limit + "\nsource: " + f.Source + "\n")
	return b.String()
}

// TestEveryRuleHasCases names the rules that no case is about.
func TestEveryRuleHasCases(t *testing.T) {
	t.Parallel()
	for _, r := range rules.All() {
		if entries, err := os.ReadDir(filepath.Join(cases, r.Name)); err != nil || len(entries) == 0 {
			t.Errorf("%s has no cases", r.Name)
		}
	}
}
