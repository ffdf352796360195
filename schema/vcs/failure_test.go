package vcs_test

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"homerun/schema/vcs"
)

// TestOpenRefuses names each way in which a repository cannot be opened, in git's own words, whichever reader was asked for.
func TestOpenRefuses(t *testing.T) {
	t.Parallel()
	r := plant(t)
	for _, c := range []struct {
		name string
		o    vcs.Options
		want error
		said string
	}{
		{"no repository", vcs.Options{Dir: filepath.Dir(r.dir), Env: r.env}, vcs.ErrNotRepository, "not a git repository"},
		{"no folder", vcs.Options{Dir: r.dir + "/nowhere", Env: r.env}, vcs.ErrNotRepository, "nowhere"},
		{"no git", vcs.Options{Dir: r.dir, Env: r.env, Git: r.dir + "/git"}, vcs.ErrNoGit, ""},
		// Git's own tests pretend a foreign owner with this variable.
		{"foreign owner", vcs.Options{Dir: r.dir, Env: append(r.env, "GIT_TEST_ASSUME_DIFFERENT_OWNER=1")}, vcs.ErrUnsafe, "git config --global --add safe.directory " + r.dir},
	} {
		for _, reader := range []vcs.Reader{vcs.ReaderAuto, vcs.ReaderGoGit, vcs.ReaderGit} {
			c.o.Reader = reader
			if _, err := vcs.Open(t.Context(), c.o); !errors.Is(err, c.want) || !strings.Contains(err.Error(), c.said) {
				t.Errorf("%s: got %v, want %v with %q", c.name, err, c.want, c.said)
			}
		}
	}
}

// TestBlobRefuses also proves that one bad id among many stops nothing.
func TestBlobRefuses(t *testing.T) {
	t.Parallel()
	r := plant(t)
	limit := bytes.Repeat([]byte("x"), vcs.MaxBlob)
	r.write("limit.hcl", string(limit))
	r.write("above.hcl", string(limit)+"x")
	r.git("add", ".")
	good, atLimit, above := r.ask("rev-parse", ":plant.hcl"), r.ask("rev-parse", ":limit.hcl"), r.ask("rev-parse", ":above.hcl")
	ids := []string{good, above, strings.Repeat("1", 40), "HEAD", "", r.ask("rev-parse", "HEAD"), "a\nb", atLimit, good}
	want := []error{nil, vcs.ErrTooLarge, vcs.ErrMissingObject, vcs.ErrMissingObject, vcs.ErrMissingObject, vcs.ErrNotBlob, vcs.ErrMissingObject, nil, nil}
	for _, reader := range []vcs.Reader{vcs.ReaderAuto, vcs.ReaderGoGit, vcs.ReaderGit} {
		opened := r.open(reader)
		at := 0
		for b, err := range opened.Blobs(t.Context(), ids) {
			if b.ID != ids[at] || !errors.Is(err, want[at]) {
				t.Errorf("%v: blob %d %q: got %v, want %v", reader, at, b.ID, err, want[at])
			}
			if _, err := opened.Blob(t.Context(), ids[at]); !errors.Is(err, want[at]) {
				t.Errorf("%v: %q alone: got %v, want %v", reader, ids[at], err, want[at])
			}
			at++
		}
		if at != len(ids) {
			t.Errorf("%v: %d of %d blobs", reader, at, len(ids))
		}
	}
	if _, err := r.open(vcs.ReaderAuto).ReadFile("above.hcl"); !errors.Is(err, vcs.ErrTooLarge) {
		t.Errorf("work tree: got %v, want ErrTooLarge", err)
	}
}

