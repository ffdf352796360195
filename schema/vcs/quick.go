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
	idle  []*hand
}

// mostIdle is how many hands are kept that nobody uses.
const mostIdle = 2

// Warm reads the packs into memory, up to a bound, for whoever is going to read much of a history: from then on single
// commits, trees and files come from there too. Where packs are not to be read so, it does nothing.
func (r *Repo) Warm() { _ = r.open() }

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
				r.quick.Store(&quick{store: s})
			}
			return err // git is asked instead
		})
	})
	if q := r.quick.Load(); q != nil {
		return q.store
	}
	return nil
}

// quickly gives what reads from packs in memory, if they are there: else it finds nothing.
func (r *Repo) quickly() *quick { return r.quick.Load() }

// quickCommit reads a commit that is named by its whole id, or HEAD: go-git would read the index of a pack first.
func (r *Repo) quickCommit(ctx context.Context, rev string) (Commit, error) {
	id := rev
	if near := r.near; rev == "HEAD" && near != nil && r.quickly() != nil {
		var err error
		if id, err = near.head(); err != nil {
			return Commit{}, err
		}
	}
	text, err := r.quickly().commit(id)
	if err != nil {
		return Commit{}, err
	}
	return r.parsed(ctx, id, text)
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

// borrow gives a hand that nobody else uses until it is given back. No hand is waited for.
func (q *quick) borrow() *hand {
	q.mu.Lock()
	defer q.mu.Unlock()
	last := len(q.idle) - 1
	if last < 0 {
		return q.store.hand()
	}
	h := q.idle[last]
	q.idle = q.idle[:last]
	return h
}

// giveBack keeps a hand for the next: it remembers what it read.
func (q *quick) giveBack(h *hand) {
	q.mu.Lock()
	defer q.mu.Unlock()
	if len(q.idle) < mostIdle {
		q.idle = append(q.idle, h)
	}
}

// blob gives the content of a file.
func (q *quick) blob(id string) ([]byte, error) { return q.copied(id, kindBlob) }

// commit gives a commit as stored.
func (q *quick) commit(id string) ([]byte, error) { return q.copied(id, kindCommit) }

func (q *quick) copied(id string, kind int) (data []byte, err error) {
	if q == nil {
		return nil, ErrUnfit
	}
	h := q.borrow()
	defer q.giveBack(h)
	err = h.tell(id, kind, func(text []byte) { data = append([]byte{}, text...) })
	return data, err
}

// tell hands over the content of an object, which is good until take returns.
func (h *hand) tell(id string, kind int, take func(data []byte)) error {
	name, err := idOf(id)
	if err != nil {
		return err
	}
	return guard(func() error {
		o, err := h.read(name, kind)
		if err == nil {
			take(o.data)
			h.letGo(o)
		}
		return err
	})
}

// tree lists the files of a commit.
func (q *quick) tree(ctx context.Context, commit string) (entries []Entry, err error) {
	if q == nil {
		return nil, ErrUnfit
	}
	name, err := idOf(commit)
	if err != nil {
		return nil, err
	}
	h := q.borrow()
	defer q.giveBack(h)
	err = guard(func() error {
		w := changeWalk{hand: h}
		head, bad := w.head(name)
		if bad != nil {
			return bad
		}
		l := lister{ctx: ctx, hand: h}
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
