package trail

import (
	"encoding/binary"
	"maps"
	"slices"
)

// encode writes a register down. The same register gives the same bytes.
func (r *register) encode() []byte {
	e := encoder(registerHead)
	e.number(len(r.paths))
	for _, p := range r.paths {
		e.text(p)
	}
	e.number(len(r.blobs))
	for _, b := range r.blobs {
		e.text(b.id)
		e.number(int(b.base + 1))
		e = binary.LittleEndian.AppendUint64(e, b.mark)
	}
	e.number(len(r.steps))
	for _, id := range slices.Sorted(maps.Keys(r.steps)) {
		e.text(id)
		e.step(r.steps[id])
	}
	e.number(r.fresh)
	return r.index.encode(e)
}

// encoder is the text of a register so far.
type encoder []byte

func (e *encoder) number(n int) { *e = binary.AppendUvarint(*e, uint64(n)) }

func (e *encoder) text(s string) {
	e.number(len(s))
	*e = append(*e, s...)
}

func (e *encoder) step(s *step) {
	e.number(len(s.parents))
	for _, p := range s.parents {
		e.text(p)
	}
	e.number(len(s.deltas))
	for _, d := range s.deltas {
		for _, n := range []int32{d.parent, d.path, d.before + 1, d.after + 1} {
			e.number(int(n))
		}
	}
}
