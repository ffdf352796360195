package vcs

import (
	"context"
	"encoding/hex"
	"fmt"
	"sync"
)

// quick reads single objects from a store that is open anyway, where the reader in this process would put each
// together anew. Whatever fails here is asked of the repository's own readers. It is for several goroutines.
type quick struct {
	store *store
	mu    sync.Mutex
	hand  *hand
}

// open opens the store of the repository, once; nil where objects are not to be read from it. In the forms where the
// reader in this process is right, the store is: neither reads more than the object folder.
func (r *Repo) open() *store {
	r.quickOnce.Do(func() {
		if r.form.Reader != ReaderGoGit {
			return
		}
		_ = guard(func() error {
			s, err := openStore(r.place.objects)
			if err == nil {
				r.quick.Store(&quick{store: s, hand: s.hand()})
			}
			return err // git is asked instead
		})
	})
	if q := r.quick.Load(); q != nil {
		return q.store
	}
	return nil
}

// idOf reads an id of SHA-1.
func idOf(text string) (objectID, error) {
	var id objectID
	if !hexID(text) || len(text) != 2*len(id) {
		return id, fmt.Errorf("%q is no object id: %w", text, ErrMissingObject)
	}
	_, err := hex.Decode(id[:], []byte(text))
	return id, err
}

// blob hands over the content of a file, which is good until take returns.
func (q *quick) blob(id string, take func(data []byte)) error {
	q.mu.Lock()
	defer q.mu.Unlock()
	return q.hand.blob(id, take)
}

func (h *hand) blob(id string, take func(data []byte)) error {
	name, err := idOf(id)
	if err != nil {
		return err
	}
	return guard(func() error {
		o, err := h.read(name, kindBlob)
		if err == nil {
			take(o.data)
			h.letGo(o)
		}
		return err
	})
}

// tree lists the files of a commit.
func (q *quick) tree(ctx context.Context, commit string) (entries []Entry, err error) {
	name, err := idOf(commit)
	if err != nil {
		return nil, err
	}
	q.mu.Lock()
	defer q.mu.Unlock()
	err = guard(func() error {
		w := changeWalk{hand: q.hand}
		head, bad := w.head(name)
		if bad != nil {
			return bad
		}
		l := lister{ctx: ctx, hand: q.hand}
		bad = l.folder(head.tree, "", 0)
		entries = l.entries
		return bad
	})
	return entries, err
}

// lister lists files; depth and number are bounded as everywhere.
type lister struct {
	ctx     context.Context
	hand    *hand
	folders int
	entries []Entry
}

func (l *lister) folder(id objectID, prefix string, depth int) error {
	if l.folders++; depth > maxDepth || l.folders > MaxEntries {
		return ErrTooLarge
	}
	if l.ctx.Err() != nil {
		return l.ctx.Err()
	}
	o, err := l.hand.read(id, kindTree)
	if err != nil {
		return err
	}
	defer l.hand.letGo(o)
	for rest := o.data; len(rest) > 0; {
		var e treeEntry
		if e, rest, err = nextEntry(rest); err != nil {
			return err
		}
		path := prefix + string(e.name)
		if e.mode == modeFolder {
			if err := l.folder(*e.id, path+"/", depth+1); err != nil {
				return err
			}
			continue
		}
		if len(l.entries) == MaxEntries {
			return ErrTooLarge
		}
		l.entries = append(l.entries, Entry{Path: path, ID: hex.EncodeToString(e.id[:]), Mode: e.mode, Size: -1})
	}
	return nil
}
