package vcs_test

import (
	"errors"
	"fmt"
	"os/exec"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/schema/vcs"
)

// feed runs git with text to read and gives the id that it prints.
func (r *repo) feed(text string, args ...string) string {
	r.t.Helper()
	cmd := exec.CommandContext(r.t.Context(), "git", args...)
	cmd.Dir, cmd.Env, cmd.Stdin = r.dir, r.env, strings.NewReader(text)
	out, err := cmd.Output()
	check(r.t, err)
	return strings.TrimSpace(string(out))
}

// store writes a commit object as it stands, which git's own commands would not make, and gives its id.
func (r *repo) store(text string) string {
	r.t.Helper()
	return r.feed(text, "hash-object", "-t", "commit", "-w", "--literally", "--stdin")
}

// TestOddCommits compares commits that other programs, or enemies, may have written with what git makes of them, read
// one by one and as part of a history.
func TestOddCommits(t *testing.T) {
	t.Parallel()
	r := plant(t)
	const who = " Åsa <a@example.org> 1551600000 +0130\n"
	for name, text := range map[string]string{
		"no message":            "author" + who + "committer" + who,
		"empty message":         "author" + who + "committer" + who + "\n",
		"no line end":           "author" + who + "committer" + who + "\nsubject",
		"blank lines first":     "author" + who + "committer" + who + "\n\n \t\n\nsubject  \nmore\t\n\n\n\nbody\n\n\n",
		"looks like a listing":  "author" + who + "committer" + who + "\n:100644 100644 a b M\ncommit x\n\n:000000 100644 0 1 A\n\ncommit y\n    four\n\ttab\n",
		"carriage returns":      "author" + who + "committer" + who + "\nsubject\r\n\r\nbody\r\n",
		"signed":                "author" + who + "committer" + who + "gpgsig -----BEGIN\n \n author Eve <e@example.org> 1 +0000\n -----END\n\nsigned\n",
		"no name":               "author <a@example.org> 1551600000 +0000\ncommitter" + who + "\nsubject\n",
		"spaces around":         "author   Åsa   < a@example.org > 1551600000 -0030\ncommitter" + who + "\nsubject\n",
		"brackets in the name":  "author A > B <a@example.org> 1551600000 +0000\ncommitter" + who + "\nsubject\n",
		"latin-1":               "author P\xe5l <a@example.org> 1551600000 +0000\ncommitter" + who + "encoding ISO-8859-1\n\nPl\xe5t\n\nBr\xf6d\n",
		"utf-8, said so":        "author" + who + "committer" + who + "encoding UTF-8\n\nPlåt\n",
		"not utf-8, not said":   "author" + who + "committer" + who + "\nPl\xe5t\n",
		"far future":            "author Å <a@example.org> 253402300799 +0000\ncommitter" + who + "\nsubject\n",
		"control characters":    "author A\x1b[31m <a@example.org> 1551600000 +0000\ncommitter" + who + "\n\x1b[31mred\x07\n",
		"a NUL byte":            "author" + who + "committer" + who + "\nsubject\n\nbody\x00hidden\n",
		"header of another day": "author" + who + "committer" + who + "mergetag object 1\n type commit\n \n tag\nxyz 1\n\nsubject\n",
	} {
		id := r.store("tree " + r.ask("rev-parse", "HEAD^{tree}") + "\nparent " + r.ask("rev-parse", "HEAD~1") + "\n" + text)
		for _, reader := range []vcs.Reader{vcs.ReaderGoGit, vcs.ReaderGit} {
			opened := r.open(reader)
			c, err := opened.Resolve(t.Context(), id)
			check(t, err)
			r.checkCommit(c)
			for c, err := range opened.Log(t.Context(), vcs.LogOptions{From: id, Changes: true, Max: 1}) {
				check(t, err)
				r.checkCommit(c)
				r.checkChanges(c, vcs.LogOptions{})
			}
		}
		if t.Failed() {
			t.Fatalf("commit with %s", name)
		}
	}
}

// TestTreeIsBounded proves that neither folders nested without end nor a few folders that name each other over and
// over, ten million files in seven objects, make a reader hold more than its limits.
func TestTreeIsBounded(t *testing.T) {
	t.Parallel()
	r := plant(t)
	deep := r.ask("rev-parse", "HEAD^{tree}")
	for range 520 {
		deep = r.feed("040000 tree "+deep+"\td\n", "mktree")
	}
	wide := r.feed("100644 blob "+r.ask("rev-parse", "HEAD:plant.hcl")+"\tf\n", "mktree")
	for range 7 {
		var text strings.Builder
		for name := range 10 {
			fmt.Fprintf(&text, "040000 tree %s\t%d\n", wide, name)
		}
		wide = r.feed(text.String(), "mktree")
	}
	for name, tree := range map[string]string{"deep": deep, "wide": wide} {
		id := r.ask("commit-tree", "-m", name, tree)
		for _, reader := range []vcs.Reader{vcs.ReaderAuto, vcs.ReaderGit} {
			if entries, err := r.open(reader).Tree(t.Context(), id); !errors.Is(err, vcs.ErrTooLarge) {
				t.Errorf("%s, %v: got %d files, %v, want ErrTooLarge", name, reader, len(entries), err)
			}
		}
		got, err := r.open(vcs.ReaderAuto).Changes(t.Context(), []string{id})
		if name == "wide" {
			if !errors.Is(err, vcs.ErrTooLarge) {
				t.Errorf("%s: got %d commits, %v, want ErrTooLarge", name, len(got), err)
			}
			continue
		}
		want, wantErr := r.open(vcs.ReaderGit).Commits(t.Context(), []string{id})
		if diff := cmp.Diff(reduced(want), reduced(got)); diff != "" || err != nil || wantErr != nil || len(got[0].Changed) == 0 {
			t.Errorf("%s: %v, %v, changes (-git +got):\n%s", name, wantErr, err, diff)
		}
	}
}
