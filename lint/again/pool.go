package again

import (
	"slices"

	"homerun/schema"
)

// A pool is the pieces of the files that a step changes, until each of them is
// found again.
type pool struct {
	all      []*piece
	taken    []bool
	byRecord chains[*schema.Record]
	// byTitle are those that were not found by their records, nil until it is asked for.
	byTitle *chains[title]
}

// A title is what a record of another text may still be known by.
type title struct {
	kind  *schema.Kind
	label string
}

// chains are lists of places by a key, each in its order, without room of their own.
type chains[K comparable] struct {
	first map[K]int
	next  []int
}

// end is the place behind the last one of a list.
const end = -1

func chained[K comparable](n int, key func(i int) (K, bool)) chains[K] {
	c := chains[K]{first: make(map[K]int, n), next: make([]int, n)}
	for i := n - 1; i >= 0; i-- {
		k, has := key(i)
		if !has {
			continue
		}
		c.next[i] = end
		if after, known := c.first[k]; known {
			c.next[i] = after
		}
		c.first[k] = i
	}
	return c
}

func newPool(all []*piece) *pool {
	return &pool{all: all, taken: make([]bool, len(all)), byRecord: chained(len(all), func(i int) (*schema.Record, bool) { return all[i].now.record, true })}
}

// same takes the piece with this very record, the one in the same file first.
func (o *pool) same(to place) *piece { return take(o, &o.byRecord, to.record, to) }

// namesake takes a piece of the same kind and label, once all were taken that are
// found by their records.
func (o *pool) namesake(to place) *piece {
	if o.byTitle == nil {
		c := chained(len(o.all), func(i int) (title, bool) { return titleOf(o.all[i].now.record), !o.taken[i] })
		o.byTitle = &c
	}
	return take(o, o.byTitle, titleOf(to.record), to)
}

func titleOf(r *schema.Record) title { return title{r.Kind, r.Label} }

func take[K comparable](o *pool, by *chains[K], key K, to place) *piece {
	first, known := by.first[key]
	if !known {
		return nil
	}
	found := end
	for i := first; i != end; i = by.next[i] {
		if o.taken[i] {
			continue
		}
		if o.all[i].now.path == to.path {
			found = i
			break
		}
		if found == end {
			found = i
		}
	}
	if found == end {
		return nil
	}
	o.taken[found] = true
	return o.all[found]
}

// left are the pieces that nobody took.
func (o *pool) left() []*piece {
	var left []*piece
	for i, p := range o.all {
		if !o.taken[i] {
			left = append(left, p)
		}
	}
	return left
}

// compare says whether two records, the runs of a bundle left out, state different
// things, and whether that is more than a note or a former label. What could not
// be read is taken for different.
func compare(was, is *schema.Record) (own, loud bool) {
	switch {
	case was == is:
		return false, false
	case was.Kind != is.Kind || was.Label != is.Label || was.Damaged || is.Damaged || anyBad(was) || anyBad(is):
		return true, true
	}
	if slices.EqualFunc(was.Values, is.Values, sameValue) && sameInner(was, is) {
		return false, false
	}
	return true, !slices.EqualFunc(spoken(was), spoken(is), sameValue) || !sameInner(was, is)
}

// sameLay says whether a cable, or a bundle of cables, lies the same way, and is of
// the same type and in the same state of life.
func sameLay(was, is *schema.Record) bool {
	if was == is {
		return true
	}
	if was.Damaged != is.Damaged {
		return false
	}
	for _, f := range layFields() {
		v, w := was.Own(f), is.Own(f)
		if (v == nil) != (w == nil) || v != nil && !v.Same(w) {
			return false
		}
	}
	return true
}

// layFields are what a run states beside its ends and its length.
func layFields() [3]string {
	return [...]string{schema.RunCable.Name, schema.RunRoute.Name, schema.RunState.Name}
}

func sameValue(v, w schema.Value) bool { return v.Field == w.Field && v.Same(&w) }

func sameInner(was, is *schema.Record) bool {
	noRun := func(r *schema.Record) bool { return r.Kind.Name == schema.KindRun }
	a, b := slices.Clone(was.Inner), slices.Clone(is.Inner)
	return slices.EqualFunc(slices.DeleteFunc(a, noRun), slices.DeleteFunc(b, noRun), schema.SameRecord)
}

func anyBad(r *schema.Record) bool {
	return slices.ContainsFunc(r.Values, func(v schema.Value) bool { return v.Bad }) ||
		slices.ContainsFunc(r.Inner, func(in *schema.Record) bool { return in.Kind.Name != schema.KindRun && anyBad(in) })
}

// spoken are the values that a rule about a state reads.
func spoken(r *schema.Record) []schema.Value {
	return slices.DeleteFunc(slices.Clone(r.Values), func(v schema.Value) bool {
		return v.Field.Name == "note" || v.Field.Name == schema.RunFormer.Name
	})
}
