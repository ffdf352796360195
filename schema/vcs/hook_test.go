package vcs_test

import (
	"context"
	"encoding/json"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/schema/vcs"
)

// seen is what a process that git started as a hook saw.
type seen struct {
	Failed     string            `json:"failed"`
	Prefix     string            `json:"prefix"`
	Reader     string            `json:"reader"`
	Staged     []string          `json:"staged"`
	Content    map[string]string `json:"content"`
	Tree       []string          `json:"tree"`
	MergeHeads []string          `json:"merge_heads"`
}

// TestMain makes the test binary double as a hook: when git starts it as one, it writes down what it sees. It
// doubles as another user too.
func TestMain(m *testing.M) {
	if report := os.Getenv("VCS_TEST_REPORT"); report != "" {
		s := look(context.Background())
		text, err := json.Marshal(s)
		if err != nil || os.WriteFile(report, text, 0o644) != nil {
			os.Exit(1) //nolint:forbidigo // a hook answers git by its exit status
		}
		return
	}
	if os.Getenv("VCS_TEST_LOOK_AROUND") != "" {
		l, err := lookAround(context.Background())
		if err != nil || json.NewEncoder(os.Stdout).Encode(l) != nil { //nolint:forbidigo // its parent reads the answer there
			os.Exit(1) //nolint:forbidigo // and this as a failure
		}
		return
	}
	m.Run()
}

// look reads the repository as a hook does: from the folder and environment that git gave it.
func look(ctx context.Context) seen {
	r, err := vcs.Open(ctx, vcs.Options{Env: os.Environ()})
	if err != nil {
		return seen{Failed: err.Error()}
	}
	defer r.Close()
	s := seen{Prefix: r.Prefix(), Reader: r.Form().Reader.String(), Content: map[string]string{}}
	entries, err := r.Index(ctx)
	if err != nil {
		return seen{Failed: err.Error()}
	}
	s.Staged = staged(entries)
	for _, e := range entries {
		data, blobErr := r.Blob(ctx, e.ID)
		if blobErr != nil {
			return seen{Failed: blobErr.Error()}
		}
		s.Content[e.Path] = string(data)
	}
	if s.MergeHeads, err = r.MergeHeads(); err != nil {
		return seen{Failed: err.Error()}
	}
	if pushed := os.Getenv("VCS_TEST_PUSHED"); pushed != "" {
		tree, err := r.Tree(ctx, pushed)
		if err != nil {
			return seen{Failed: err.Error()}
		}
		s.Tree = staged(tree)
	}
	return s
}

// listed is what a user saw of a work tree with folders and files that are not theirs to read.
type listed struct {
	Paths      []string `json:"paths"`
	Unreadable bool     `json:"unreadable"`
	Said       string   `json:"said"`
	Denied     bool     `json:"denied"`
	File       string   `json:"file"`
}

// lookAround lists the work tree and reads a file that the user may not read.
func lookAround(ctx context.Context) (listed, error) {
	r, err := vcs.Open(ctx, vcs.Options{Env: os.Environ()})
	if err != nil {
		return listed{}, err
	}
	defer r.Close()
	entries, err := r.Worktree(ctx)
	var l listed
	for _, e := range entries {
		l.Paths = append(l.Paths, e.Path)
	}
	if err != nil {
		l.Unreadable, l.Said = errors.Is(err, vcs.ErrUnreadable), err.Error()
	}
	_, err = r.ReadFile("locked.hcl")
	if err != nil {
		l.Denied, l.File = errors.Is(err, fs.ErrPermission), err.Error()
	}
	return l, nil
}

// hook installs a hook that lets the test binary look and, beside it, git list its index and the content of a file.
func (r *repo) hook(name string) (report func() (seen, []string)) {
	r.t.Helper()
	binary, err := os.Executable()
	check(r.t, err)
	out := filepath.Join(r.t.TempDir(), "report")
	script := "#!/bin/sh\nset -e\ngit ls-files --stage -z --full-name >'" + out + ".git'\nVCS_TEST_REPORT='" + out + "' '" + binary + "'\n"
	folder := r.ask("rev-parse", "--path-format=absolute", "--git-path", "hooks")
	check(r.t, os.MkdirAll(folder, 0o755))
	check(r.t, os.WriteFile(filepath.Join(folder, name), []byte(script), 0o755))
	return func() (seen, []string) {
		r.t.Helper()
		text, err := os.ReadFile(out)
		check(r.t, err)
		var s seen
		check(r.t, json.Unmarshal(text, &s))
		want, err := os.ReadFile(out + ".git")
		check(r.t, err)
		check(r.t, os.Remove(out))
		return s, split(string(want))
	}
}

