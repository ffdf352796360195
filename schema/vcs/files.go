package vcs

import (
	"context"
	"iter"
)

// Tree lists all files of a commit, sorted by the bytes of their paths. Folders are not listed, submodules are.
func (r *Repo) Tree(ctx context.Context, commitID string) ([]Entry, error) {
	if entries, err := r.quickly().tree(ctx, commitID); err == nil {
		return entries, nil
	}
	return r.reader.tree(ctx, commitID)
}

// Index lists the index in use, which is the file that GIT_INDEX_FILE names if it is set, sorted by the bytes of
// the paths, then by stage. A repository without an index has none to list.
func (r *Repo) Index(ctx context.Context) ([]Entry, error) {
	return r.reader.index(ctx)
}

// Blob reads one file content. Errors: ErrMissingObject, ErrNotBlob, and ErrTooLarge above MaxBlob, in which case
// nothing of it was read.
func (r *Repo) Blob(ctx context.Context, id string) ([]byte, error) {
	if data, err := r.quickly().blob(id); err == nil {
		return data, nil
	}
	return r.reader.blob(ctx, id)
}

// Blobs reads many contents, in the order of ids, each when the range reaches it. An error that comes with a
// Blob.ID concerns that blob alone and the range goes on; one without an ID ends it. The repository may be used
// inside the range.
func (r *Repo) Blobs(ctx context.Context, ids []string) iter.Seq2[Blob, error] {
	return r.reader.blobs(ctx, ids)
}
