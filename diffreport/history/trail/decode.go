package trail

import (
	"encoding/binary"
	"math"
)

// decoder reads a register. After the first thing that can not be, it has failed
// and gives nothing more; what it gives is within bounds.
type decoder struct {
	// all is what there is from the start, of which rest is yet to be read.
	all    string
	rest   []byte
	failed bool
}

func newDecoder(body []byte) *decoder { return &decoder{all: string(body), rest: body} }

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
	start := len(d.all) - len(d.rest)
	d.rest = d.rest[n:]
	return d.all[start : start+n]
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
	blobs := d.count(1 + 1 + 8)
	r.blobs, r.blobNo = make([]version, 0, blobs), make(map[string]int32, blobs)
	for range blobs {
		r.blob(d.text())
		b := &r.blobs[len(r.blobs)-1]
		b.base, b.mark = int32(d.number(math.MaxInt32))-1, d.word()
	}
	steps := d.count(1 + 1 + 1)
	r.steps = make(map[string]*step, steps)
	for range steps {
		id := d.text()
		r.steps[id] = d.step(r)
	}
	r.fresh = d.number(mostKept)
	r.index = d.index(len(r.blobs))
	if !r.grounded() {
		d.fail()
	}
	return r
}

func (d *decoder) step(r *register) *step {
	s := &step{}
	for range d.count(1) {
		s.parents = append(s.parents, d.text())
	}
	deltas := d.count(4)
	s.deltas = make([]delta, 0, deltas)
	for range deltas {
		s.deltas = append(s.deltas, delta{
			parent: int32(d.number(max(len(s.parents)-1, 0))), path: int32(d.number(len(r.paths) - 1)),
			before: int32(d.number(len(r.blobs))) - 1, after: int32(d.number(len(r.blobs))) - 1,
		})
	}
	return s
}
