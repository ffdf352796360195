package vcs

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"os"
	"strings"
)

// objectID is an id in the bytes that objects name each other by. Only SHA-1 is read in this process.
type objectID [20]byte

// packed kinds of object, as the head of each in a pack tells them.
const (
	kindCommit   = 1
	kindTree     = 2
	kindBlob     = 3
	kindOffDelta = 6
	kindRefDelta = 7
)

// pack is one file of packed objects with its index, both whole in memory and of the versions that gitformat-pack(5)
// calls 2. Whatever is of another form, or can not be, is an error: git is asked instead.
type pack struct {
	data, index []byte
	count       int
}

// parts of an index: a head, 256 sums of how many ids begin with less, the ids, their checksums, their offsets.
const (
	indexHead = 8
	indexIDs  = indexHead + 256*4
	sumLength = 20
)

var errPack = errors.New("unexpected form of a pack")

// openPack reads the pack whose index has the given name, if both together are no larger than room.
func openPack(indexName string, room int64) (*pack, error) {
	dataName := strings.TrimSuffix(indexName, ".idx") + ".pack"
	for _, name := range []string{indexName, dataName} {
		info, err := os.Stat(name)
		if err != nil {
			return nil, err
		}
		if room -= info.Size(); room < 0 {
			return nil, fmt.Errorf("%s: %w", name, ErrTooLarge)
		}
	}
	index, err := os.ReadFile(indexName)
	if err != nil {
		return nil, err
	}
	data, err := os.ReadFile(dataName)
	if err != nil {
		return nil, err
	}
	p := &pack{data: data, index: index}
	return p, p.check()
}

// check reads the heads, and holds the index to the pack that it was made for.
func (p *pack) check() error {
	if len(p.index) < indexIDs+2*sumLength || len(p.data) < 12+sumLength {
		return errPack
	}
	if string(p.index[:8]) != "\xfftOc\x00\x00\x00\x02" || string(p.data[:8]) != "PACK\x00\x00\x00\x02" {
		return errPack
	}
	p.count = p.below(256)
	if len(p.index) < indexIDs+p.count*(20+4+4)+2*sumLength || int(binary.BigEndian.Uint32(p.data[8:])) != p.count {
		return errPack
	}
	for first := range 256 {
		if p.below(first) > p.below(first+1) {
			return errPack
		}
	}
	if made := p.index[len(p.index)-2*sumLength:]; !bytes.Equal(made[:sumLength], p.data[len(p.data)-sumLength:]) {
		return errPack
	}
	return nil
}

// below is how many ids begin with a smaller byte.
func (p *pack) below(first int) int {
	if first == 0 {
		return 0
	}
	return int(binary.BigEndian.Uint32(p.index[indexHead+4*(first-1):]))
}

// find gives the offset of an object, and whether the pack holds it.
func (p *pack) find(id *objectID) (int, bool) {
	low, high := p.below(int(id[0])), p.below(int(id[0])+1)
	for low < high {
		middle := (low + high) / 2
		at := indexIDs + 20*middle
		switch bytes.Compare(p.index[at:at+20], id[:]) {
		case 0:
			return p.offset(middle), true
		case -1:
			low = middle + 1
		default:
			high = middle
		}
	}
	return 0, false
}

// offset is where the object lies whose id has a place in the index, or one beyond the pack where none can be.
func (p *pack) offset(place int) int {
	short := indexIDs + p.count*(20+4)
	n := binary.BigEndian.Uint32(p.index[short+4*place:])
	if n < 1<<31 {
		return int(n)
	}
	at := short + 4*p.count + 8*int(n-1<<31)
	if at+8 > len(p.index)-2*sumLength {
		return len(p.data)
	}
	return int(min(binary.BigEndian.Uint64(p.index[at:]), uint64(len(p.data))))
}

// stored is one object as it lies in a pack: its kind and length, and for one that is told as a change of another,
// where that lies.
type stored struct {
	kind, size int
	// back is the distance to the base in the same pack, base its id.
	back int
	base objectID
	// deflated begins with the compressed bytes, and does not end with them.
	deflated []byte
}

// at reads the head of an object.
func (p *pack) at(offset int) (stored, error) {
	var s stored
	end := len(p.data) - sumLength
	if offset < 12 || offset >= end {
		return s, errPack
	}
	rest := p.data[offset:end]
	s.kind, s.size = int(rest[0]>>4)&7, int(rest[0]&15)
	used := 1
	for shift := 4; rest[used-1]&0x80 != 0; shift += 7 {
		if used == len(rest) || shift > 32 {
			return s, errPack
		}
		s.size |= int(rest[used]&0x7f) << shift
		used++
	}
	rest = rest[used:]
	switch s.kind {
	case kindOffDelta:
		used = 0
		for more := true; more; used++ {
			if used == len(rest) || used > 5 {
				return s, errPack
			}
			if used > 0 {
				s.back++
			}
			s.back = s.back<<7 | int(rest[used]&0x7f)
			more = rest[used]&0x80 != 0
		}
		if s.back <= 0 || s.back >= offset {
			return s, errPack
		}
		rest = rest[used:]
	case kindRefDelta:
		if len(rest) < 20 {
			return s, errPack
		}
		s.base = objectID(rest[:20])
		rest = rest[20:]
	case kindCommit, kindTree, kindBlob:
	default:
		return s, errPack
	}
	s.deflated = rest
	return s, nil
}
