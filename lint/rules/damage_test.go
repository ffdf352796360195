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
	"homerun/schema/standard"
)

// TestDamageStopsNoRule takes each line out of the plant of each case, and
// spoils each line in turn: a rule that fails on records it did not expect
// makes the run an error.
func TestDamageStopsNoRule(t *testing.T) {
	t.Parallel()
	paths, err := filepath.Glob(filepath.Join(cases, "*", "*.txtar"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("no cases: %v", err)
	}
	for _, path := range paths {
		archive, err := txtar.ParseFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range archive.Files {
			if filepath.Ext(f.Name) != ".hcl" {
				continue
			}
			lines := strings.Split(string(f.Data), "\n")
			for i, whole := range lines {
				for _, damaged := range []string{"", spoil(whole)} {
					lines[i] = damaged
					survive(t, path, strings.Join(lines, "\n"))
				}
				lines[i] = whole
			}
		}
	}
}

// spoil turns a value into one that can not be read and a label into one that
// leads nowhere.
func spoil(line string) string {
	if cut := strings.IndexByte(line, '"'); cut >= 0 {
		return line[:cut+1] + "?" + line[cut+1:]
	}
	return line + " ?"
}

func survive(t *testing.T, path, text string) {
	t.Helper()
	p := plant.Build(".", []*schema.File{schema.NewReader().ReadFile("plant.hcl", text)})
	if _, err := lint.Run(p, rules.All(), lint.Options{Today: today(t)}); err != nil {
		t.Fatalf("%s: %v\n%s", path, err, text)
	}
}

// TestWordsOfTheLanguage asserts that each word that the record language takes
// from a standard is one that the tables know: a word without a table would be
// a record that no rule judges.
func TestWordsOfTheLanguage(t *testing.T) {
	t.Parallel()
	check := func(field *schema.Field, known func(string) bool) {
		t.Helper()
		for _, word := range field.Words {
			if !known(word) {
				t.Errorf("%s: %s is a word of the language and of no table", field.Name, word)
			}
		}
	}
	check(schema.SpaceAir.Field, func(w string) bool { _, err := standard.ParseSpace(w); return err == nil })
	check(schema.SpaceNoise.Field, func(w string) bool { _, err := standard.ParseNoise(w); return err == nil })
	check(schema.PathwayEnclosure.Field, func(w string) bool { _, err := standard.ParseEnclosure(w); return err == nil })
	check(schema.InterferenceKind.Field, func(w string) bool { _, err := standard.ParseDisturber(w); return err == nil })
	check(schema.PowerBarrier.Field, func(w string) bool { _, err := standard.ParseBarrier(w); return err == nil })
	check(schema.PowerEnclosed.Field, func(w string) bool { _, err := standard.ParsePowerRoute(w); return err == nil })
	check(schema.CableSegregate.Field, func(w string) bool { _, err := standard.ParseSegregation(w); return err == nil })
	check(schema.CableScreen.Field, func(w string) bool { _, ok := standard.ShieldOf(w); return ok })
	check(schema.CableCategory.Field, func(w string) bool { _, err := standard.ParseCategory(w); return err == nil })
	check(schema.PlantFireCode.Field, func(w string) bool { _, err := standard.ParseFireCode(w); return err == nil })
}
