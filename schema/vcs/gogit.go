package vcs

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"iter"
	"os"
	"sync"

	"github.com/go-git/go-billy/v5/osfs"
	"github.com/go-git/go-git/v5/plumbing"
	"github.com/go-git/go-git/v5/plumbing/cache"
	"github.com/go-git/go-git/v5/plumbing/format/index"
	"github.com/go-git/go-git/v5/plumbing/storer"
	"github.com/go-git/go-git/v5/storage/filesystem"
	"github.com/go-git/go-git/v5/storage/filesystem/dotgit"
)

// goGit reads in this process. Only go-git's object store and its decoder of the index format are used: its
// Repository finds the wrong index in a hook and does not open every repository that its store can read.
type goGit struct {
	place place
	// patience is the number of folders of one commit after which git is asked instead; 0 is any number.
	patience int
	// mu guards the store, whose maps of packs are filled while reading.
	mu    sync.Mutex
	store *filesystem.Storage
}

func newGoGit(at place, patience int) *goGit {
	folders := dotgit.NewRepositoryFilesystem(osfs.New(at.gitDir), osfs.New(at.commonDir))
	return &goGit{place: at, patience: patience, store: filesystem.NewStorageWithOptions(folders, cache.NewObjectLRU(16*cache.MiByte),
		filesystem.Options{KeepDescriptors: true})}
}

// resolve knows HEAD and full ids of commits. The grammar of revisions is git's, so all else is left to git.
func (g *goGit) resolve(_ context.Context, rev string) (string, error) {
	g.mu.Lock()
	defer g.mu.Unlock()
	id := plumbing.NewHash(rev)
	switch {
	case rev == "HEAD":
		var err error
		if id, err = g.named(); err != nil {
			return "", err
		}
	case !hexID(rev):
		return "", fmt.Errorf("%s: %w: only HEAD and full ids", rev, ErrUnfit)
	}
	if _, err := g.object(id, plumbing.CommitObject); err != nil {
		return "", fmt.Errorf("%s: %w: %w", rev, ErrUnknownRevision, err)
	}
	return id.String(), nil
}

// named is what HEAD names, whether it is there or not.
func (g *goGit) named() (plumbing.Hash, error) {
	ref, err := storer.ResolveReference(g.store, plumbing.HEAD)
	switch {
	case errors.Is(err, plumbing.ErrReferenceNotFound):
		return plumbing.ZeroHash, fmt.Errorf("HEAD: %w", ErrNoCommit)
	case err != nil:
		return plumbing.ZeroHash, fmt.Errorf("HEAD: %w", err)
	}
	return ref.Hash(), nil
}

// head gives the id that HEAD names, without looking at the object.
func (g *goGit) head() (string, error) {
	g.mu.Lock()
	defer g.mu.Unlock()
	id, err := g.named()
	return id.String(), err
}

func (g *goGit) commit(_ context.Context, id string) ([]byte, error) {
	return g.content(id, plumbing.CommitObject)
}

func (g *goGit) blob(_ context.Context, id string) ([]byte, error) {
	return g.content(id, plumbing.BlobObject)
}

func (g *goGit) blobs(ctx context.Context, ids []string) iter.Seq2[Blob, error] {
	return func(yield func(Blob, error) bool) {
		for _, id := range ids {
			if ctx.Err() != nil {
				yield(Blob{}, context.Cause(ctx))
				return
			}
			data, err := g.blob(ctx, id)
			if !yield(Blob{ID: id, Data: data}, err) {
				return
			}
		}
	}
}

// content reads a whole object of one kind.
func (g *goGit) content(id string, kind plumbing.ObjectType) ([]byte, error) {
	if !hexID(id) {
		return nil, fmt.Errorf("%q is no object id: %w", id, ErrMissingObject)
	}
	g.mu.Lock()
	defer g.mu.Unlock()
	object, err := g.object(plumbing.NewHash(id), kind)
	if err != nil {
		return nil, err
	}
	var data []byte
	err = guard(func() error {
		from, openErr := object.Reader()
		if openErr != nil {
			return openErr
		}
		data = make([]byte, object.Size())
		_, readErr := io.ReadFull(from, data)
		return errors.Join(readErr, from.Close())
	})
	if err != nil {
		return nil, fmt.Errorf("%s: %w", id, err)
	}
	return data, nil
}

// object finds an object, asking its size first. The caller holds mu.
func (g *goGit) object(id plumbing.Hash, kind plumbing.ObjectType) (plumbing.EncodedObject, error) {
	var object plumbing.EncodedObject
	err := guard(func() error {
		size, err := g.store.EncodedObjectSize(id)
		if err == nil && size > MaxBlob {
			err = fmt.Errorf("%d bytes, limit %d: %w", size, MaxBlob, ErrTooLarge)
		}
		if err != nil {
			return err
		}
		object, err = g.store.EncodedObject(plumbing.AnyObject, id)
		return err
	})
	switch {
	case errors.Is(err, plumbing.ErrObjectNotFound):
		return nil, fmt.Errorf("%s: %w", id, ErrMissingObject)
	case err != nil:
		return nil, fmt.Errorf("%s: %w", id, err)
	case object.Type() != kind && kind == plumbing.BlobObject:
		return nil, fmt.Errorf("%s: %w but a %s", id, ErrNotBlob, object.Type())
	case object.Type() != kind:
		return nil, fmt.Errorf("%s: %w: it is a %s", id, ErrUnknownRevision, object.Type())
	}
	return object, nil
}

// index decodes the index file in use. A split or sparse index has extensions that the decoder refuses.
func (g *goGit) index(context.Context) ([]Entry, error) {
	file, err := os.Open(g.place.index)
	if errors.Is(err, os.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fmt.Errorf("index: %w", err)
	}
	defer func() { _ = file.Close() }()
	if info, statErr := file.Stat(); statErr != nil || info.Size() > maxIndex {
		return nil, fmt.Errorf("index %s: %w", g.place.index, ErrTooLarge)
	}
	entries, err := decodeIndex(file)
	if err != nil {
		return nil, fmt.Errorf("index %s: %w", g.place.index, err)
	}
	return entries, nil
}

// decodeIndex reads an index file.
func decodeIndex(file io.Reader) ([]Entry, error) {
	var decoded index.Index
	if err := guard(func() error { return index.NewDecoder(bufio.NewReader(file)).Decode(&decoded) }); err != nil {
		return nil, err
	}
	if len(decoded.Entries) > MaxEntries {
		return nil, fmt.Errorf("%d files, limit %d: %w", len(decoded.Entries), MaxEntries, ErrTooLarge)
	}
	entries := make([]Entry, 0, len(decoded.Entries))
	for _, e := range decoded.Entries {
		entries = append(entries, Entry{
			Path: e.Name, ID: e.Hash.String(), Mode: uint32(e.Mode), Stage: int(e.Stage), IntentToAdd: e.IntentToAdd, Size: -1,
		})
	}
	return entries, nil
}

func (g *goGit) close() error {
	g.mu.Lock()
	defer g.mu.Unlock()
	return g.store.Close()
}
