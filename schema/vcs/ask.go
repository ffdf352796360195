package vcs

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// Config gives the value of a setting such as "homerun.color" as git resolves it from all its files, "git -c" and
// the environment, and whether it is set. Of several values the last counts.
func (r *Repo) Config(ctx context.Context, key string) (value string, set bool, err error) {
	if strings.HasPrefix(key, "-") {
		return "", false, fmt.Errorf("config %q: not a key", key)
	}
	out, err := r.git.output(ctx, "config", "-z", "--get", key)
	var failed *gitError
	if errors.As(err, &failed) && failed.status == 1 && failed.said == "" {
		return "", false, nil
	}
	if err != nil {
		return "", false, err
	}
	return strings.TrimSuffix(string(out), "\x00"), true, nil
}

// MergeHeads gives the ids of the commits being merged into HEAD, empty outside a merge. Git writes MERGE_HEAD only
// when a merge stops; while it runs pre-merge-commit, the other sides are known from the environment alone.
func (r *Repo) MergeHeads() ([]string, error) {
	text, err := os.ReadFile(filepath.Join(r.place.gitDir, "MERGE_HEAD"))
	switch {
	case err == nil:
		return slices.DeleteFunc(strings.Fields(string(text)), func(id string) bool { return !hexID(id) }), nil
	case !errors.Is(err, os.ErrNotExist):
		return nil, fmt.Errorf("merge heads: %w", err)
	}
	var heads []string
	for _, pair := range r.git.env {
		name, _, _ := strings.Cut(pair, "=")
		if id, found := strings.CutPrefix(name, "GITHEAD_"); found && hexID(id) {
			heads = append(heads, id)
		}
	}
	slices.Sort(heads)
	return slices.Compact(heads), nil
}
