package drawing

import (
	"fmt"
	"slices"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
)

// A board knows what is on the ports while the steps of an order are done.
type board struct {
	base, head *plant.Plant
	// former and latter lead from a label of one plant to that of the other.
	former, latter func(string) string
	seats          map[seatKey]*seat
}

// A life tells a holder of the later plant from one that only the earlier has:
// both may bear the same label.
type life uint8

const (
	presentLife life = iota
	goneLife
)

//nolint:revive // the flag is what the caller was handed
func holderLife(gone bool) life {
	if gone {
		return goneLife
	}
	return presentLife
}

type seatKey struct {
	label string
	life  life
}

// A seat is one holder with what is on its port sides.
type seat struct {
	seatKey
	holder *plant.Holder
	ports  int
	on     map[place][]string
}

// A place is one side of one port.
type place struct {
	port  int
	front bool
}

func newBoard(o *diffreport.Order, base, head *plant.Plant) *board {
	b := &board{base: base, head: head, former: diffreport.Former(o.Changes), latter: diffreport.Latter(o.Changes), seats: make(map[seatKey]*seat)}
	if b.base == nil {
		b.base = &plant.Plant{}
	}
	if b.head == nil {
		b.head = &plant.Plant{}
	}
	return b
}

// seat finds a holder, as the earlier plant has it filled. It is nil where
// neither plant has such a holder.
func (b *board) seat(label string, l life) *seat {
	key := seatKey{label, l}
	if known, ok := b.seats[key]; ok {
		return known
	}
	before, now := b.holder(b.base, label), (*plant.Holder)(nil)
	if l == presentLife {
		before, now = b.holder(b.base, b.former(label)), b.holder(b.head, label)
	}
	s := &seat{seatKey: key, holder: now, on: make(map[place][]string)}
	switch {
	case now == nil && before == nil:
		s = nil
	case now == nil:
		s.holder = before
	}
	if s != nil {
		s.ports = len(s.holder.Ports)
		b.fill(s, before)
	}
	b.seats[key] = s
	return s
}

func (b *board) holder(in *plant.Plant, label string) *plant.Holder {
	if label == "" {
		return nil
	}
	it, _ := in.Find(label)
	h, _ := it.(*plant.Holder)
	return h
}

// fill puts on what the earlier plant has on the holder.
func (b *board) fill(s *seat, before *plant.Holder) {
	if before == nil {
		return
	}
	s.ports = max(s.ports, len(before.Ports))
	for i := range before.Ports {
		p := &before.Ports[i]
		b.put(s, place{p.Number, false}, p.Rear)
		b.put(s, place{p.Number, true}, p.Onward)
		if p.Front != nil {
			at := place{p.Number, true}
			s.on[at] = append(s.on[at], b.called(p.Front.Label))
		}
	}
}

// put puts a run on; one that is only planned is not there yet.
func (b *board) put(s *seat, at place, r *plant.Run) {
	if r == nil {
		return
	}
	if state, known := r.State(); known && state == schema.StatePlanned {
		return
	}
	s.on[at] = append(s.on[at], b.called(r.Label))
}

// called is the later label of a cable of the earlier plant.
func (b *board) called(label string) string {
	if now := b.latter(label); now != "" {
		return now
	}
	return label
}

// carryOut does what the touches say.
func (s *seat) carryOut(touches []diffreport.Touch) {
	for _, t := range touches {
		at := place{t.Port, t.Front}
		switch i := slices.Index(s.on[at], t.Cable); {
		case t.On:
			s.on[at] = append(s.on[at], t.Cable)
		case i >= 0:
			s.on[at] = slices.Delete(s.on[at], i, i+1)
		}
	}
}

// number writes a port's number with as many digits as the highest has.
func (s *seat) number(n int) string {
	return fmt.Sprintf("%0*d", len(fmt.Sprint(s.ports)), n)
}
