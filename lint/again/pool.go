package again

import (
	"slices"

	"homerun/schema"
)

// A pool is the pieces of the files that a step changes, until each of them is
// found again.
type pool struct {
	all      []*piece
	taken    map[*piece]bool
	byRecord map[*schema.Record][]*piece
	byLabel  map[string][]*piece
}

func newPool() *pool {
	return &pool{taken: make(map[*piece]bool), byRecord: make(map[*schema.Record][]*piece), byLabel: make(map[string][]*piece)}
}

func (o *pool) add(p *piece) {
	o.all = append(o.all, p)
	r := p.now.record
	o.byRecord[r] = append(o.byRecord[r], p)
	key := r.Kind.Name + "\x00" + r.Label
	o.byLabel[key] = append(o.byLabel[key], p)
}

// same takes the piece with this very record, the one in the same file first.
func (o *pool) same(to place) *piece { return o.take(o.byRecord[to.record], to) }

// namesake takes a piece of the same kind and label.
func (o *pool) namesake(to place) *piece {
	return o.take(o.byLabel[to.record.Kind.Name+"\x00"+to.record.Label], to)
}

func (o *pool) take(list []*piece, to place) *piece {
	free := func(p *piece) bool { return !o.taken[p] }
	i := slices.IndexFunc(list, func(p *piece) bool { return free(p) && p.now.path == to.path })
	if i < 0 {
		i = slices.IndexFunc(list, free)
	}
	if i < 0 {
		return nil
	}
	o.taken[list[i]] = true
	return list[i]
}

// left are the pieces that nobody took.
func (o *pool) left() []*piece {
	return slices.DeleteFunc(o.all, func(p *piece) bool { return o.taken[p] })
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
