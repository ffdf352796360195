package vcs_test

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
	"time"

	"homerun/schema/vcs"
)

// TestReadFileStaysInside proves that neither a path nor a link reads what lies outside the work tree.
func TestReadFileStaysInside(t *testing.T) {
	t.Parallel()
	r := linked(fresh(t))
	secret := filepath.Join(filepath.Dir(filepath.Dir(r.dir)), "secret")
	check(t, os.WriteFile(secret, []byte("secret\n"), 0o644))
	check(t, os.Symlink(secret, filepath.Join(r.dir, "absolute")))
	check(t, os.Symlink(filepath.Dir(secret), filepath.Join(r.dir, "away")))
	check(t, os.Symlink("loop", filepath.Join(r.dir, "loop")))
	opened := r.open(vcs.ReaderAuto)
	for name, want := range map[string]error{
		"outside": vcs.ErrOutside, "absolute": vcs.ErrOutside, "away/secret": vcs.ErrOutside, "../../secret": vcs.ErrOutside,
		secret: vcs.ErrOutside, "": vcs.ErrOutside, "floor": vcs.ErrNotFile, "gone.hcl": fs.ErrNotExist, "loop": vcs.ErrOutside,
		"inside": nil, "folder/1.hcl": nil,
	} {
		if data, err := opened.ReadFile(name); !errors.Is(err, want) || bytes.Contains(data, []byte("secret")) {
			t.Errorf("%q: got %q, %v, want %v", name, data, err, want)
		}
	}
}

// TestNothingIsRun proves that reading starts no program that the repository names.
func TestNothingIsRun(t *testing.T) {
	t.Parallel()
	r := plant(t)
	ran := filepath.Join(t.TempDir(), "ran")
	program := filepath.Join(t.TempDir(), "program")
	check(t, os.WriteFile(program, []byte("#!/bin/sh\necho \"$0 $*\" >>'"+ran+"'\ncat\n"), 0o755))
	r.write(".gitattributes", "* diff=own filter=own\n")
	r.git("add", ".gitattributes")
	r.git("commit", "-qm", "Attributes")
	for _, key := range []string{
		"core.fsmonitor", "diff.external", "diff.own.command", "diff.own.textconv", "filter.own.clean", "filter.own.smudge",
		"core.pager", "pager.log", "core.sshCommand", "gpg.program", "core.alternateRefsCommand", "core.editor",
	} {
		r.git("config", key, program)
	}
	r.git("config", "log.showSignature", "true")
	signed := r.store("tree " + r.ask("rev-parse", "HEAD^{tree}") + "\nparent " + r.ask("rev-parse", "HEAD") +
		"\nauthor A <a@example.org> 1 +0000\ncommitter A <a@example.org> 1 +0000\ngpgsig -----BEGIN PGP SIGNATURE-----\n \n x\n -----END PGP SIGNATURE-----\n\nsigned\n")
	r.git("update-ref", "HEAD", signed)
	check(t, os.WriteFile(filepath.Join(r.dir, ".git", "hooks", "post-index-change"), []byte("#!/bin/sh\n"+program+"\n"), 0o755))
	_ = os.Remove(ran)
	check(t, os.Chtimes(filepath.Join(r.dir, "plant.hcl"), time.Unix(1e9, 0), time.Unix(1e9, 0)))
	for _, reader := range []vcs.Reader{vcs.ReaderAuto, vcs.ReaderGit} {
		in := &repo{t: t, dir: r.dir, env: append(r.env, "GIT_EXTERNAL_DIFF="+program, "GIT_PAGER="+program)}
		opened := in.open(reader)
		in.readAll(opened)
	}
	if out, err := os.ReadFile(ran); err == nil {
		t.Errorf("started:\n%s", out)
	}
}

// readAll reads by every way there is.
func (r *repo) readAll(opened *vcs.Repo) {
	r.t.Helper()
	entries, err := opened.Index(r.t.Context())
	check(r.t, err)
	for _, e := range entries {
		_, err = opened.Blob(r.t.Context(), e.ID)
		check(r.t, err)
	}
	_, err = opened.Worktree(r.t.Context())
	check(r.t, err)
	for _, o := range []vcs.LogOptions{{}, {Changes: true}, {Changes: true, Paths: []string{"."}}} {
		for c, err := range opened.Log(r.t.Context(), o) {
			check(r.t, err)
			_, err = opened.Tree(r.t.Context(), c.ID)
			check(r.t, err)
		}
	}
}

// TestMissingIsNotFetched proves that a partial clone neither fetches nor hides what it lacks, unless allowed.
func TestMissingIsNotFetched(t *testing.T) {
	t.Parallel()
	r := plant(t)
	r.git("config", "uploadpack.allowFilter", "true")
	r.git("clone", "-q", "--no-checkout", "--filter=blob:none", "file://"+r.dir, "../partial")
	id := r.ask("rev-parse", "HEAD~3:plant.hcl")
	in := r.in(filepath.Join(filepath.Dir(r.dir), "partial"))
	opened := in.open(vcs.ReaderAuto)
	if !opened.Form().Partial {
		t.Error("a partial clone does not say so")
	}
	if _, err := opened.Blob(t.Context(), id); !errors.Is(err, vcs.ErrMissingObject) {
		t.Errorf("got %v, want ErrMissingObject", err)
	}
	for _, err := range opened.Blobs(t.Context(), []string{id}) {
		if !errors.Is(err, vcs.ErrMissingObject) {
			t.Errorf("among many: got %v, want ErrMissingObject", err)
		}
	}
	fetching, err := vcs.Open(t.Context(), vcs.Options{Dir: in.dir, Env: in.env, Missing: vcs.MissingFetch})
	check(t, err)
	defer fetching.Close()
	if data, err := fetching.Blob(t.Context(), id); string(data) != r.git("cat-file", "blob", id) {
		t.Errorf("fetched %q, %v", data, err)
	}
}
