package trail

import (
	"encoding/binary"
	"slices"
)

// index says which tokens stand in which versions, by what changed from base to
// version. Events of tokens that begin alike lie in one shelf, as they are kept on
// disk: only the few that are asked for are ever looked at.
type index struct {
	// starts are where in data each shelf begins, and its end.
	starts []uint32
	data   []byte
	// places are those of the versions in an order in which all that grew out of
	// one follow it, up to the place in ends.
	places, ends []int32
	order        []int32
}

const (
	shelfBits = 12
	// eventSize is the bytes of an event: token, version, more.
	eventSize = 4 + 4 + 4
)

func (x *index) size() int { return len(x.data) / eventSize }

// shelf is where the events of a token lie. The sorts of one text share a shelf.
func shelf(t token) int { return int(t>>3) & (1<<shelfBits - 1) }

// add puts events on their shelves.
func (x *index) add(tallies []tally) {
	var starts [1<<shelfBits + 1]uint32
	for s := range 1 << shelfBits {
		starts[s] = uint32(len(x.on(s)) / eventSize)
	}
	for i := range tallies {
		for _, e := range tallies[i].events {
			starts[shelf(e.token)]++
		}
	}
	sum := uint32(0)
	for s, n := range starts {
		starts[s] = sum
		sum += n
	}
	data, next := make([]byte, int(sum)*eventSize), starts
	for s := range 1 << shelfBits {
		next[s] += uint32(copy(data[int(next[s])*eventSize:], x.on(s)) / eventSize)
	}
	for i := range tallies {
		for _, e := range tallies[i].events {
			s := shelf(e.token)
			at := data[int(next[s])*eventSize:]
			binary.LittleEndian.PutUint32(at, uint32(e.token))
			binary.LittleEndian.PutUint32(at[4:], uint32(e.version))
			binary.LittleEndian.PutUint32(at[8:], uint32(e.more))
			next[s]++
		}
	}
	x.starts, x.data, x.order = starts[:], data, nil
}

// on is the events of a shelf.
func (x *index) on(shelf int) []byte {
	if x.starts == nil {
		return nil
	}
	return x.data[int(x.starts[shelf])*eventSize : int(x.starts[shelf+1])*eventSize]
}

// turn is where, in the order of versions, a token begins to stand more often.
type turn struct{ place, more int32 }

// find adds to a set the versions in which a token stands.
func (x *index) find(t token, turns []turn, found set) []turn {
	turns = turns[:0]
	for rest := x.on(shelf(t)); len(rest) > 0; rest = rest[eventSize:] {
		if token(binary.LittleEndian.Uint32(rest)) != t {
			continue
		}
		v, more := binary.LittleEndian.Uint32(rest[4:]), int32(binary.LittleEndian.Uint32(rest[8:]))
		turns = append(turns, turn{x.places[v], more}, turn{x.ends[v], -more})
	}
	slices.SortFunc(turns, func(a, b turn) int { return int(a.place) - int(b.place) })
	often := int32(0)
	for i, at := range turns {
		if often += at.more; often == 0 || i+1 == len(turns) {
			continue
		}
		for place := at.place; place < turns[i+1].place; place++ {
			found.add(x.order[place])
		}
	}
	return turns
}

// holding is the set of versions in which one of some tokens may stand.
func (r *register) holding(wanted ...token) set {
	if r.order == nil {
		r.arrange(r.blobs)
	}
	found := newSet(len(r.blobs))
	var turns []turn
	for _, t := range append(wanted, odd) {
		turns = r.find(t, turns, found)
	}
	return found
}

// arrange puts versions into an order in which all that grew out of one follow it.
func (x *index) arrange(blobs []version) {
	n := len(blobs)
	first, next := make([]int32, n+1), make([]int32, n)
	for i := range first {
		first[i] = none
	}
	for i := n - 1; i >= 0; i-- {
		base := blobs[i].base
		if base == none {
			base = int32(n)
		}
		next[i], first[base] = first[base], int32(i)
	}
	x.places, x.ends, x.order = make([]int32, n), make([]int32, n), make([]int32, 0, n)
	way := []int32{int32(n)}
	for len(way) > 0 {
		at := way[len(way)-1]
		if child := first[at]; child != none {
			first[at] = next[child]
			x.places[child] = int32(len(x.order))
			x.order, way = append(x.order, child), append(way, child)
			continue
		}
		if way = way[:len(way)-1]; int(at) < n {
			x.ends[at] = int32(len(x.order))
		}
	}
}

// grounded says whether every version is told, in the end, by one that is told by
// itself.
func (r *register) grounded() bool {
	for _, b := range r.blobs {
		if int(b.base) >= len(r.blobs) {
			return false
		}
	}
	r.arrange(r.blobs)
	return len(r.order) == len(r.blobs)
}

// encode writes the index behind what is written already.
func (x *index) encode(e encoder) []byte {
	e.number(x.size())
	for s := range 1 << shelfBits {
		e.number(len(x.on(s)) / eventSize)
	}
	return append(e, x.data...)
}

// index reads what encode wrote; versions is how many there are.
func (d *decoder) index(versions int) index {
	var x index
	n := d.number(mostKept / eventSize)
	x.starts = make([]uint32, 1<<shelfBits+1)
	for s := range 1 << shelfBits {
		x.starts[s+1] = x.starts[s] + uint32(d.number(n))
	}
	if d.failed || int(x.starts[1<<shelfBits]) != n || len(d.rest) != n*eventSize {
		d.fail()
		return index{}
	}
	x.data, d.rest = d.rest, nil
	for rest := x.data; len(rest) > 0; rest = rest[eventSize:] {
		if int(binary.LittleEndian.Uint32(rest[4:])) >= versions {
			d.fail()
			return index{}
		}
	}
	return x
}
