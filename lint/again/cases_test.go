package again_test

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"

	"homerun/schema"
)

// caseTexts are the plants of the linter's cases: every rule fires in some of them.
func caseTexts(t *testing.T) []string {
	t.Helper()
	paths, err := filepath.Glob("../../testdata/lint/*/*.txtar")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no cases: %v", err)
	}
	var texts []string
	for _, path := range paths {
		archive, err := txtar.ParseFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range archive.Files {
			if f.Name == "plant.hcl" {
				texts = append(texts, string(f.Data))
			}
		}
	}
	return texts
}

// blocks cuts a text into its top-level blocks, as far as lines tell.
func blocks(text string) []string {
	var all []string
	var now strings.Builder
	for line := range strings.Lines(text) {
		now.WriteString(line)
		if strings.TrimRight(line, "\n") == "}" {
			all = append(all, now.String())
			now.Reset()
		}
	}
	if strings.TrimSpace(now.String()) != "" {
		all = append(all, now.String())
	}
	return all
}

// TestCasesBlockByBlock takes each block out of each case and puts it back, and
// goes through every fourth line of it that states a value in the same way.
func TestCasesBlockByBlock(t *testing.T) {
	t.Parallel()
	today := day(t, "2026-06-15")
	for n, text := range caseTexts(t) {
		t.Run(fmt.Sprint(n), func(t *testing.T) {
			t.Parallel()
			reader := schema.NewReader()
			state := func(text string) map[string]*schema.File {
				return map[string]*schema.File{"plant.hcl": reader.ReadFile("plant.hcl", text)}
			}
			w := newTrail()
			whole := state(text)
			w.to(t, whole, today)
			all := blocks(text)
			for i, block := range all {
				lacking := strings.Join(all[:i], "") + strings.Join(all[i+1:], "")
				w.to(t, state(lacking), today)
				w.to(t, whole, today)
				lines := strings.SplitAfter(block, "\n")
				for k, line := range lines {
					if !strings.Contains(line, " = ") || strings.Contains(line, "{") || k%4 != n%4 {
						continue
					}
					less := strings.Join(lines[:k], "") + strings.Join(lines[k+1:], "")
					w.to(t, state(strings.Join(all[:i], "")+less+strings.Join(all[i+1:], "")), today)
					w.to(t, whole, today)
				}
				if t.Failed() {
					t.Fatalf("with block %d of\n%s", i, text)
				}
			}
		})
	}
}
