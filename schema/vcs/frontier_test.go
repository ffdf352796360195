package vcs_test

import (
	"context"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/schema/vcs"
)

// TestFrontier holds Frontier against what git's own range says about the same commits: nothing of the frontier is in
// the range, and each parent of the range that is not in it is in the frontier.
func TestFrontier(t *testing.T) {
	t.Parallel()
	r := plant(t)
	r.git("clone", "-q", "--bare", ".", "../server.git")
	r.git("remote", "add", "origin", "../server.git")
	r.git("fetch", "-q", "origin")
	r.git("switch", "-q", "--force", "-c", "fresh", "main")
	r.commit("fresh.hcl", "one\n", "One")
	r.commit("fresh.hcl", "two\n", "Two")
	r.git("merge", "-q", "--no-edit", "-s", "ours", "--allow-unrelated-histories", "wing")
	ctx := context.Background()
	repo, err := vcs.Open(ctx, vcs.Options{Dir: r.dir, Env: r.env})
	check(t, err)
	defer repo.Close()

	outside := map[string]bool{}
	inside := map[string]bool{}
	for line := range strings.Lines(r.ask("rev-list", "--parents", "fresh", "--not", "--remotes=origin")) {
		inside[strings.Fields(line)[0]] = true
	}
	for line := range strings.Lines(r.ask("rev-list", "--parents", "fresh", "--not", "--remotes=origin")) {
		for _, parent := range strings.Fields(line)[1:] {
			if !inside[parent] {
				outside[parent] = true
			}
		}
	}
	got, err := repo.Frontier(ctx, "fresh", vcs.Held{Remote: "origin"})
	check(t, err)
	found := map[string]bool{}
	for _, id := range got {
		found[id] = true
	}
	if diff := cmp.Diff(outside, found); diff != "" || len(found) == 0 {
		t.Errorf("frontier (-git +got):\n%s", diff)
	}
	for name, c := range map[string]struct {
		held vcs.Held
		want []string
	}{
		"held itself":       {vcs.Held{Refs: []string{"refs/heads/fresh"}}, []string{r.ask("rev-parse", "fresh")}},
		"nothing held":      {vcs.Held{}, nil},
		"an unknown remote": {vcs.Held{Remote: "[*"}, nil},
	} {
		got, heldErr := repo.Frontier(ctx, "fresh", c.held)
		if heldErr != nil || !cmp.Equal(got, c.want) {
			t.Errorf("%s: %v, %v, want %v", name, got, heldErr, c.want)
		}
	}
	branches, err := repo.Branches(ctx)
	check(t, err)
	if diff := cmp.Diff(strings.Fields(r.ask("for-each-ref", "--format=%(refname)", "refs/heads")), branches); diff != "" {
		t.Errorf("branches (-git +got):\n%s", diff)
	}
}
