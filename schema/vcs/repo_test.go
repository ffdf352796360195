package vcs_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// repo is a repository made by the real git for a test, and where in it the user stands.
type repo struct {
	t   testing.TB
	dir string
	env []string
}

// environment is one that depends on nothing of the machine but where git is.
func environment(tb testing.TB) []string {
	tb.Helper()
	return []string{
		"PATH=" + os.Getenv("PATH"), "HOME=" + tb.TempDir(), "GIT_CONFIG_NOSYSTEM=1", "LC_ALL=C",
		"GIT_AUTHOR_NAME=Åsa Records", "GIT_AUTHOR_EMAIL=asa@example.org", "GIT_AUTHOR_DATE=1551600000 +0130",
		"GIT_COMMITTER_NAME=Bo Keeper", "GIT_COMMITTER_EMAIL=bo@example.org", "GIT_COMMITTER_DATE=1551603600 -0500",
		"GIT_CONFIG_COUNT=2", "GIT_CONFIG_KEY_0=init.defaultBranch", "GIT_CONFIG_VALUE_0=main",
		"GIT_CONFIG_KEY_1=protocol.file.allow", "GIT_CONFIG_VALUE_1=always",
	}
}

// fresh is an empty folder to make repositories in.
func fresh(t *testing.T) *repo {
	t.Helper()
	dir, err := filepath.EvalSymlinks(t.TempDir())
	check(t, err)
	return &repo{t: t, dir: dir, env: environment(t)}
}

// start makes an empty repository in the folder.
func (r *repo) start(args ...string) *repo {
	r.t.Helper()
	r.git(append(append([]string{"init", "-q"}, args...), "plant")...)
	return r.in(filepath.Join(r.dir, "plant"))
}

// plant is a repository as repo.plant makes it, in a folder of its own.
func plant(t *testing.T) *repo {
	t.Helper()
	return fresh(t).plant()
}

// in is the same user standing in another folder.
func (r *repo) in(dir string) *repo { return &repo{t: r.t, dir: dir, env: r.env} }

// with is the same user with more variables set.
func (r *repo) with(pairs ...string) *repo {
	return &repo{t: r.t, dir: r.dir, env: append(slices.Clone(r.env), pairs...)}
}

// run runs the real git and gives what it printed and whether it succeeded.
func (r *repo) run(args ...string) (string, error) {
	r.t.Helper()
	cmd := exec.Command("git", args...)
	cmd.Dir, cmd.Env = r.dir, r.env
	var complaint strings.Builder
	cmd.Stderr = &complaint
	out, err := cmd.Output()
	if err != nil {
		r.t.Logf("git %s: %s", strings.Join(args, " "), complaint.String())
	}
	return string(out), err
}

// git runs the real git, which must succeed, and gives what it printed.
func (r *repo) git(args ...string) string {
	r.t.Helper()
	out, err := r.run(args...)
	if err != nil {
		r.t.Fatalf("git %s: %v", strings.Join(args, " "), err)
	}
	return out
}

// write puts a file into the folder the user stands in.
func (r *repo) write(name, text string) {
	r.t.Helper()
	path := filepath.Join(r.dir, filepath.FromSlash(name))
	check(r.t, os.MkdirAll(filepath.Dir(path), 0o755))
	check(r.t, os.WriteFile(path, []byte(text), 0o644))
}

// commit writes a file and commits it.
func (r *repo) commit(name, text, message string) {
	r.t.Helper()
	r.write(name, text)
	r.git("add", "--", name)
	r.git("commit", "-qm", message)
}

// plant makes a repository with a few commits, one of them a merge, and files in folders.
func (r *repo) plant(args ...string) *repo {
	r.t.Helper()
	r = r.start(args...)
	r.commit("plant.hcl", "first\n", "Record the first floor\n\nMeasured on site.\nTwo lines.\n")
	r.commit("floor/1.hcl", "one\n", "Add floor 1")
	r.git("switch", "-qc", "wing")
	r.commit("floor/2.hcl", "two\n", "Add floor 2")
	r.git("switch", "-q", "main")
	r.commit("floor/1.hcl", "one\nmore\n", "  Correct a subject\n  on two lines\n\n\n  indented body\n")
	r.git("merge", "-q", "--no-edit", "wing")
	r.git("rm", "-q", "floor/2.hcl")
	r.git("commit", "-qm", "Withdraw floor 2")
	r.write("floor/3.hcl", "staged\n")
	r.git("add", "floor/3.hcl")
	r.write("floor/3.hcl", "not staged\n")
	return r
}
