package vcs

import (
	"bytes"
	"context"
	"encoding/hex"
	"errors"
	"fmt"
	"runtime"
	"slices"
	"sync"
)

// Changes reads commits by their ids, in that order, each with its parents and with what it changed against every
// one of them: of Commit only ID, Tree, Parents, Boundary and Changed are filled. Where the objects can be read in
// this process it starts no git, and large folders cost it far less. A commit of more files than MaxEntries is ErrTooLarge.
func (r *Repo) Changes(ctx context.Context, ids []string) ([]Commit, error) {
	if s := r.open(); s != nil {
		commits, err := s.changes(ctx, ids)
		if err == nil || ctx.Err() != nil || errors.Is(err, ErrTooLarge) {
			return commits, err
		}
	}
	return r.Commits(ctx, ids)
}

// changes shares the commits among goroutines. The last of them come first: that is how packs tell trees, the older
// ones as changes of the newer.
func (s *store) changes(ctx context.Context, ids []string) ([]Commit, error) {
	commits := make([]Commit, len(ids))
	parts := max(1, min(runtime.GOMAXPROCS(0), len(ids)/fewCommits))
	failed := make([]error, parts)
	var wait sync.WaitGroup
	for part := range parts {
		first, last := len(ids)*part/parts, len(ids)*(part+1)/parts
		wait.Go(func() {
			failed[part] = guard(func() error {
				w := changeWalk{hand: s.hand(), heads: make(map[objectID]*commitHead)}
				for i := last - 1; i >= first; i-- {
					if ctx.Err() != nil {
						return context.Cause(ctx)
					}
					if err := w.commit(ids[i], &commits[i]); err != nil {
						return err
					}
				}
				return nil
			})
		})
	}
	wait.Wait()
	return commits, errors.Join(failed...)
}

// changeWalk compares the trees of commits.
type changeWalk struct {
	hand  *hand
	heads map[objectID]*commitHead
	// into is the commit at hand, parent that with which it is compared, folders how many of both were looked into.
	into    *Commit
	parent  int
	folders int
}

// commitHead is what of a commit says where its files are.
type commitHead struct {
	tree    objectID
	parents []objectID
}

// commit fills in one commit.
func (w *changeWalk) commit(id string, c *Commit) error {
	name, err := idOf(id)
	if err != nil {
		return err
	}
	head, err := w.head(name)
	if err != nil {
		return err
	}
	c.ID, c.Tree = id, hex.EncodeToString(head.tree[:])
	w.into, w.folders = c, 0
	for _, parent := range head.parents {
		c.Parents = append(c.Parents, hex.EncodeToString(parent[:]))
	}
	if len(head.parents) == 0 {
		w.parent = 0
		return w.compare(nil, &head.tree, "", 0)
	}
	for _, parent := range head.parents {
		before, err := w.head(parent)
		if err != nil {
			return err
		}
		w.parent = slices.Index(head.parents, parent)
		if err := w.compare(&before.tree, &head.tree, "", 0); err != nil {
			return err
		}
	}
	return nil
}

func (w *changeWalk) head(id objectID) (*commitHead, error) {
	if h := w.heads[id]; h != nil {
		return h, nil
	}
	o, err := w.hand.read(id, kindCommit)
	if err != nil {
		return nil, err
	}
	defer w.hand.letGo(o)
	h, text := &commitHead{}, o.data
	rest, fits := idLine(text, "tree ", &h.tree)
	for fits {
		var parent objectID
		if rest, fits = idLine(rest, "parent ", &parent); fits {
			h.parents = append(h.parents, parent)
		}
	}
	if len(rest) == len(text) {
		return nil, fmt.Errorf("%x: not a commit object", id)
	}
	if w.heads != nil {
		w.heads[id] = h
	}
	return h, nil
}

// idLine reads a line of a commit that names an object.
func idLine(text []byte, key string, id *objectID) (rest []byte, ok bool) {
	end := len(key) + 40
	if len(text) <= end || string(text[:len(key)]) != key || text[end] != '\n' {
		return text, false
	}
	n, err := hex.Decode(id[:], text[len(key):end])
	return text[end+1:], err == nil && n == len(id)
}

// compare lists what differs between two folders, either of which may be missing, in the order of paths.
func (w *changeWalk) compare(before, after *objectID, prefix string, depth int) error {
	if before != nil && after != nil && *before == *after {
		return nil
	}
	if depth > maxDepth {
		return errHuge
	}
	if w.folders++; w.folders > MaxEntries || len(w.into.Changed) > MaxEntries {
		return fmt.Errorf("commit %s changes more than %d files: %w", w.into.ID, MaxEntries, ErrTooLarge)
	}
	was, err := w.folder(before)
	if err != nil {
		return err
	}
	defer w.hand.letGo(was)
	is, err := w.folder(after)
	if err != nil {
		return err
	}
	defer w.hand.letGo(is)
	return w.entries(was.data, is.data, prefix, depth)
}

