package vcs_test

import (
	"errors"
	"fmt"
	"strings"

	"github.com/google/go-cmp/cmp"

	"homerun/schema/vcs"
)

func (r *repo) checkHead(opened *vcs.Repo) {
	r.t.Helper()
	head := r.ask("rev-parse", "--verify", "--quiet", "HEAD")
	got, err := opened.Resolve(r.t.Context(), "HEAD")
	if head == "" {
		if !errors.Is(err, vcs.ErrNoCommit) {
			r.t.Errorf("HEAD: got %v, want ErrNoCommit", err)
		}
		return
	}
	check(r.t, err)
	if got.ID != head {
		r.t.Fatalf("HEAD: got %s, git says %s", got.ID, head)
	}
	r.checkCommit(got)
	r.checkTree(opened, got)
	r.checkLog(opened, vcs.LogOptions{})
	r.checkLog(opened, vcs.LogOptions{Changes: true})
	r.checkLog(opened, vcs.LogOptions{Changes: true, FirstParent: true})
	r.checkAncestry(opened, head)
	r.checkPast(opened, head)
	r.checkTree(opened, got) // once more, by what a history opens
}

// checkCommit compares the fields of a commit with what git's formats print.
func (r *repo) checkCommit(c vcs.Commit) {
	r.t.Helper()
	out := r.git("log", "-1", "--encoding=UTF-8", "--date=raw",
		"--format=%H%x00%T%x00%P%x00%an%x00%ae%x00%ad%x00%cn%x00%ce%x00%cd%x00%s%x00%b", c.ID)
	raw := func(p vcs.Person) string { return fmt.Sprintf("%d %s", p.When.Unix(), p.When.Format("-0700")) }
	got := []string{
		c.ID, c.Tree, strings.Join(c.Parents, " "), c.Author.Name, c.Author.Email, raw(c.Author),
		c.Committer.Name, c.Committer.Email, raw(c.Committer), c.Subject, c.Body,
	}
	if diff := cmp.Diff(strings.Split(strings.TrimRight(out, " \t\r\n"), "\x00"), got); diff != "" {
		r.t.Errorf("commit %s (-git +got):\n%s", c.ID, diff)
	}
}

func (r *repo) checkTree(opened *vcs.Repo, c vcs.Commit) {
	r.t.Helper()
	entries, err := opened.Tree(r.t.Context(), c.ID)
	check(r.t, err)
	var got []string
	for _, e := range entries {
		kind := "blob"
		if e.Mode == vcs.ModeSubmodule {
			kind = "commit"
		}
		got = append(got, fmt.Sprintf("%06o %s %s\t%s", e.Mode, kind, e.ID, e.Path))
	}
	if diff := cmp.Diff(split(r.git("ls-tree", "-r", "-z", "--full-tree", c.ID)), got); diff != "" {
		r.t.Errorf("tree (-git +got):\n%s", diff)
	}
}

// checkLog compares a walk with "git rev-list", and its changes with "git diff-tree" for each parent.
func (r *repo) checkLog(opened *vcs.Repo, o vcs.LogOptions) {
	r.t.Helper()
	args := []string{"rev-list", "--topo-order", "HEAD"}
	if o.FirstParent {
		args = append(args, "--first-parent")
	}
	var got []string
	for c, err := range opened.Log(r.t.Context(), o) {
		check(r.t, err)
		got = append(got, c.ID)
		if o.Changes {
			r.checkCommit(c)
			r.checkChanges(c, o)
		}
	}
	if diff := cmp.Diff(strings.Fields(r.git(args...)), got); diff != "" {
		r.t.Errorf("log %+v (-git +got):\n%s", o, diff)
	}
}

func (r *repo) checkChanges(c vcs.Commit, o vcs.LogOptions) {
	r.t.Helper()
	before := c.Parents
	if o.FirstParent && len(before) > 1 {
		before = before[:1]
	}
	if len(before) == 0 {
		before = []string{r.ask("hash-object", "-t", "tree", "/dev/null")}
	}
	var want []vcs.Delta
	for i, parent := range before {
		tokens := split(r.git("diff-tree", "-r", "-z", "--raw", "--no-renames", parent, c.ID))
		for at := 0; at+1 < len(tokens); at += 2 {
			d := vcs.Delta{Path: tokens[at+1], Parent: i}
			var status string
			if _, err := fmt.Sscanf(tokens[at], ":%o %o %s %s %s", &d.BeforeMode, &d.AfterMode, &d.Before, &d.After, &status); err != nil {
				r.t.Fatal(err)
			}
			switch status {
			case "A":
				d.Before = ""
			case "D":
				d.After = ""
			}
			want = append(want, d)
		}
	}
	if diff := cmp.Diff(want, c.Changed); diff != "" {
		r.t.Errorf("changes of %s (-git +got):\n%s", c.ID, diff)
	}
}
