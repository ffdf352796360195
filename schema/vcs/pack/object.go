package pack

// Kind is what an object is.
type Kind uint8

// The kinds that are read; anything else is Other.
const (
	Other Kind = iota
	Tree
	Blob
)

// object is one object as it is stored: whole, or as what differs from a base.
type object struct {
	id   ID
	kind Kind
	// depth is how many bases lie below it.
	base  *object
	depth int
	// data is the whole content, or the instructions with their literals.
	data []byte
	// pieces make the content of an object with a base; size is its length.
	pieces []piece
	size   int
	// place in the store's rows, for marks beside them.
	number int

	// Where the stored form lies, until it is inflated.
	pack   *packFile
	offset int64
	length int
	within int64
}

// piece is a stretch of an object: copied from the base, or literal.
type piece struct {
	// at is where in the object it starts; from where in the base or, for a
	// literal, in data.
	at, from, length int32
	literal          bool
}

// unpackPieces reads the instructions of a delta. It reports whether they are
// sound: every stretch lies in its source, and together they make the size.
func (o *object) unpackPieces() bool {
	baseSize, rest, ok := varint(o.data)
	if !ok || baseSize != o.base.size {
		return false
	}
	size, rest, ok := varint(rest)
	if !ok {
		return false
	}
	o.size = size
	o.pieces = make([]piece, 0, 8)
	at := 0
	for pos := len(o.data) - len(rest); pos < len(o.data); {
		code := o.data[pos]
		pos++
		p := piece{at: int32(at)}
		switch {
		case code == 0:
			return false
		case code&0x80 == 0:
			p.literal, p.from, p.length = true, int32(pos), int32(code)
			pos += int(code)
			if pos > len(o.data) {
				return false
			}
		default:
			pos = p.copied(o.data, pos, code)
			if pos < 0 || int(p.from)+int(p.length) > o.base.size || p.from < 0 {
				return false
			}
		}
		at += int(p.length)
		if at > size {
			return false
		}
		o.add(p)
	}
	return at == size
}

// add appends a piece, to the last one where that goes on in the same source.
func (o *object) add(p piece) {
	if n := len(o.pieces); n > 0 && !p.literal {
		if last := &o.pieces[n-1]; !last.literal && last.from+last.length == p.from {
			last.length += p.length
			return
		}
	}
	o.pieces = append(o.pieces, p)
}

// copied reads the offset and length of a copy; -1 where they are cut off.
func (p *piece) copied(data []byte, pos int, code byte) int {
	var from, length int64
	for i := range 7 {
		if code&(1<<i) == 0 {
			continue
		}
		if pos >= len(data) {
			return -1
		}
		if i < 4 {
			from |= int64(data[pos]) << (8 * i)
		} else {
			length |= int64(data[pos]) << (8 * (i - 4))
		}
		pos++
	}
	if length == 0 {
		length = 1 << 16
	}
	if from > 1<<30 {
		return -1
	}
	p.from, p.length = int32(from), int32(length)
	return pos
}

// varint reads a size of a delta's head.
func varint(data []byte) (n int, rest []byte, ok bool) {
	for i, shift := 0, 0; i < len(data) && shift < 28; i, shift = i+1, shift+7 {
		n |= int(data[i]&0x7f) << shift
		if data[i]&0x80 == 0 {
			return n, data[i+1:], true
		}
	}
	return 0, nil, false
}

// read appends the bytes [from, to) of the content.
func (o *object) read(into []byte, from, to int) []byte {
	for o.base != nil {
		i := o.pieceAt(from)
		p := &o.pieces[i]
		if end := int(p.at + p.length); to > end {
			into = o.read(into, from, end)
			from = end
			continue
		}
		shift := int(p.from - p.at)
		from, to = from+shift, to+shift
		if p.literal {
			return append(into, o.data[from:to]...)
		}
		o = o.base
	}
	return append(into, o.data[from:to]...)
}

// byteAt is one byte of the content.
func (o *object) byteAt(at int) byte {
	for o.base != nil {
		p := &o.pieces[o.pieceAt(at)]
		at += int(p.from - p.at)
		if p.literal {
			break
		}
		o = o.base
	}
	return o.data[at]
}

// pieceAt is the piece that holds a byte of the content.
func (o *object) pieceAt(at int) int {
	low, high := 0, len(o.pieces)-1
	for low < high {
		mid := (low + high + 1) / 2
		if int(o.pieces[mid].at) <= at {
			low = mid
		} else {
			high = mid - 1
		}
	}
	return low
}

// content makes the whole content.
func (o *object) content() []byte {
	if o.base == nil {
		return o.data
	}
	// Reading piece by piece through all bases costs less than making every
	// base whole, as long as the pieces are long.
	return o.read(make([]byte, 0, o.size), 0, o.size)
}