// folder reads a folder; one that is missing is empty.
func (w *changeWalk) folder(id *objectID) (*unpacked, error) {
	if id == nil {
		return &unpacked{held: 2}, nil // its bytes are no good to anybody
	}
	return w.hand.read(*id, kindTree)
}

// entries compares two lists of entries.
func (w *changeWalk) entries(was, is []byte, prefix string, depth int) error {
	for {
		n := sameEntries(was, is)
		was, is = was[n:], is[n:]
		if len(was) == 0 && len(is) == 0 {
			return nil
		}
		a, restA, err := nextEntry(was)
		if err != nil {
			return err
		}
		b, restB, err := nextEntry(is)
		if err != nil {
			return err
		}
		order := compareEntries(a, b)
		if order <= 0 {
			was = restA
		} else {
			a = treeEntry{}
		}
		if order >= 0 {
			is = restB
		} else {
			b = treeEntry{}
		}
		if err := w.entry(a, b, prefix, depth); err != nil {
			return err
		}
	}
}

// sameEntries is how many bytes the entries have with which two lists begin alike. Nearly all of a large folder is
// the same on both sides, so it is compared at once; where entries begin is only looked for up to what differs.
func sameEntries(was, is []byte) int {
	same := alike(min(len(was), len(is)), func(i, k int) bool { return string(was[i:i+k]) == string(is[i:i+k]) })
	if same == len(was) && same == len(is) {
		return same
	}
	done := 0
	for {
		n := entryLength(was[done:same])
		if n == 0 {
			return done
		}
		done += n
	}
}

// treeEntry is one entry of a folder; without a mode there is none.
type treeEntry struct {
	mode uint32
	name []byte
	id   *objectID
}

const modeFolder = 0o040000

// entryLength is how many bytes the first of some entries has; 0 where there is none.
func entryLength(entries []byte) int {
	end := bytes.IndexByte(entries, 0)
	if end < 0 || end+21 > len(entries) {
		return 0
	}
	return end + 21
}

// nextEntry reads the first of some entries: a mode in octal, a space, a name, NUL, an id. Modes are taken for those
// that git tells.
func nextEntry(entries []byte) (treeEntry, []byte, error) {
	if len(entries) == 0 {
		return treeEntry{}, nil, nil
	}
	n := entryLength(entries)
	space := bytes.IndexByte(entries, ' ')
	if n == 0 || space < 5 || space > 6 || space > n-23 {
		return treeEntry{}, nil, errPack
	}
	e := treeEntry{name: entries[space+1 : n-21], id: (*objectID)(entries[n-20 : n])}
	mode := uint32(0)
	for _, digit := range entries[:space] {
		if digit < '0' || digit > '7' {
			return treeEntry{}, nil, errPack
		}
		mode = mode<<3 | uint32(digit-'0')
	}
	switch {
	case mode>>12 == ModeFile>>12 && mode&0o100 != 0:
		e.mode = ModeExecutable
	case mode>>12 == ModeFile>>12:
		e.mode = ModeFile
	case mode>>12 == ModeSymlink>>12:
		e.mode = ModeSymlink
	case mode>>12 == modeFolder>>12:
		e.mode = modeFolder
	default:
		e.mode = ModeSubmodule
	}
	return e, entries[n:], nil
}

// compareEntries is the order of trees, in which the name of a folder ends with a slash. What is not there is last.
func compareEntries(a, b treeEntry) int {
	switch {
	case a.mode == 0 && b.mode == 0:
		return 0
	case a.mode == 0:
		return 1
	case b.mode == 0:
		return -1
	}
	n := min(len(a.name), len(b.name))
	if order := bytes.Compare(a.name[:n], b.name[:n]); order != 0 {
		return order
	}
	return int(a.byteAt(n)) - int(b.byteAt(n))
}

// byteAt is a byte of the name, or what ends it.
func (e *treeEntry) byteAt(i int) byte {
	switch {
	case i < len(e.name):
		return e.name[i]
	case e.mode == modeFolder:
		return '/'
	}
	return 0
}

// entry lists how one entry differs: a file, or all files of a folder.
func (w *changeWalk) entry(a, b treeEntry, prefix string, depth int) error {
	if a.mode == b.mode && (a.mode == 0 || *a.id == *b.id) {
		return nil
	}
	if a.mode == modeFolder || b.mode == modeFolder {
		name := a.name
		if a.mode == 0 {
			name = b.name
		}
		return w.compare(a.id, b.id, prefix+string(name)+"/", depth+1)
	}
	d := Delta{BeforeMode: a.mode, AfterMode: b.mode, Parent: w.parent}
	if a.mode != 0 {
		d.Path, d.Before = prefix+string(a.name), hex.EncodeToString(a.id[:])
	}
	if b.mode != 0 {
		d.Path, d.After = prefix+string(b.name), hex.EncodeToString(b.id[:])
	}
	w.into.Changed = append(w.into.Changed, d)
	return nil
}
