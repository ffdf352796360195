package vcs

import (
	"bytes"
	"compress/zlib"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"sync"
)

// store reads objects of an ordinary repository from its packs and loose files, in this process and as they are
// stored: versions of a file as the changes of each other that git keeps. That is a hundredth of their text, which
// is why whole histories are read by it. What it does not know to be right is an error, and git is asked. It is for
// several goroutines, each with a hand of its own.
type store struct {
	folder string
	packs  []*pack

	// wholes are contents that packs hold as they are, for all hands: the changes of many files go back to one.
	mu      sync.Mutex
	wholes  map[spot][]byte
	weighty int
}

// mostWhole bounds the contents that all hands share, in bytes; leastWhole is from how many on one is worth it.
const (
	mostWhole  = 32 << 20
	leastWhole = 4 << 10
)

// shared gives a content that some hand has read already, nil where none has.
func (s *store) shared(at spot) []byte {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.wholes[at]
}

// share lets the other hands have a content.
func (s *store) share(at spot, data []byte) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.weighty += len(data); s.wholes == nil || s.weighty > mostWhole {
		s.wholes, s.weighty = make(map[spot][]byte), len(data)
	}
	s.wholes[at] = data
}

// mostPacked bounds the packs that are held in memory, in bytes. Histories beyond it are read by git.
const mostPacked = 128 << 20

// openStore reads the packs of an object folder.
func openStore(folder string) (*store, error) {
	names, err := filepath.Glob(filepath.Join(globQuote(folder), "pack", "*.idx"))
	if err != nil {
		return nil, err
	}
	s := &store{folder: folder}
	room := int64(mostPacked)
	for _, name := range names {
		p, err := openPack(name, room)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		room -= int64(len(p.data) + len(p.index))
		s.packs = append(s.packs, p)
	}
	return s, nil
}

// spot is where an object lies: at an offset of a pack, or loose in a file named by its id.
type spot struct {
	pack, offset int
	loose        objectID
}

// loosePack stands for no pack.
const loosePack = -1

// find tells where an object lies; one in no pack is taken for loose.
func (s *store) find(id objectID) spot {
	for i, p := range s.packs {
		if offset, there := p.find(&id); there {
			return spot{pack: i, offset: offset}
		}
	}
	return spot{pack: loosePack, loose: id}
}

// head reads what a pack says of an object, and where its base lies if it has one. A loose object is whole; its head
// is empty.
func (s *store) head(at spot) (stored, *spot, error) {
	if at.pack == loosePack {
		return stored{}, nil, nil
	}
	o, err := s.packs[at.pack].at(at.offset)
	switch {
	case err != nil:
		return o, nil, err
	case o.kind == kindOffDelta:
		return o, &spot{pack: at.pack, offset: at.offset - o.back}, nil
	case o.kind == kindRefDelta:
		base := s.find(o.base)
		return o, &base, nil
	}
	return o, nil, nil
}

// hand is what one goroutine reads with. It remembers what it read of late: the next is often a change of it.
type hand struct {
	*store
	source  bytes.Reader
	inflate io.ReadCloser
	delta   []byte
	// edits is set where those of each content are asked for.
	edits bool
	weigher
	// known is what was read since before was. Together they weigh no more than twice what most gives.
	known, before   map[spot]*unpacked
	weight, largest int
	// free are bytes that nobody holds any more.
	free [][]byte
}

// unpacked is the whole content of an object. That of a file that a pack has as the change of another knows where that
// lies and, to a hand that is asked for them, the edits, never nil. Its bytes are used again once everybody who held
// them has let go.
type unpacked struct {
	kind  int
	data  []byte
	base  spot
	edits []Edit
	held  int
}

// leastKnown and mostKnown bound what a hand remembers, in bytes: between them, room for manyChanges of the largest
// object. Git makes fifty changes of changes at most, unless it is told otherwise.
const (
	leastKnown  = 1 << 20
	mostKnown   = 48 << 20
	manyChanges = 64
)

// mostFree bounds how many bytes in number wait to be used again.
const mostFree = 64

// errHuge says of one object that it is left to git.
var errHuge = errors.New("too large to be read in this process")

// deepest is how many changes of changes are followed; git makes 4095 at most.
const deepest = 4096

func (s *store) hand() *hand { return &hand{store: s, known: make(map[spot]*unpacked)} }

// read gives an object of one kind, which is to be let go.
func (h *hand) read(id objectID, kind int) (*unpacked, error) {
	o, err := h.content(h.find(id))
	if err == nil && o.kind != kind {
		h.letGo(o)
		err = errPack
	}
	if err != nil {
		return nil, fmt.Errorf("%x: %w", id, err)
	}
	return o, nil
}

// content puts an object together from the one that it is a change of, and so on. It is to be let go.
func (h *hand) content(at spot) (*unpacked, error) {
	var room [64]spot
	way := room[:0]
	var o *unpacked
	for next := &at; ; {
		if o = h.remembered(*next); o != nil {
			break
		}
		if way = append(way, *next); len(way) > deepest {
			return nil, errPack
		}
		_, base, err := h.head(*next)
		if err != nil {
			return nil, err
		}
		if base == nil {
			break
		}
		next = base
	}
	for _, one := range slices.Backward(way) {
		made, err := h.step(one, o)
		if o != nil {
			h.letGo(o)
		}
		if err != nil {
			return nil, err
		}
		o = made
		h.remember(one, o)
	}
	return o, nil
}

