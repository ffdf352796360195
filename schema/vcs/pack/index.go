package pack

import (
	"encoding/binary"
	"errors"
	"fmt"
	"os"
	"slices"
)

// ID is the name of an object, its SHA-1.
type ID [20]byte

// ErrForm says that a pack is of a form that this package does not read, or damaged.
var ErrForm = errors.New("pack of another form")

// place is one object of an index: its name and where in the pack it starts.
type place struct {
	id     ID
	offset int64
}

// readIndex reads a pack's index, version 2, sorted by offset.
func readIndex(path string) ([]place, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	const head, fan, tail = 8, 4 * 256, 40
	if len(data) < head+fan+tail || binary.BigEndian.Uint32(data) != 0xff744f63 || binary.BigEndian.Uint32(data[4:]) != 2 {
		return nil, fmt.Errorf("%s: %w", path, ErrForm)
	}
	n := int(binary.BigEndian.Uint32(data[head+fan-4:]))
	names := head + fan
	offsets := names + n*24 // behind the names stand as many checksums of four bytes
	large := offsets + n*4
	if n < 0 || n > len(data)/24 || large+tail > len(data) {
		return nil, fmt.Errorf("%s: %w", path, ErrForm)
	}
	places := make([]place, n)
	for i := range places {
		copy(places[i].id[:], data[names+i*20:])
		at := binary.BigEndian.Uint32(data[offsets+i*4:])
		places[i].offset = int64(at)
		if at&(1<<31) != 0 {
			far := large + int(at&^(1<<31))*8
			if far+8+tail > len(data) {
				return nil, fmt.Errorf("%s: %w", path, ErrForm)
			}
			places[i].offset = int64(binary.BigEndian.Uint64(data[far:]) &^ (1 << 63))
		}
	}
	slices.SortFunc(places, func(a, b place) int { return int(min(max(a.offset-b.offset, -1), 1)) })
	return places, nil
}
