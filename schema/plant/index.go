package plant

import (
	"hash/maphash"
	"slices"
	"sync"
)

// An index finds items by their label. Plants are built by the thousand for a single
// report, most of them small, so it takes one look for each label that is entered, and
// its table holds nothing that the garbage collector has to follow.
type index struct {
	seed maphash.Seed
	// items have different labels and are in the order of the records.
	items []Item
	// slots hold in the upper half of each number the upper half of a label's hash, in
	// the lower half the place of its item, counted from 1; 0 is free. Their number is
	// a power of two and more than that of the items.
	slots []uint64

	grouped sync.Once
	groups  []group
}

// A group is the labels of one kind in the order of the records.
type group struct {
	kind   string
	labels []string
}

const upperHalf = 1<<64 - 1<<32

// newIndex makes an index that holds up to so many items.
func newIndex(most int) *index {
	slots := 8
	for slots < most+most/2 {
		slots *= 2
	}
	return &index{seed: maphash.MakeSeed(), items: make([]Item, 0, most), slots: make([]uint64, slots)}
}

// find returns the item with a label, nil without one.
func (x *index) find(label string) Item {
	if x == nil {
		return nil
	}
	it, _ := x.look(label, maphash.String(x.seed, label))
	return it
}

// look returns the item with a label, or nil and the slot that is free for it.
func (x *index) look(label string, hash uint64) (it Item, free int) {
	mask := len(x.slots) - 1
	at := int(hash) & mask
	for ; x.slots[at] != 0; at = (at + 1) & mask {
		if (x.slots[at]^hash)&upperHalf != 0 {
			continue
		}
		if it = x.items[uint32(x.slots[at])-1]; it.Record().Label == label {
			return it, -1
		}
	}
	return nil, at
}

// enter adds an item under its label, unless another has it: that one is returned.
func (x *index) enter(label string, it Item) (first Item) {
	hash := maphash.String(x.seed, label)
	first, free := x.look(label, hash)
	if first != nil {
		return first
	}
	x.items = append(x.items, it)
	x.slots[free] = hash&upperHalf | uint64(len(x.items))
	return nil
}

// labels are those of one kind. They are put together when they are first asked for:
// most plants are built, judged and forgotten without it.
func (x *index) labels(kind string) []string {
	if x == nil {
		return nil
	}
	x.grouped.Do(x.group)
	for i := range x.groups {
		if x.groups[i].kind == kind {
			return x.groups[i].labels
		}
	}
	return nil
}

func (x *index) group() {
	kinds, counts := make([]string, 0, usualKinds), make([]int, 0, usualKinds)
	for _, it := range x.items {
		kind := it.Record().Kind.Name
		at := slices.Index(kinds, kind)
		if at < 0 {
			at = len(kinds)
			kinds, counts = append(kinds, kind), append(counts, 0)
		}
		counts[at]++
	}
	x.groups = make([]group, len(kinds))
	all := make([]string, len(x.items))
	for at, n := range counts {
		x.groups[at], all = group{kinds[at], all[:0:n]}, all[n:]
	}
	for _, it := range x.items {
		r := it.Record()
		g := &x.groups[slices.Index(kinds, r.Kind.Name)]
		g.labels = append(g.labels, r.Label)
	}
}

// usualKinds is more than there are kinds with a label of their own.
const usualKinds = 24