// letGo gives back what somebody held.
func (h *hand) letGo(o *unpacked) {
	if o.held--; o.held == 0 && len(h.free) < mostFree {
		h.free = append(h.free, o.data)
	}
}

// bytes gives room for so many bytes, of what was let go if it is enough.
func (h *hand) bytes(size int) []byte {
	for i := len(h.free) - 1; i >= 0; i-- {
		if room := h.free[i]; cap(room) >= size && cap(room) <= 4*size+4096 {
			h.free[i] = h.free[len(h.free)-1]
			h.free = h.free[:len(h.free)-1]
			return room[:size]
		}
	}
	return make([]byte, size, size+size/8)
}

// remembered looks up what was read of late, and holds it; nil where it was not.
func (h *hand) remembered(at spot) *unpacked {
	if o := h.known[at]; o != nil {
		o.held++
		return o
	}
	o := h.before[at]
	if o != nil {
		o.held++
		h.remember(at, o)
	}
	return o
}

func (h *hand) remember(at spot, o *unpacked) {
	o.held++
	h.largest = max(h.largest, len(o.data))
	if h.weight += len(o.data) + 64; h.weight > min(max(leastKnown, manyChanges*h.largest), mostKnown) {
		for _, old := range h.before {
			h.letGo(old)
		}
		h.known, h.before, h.weight = make(map[spot]*unpacked), h.known, len(o.data)+64
	}
	h.known[at] = o
}

// step reads one object, given the one that it may be a change of. It is held.
func (h *hand) step(at spot, base *unpacked) (*unpacked, error) {
	if at.pack == loosePack {
		return h.loose(at.loose)
	}
	s, from, err := h.head(at)
	switch {
	case err != nil:
		return nil, err
	case from != nil:
		return h.changed(s, *from, base)
	case s.size > MaxBlob:
		return nil, errHuge
	}
	if s.size < leastWhole {
		o := &unpacked{kind: s.kind, data: h.bytes(s.size), held: 1}
		return o, h.unpack(o.data, s.deflated)
	}
	// What is shared is never let go for other use: one holds it who does not say so.
	o := &unpacked{kind: s.kind, data: h.shared(at), held: 2}
	if o.data == nil {
		o.data = make([]byte, s.size)
		if err = h.unpack(o.data, s.deflated); err == nil {
			h.share(at, o.data)
		}
	}
	return o, err
}

// changed carries out the change of another object.
func (h *hand) changed(s stored, at spot, base *unpacked) (*unpacked, error) {
	delta, err := h.change(s)
	if err != nil {
		return nil, err
	}
	o := &unpacked{kind: base.kind, base: at, held: 1}
	o.data, h.parts, err = patch(h.bytes(resultSize(delta))[:0], base.data, delta, h.parts[:0])
	if err == nil && h.edits && base.kind == kindBlob {
		o.edits = h.edited(len(base.data), len(o.data))
	}
	return o, err
}

// change unpacks what a pack tells of an object as the change of another; it is good until the next.
func (h *hand) change(s stored) ([]byte, error) {
	if s.size > MaxBlob {
		return nil, errHuge
	}
	if cap(h.delta) < s.size {
		h.delta = make([]byte, s.size+s.size/2)
	}
	delta := h.delta[:s.size]
	return delta, h.unpack(delta, s.deflated)
}

// resultSize is how long a change says that its result is, within bounds.
func resultSize(delta []byte) int {
	_, rest, _ := deltaSize(delta)
	size, _, _ := deltaSize(rest)
	return min(size, MaxBlob)
}

// unpack inflates exactly as many bytes as into has room for.
func (h *hand) unpack(into, deflated []byte) error {
	h.source.Reset(deflated)
	if err := h.rewind(&h.source); err != nil {
		return err
	}
	if _, err := io.ReadFull(h.inflate, into); err != nil {
		return err
	}
	// Only behind the last byte is the checksum looked at.
	if n, err := h.inflate.Read(make([]byte, 1)); n != 0 || !errors.Is(err, io.EOF) {
		return errors.Join(errPack, err)
	}
	return nil
}

// rewind begins to inflate.
func (h *hand) rewind(from io.Reader) error {
	if h.inflate == nil {
		var err error
		h.inflate, err = zlib.NewReader(from)
		return err
	}
	return h.inflate.(zlib.Resetter).Reset(from, nil) //nolint:errcheck // zlib's own readers can all be reset
}

// loose reads an object that has a file of its own: its kind and length, NUL, its content.
func (h *hand) loose(id objectID) (*unpacked, error) {
	name := hex.EncodeToString(id[:])
	file, err := os.Open(filepath.Join(h.folder, name[:2], name[2:]))
	if err != nil {
		return nil, err
	}
	defer func() { _ = file.Close() }()
	if err = h.rewind(file); err != nil {
		return nil, err
	}
	text, err := io.ReadAll(io.LimitReader(h.inflate, MaxBlob+64))
	if err != nil {
		return nil, err
	}
	head, data, _ := bytes.Cut(text, []byte{0})
	kind, length, _ := bytes.Cut(head, []byte(" "))
	size, err := strconv.Atoi(string(length))
	if err != nil || size != len(data) {
		return nil, errPack
	}
	kinds := map[string]int{"commit": kindCommit, "tree": kindTree, "blob": kindBlob}
	return &unpacked{kind: kinds[string(kind)], data: data, held: 1}, nil
}
