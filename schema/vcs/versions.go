package vcs

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"runtime"
	"slices"
	"sync"
)

// Version is one of many contents, told by how it differs from another. Its bytes are good until take returns.
type Version struct {
	// N is its place among the ids asked for.
	N int
	// Base is the place of the content that it is told by, -1 where it is told by none.
	Base int
	// Text is the content, Was that of the base.
	Text, Was []byte
	// Edits make Text of Was, in order.
	Edits []Edit
}

// Reading is the wish to read many contents.
type Reading struct {
	// IDs are the contents. Those before First are only there for others to be told by.
	IDs   []string
	First int
	// Like is for each content the place of an earlier one that it is thought to be like, -1 for none. What git keeps
	// as the change of another is told by that other.
	Like []int32
	// Begin says how many goroutines will read. It is called again where all is read anew by other means: what was
	// handed over until then is to be forgotten.
	Begin func(readers int)
	// Take is handed each content, by its readers at once, numbered from 0. A content above MaxBlob is handed over
	// without its text. An error ends the reading.
	Take func(reader int, v *Version) error
}

// Versions reads many contents as what each changes of another, in any order. Where it can it follows the changes
// that git keeps in its packs, in this process: they are a hundredth of the text. Elsewhere it asks git for all of
// them. An error of Take is returned as it is. Errors: ErrMissingObject, ErrNotBlob.
func (r *Repo) Versions(ctx context.Context, o Reading) error {
	for i, id := range o.IDs {
		if !hexID(id) {
			return fmt.Errorf("%q is no object id: %w", id, ErrMissingObject)
		}
		if int(o.Like[i]) >= i {
			return fmt.Errorf("%s: %w: it is like a later one", id, errDelta)
		}
	}
	if s := r.open(); s != nil {
		err := guard(func() error { return s.versions(ctx, o) })
		var taken *takenError
		switch {
		case err == nil:
			return nil
		case ctx.Err() != nil:
			return context.Cause(ctx)
		case errors.As(err, &taken):
			return taken.error
		}
	}
	return r.pouredVersions(ctx, o)
}

// takenError is an error of the caller's.
type takenError struct{ error }

// forest is contents in the order in which they are told by each other.
type forest struct {
	*store
	Reading
	// spots are where the contents lie, grown which of them are told by each.
	spots []spot
	grown [][]int32
}

func (s *store) versions(ctx context.Context, o Reading) error {
	f := &forest{store: s, Reading: o}
	if err := f.plant(); err != nil {
		return err
	}
	work := f.divided(max(1, runtime.GOMAXPROCS(0)))
	o.Begin(len(work))
	failed := make([]error, len(work))
	ending, stop := context.WithCancel(ctx)
	defer stop()
	var wait sync.WaitGroup
	for reader, roots := range work {
		wait.Go(func() {
			failed[reader] = guard(func() error {
				w := versionWalk{forest: f, hand: s.hand(), ctx: ending, reader: reader}
				w.hand.edits = true
				return w.roots(roots)
			})
			if failed[reader] != nil {
				stop()
			}
		})
	}
	wait.Wait()
	for _, err := range failed {
		if err != nil && !errors.Is(err, context.Canceled) {
			return err
		}
	}
	return errors.Join(failed...)
}

// plant finds out which contents are told by which.
func (f *forest) plant() error {
	n := len(f.IDs)
	f.spots, f.grown = make([]spot, n), make([][]int32, n)
	for i, id := range f.IDs {
		name, err := idOf(id)
		if err != nil {
			return err
		}
		f.spots[i] = f.find(name)
		if like := f.Like[i]; i >= f.First && like >= int32(f.First) {
			f.grown[like] = append(f.grown[like], int32(i))
		}
	}
	return nil
}