// TestDamage proves that damaged objects and index files are errors, never panics and never wrong content.
func TestDamage(t *testing.T) {
	t.Parallel()
	for _, reader := range []vcs.Reader{vcs.ReaderAuto, vcs.ReaderGoGit, vcs.ReaderGit} {
		r := plant(t)
		id := r.ask("rev-parse", "HEAD:plant.hcl")
		loose := filepath.Join(r.dir, ".git", "objects", id[:2], id[2:])
		check(t, os.Chmod(loose, 0o644))
		check(t, os.WriteFile(loose, []byte("not zlib"), 0o644))
		opened := r.open(reader)
		if data, err := opened.Blob(t.Context(), id); err == nil {
			t.Errorf("%v: damaged object read as %q", reader, data)
		}
		if _, err := opened.Blob(t.Context(), r.ask("rev-parse", "HEAD:floor/1.hcl")); err != nil {
			t.Errorf("%v: after a damaged object: %v", reader, err)
		}
		index := filepath.Join(r.dir, ".git", "index")
		text, err := os.ReadFile(index)
		check(t, err)
		for _, cut := range []int{0, 3, 11, 12, 40, len(text) / 2, len(text) - 25, len(text) - 1} {
			check(t, os.WriteFile(index, text[:cut], 0o644))
			// Git takes an index of no bytes for none at all, and reads zeros where a longer one is cut.
			if entries, err := opened.Index(t.Context()); err == nil && len(entries) > 0 {
				t.Errorf("%v: an index of %d bytes read as %d files", reader, cut, len(entries))
			}
		}
	}
}

// TestCancel proves that a cancelled call ends with its cause and harms no later call.
func TestCancel(t *testing.T) {
	t.Parallel()
	r := plant(t)
	for _, reader := range []vcs.Reader{vcs.ReaderAuto, vcs.ReaderGit} {
		opened := r.open(reader)
		id := r.ask("rev-parse", "HEAD:plant.hcl")
		ctx, cancel := context.WithCancel(t.Context())
		for _, err := range opened.Log(ctx, vcs.LogOptions{}) {
			check(t, err)
			break // ends git without a complaint
		}
		cancel()
		_, treeErr := opened.Tree(ctx, r.ask("rev-parse", "HEAD"))
		_, resolveErr := opened.Resolve(ctx, "wing")
		var logErr error
		for _, err := range opened.Log(ctx, vcs.LogOptions{}) {
			logErr = err
		}
		for _, err := range []error{treeErr, resolveErr, logErr} {
			if !errors.Is(err, context.Canceled) {
				t.Errorf("%v: got %v, want Canceled", reader, err)
			}
		}
		if _, err := opened.Blob(t.Context(), id); err != nil {
			t.Errorf("%v: after a cancelled call: %v", reader, err)
		}
	}
}

// TestConfigAndHooks compares settings with those that git was given, and the folder of hooks with core.hooksPath.
func TestConfigAndHooks(t *testing.T) {
	t.Parallel()
	r := plant(t)
	r.git("config", "core.hooksPath", "own hooks")
	r.git("config", "homerun.note", "two\nlines")
	in := r.in(filepath.Join(r.dir, "floor")).with("GIT_CONFIG_PARAMETERS='homerun.given'='once'")
	opened := in.open(vcs.ReaderAuto)
	if want := filepath.Join(r.dir, "own hooks"); opened.HooksDir() != want {
		t.Errorf("hooks in %q, want %q", opened.HooksDir(), want)
	}
	for key, want := range map[string]string{"homerun.note": "two\nlines", "homerun.given": "once"} {
		if got, set, err := opened.Config(t.Context(), key); got != want || !set || err != nil {
			t.Errorf("%s: got %q, %v, %v, want %q", key, got, set, err, want)
		}
	}
	if got, set, err := opened.Config(t.Context(), "homerun.unset"); got != "" || set || err != nil {
		t.Errorf("unset: got %q, %v, %v", got, set, err)
	}
	for _, key := range []string{"nosection", "--list", "homerun.bad_key"} {
		if _, _, err := opened.Config(t.Context(), key); err == nil {
			t.Errorf("%q was taken as a key", key)
		}
	}
}

// TestPrefix covers what git does to a program started by an alias: it stands at the top and GIT_PREFIX tells where
// the user was.
func TestPrefix(t *testing.T) {
	t.Parallel()
	r := plant(t)
	for given, want := range map[string]string{"floor/": "floor", "": "", "../..": "", "/etc": "", "floor/../..": "", ".": ""} {
		if got := r.with("GIT_PREFIX=" + given).open(vcs.ReaderAuto).Prefix(); got != want {
			t.Errorf("GIT_PREFIX=%q: got %q, want %q", given, got, want)
		}
	}
	inFloor := r.in(filepath.Join(r.dir, "floor")).with("GIT_PREFIX=wing/")
	if got := inFloor.open(vcs.ReaderAuto).Prefix(); got != "floor" {
		t.Errorf("below the top: got %q, want floor", got)
	}
}
