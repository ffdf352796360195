package cli_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

const top = "../../.."

// roomImports are the packages of the project by folder, each with what it imports
// outside of tests.
func roomImports(t *testing.T) map[string][]string {
	t.Helper()
	rooms := make(map[string][]string)
	err := filepath.WalkDir(top, func(file string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && (d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".") && file != top):
			return filepath.SkipDir
		case filepath.Ext(file) != ".go" || strings.HasSuffix(file, "_test.go"):
			return nil
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		dir, err := filepath.Rel(top, filepath.Dir(file))
		if err != nil {
			return err
		}
		room := filepath.ToSlash(dir)
		for _, i := range parsed.Imports {
			rooms[room] = append(rooms[room], strings.Trim(i.Path.Value, `"`))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return rooms
}

func readTop(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(top, name))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// TestHouseIsAsDrawn compares the drawing of the house with the rooms that there
// are, and what it says of each library with who imports it.
func TestHouseIsAsDrawn(t *testing.T) {
	t.Parallel()
	rooms := roomImports(t)
	drawing := fenced(t, readTop(t, "DEVELOPERS.md"), "```\nschema/block", "```\n")
	drawn := make(map[string]string)
	last := ""
	for line := range strings.Lines(drawing) {
		if name, about, found := strings.Cut(strings.TrimRight(line, "\n"), "  "); found && name != "" {
			last = name
			drawn[last] = about
		} else {
			drawn[last] += " " + strings.TrimSpace(line)
		}
	}
	for room := range rooms {
		if _, ok := drawn[room]; !ok && room != "cmd/git-homerun" {
			t.Errorf("%s is not in the drawing", room)
		}
	}
	for room := range drawn {
		if info, err := os.Stat(filepath.Join(top, room)); err != nil || !info.IsDir() {
			t.Errorf("the drawing shows %s, which is not there", room)
		}
	}
	for word, modules := range map[string][]string{
		"HCL": {"github.com/hashicorp/hcl"}, "colour": {"github.com/fatih/color"}, "go-git": {"github.com/go-git/go-git"}, "SARIF": {"github.com/owenrumney/go-sarif"},
		"spreadsheets": {"github.com/xuri/excelize"}, "PDF and QR codes": {"codeberg.org/go-pdf/fpdf", "github.com/piglig/go-qr"}, "cobra": {"github.com/spf13/cobra"},
	} {
		for room, imports := range rooms {
			knows := slices.ContainsFunc(imports, func(i string) bool {
				return slices.ContainsFunc(modules, func(m string) bool { return strings.HasPrefix(i, m) })
			})
			if said := strings.Contains(drawn[room], "The only room that knows "+word); said != knows {
				t.Errorf("the drawing says of %s that it alone knows %s: %v; it does: %v", room, word, said, knows)
			}
		}
	}
}

// TestArrowsAreEnforced compares the arrows that the linter enforces with the
// imports: each room has its list, whatever it imports stands there, and nothing
// stands there that it does not need.
func TestArrowsAreEnforced(t *testing.T) {
	t.Parallel()
	rooms := roomImports(t)
	rule := regexp.MustCompile(`(?s)list-mode: strict\s+files: \["\*\*/([^"*]+)/\*\.go", "!\$test"\]\s+allow: \[([^\]]*)\]`)
	lists := make(map[string][]string)
	for _, m := range rule.FindAllStringSubmatch(readTop(t, ".golangci.yml"), -1) {
		for allowed := range strings.SplitSeq(m[2], ",") {
			if own, is := strings.CutPrefix(strings.TrimSpace(allowed), "homerun/"); is {
				lists[m[1]] = append(lists[m[1]], strings.TrimSuffix(own, "$"))
			}
		}
		if lists[m[1]] == nil {
			lists[m[1]] = []string{}
		}
	}
	for room, imports := range rooms {
		if strings.HasPrefix(room, "cmd/") || room == "examples" || strings.HasSuffix(room, "test") {
			continue
		}
		var own []string
		for _, i := range imports {
			if name, is := strings.CutPrefix(i, "homerun/"); is {
				own = append(own, name)
			}
		}
		slices.Sort(own)
		own = slices.Compact(own)
		list, ok := lists[room]
		slices.Sort(list)
		if !ok || !slices.Equal(own, list) {
			t.Errorf("%s imports %v, the linter's list is %v", room, own, list)
		}
		for _, i := range own {
			if from, _, _ := strings.Cut(room, "/"); from == "lint" && strings.HasPrefix(i, "diffreport") || from == "diffreport" && strings.HasPrefix(i, "lint") {
				t.Errorf("%s imports %s", room, i)
			}
		}
	}
	for room := range maps.Keys(lists) {
		if rooms[room] == nil {
			t.Errorf("the linter has a list for %s, which is not there", room)
		}
	}
}