// divided gives each of so many readers the contents with which it begins: those that are told by none that is read.
// Each has about as much to read.
func (f *forest) divided(readers int) [][]int32 {
	type tree struct {
		root int32
		size int
	}
	var trees []tree
	for i := f.First; i < len(f.IDs); i++ {
		if f.Like[i] < int32(f.First) {
			trees = append(trees, tree{int32(i), f.size(int32(i))})
		}
	}
	slices.SortStableFunc(trees, func(a, b tree) int { return cmp.Compare(b.size, a.size) })
	work, sums := make([][]int32, readers), make([]int, readers)
	for _, t := range trees {
		least := slices.Index(sums, slices.Min(sums))
		work[least] = append(work[least], t.root)
		sums[least] += t.size
	}
	for i := range work {
		slices.Sort(work[i])
	}
	return work
}

// size is how many contents are told by one, it included.
func (f *forest) size(root int32) int {
	n := 0
	for rest := []int32{root}; len(rest) > 0; n++ {
		last := rest[len(rest)-1]
		rest = append(rest[:len(rest)-1], f.grown[last]...)
	}
	return n
}

// versionWalk is the work of one reader: trees of contents, each after the one that it is told by.
type versionWalk struct {
	*forest
	hand   *hand
	ctx    context.Context
	reader int

	// held is how many bytes the contents have that wait for others to be read, edits room for those of one.
	held  int
	edits []Edit
}

// mostHeld bounds the contents that wait for others to be read, in bytes.
const mostHeld = 64 << 20

func (w *versionWalk) roots(roots []int32) error {
	for _, root := range roots {
		var base *unpacked
		if like := w.Like[root]; like >= 0 {
			var err error
			if base, err = w.hand.content(w.spots[like]); err != nil {
				return err
			}
		}
		if err := w.visit(root, base, 0); err != nil {
			return err
		}
		if base != nil {
			w.hand.letGo(base)
		}
	}
	return nil
}

// visit reads a content, given its base if it has one, and all that are told by it. The last of those takes the place
// of its base, so that a long line of versions is never held at once.
func (w *versionWalk) visit(n int32, was *unpacked, depth int) error {
	for mine := false; ; mine = true {
		is, err := w.read(n, was)
		if err != nil {
			return err
		}
		if mine {
			w.hand.letGo(was)
		}
		next := w.grown[n]
		if len(next) == 0 {
			w.hand.letGo(is)
			return nil
		}
		last := len(next) - 1
		w.held += len(is.data)
		for _, one := range next[:last] {
			if depth == deepest || w.held > mostHeld {
				return ErrTooLarge
			}
			if err := w.visit(one, is, depth+1); err != nil {
				return err
			}
		}
		w.held -= len(is.data)
		n, was = next[last], is
	}
}

// read reads one content and hands it over. It is to be let go.
func (w *versionWalk) read(n int32, was *unpacked) (*unpacked, error) {
	if w.ctx.Err() != nil {
		return nil, w.ctx.Err()
	}
	is, err := w.hand.content(w.spots[n])
	if err != nil {
		return nil, err
	}
	if is.kind != kindBlob {
		return nil, ErrNotBlob
	}
	v := Version{N: int(n), Base: int(w.Like[n]), Text: is.data}
	if was != nil {
		v.Was, v.Edits = was.data, w.between(w.spots[v.Base], was, w.spots[n], is)
	}
	if err := w.Take(w.reader, &v); err != nil {
		return nil, &takenError{err}
	}
	return is, nil
}

// between gives the edits between two contents: those that the pack knows, where it has one as the change of the
// other, or else what lies between their common beginning and end.
func (w *versionWalk) between(before spot, was *unpacked, after spot, is *unpacked) []Edit {
	switch {
	case is.base == before && is.edits != nil:
		return is.edits
	case was.base == after && was.edits != nil:
		w.edits = w.edits[:0]
		for _, e := range was.edits {
			w.edits = append(w.edits, Edit{From: e.Start, To: e.End, Start: e.From, End: e.To})
		}
	default:
		w.edits = differ(was.data, is.data, w.edits[:0])
	}
	return w.edits
}
