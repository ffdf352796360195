package cli_test

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"homerun/lint/rules"
)

var update = flag.Bool("update", false, "write generated parts anew")

const (
	readme    = "../../../README.md"
	tableHead = "<!-- rules: generated, see DEVELOPERS.md -->\n"
	tableEnd  = "<!-- /rules -->"
)

// ruleTable is the README's table, made from the rules themselves.
func ruleTable() string {
	var b strings.Builder
	b.WriteString("| rule | checks that | where nothing else is said |\n|---|---|---|\n")
	for _, r := range rules.All() {
		fmt.Fprintf(&b, "| `%s` | %s | %s |\n", r.Name, strings.TrimPrefix(r.Title, "Checks that "), r.Severity)
	}
	return b.String()
}

// TestReadmeRuleTable keeps the README's table the one that the rules make.
func TestReadmeRuleTable(t *testing.T) {
	t.Parallel()
	page, err := os.ReadFile(readme)
	if err != nil {
		t.Fatal(err)
	}
	before, rest, found := strings.Cut(string(page), tableHead)
	_, after, ended := strings.Cut(rest, tableEnd)
	if !found || !ended {
		t.Fatal("the README has no place for the rule table")
	}
	want := before + tableHead + ruleTable() + tableEnd + after
	if *update {
		if err := os.WriteFile(readme, []byte(want), 0o600); err != nil {
			t.Fatal(err)
		}
		return
	}
	if string(page) != want {
		t.Error("the README's rule table is out of date: go test ./cmd/internal/cli -run Readme -update")
	}
}

// TestReadmeTour does what the README's tour says, with its records, and
// compares what the refused commit prints with what the README shows.
func TestReadmeTour(t *testing.T) {
	t.Parallel()
	page, err := os.ReadFile(readme)
	if err != nil {
		t.Fatal(err)
	}
	records := fenced(t, string(page), "```hcl\nspace \"1A\"", "```hcl\n")
	want := fenced(t, string(page), "```\nhall.hcl:", "```\n")
	r := newRoom(t)
	if err := os.Remove(filepath.Join(r.dir, "plant.hcl")); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"init", "north-pier"}, {"hook", "install"}} {
		if out, status := r.homerun(args...); status != 0 {
			t.Fatalf("%v: exit status %d:\n%s", args, status, out)
		}
	}
	r.write("hall.hcl", records)
	r.mustGit(r.dir, "add", ".")
	if got := r.commit(); got != want {
		t.Errorf("the commit says\n%s\nthe README shows\n%s", got, want)
	}
	r.write("hall.hcl", strings.Replace(records, "91.5 m", "61.5 m", 1))
	r.mustGit(r.dir, "add", ".")
	r.mustGit(r.dir, "commit", "-qm", "the hall, corrected")
}

// fenced returns the text of the fenced block that begins in the given way.
func fenced(t *testing.T, page, begin, fence string) string {
	t.Helper()
	at := strings.Index(page, begin)
	if at < 0 {
		t.Fatalf("the README has no block that begins with %q", begin)
	}
	text, _, closed := strings.Cut(page[at+len(fence):], "```")
	if !closed {
		t.Fatalf("the block that begins with %q does not end", begin)
	}
	return text
}

// commit makes a commit that the hook has to refuse, and returns what it said.
func (r *room) commit() string {
	r.t.Helper()
	cmd := exec.Command("git", "commit", "-qm", "the hall")
	cmd.Dir, cmd.Env = r.dir, r.env
	out, err := cmd.CombinedOutput()
	if err == nil {
		r.t.Error("the wrong commit was let through")
	}
	return string(out)
}
