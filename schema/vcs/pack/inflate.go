package pack

import (
	"bufio"
	"bytes"
	"compress/zlib"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"
)

// ParseID reads an object's name in lower-case hexadecimal.
func ParseID(text string) (ID, bool) {
	var id ID
	if len(text) != 2*len(id) {
		return id, false
	}
	_, err := hex.Decode(id[:], []byte(text))
	return id, err == nil
}

// String is the name in lower-case hexadecimal.
func (id ID) String() string { return hex.EncodeToString(id[:]) }

type packFile struct {
	file *os.File
	size int64
	// window is the stretch of the file that heads are read from.
	window []byte
	start  int64
}

// objectHead is what stands before the content of an object in a pack.
type objectHead struct {
	kind    Kind
	length  int
	content int64
	// near is how far before the object its base stands, far the base's name;
	// zero for an object that is stored whole.
	near  int64
	far   ID
	large bool
}

// The kinds of object as packs number them.
const (
	storedTree = 2
	storedBlob = 3
	storedNear = 6
	storedFar  = 7
)

// head reads the head of the object that stands at an offset and ends before
// another.
func (p *packFile) head(offset, end int64) (objectHead, error) {
	const most = 10 + 20
	raw, err := p.peek(offset, int(min(end-offset, most)))
	if err != nil {
		return objectHead{}, err
	}
	stored, length, n := sizeOf(raw)
	if n == 0 {
		return objectHead{}, p.damaged(offset)
	}
	h := objectHead{large: length > MaxObject, length: int(min(length, MaxObject))}
	switch stored {
	case storedTree:
		h.kind = Tree
	case storedBlob:
		h.kind = Blob
	case storedNear:
		near, m := distance(raw[n:])
		if m == 0 || near > offset {
			return objectHead{}, p.damaged(offset)
		}
		h.near, n = near, n+m
	case storedFar:
		if len(raw) < n+20 {
			return objectHead{}, p.damaged(offset)
		}
		copy(h.far[:], raw[n:])
		n += 20
	}
	h.content = offset + int64(n)
	return h, nil
}

func (p *packFile) damaged(offset int64) error {
	return fmt.Errorf("%s: %w: object at %d", p.file.Name(), ErrForm, offset)
}

// peek gives bytes of the file from a window that moves along with the reading.
func (p *packFile) peek(offset int64, n int) ([]byte, error) {
	if n <= 0 {
		return nil, p.damaged(offset)
	}
	if offset < p.start || offset+int64(n) > p.start+int64(len(p.window)) {
		p.window = append(p.window[:0], make([]byte, min(1<<20, p.size-offset))...)
		p.start = offset
		if _, err := p.file.ReadAt(p.window, offset); err != nil && !errors.Is(err, io.EOF) {
			return nil, err
		}
	}
	at := int(offset - p.start)
	if at+n > len(p.window) {
		return nil, p.damaged(offset)
	}
	return p.window[at : at+n], nil
}

// sizeOf reads kind and size; n is 0 where they are cut off.
func sizeOf(raw []byte) (kind byte, size int64, n int) {
	kind, size = raw[0]>>4&7, int64(raw[0]&15)
	for shift := 4; raw[n]&0x80 != 0; shift += 7 {
		n++
		if n >= len(raw) || shift > 55 {
			return 0, 0, 0
		}
		size |= int64(raw[n]&0x7f) << shift
	}
	return kind, size, n + 1
}

// distance reads how far back a base stands; n is 0 where it is cut off.
func distance(raw []byte) (back int64, n int) {
	if len(raw) == 0 {
		return 0, 0
	}
	back = int64(raw[0] & 0x7f)
	for raw[n]&0x80 != 0 {
		n++
		if n >= len(raw) || n > 8 {
			return 0, 0
		}
		back = (back+1)<<7 | int64(raw[n]&0x7f)
	}
	return back, n + 1
}

// inflater inflates objects one after another.
type inflater struct {
	raw    []byte
	reader io.ReadCloser
}

// inflate reads the stored form of an object, and the pieces of one with a base.
func (in *inflater) inflate(o *object) error {
	if o.pack != nil {
		if err := in.read(o); err != nil {
			return fmt.Errorf("%s: %w: object %s: %w", o.pack.file.Name(), ErrForm, o.id, err)
		}
	}
	o.size = len(o.data)
	if o.base != nil && !o.unpackPieces() {
		return fmt.Errorf("%w: object %s does not fit its base", ErrForm, o.id)
	}
	return nil
}

func (in *inflater) read(o *object) error {
	if cap(in.raw) < int(o.within) {
		in.raw = make([]byte, o.within+o.within/2)
	}
	raw := in.raw[:o.within]
	if _, err := o.pack.file.ReadAt(raw, o.offset); err != nil {
		return err
	}
	var err error
	if in.reader == nil {
		in.reader, err = zlib.NewReader(bytes.NewReader(raw))
	} else if again, ok := in.reader.(zlib.Resetter); ok {
		err = again.Reset(bytes.NewReader(raw), nil)
	}
	if err != nil {
		return err
	}
	o.data = make([]byte, o.length)
	if _, err := io.ReadFull(in.reader, o.data); err != nil {
		return err
	}
	// Reading on to the end checks the sum that stands there.
	if n, err := in.reader.Read(make([]byte, 1)); n != 0 || !errors.Is(err, io.EOF) {
		return errors.Join(errors.New("it does not end where it should"), err)
	}
	return nil
}

// readLoose reads an object that stands in a file of its own. One of another kind
// or too large to be read is Other.
func readLoose(path string, id ID) (*object, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer func() { _ = file.Close() }()
	from, err := zlib.NewReader(bufio.NewReader(file))
	if err != nil {
		return nil, fmt.Errorf("%s: %w: %w", path, ErrForm, err)
	}
	lines := bufio.NewReader(from)
	head, err := lines.ReadString(0)
	kind, length, found := strings.Cut(strings.TrimSuffix(head, "\x00"), " ")
	size, sizeErr := strconv.Atoi(length)
	if err != nil || !found || sizeErr != nil || size < 0 {
		return nil, fmt.Errorf("%s: %w", path, ErrForm)
	}
	o := &object{id: id, length: size}
	switch {
	case size > MaxObject:
		return o, nil
	case kind == "blob":
		o.kind = Blob
	case kind == "tree":
		o.kind = Tree
	default:
		return o, nil
	}
	o.data = make([]byte, size)
	if _, err := io.ReadFull(lines, o.data); err != nil {
		return nil, fmt.Errorf("%s: %w: %w", path, ErrForm, err)
	}
	return o, nil
}
