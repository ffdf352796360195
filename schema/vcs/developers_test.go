package vcs_test

import (
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// house is the top of the module, seen from here.
const house = "../.."

// tables are the rows of the two tables about git in DEVELOPERS.md, by what stands first in them.
func tables(t *testing.T) map[string]string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(house, "DEVELOPERS.md"))
	check(t, err)
	rows := map[string]string{}
	for _, title := range []string{"\n## Forms of repository\n", "\n## Hooks and drivers\n"} {
		_, section, found := strings.Cut(string(text), title)
		if !found {
			t.Fatalf("DEVELOPERS.md has no section %q", strings.TrimSpace(title))
		}
		section, _, _ = strings.Cut(section, "\n## ")
		for line := range strings.Lines(section) {
			if cells := strings.Split(line, "|"); len(cells) == 5 && !strings.HasPrefix(cells[1], "--") && !strings.Contains(cells[3], "the test that") {
				rows[strings.TrimSpace(cells[1])] = cells[3]
			}
		}
	}
	return rows
}

var proof = regexp.MustCompile("`([^`]+)`")

// TestEveryFormHasItsRow holds the tables of DEVELOPERS.md to the tests: each form of repository of the contract has
// a row, and each test that a row names is there.
func TestEveryFormHasItsRow(t *testing.T) {
	t.Parallel()
	rows := tables(t)
	for _, form := range forms {
		if !strings.Contains(rows[form.name], "`vcs.TestContract`") {
			t.Errorf("the form %q has no row that names vcs.TestContract", form.name)
		}
	}
	known := tests(t)
	for row, proofs := range rows {
		named := proof.FindAllStringSubmatch(proofs, -1)
		if len(named) == 0 {
			t.Errorf("%q names no test", row)
		}
		for _, one := range named {
			if !known[one[1]] {
				t.Errorf("%q names %s, and there is no such test", row, one[1])
			}
		}
	}
	if len(rows) < len(forms) {
		t.Errorf("only %d rows were read", len(rows))
	}
}

var testFunc = regexp.MustCompile(`(?m)^func ((?:Test|Fuzz)\w+)\(`)

// tests are all tests of the module as "package.Name", and all scripts as "script/NAME.txtar".
func tests(t *testing.T) map[string]bool {
	t.Helper()
	known := map[string]bool{}
	check(t, fs.WalkDir(os.DirFS(house), ".", func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil || d.IsDir():
			return err
		case path.Ext(name) == ".txtar":
			known["script/"+path.Base(name)] = true
		case strings.HasSuffix(name, "_test.go"):
			text, err := fs.ReadFile(os.DirFS(house), name)
			for _, found := range testFunc.FindAllStringSubmatch(string(text), -1) {
				known[path.Base(path.Dir(name))+"."+found[1]] = true
			}
			return err
		}
		return nil
	}))
	return known
}
