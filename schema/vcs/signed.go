package vcs

import (
	"bytes"
	"context"
	"fmt"
)

// Signed says whether a commit carries a signature at all. Whether it is a good one, and whose, is another question,
// which takes keys that somebody trusts.
func (r *Repo) Signed(ctx context.Context, id string) (bool, error) {
	raw, err := r.git.output(ctx, "cat-file", "commit", id)
	if err != nil {
		return false, fmt.Errorf("signature of %s: %w", id, err)
	}
	headers, _, _ := bytes.Cut(raw, []byte("\n\n"))
	return bytes.Contains(headers, []byte("\ngpgsig ")) || bytes.Contains(headers, []byte("\ngpgsig-sha256 ")), nil
}
