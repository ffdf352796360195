package pack

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
)

// Limits on what is held. MaxObject is the largest object that is read; a larger
// one, and what is stored as a difference from it, is left out.
const (
	MaxObject = 16 << 20
	maxDepth  = 5000
)

// ErrTooLarge says that the objects do not fit into the memory allowed for them.
var ErrTooLarge = errors.New("more objects than fit into memory")

// Store is the blobs and trees of one objects folder. It may be used by several
// goroutines at once.
type Store struct {
	byID map[ID]*object
	// groups are the objects by the whole one that they come from, each behind
	// its base.
	groups [][]*object
}

// Open reads the packs and the loose objects of a folder. Of blobs and trees no
// more than so many bytes are held, as they are stored but inflated; above that
// the error is ErrTooLarge. Of a pack that is of another form it is ErrForm.
func Open(folder string, most int64) (*Store, error) {
	indexes, err := filepath.Glob(filepath.Join(quote(folder), "pack", "pack-*.idx"))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", folder, err)
	}
	l := &loader{store: &Store{byID: make(map[ID]*object)}, left: most}
	defer l.close()
	for _, index := range indexes {
		if err := l.pack(index); err != nil {
			return nil, err
		}
	}
	if err := l.loose(folder); err != nil {
		return nil, err
	}
	if err := l.settle(); err != nil {
		return nil, err
	}
	return l.store, nil
}

func quote(path string) string {
	return strings.NewReplacer("[", "[[]", "*", "[*]", "?", "[?]").Replace(path)
}

// loader is the work of opening a store.
type loader struct {
	store   *Store
	packs   []*packFile
	objects []*object
	left    int64
}

func (l *loader) close() {
	for _, p := range l.packs {
		_ = p.file.Close()
	}
}

// pack takes the heads of all objects of one pack.
func (l *loader) pack(index string) error {
	places, err := readIndex(index)
	if err != nil {
		return err
	}
	file, err := os.Open(strings.TrimSuffix(index, ".idx") + ".pack")
	if err != nil {
		return err
	}
	p := &packFile{file: file}
	l.packs = append(l.packs, p)
	info, err := file.Stat()
	if err != nil {
		return err
	}
	p.size = info.Size()
	return l.heads(p, places)
}

// heads reads what stands before the content of each object, and ties the ones
// that are stored as differences to their bases.
func (l *loader) heads(p *packFile, places []place) error {
	at := make(map[int64]*object, len(places))
	far := make(map[*object]ID)
	for i, place := range places {
		end := p.size - 20
		if i+1 < len(places) {
			end = places[i+1].offset
		}
		h, err := p.head(place.offset, end)
		if err != nil {
			return err
		}
		o := &object{id: place.id, kind: h.kind, length: h.length, pack: p, offset: h.content, within: end - h.content}
		at[place.offset] = o
		switch {
		case h.near > 0:
			if o.base = at[place.offset-h.near]; o.base == nil {
				return fmt.Errorf("%s: %w", p.file.Name(), ErrForm)
			}
		case h.far != ID{}:
			far[o] = h.far
		}
		if h.large {
			o.kind, o.base = Other, nil
			delete(far, o)
		}
		l.objects = append(l.objects, o)
		if l.store.byID[o.id] == nil {
			l.store.byID[o.id] = o
		}
	}
	for o, id := range far {
		if o.base = l.store.byID[id]; o.base == nil {
			return fmt.Errorf("%s: %w: a base stands elsewhere", p.file.Name(), ErrForm)
		}
	}
	return nil
}

// settle inflates what is wanted and orders it by bases.
func (l *loader) settle() error {
	groups := make(map[*object][]*object)
	var roots []*object
	for _, o := range l.objects {
		root, depth := o, 0
		for root.base != nil {
			root = root.base
			if depth++; depth > maxDepth {
				return fmt.Errorf("%w: bases that never end", ErrForm)
			}
		}
		o.depth = depth
		if root.kind == Other {
			continue
		}
		o.kind = root.kind
		if l.left -= int64(o.length); l.left < 0 {
			return ErrTooLarge
		}
		if o == root {
			roots = append(roots, o)
		}
		groups[root] = append(groups[root], o)
	}
	number := 0
	for _, root := range roots {
		group := groups[root]
		slices.SortStableFunc(group, func(a, b *object) int { return a.depth - b.depth })
		for _, o := range group {
			o.number = number
			number++
		}
		l.store.groups = append(l.store.groups, group)
	}
	return l.store.each(inflateGroup)
}

func inflateGroup(group []*object) error {
	in := inflater{}
	for _, o := range group {
		if err := in.inflate(o); err != nil {
			return err
		}
	}
	return nil
}

// each works on all groups, several at once, and returns the first error.
func (s *Store) each(work func(group []*object) error) error {
	workers := min(runtime.GOMAXPROCS(0), 1+len(s.groups)/64)
	errs := make([]error, workers)
	next := make(chan []*object, len(s.groups))
	for _, g := range s.groups {
		next <- g
	}
	close(next)
	var wait sync.WaitGroup
	for w := range workers {
		wait.Go(func() {
			for g := range next {
				if err := work(g); err != nil {
					errs[w] = err
					return
				}
			}
		})
	}
	wait.Wait()
	return errors.Join(errs...)
}

// loose takes the objects that stand in files of their own.
func (l *loader) loose(folder string) error {
	for fan := range 256 {
		dir := filepath.Join(folder, fmt.Sprintf("%02x", fan))
		entries, err := os.ReadDir(dir)
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			return err
		}
		for _, e := range entries {
			id, ok := ParseID(fmt.Sprintf("%02x", fan) + e.Name())
			if !ok || l.store.byID[id] != nil {
				continue
			}
			o, err := readLoose(filepath.Join(dir, e.Name()), id)
			if err != nil {
				return err
			}
			l.objects = append(l.objects, o)
			l.store.byID[id] = o
		}
	}
	return nil
}
