package render_test

import (
	"bytes"
	"encoding/json"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"testing"

	"golang.org/x/tools/txtar"

	"homerun/diffreport"
	"homerun/diffreport/render"
)

// TestEveryFieldOfAnOrderIsDocumented holds ORDER.md against the orders that the
// repository keeps and one with findings, both ways; and the actions.
func TestEveryFieldOfAnOrderIsDocumented(t *testing.T) {
	t.Parallel()
	cases, err := filepath.Glob(filepath.FromSlash("../../testdata/orders/*.txtar"))
	if err != nil || len(cases) == 0 {
		t.Fatal("no orders", err)
	}
	written, done := make(map[string]bool), make(map[string]bool)
	for _, name := range cases {
		archive, bad := txtar.ParseFile(name)
		if bad != nil {
			t.Fatal(bad)
		}
		o := orderOf(t, archive)
		for _, s := range o.Steps {
			done[string(s.Action)] = true
		}
		o.Introduced = []diffreport.FindingLine{{Working: []diffreport.Term{{}}, Related: []diffreport.Place{{}}}}
		var out bytes.Buffer
		if bad = render.OrderJSON(&out, o); bad != nil {
			t.Fatal(bad)
		}
		var document any
		if bad = json.Unmarshal(out.Bytes(), &document); bad != nil {
			t.Fatal(bad)
		}
		paths(document, "", written)
	}
	page, told := documented(t, "ORDER.md")
	actions := make(map[string]bool)
	for _, line := range regexp.MustCompile("(?m)^\\* `([a-z ]+)`:").FindAllSubmatch(page, -1) {
		actions[string(line[1])] = true
	}
	missing(t, "written and not documented", written, told)
	missing(t, "documented and not written", told, written)
	missing(t, "done and not documented", done, actions)
}

// documented are the fields that the tables of a page tell, in their first column.
func documented(t *testing.T, file string) (page []byte, fields map[string]bool) {
	t.Helper()
	page, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	fields = make(map[string]bool)
	name := regexp.MustCompile("`([a-z_.\\[\\]]+)`")
	for _, row := range regexp.MustCompile(`(?m)^\| (.*?) \|`).FindAllSubmatch(page, -1) {
		for _, field := range name.FindAllSubmatch(row[1], -1) {
			fields[string(field[1])] = true
		}
	}
	return page, fields
}

func missing(t *testing.T, how string, of, in map[string]bool) {
	t.Helper()
	for _, name := range slices.Sorted(maps.Keys(of)) {
		if !in[name] {
			t.Errorf("%s is %s", name, how)
		}
	}
}
