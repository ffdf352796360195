package vcs

import (
	"context"
	"fmt"
	"runtime"
	"slices"
	"sync"
)

// Ancestry lists the ids of a commit and of all before it, newest first and never a parent before its child. The
// order is git's own, the same for the same commit.
func (r *Repo) Ancestry(ctx context.Context, id string) ([]string, error) {
	if !hexID(id) {
		return nil, fmt.Errorf("%q is no object id: %w", id, ErrMissingObject)
	}
	c, err := r.git.start(ctx, "rev-list", "--topo-order", id, "--")
	if err != nil {
		return nil, err
	}
	_ = c.in.Close()
	ids, err := readIDs(c)
	if err != nil {
		return nil, c.explain(ctx, err)
	}
	return ids, c.wait(ctx)
}

// Commits reads commits by their ids, in that order, each with what it changed against every parent. Several gits
// work side by side, since comparing large folders is most of what a log costs.
func (r *Repo) Commits(ctx context.Context, ids []string) ([]Commit, error) {
	if i := slices.IndexFunc(ids, func(id string) bool { return !hexID(id) }); i >= 0 {
		return nil, fmt.Errorf("%q is no object id: %w", ids[i], ErrMissingObject)
	}
	if len(ids) == 0 {
		return nil, nil
	}
	args := append(append(logCommand(), changeArgs(LogOptions{Changes: true})...), "--no-walk=unsorted", "--stdin", "--")
	size := (len(ids) + sideBySide(len(ids)) - 1) / sideBySide(len(ids))
	parts := slices.Collect(slices.Chunk(ids, size))
	found, failed := make([][]Commit, len(parts)), make([]error, len(parts))
	var wait sync.WaitGroup
	for i, part := range parts {
		wait.Go(func() {
			r.walk(ctx, args, part, func(c Commit, err error) bool {
				if err != nil {
					failed[i] = err
					return false
				}
				found[i] = append(found[i], c)
				return true
			})
		})
	}
	wait.Wait()
	for _, err := range failed {
		if err != nil {
			return nil, err
		}
	}
	return slices.Concat(found...), nil
}

// fewCommits is how many commits are read by one git before another is worth its start.
const fewCommits = 256

// sideBySide is how many gits share the reading of n commits.
func sideBySide(n int) int {
	return max(1, min(runtime.GOMAXPROCS(0), n/fewCommits))
}
