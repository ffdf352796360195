package vcs

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
)

// Tags gives the names of all tags by the id of the commit that they lead to, each list sorted. Tags of anything
// but a commit are left out.
func (r *Repo) Tags(ctx context.Context) (map[string][]string, error) {
	out, err := r.git.output(ctx, "for-each-ref", "--format=%(objecttype) %(objectname) %(*objecttype) %(*objectname) %(refname:strip=2)", "refs/tags")
	if err != nil {
		return nil, fmt.Errorf("tags: %w", err)
	}
	tags := make(map[string][]string)
	for line := range strings.Lines(string(out)) {
		// Git leaves the spaces around what a plain tag does not have.
		f := strings.SplitN(strings.TrimSuffix(line, "\n"), " ", 5)
		if len(f) != 5 {
			return nil, fmt.Errorf("tags: unexpected %.80q", line)
		}
		id, kind := f[1], f[0]
		if kind == "tag" {
			id, kind = f[3], f[2]
		}
		if kind == "tag" { // of a tag: older versions of git follow only the first
			c, err := r.Resolve(ctx, "refs/tags/"+f[4])
			if errors.Is(err, ErrUnknownRevision) {
				continue
			}
			if err != nil {
				return nil, fmt.Errorf("tag %s: %w", f[4], err)
			}
			id, kind = c.ID, "commit"
		}
		if kind == "commit" {
			tags[id] = append(tags[id], f[4])
		}
	}
	for _, names := range tags {
		slices.Sort(names)
	}
	return tags, nil
}
