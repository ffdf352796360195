package vcs_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/schema/vcs"
)

// open opens the repository as the user of r.
func (r *repo) open(reader vcs.Reader) *vcs.Repo {
	r.t.Helper()
	opened, err := vcs.Open(r.t.Context(), vcs.Options{Dir: r.dir, Env: r.env, Reader: reader})
	if err != nil {
		r.t.Fatal(err)
	}
	r.t.Cleanup(func() { check(r.t, opened.Close()) })
	return opened
}

func check(tb testing.TB, err error) {
	tb.Helper()
	if err != nil {
		tb.Fatal(err)
	}
}

// TestContract holds every reader equal to git over every form of repository.
func TestContract(t *testing.T) {
	t.Parallel()
	for _, form := range forms {
		t.Run(form.name, func(t *testing.T) {
			t.Parallel()
			made := form.make(fresh(t))
			for _, reader := range []vcs.Reader{vcs.ReaderAuto, vcs.ReaderGoGit, vcs.ReaderGit} {
				t.Run(reader.String(), func(t *testing.T) {
					r := &repo{t: t, dir: made.dir, env: made.env}
					if reader == vcs.ReaderGoGit && !form.fit {
						_, err := vcs.Open(t.Context(), vcs.Options{Dir: r.dir, Env: r.env, Reader: reader})
						if !errors.Is(err, vcs.ErrUnfit) {
							t.Fatalf("got %v, want ErrUnfit", err)
						}
						return
					}
					opened := r.open(reader)
					if _, err := opened.Index(t.Context()); form.name == "split index" && reader == vcs.ReaderGoGit {
						if err == nil {
							t.Error("a split index was read without the part it shares")
						}
						return
					}
					if want := form.fit && reader != vcs.ReaderGit; (opened.Form().Reader == vcs.ReaderGoGit) != want {
						t.Errorf("reader %v answers first", opened.Form().Reader)
					}
					r.checkPlaces(opened)
					r.checkIndex(opened)
					r.checkWorktree(opened)
					r.checkHead(opened)
				})
			}
		})
	}
}

// ask asks git for one fact, "" when git refuses.
func (r *repo) ask(args ...string) string {
	out, err := r.run(args...)
	if err != nil {
		return ""
	}
	return strings.TrimSuffix(out, "\n")
}

func (r *repo) checkPlaces(opened *vcs.Repo) {
	r.t.Helper()
	got := map[string]string{
		"top": opened.Top(), "git dir": opened.GitDir(), "common dir": opened.CommonDir(), "hooks": opened.HooksDir(),
		"prefix": opened.Prefix(), "format": opened.Form().ObjectFormat,
		"bare": fmt.Sprint(opened.Form().Bare), "shallow": fmt.Sprint(opened.Form().Shallow),
	}
	absolute := []string{"rev-parse", "--path-format=absolute"}
	want := map[string]string{
		"top": r.ask("rev-parse", "--show-toplevel"), "git dir": r.ask("rev-parse", "--absolute-git-dir"),
		"common dir": r.ask(append(absolute, "--git-common-dir")...), "hooks": r.ask(append(absolute, "--git-path", "hooks")...),
		"prefix": strings.TrimSuffix(r.ask("rev-parse", "--show-prefix"), "/"), "format": r.ask("rev-parse", "--show-object-format"),
		"bare": r.ask("rev-parse", "--is-bare-repository"), "shallow": r.ask("rev-parse", "--is-shallow-repository"),
	}
	if diff := cmp.Diff(want, got); diff != "" {
		r.t.Errorf("places (-git +got):\n%s", diff)
	}
}

// staged lists entries as "git ls-files --stage" does.
func staged(entries []vcs.Entry) []string {
	var lines []string
	for _, e := range entries {
		lines = append(lines, fmt.Sprintf("%06o %s %d\t%s", e.Mode, e.ID, e.Stage, e.Path))
	}
	return lines
}

// split cuts what git printed with -z.
func split(out string) []string {
	if out == "" {
		return nil
	}
	return strings.Split(strings.TrimSuffix(out, "\x00"), "\x00")
}

func (r *repo) checkIndex(opened *vcs.Repo) {
	r.t.Helper()
	entries, err := opened.Index(r.t.Context())
	check(r.t, err)
	if diff := cmp.Diff(split(r.git("ls-files", "--stage", "-z", "--full-name", "--", ":/")), staged(entries)); diff != "" {
		r.t.Errorf("index (-git +got):\n%s", diff)
	}
	for _, e := range entries {
		// The forms announce paths by this name alone.
		if e.IntentToAdd != (e.Path == "announced.hcl") {
			r.t.Errorf("%q: intent to add is %v", e.Path, e.IntentToAdd)
		}
	}
	r.checkBlobs(opened, entries)
}

// checkBlobs compares contents, one by one and all at once, with "git cat-file".
func (r *repo) checkBlobs(opened *vcs.Repo, entries []vcs.Entry) {
	r.t.Helper()
	var ids []string
	want := map[string]string{}
	for _, e := range entries {
		if e.Mode != vcs.ModeSubmodule {
			ids = append(ids, e.ID)
			want[e.ID] = r.git("cat-file", "blob", e.ID)
		}
	}
	var order []string
	for b, err := range opened.Blobs(r.t.Context(), ids) {
		check(r.t, err)
		order = append(order, b.ID)
		one, err := opened.Blob(r.t.Context(), b.ID)
		check(r.t, err)
		if string(b.Data) != want[b.ID] || string(one) != want[b.ID] {
			r.t.Errorf("%s: got %q and %q, git says %q", b.ID, b.Data, one, want[b.ID])
		}
	}
	if diff := cmp.Diff(ids, order); diff != "" {
		r.t.Errorf("order of blobs (-asked +got):\n%s", diff)
	}
}

func (r *repo) checkWorktree(opened *vcs.Repo) {
	r.t.Helper()
	entries, err := opened.Worktree(r.t.Context())
	if r.ask("rev-parse", "--show-toplevel") == "" {
		if !errors.Is(err, vcs.ErrNoWorktree) {
			r.t.Errorf("work tree: got %v, want ErrNoWorktree", err)
		}
		return
	}
	check(r.t, err)
	var want, got []string
	for _, p := range split(r.git("ls-files", "-z", "-c", "-o", "--exclude-standard", "--full-name", "--", ":/")) {
		if _, err := os.Lstat(filepath.Join(opened.Top(), p)); err == nil {
			want = append(want, p)
		}
	}
	slices.Sort(want)
	for _, e := range entries {
		got = append(got, e.Path)
		r.checkFile(opened, e)
	}
	if diff := cmp.Diff(slices.Compact(want), got); diff != "" {
		r.t.Errorf("work tree (-git +got):\n%s", diff)
	}
}

// checkFile compares a file of the work tree with what the system reads.
func (r *repo) checkFile(opened *vcs.Repo, e vcs.Entry) {
	r.t.Helper()
	if e.ID != "" || e.Stage != 0 {
		r.t.Errorf("%q: a work tree has no ids and stages: %+v", e.Path, e)
	}
	if !e.Regular() {
		return
	}
	want, err := os.ReadFile(filepath.Join(opened.Top(), e.Path))
	check(r.t, err)
	got, err := opened.ReadFile(e.Path)
	check(r.t, err)
	if string(got) != string(want) || e.Size != int64(len(want)) {
		r.t.Errorf("%q: got %q of %d bytes, want %q", e.Path, got, e.Size, want)
	}
}
