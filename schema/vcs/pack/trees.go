package pack

import (
	"bytes"
	"slices"
	"strings"
	"sync/atomic"
)

// Entry is one line of a tree: a file, a folder or a link to another repository.
type Entry struct {
	Name string
	Mode uint32
	ID   ID
}

// Content is the whole content of a blob; false where the store has none.
func (s *Store) Content(id ID) ([]byte, bool) {
	o := s.byID[id]
	if o == nil || o.kind != Blob {
		return nil, false
	}
	return o.content(), true
}

// Folder lists a tree in its stored order; false where the store has none or it
// can not be read.
func (s *Store) Folder(id ID) ([]Entry, bool) {
	o := s.byID[id]
	if o == nil || o.kind != Tree {
		return nil, false
	}
	return lines(o.content(), func(ID) bool { return true })
}

// lines reads the wanted lines of a tree.
func lines(data []byte, want func(ID) bool) ([]Entry, bool) {
	var all []Entry
	for len(data) > 0 {
		end := bytes.IndexByte(data, 0)
		space := bytes.IndexByte(data, ' ')
		if space < 0 || end < space || end+21 > len(data) {
			return nil, false
		}
		if id := ID(data[end+1 : end+21]); want(id) {
			e := Entry{Name: string(data[space+1 : end]), ID: id}
			for _, c := range data[:space] {
				e.Mode = e.Mode<<3 | uint32(c-'0')
			}
			all = append(all, e)
		}
		data = data[end+21:]
	}
	return all, true
}

// Named finds the blobs and trees that any tree has under a name.
func (s *Store) Named(name string) []ID {
	text := " " + name + "\x00"
	found := make([]map[ID]bool, len(s.groups))
	place := make(map[*object]int, len(s.groups))
	for i, g := range s.groups {
		place[g[0]] = i
	}
	_ = s.each(func(group []*object) error {
		if group[0].kind != Tree {
			return nil
		}
		ids := make(map[ID]bool)
		w := newWanted(text)
		for i, hits := range w.group(group) {
			for _, at := range hits {
				if from := int(at) + len(text); from+20 <= group[i].size {
					w.buffer = group[i].read(w.buffer[:0], from, from+20)
					ids[ID(w.buffer)] = true
				}
			}
		}
		found[place[group[0]]] = ids
		return nil
	})
	all := make(map[ID]bool)
	var ids []ID
	for _, some := range found {
		for id := range some {
			if !all[id] {
				all[id] = true
				ids = append(ids, id)
			}
		}
	}
	slices.SortFunc(ids, func(a, b ID) int { return bytes.Compare(a[:], b[:]) })
	return ids
}

// Holdings finds, for every tree that leads to any of some objects, the lines
// through which it does, in their stored order: those of the objects themselves
// and those of folders below that lead to one. It is false, and gives nothing,
// where there are more than so many lines.
func (s *Store) Holdings(ids map[ID]bool, most int) (map[ID][]Entry, bool) {
	found := make(map[ID][]Entry)
	for len(ids) > 0 {
		fresh := make(map[ID]bool)
		lines, ok := s.lines(ids, most)
		if !ok {
			return nil, false
		}
		for id, entries := range lines {
			most -= len(entries)
			if found[id] == nil {
				fresh[id] = true
			}
			found[id] = append(found[id], entries...)
		}
		ids = fresh
	}
	for _, entries := range found {
		slices.SortFunc(entries, func(a, b Entry) int { return strings.Compare(a.order(), b.order()) })
	}
	return found, true
}

// order is the text by which git sorts lines: a folder as if its name ended in a
// slash.
func (e Entry) order() string {
	if e.Mode == 0o40000 {
		return e.Name + "/"
	}
	return e.Name
}

