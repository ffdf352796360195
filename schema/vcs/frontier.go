package vcs

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"strings"
)

// Held says what somebody has already: the branches of a remote as this repository last saw them, and refs of its own.
// Both may be empty.
type Held struct {
	Remote string
	Refs   []string
}

// Frontier finds the commits nearest to a commit that are held already: the last ones that a push of it does not bring.
// The commit itself is its own frontier where it is held; with nothing in common there is none. In a hook that git runs
// before it moves the refs, the refs are those of before.
func (r *Repo) Frontier(ctx context.Context, commit string, held Held) ([]string, error) {
	id, err := r.reader.resolve(ctx, commit)
	if err != nil {
		return nil, err
	}
	args := []string{"rev-list", "--boundary", id}
	for _, ref := range held.Refs {
		at, refErr := r.reader.resolve(ctx, ref)
		if refErr != nil {
			return nil, refErr
		}
		args = append(args, "^"+at)
	}
	if held.Remote != "" {
		args = append(args, "--not", "--remotes="+globQuote(held.Remote))
	}
	c, err := r.git.start(ctx, args...)
	if err != nil {
		return nil, err
	}
	_ = c.in.Close()
	var nearest []string
	fresh := false
	for lines := bufio.NewScanner(c.out); lines.Scan(); fresh = true {
		if at, found := strings.CutPrefix(lines.Text(), "-"); found && hexID(at) {
			nearest = append(nearest, at)
		}
	}
	if err := c.wait(ctx); err != nil {
		return nil, fmt.Errorf("%s: %w", commit, err)
	}
	if !fresh {
		return []string{id}, nil
	}
	return nearest, nil
}

// Branches gives the full names of the branches, sorted.
func (r *Repo) Branches(ctx context.Context) ([]string, error) {
	out, err := r.git.output(ctx, "for-each-ref", "--format=%(refname)", "refs/heads")
	if err != nil {
		return nil, err
	}
	return strings.Fields(string(bytes.TrimSpace(out))), nil
}