// TestHookSeesWhatIsCommitted proves that a pre-commit hook reads the content that the commit then holds: with
// "commit -a" and "commit PATH" that lies in an index of another name, which only GIT_INDEX_FILE tells.
func TestHookSeesWhatIsCommitted(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name   string
		commit []string
	}{
		{"staged", []string{"commit", "-qm", "Change"}},
		{"all", []string{"commit", "-qam", "Change"}},
		{"one path", []string{"commit", "-qm", "Change", "plant.hcl"}},
		{"amend", []string{"commit", "-q", "--amend", "--no-edit"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			r := plant(t)
			report := r.hook("pre-commit")
			r.write("plant.hcl", "changed, not staged\n")
			r.git(c.commit...)
			got, want := report()
			if got.Failed != "" || got.Reader != "go-git" {
				t.Fatalf("hook: %+v", got)
			}
			if diff := cmp.Diff(want, got.Staged); diff != "" {
				t.Errorf("index in the hook (-git +got):\n%s", diff)
			}
			for _, path := range split(r.git("ls-tree", "-r", "-z", "--name-only", "HEAD")) {
				if committed := r.git("cat-file", "blob", "HEAD:"+path); got.Content[path] != committed {
					t.Errorf("%s: the hook saw %q, committed was %q", path, got.Content[path], committed)
				}
			}
		})
	}
}

// TestHookKnowsWhereTheUserStood covers GIT_PREFIX as git itself sets it for a hook.
func TestHookKnowsWhereTheUserStood(t *testing.T) {
	t.Parallel()
	r := plant(t)
	report := r.hook("pre-commit")
	r.in(filepath.Join(r.dir, "floor")).git("commit", "-qm", "From a subfolder")
	if got, _ := report(); got.Failed != "" || got.Prefix != "floor" {
		t.Errorf("prefix %q, want floor (%s)", got.Prefix, got.Failed)
	}
}

// TestHookInLinkedWorktree covers the index of a linked work tree, which lies in the folder of the main one.
func TestHookInLinkedWorktree(t *testing.T) {
	t.Parallel()
	r := plant(t)
	r.git("worktree", "add", "-q", "../linked", "wing")
	linked := r.in(filepath.Join(filepath.Dir(r.dir), "linked"))
	report := linked.hook("pre-commit")
	linked.write("plant.hcl", "changed in the linked tree\n")
	linked.git("commit", "-qam", "Change")
	got, want := report()
	if diff := cmp.Diff(want, got.Staged); diff != "" || got.Content["plant.hcl"] != "changed in the linked tree\n" {
		t.Errorf("index in the hook: %+v\n(-git +got):\n%s", got, diff)
	}
}

// TestMergeHooksKnowTheOtherSide covers a clean merge, where git runs pre-merge-commit, and a resolved one, where it
// runs pre-commit.
func TestMergeHooksKnowTheOtherSide(t *testing.T) {
	t.Parallel()
	r := plant(t)
	report := r.hook("pre-merge-commit")
	r.git("commit", "-qm", "Add floor 3")
	r.git("switch", "-q", "--force", "-c", "other", "HEAD~1")
	r.commit("other.hcl", "other\n", "Another file")
	other := r.ask("rev-parse", "HEAD")
	r.git("switch", "-q", "main")
	r.git("merge", "-q", "--no-edit", "other")
	got, want := report()
	if diff := cmp.Diff(want, got.Staged); diff != "" || got.Failed != "" {
		t.Errorf("index in pre-merge-commit: %s (-git +got):\n%s", got.Failed, diff)
	}
	if diff := cmp.Diff([]string{other}, got.MergeHeads); diff != "" {
		t.Errorf("clean merge, heads (-git +got):\n%s", diff)
	}

	stopped := conflict(fresh(t))
	report = stopped.hook("pre-commit")
	stopped.write("plant.hcl", "both\n")
	stopped.git("commit", "-qam", "Merge by hand")
	got, _ = report()
	if diff := cmp.Diff(strings.Fields(stopped.ask("rev-parse", "HEAD^2")), got.MergeHeads); diff != "" {
		t.Errorf("resolved merge, heads (-git +got):\n%s", diff)
	}
}

// TestServerHookReadsQuarantine proves that pre-receive reads objects that are not yet in the repository.
func TestServerHookReadsQuarantine(t *testing.T) {
	t.Parallel()
	r := plant(t)
	r.git("clone", "-q", "--bare", ".", "../server.git")
	server := r.in(filepath.Join(filepath.Dir(r.dir), "server.git"))
	report := server.hook("pre-receive")
	r.git("commit", "-qm", "Add floor 3")
	pushed := r.ask("rev-parse", "HEAD")
	r.with("VCS_TEST_PUSHED="+pushed).git("push", "-q", "../server.git", "main")
	got, _ := report()
	var want []string
	for _, line := range split(r.git("ls-tree", "-r", "-z", pushed)) {
		want = append(want, strings.Replace(strings.Replace(line, " blob", "", 1), "\t", " 0\t", 1))
	}
	if diff := cmp.Diff(want, got.Tree); diff != "" || got.Failed != "" {
		t.Errorf("pushed commit in pre-receive: %s (-git +got):\n%s", got.Failed, diff)
	}
}
