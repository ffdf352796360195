package trail

import (
	"encoding/binary"
	"math"
)

// decoder reads a register. After the first thing that can not be, it has failed
// and gives nothing more; what it gives is within bounds.
type decoder struct {
	rest   []byte
	failed bool
}

func (d *decoder) fail() { d.failed, d.rest = true, nil }

// number reads a number up to a bound.
func (d *decoder) number(most int) int {
	n, size := binary.Uvarint(d.rest)
	if size <= 0 || most < 0 || n > uint64(most) {
		d.fail()
		return 0
	}
	d.rest = d.rest[size:]
	return int(n)
}

// count reads how many things follow, each of some bytes at least.
func (d *decoder) count(least int) int { return d.number(len(d.rest) / least) }

func (d *decoder) text() string {
	n := d.count(1)
	if d.failed {
		return ""
	}
	s := string(d.rest[:n])
	d.rest = d.rest[n:]
	return s
}

func (d *decoder) word() uint64 {
	if len(d.rest) < 8 {
		d.fail()
		return 0
	}
	n := binary.LittleEndian.Uint64(d.rest)
	d.rest = d.rest[8:]
	return n
}

func (d *decoder) register() *register {
	r := newRegister()
	for range d.count(1) {
		r.path(d.text())
	}
	for range d.count(1 + 1 + 8) {
		r.blob(d.text())
		b := &r.blobs[len(r.blobs)-1]
		b.base, b.mark = int32(d.number(math.MaxInt32))-1, d.word()
	}
	if !r.grounded() {
		d.fail()
	}
	for range d.count(1 + 1 + 1) {
		id := d.text()
		r.steps[id] = d.step(r)
	}
	r.fresh = d.number(mostKept)
	r.index = d.index(len(r.blobs))
	return r
}

func (d *decoder) step(r *register) *step {
	s := &step{}
	for range d.count(1) {
		s.parents = append(s.parents, d.text())
	}
	for range d.count(4) {
		s.deltas = append(s.deltas, delta{
			parent: int32(d.number(max(len(s.parents)-1, 0))), path: int32(d.number(len(r.paths) - 1)),
			before: int32(d.number(len(r.blobs))) - 1, after: int32(d.number(len(r.blobs))) - 1,
		})
	}
	return s
}
