package vcs_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/schema/vcs"
)

// checkAncestry holds what is read of a whole history at once against the log, git's list and git's contents.
func (r *repo) checkAncestry(opened *vcs.Repo, head string) {
	r.t.Helper()
	ids, err := opened.Ancestry(r.t.Context(), head)
	check(r.t, err)
	if want := strings.Fields(r.git("rev-list", "--topo-order", head)); !slices.Equal(ids, want) {
		r.t.Fatalf("ancestry of %s: got %v, git lists %v", head, ids, want)
	}
	got, err := opened.Commits(r.t.Context(), ids)
	check(r.t, err)
	var want []vcs.Commit
	for c, err := range opened.Log(r.t.Context(), vcs.LogOptions{From: head, Changes: true}) {
		check(r.t, err)
		want = append(want, c)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		r.t.Errorf("commits (-log +at once):\n%s", diff)
	}
	if opened.Form().Partial {
		return // old contents need not be here, and nothing is fetched
	}
	var blobs []string
	for _, c := range got {
		for _, d := range c.Changed {
			if d.After != "" && d.AfterMode != vcs.ModeSubmodule {
				blobs = append(blobs, d.After)
			}
		}
	}
	err = opened.Pour(r.t.Context(), blobs, func(i int, data []byte) error {
		if want := r.git("cat-file", "blob", blobs[i]); string(data) != want {
			r.t.Errorf("blob %s: got %q, git has %q", blobs[i], data, want)
		}
		return nil
	})
	check(r.t, err)
}

func TestPourStopsWhereItIsTold(t *testing.T) {
	t.Parallel()
	r := plant(t)
	opened := r.open(vcs.ReaderAuto)
	id := r.ask("rev-parse", "HEAD:plant.hcl")
	enough := errors.New("enough")
	seen := 0
	err := opened.Pour(t.Context(), []string{id, id, id}, func(int, []byte) error {
		seen++
		if seen == 2 {
			return enough
		}
		return nil
	})
	if !errors.Is(err, enough) || seen != 2 {
		t.Errorf("got %v after %d contents", err, seen)
	}
	for _, bad := range []string{strings.Repeat("1", len(id)), "HEAD", "--all"} {
		if err := opened.Pour(t.Context(), []string{bad}, func(int, []byte) error { return nil }); !errors.Is(err, vcs.ErrMissingObject) {
			t.Errorf("%s: got %v", bad, err)
		}
		if _, err := opened.Commits(t.Context(), []string{"HEAD"}); !errors.Is(err, vcs.ErrMissingObject) {
			t.Errorf("HEAD is no id: %v", err)
		}
	}
	if err := opened.Pour(t.Context(), []string{r.ask("rev-parse", "HEAD")}, func(int, []byte) error { return nil }); !errors.Is(err, vcs.ErrNotBlob) {
		t.Errorf("a commit is no file: %v", err)
	}
}