// lines finds, for every tree that has one, the lines of some objects, as long as
// they are not too many.
func (s *Store) lines(ids map[ID]bool, most int) (map[ID][]Entry, bool) {
	rows := make([]map[ID][]Entry, len(s.groups))
	place := make(map[*object]int, len(s.groups))
	for i, g := range s.groups {
		place[g[0]] = i
	}
	names := newNames(ids)
	var left atomic.Int64
	left.Store(int64(most))
	_ = s.each(func(group []*object) error {
		if group[0].kind == Tree {
			f := finder{names: names, lines: make(map[ID][]Entry), left: &left}
			f.group(group)
			rows[place[group[0]]] = f.lines
		}
		return nil
	})
	if left.Load() < 0 {
		return nil, false
	}
	all := make(map[ID][]Entry)
	for _, row := range rows {
		for id, entries := range row {
			all[id] = entries
		}
	}
	return all, true
}

// names is a set of object names that is quick to tell what is not in it.
type names struct {
	ids   map[ID]bool
	first []bool
}

func newNames(ids map[ID]bool) *names {
	n := &names{ids: ids, first: make([]bool, 1<<16)}
	for id := range ids {
		n.first[int(id[0])<<8|int(id[1])] = true
	}
	return n
}

// in reports whether any of the names stands in the bytes.
func (n *names) in(data []byte) bool {
	for i := 0; i+20 <= len(data); i++ {
		if n.first[int(data[i])<<8|int(data[i+1])] && n.ids[ID(data[i:i+20])] {
			return true
		}
	}
	return false
}

// span is a line of interest and where in its tree it stands.
type span struct {
	from, to int32
	entry    Entry
}

// finder finds lines in the trees of one group.
type finder struct {
	*names
	lines  map[ID][]Entry
	buffer []byte
	// left counts down over all groups how many more lines may be found.
	left *atomic.Int64
}

func (f *finder) group(group []*object) {
	spans := make([][]span, len(group))
	for i, o := range group {
		sound := false
		if o.base != nil && !f.fresh(o) {
			spans[i], sound = inherited(o, spans[o.base.number-group[0].number])
		}
		if !sound {
			spans[i] = f.whole(o)
		}
		if f.left.Add(-int64(len(spans[i]))) < 0 {
			return
		}
		for _, s := range spans[i] {
			f.lines[o.id] = append(f.lines[o.id], s.entry)
		}
	}
}

// fresh reports whether a name that is looked for may stand in a tree where its
// base has none: in what is new or across a seam.
func (f *finder) fresh(o *object) bool {
	for i := range o.pieces {
		if f.in(o.literal(i)) {
			return true
		}
		if i == 0 {
			continue
		}
		at := int(o.pieces[i].at)
		f.buffer = o.read(f.buffer[:0], max(0, at-19), min(o.size, at+19))
		if f.in(f.buffer) {
			return true
		}
	}
	return false
}

// whole reads all of a tree.
func (f *finder) whole(o *object) []span {
	data := o.content()
	if !f.in(data) {
		return nil
	}
	var spans []span
	for at := 0; at < len(data); {
		end := bytes.IndexByte(data[at:], 0)
		if end < 0 || at+end+21 > len(data) {
			return nil
		}
		to := at + end + 21
		if f.ids[ID(data[at+end+1:to])] {
			if found, ok := lines(data[at:to], func(ID) bool { return true }); ok {
				spans = append(spans, span{int32(at), int32(to), found[0]})
			}
		}
		at = to
	}
	return spans
}

// inherited takes the lines of the base that are copied whole. It is not sound
// where a line came over without its head: then the tree has it under another
// name, or has something else.
func inherited(o *object, base []span) (spans []span, sound bool) {
	if len(base) == 0 {
		return nil, true
	}
	for i := range o.pieces {
		p := &o.pieces[i]
		if p.literal {
			continue
		}
		for _, s := range base {
			switch end := p.from + p.length; {
			case s.from >= p.from && s.to <= end:
				spans = append(spans, span{s.from - p.from + p.at, s.to - p.from + p.at, s.entry})
			case s.to-20 >= p.from && s.to <= end:
				return nil, false
			}
		}
	}
	return spans, true
}
