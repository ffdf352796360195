package cli_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// TestManualPages writes the pages and has a strict reader of man(7) look for
// mistakes in them.
func TestManualPages(t *testing.T) {
	t.Parallel()
	mandoc, err := exec.LookPath("mandoc")
	if err != nil {
		t.Skip("mandoc is not here")
	}
	r := newRoom(t)
	if out, status := r.homerun("man", "share/man/man1"); status != 0 || !strings.Contains(out, "pages are written") {
		t.Fatalf("exit status %d:\n%s", status, out)
	}
	pages, err := filepath.Glob(filepath.Join(r.dir, "share/man/man1/*.1"))
	if err != nil || len(pages) < 10 {
		t.Fatalf("pages %v, error %v", pages, err)
	}
	out, err := exec.Command(mandoc, append([]string{"-Tlint", "-Wwarning"}, pages...)...).CombinedOutput()
	if err != nil {
		t.Errorf("%v:\n%s", err, out)
	}
	out, err = exec.Command(mandoc, "-Tascii", filepath.Join(r.dir, "share/man/man1/git-homerun-lint.1")).CombinedOutput()
	text := strings.NewReplacer("_\b", "", "\n", " ").Replace(string(out))
	if err != nil || !strings.Contains(text, "permanent") && !strings.Contains(text, "clause") {
		t.Errorf("%v:\n%s", err, out)
	}
	again := newRoom(t)
	again.homerun("man", "share/man/man1")
	for _, page := range pages {
		one, _ := os.ReadFile(page)
		other, err := os.ReadFile(filepath.Join(again.dir, "share/man/man1", filepath.Base(page)))
		if err != nil || string(one) != string(other) {
			t.Errorf("%s differs another time, %v", page, err)
		}
	}
}

// TestHelpThroughGit asks git for help in the ways that git itself answers.
func TestHelpThroughGit(t *testing.T) {
	t.Parallel()
	if _, err := exec.LookPath("man"); err != nil {
		t.Skip("man is not here")
	}
	r := newRoom(t)
	r.env = append(r.env, "MANPATH="+filepath.Join(r.dir, "man"), "MANPAGER=cat", "PAGER=cat", "GIT_PAGER=cat", "MANROFFOPT=-c", "TERM=dumb")
	if out, status := r.homerun("man", "man/man1"); status != 0 {
		t.Fatalf("exit status %d:\n%s", status, out)
	}
	for _, args := range [][]string{{"homerun", "--help"}, {"help", "homerun"}} {
		cmd := exec.Command("git", args...)
		cmd.Dir, cmd.Env = r.dir, r.env
		out, err := cmd.CombinedOutput()
		if err != nil || !strings.Contains(string(out), "GIT-HOMERUN(1)") || !strings.Contains(string(out), "homerun.format") {
			t.Errorf("git %v: %v\n%s", args, err, out)
		}
	}
}

// TestHelpInABrowser writes the pages that git opens where help.format is web;
// the links between them lead somewhere.
func TestHelpInABrowser(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	if out, status := r.homerun("man", "--html", "doc"); status != 0 {
		t.Fatalf("exit status %d:\n%s", status, out)
	}
	page, err := os.ReadFile(filepath.Join(r.dir, "doc", "git-homerun.html"))
	if err != nil {
		t.Fatal(err)
	}
	links := 0
	for _, part := range strings.Split(string(page), `href="`)[1:] {
		name, _, _ := strings.Cut(part, `"`)
		if _, err := os.Stat(filepath.Join(r.dir, "doc", name)); err != nil {
			t.Error(err)
		}
		links++
	}
	if links < 10 {
		t.Errorf("%d links", links)
	}
}
