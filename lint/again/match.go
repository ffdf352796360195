package again

import (
	"slices"

	"homerun/schema"
)

// A Change is what a file holds from now on; nothing where File is nil.
type Change struct {
	Path string
	File *schema.File
}

// A stir is a piece that a step changes: it states something else, comes, goes, or
// stands in another place of the records' order.
type stir struct {
	*piece
	// before and after are what it states on either side, nil where it is not there.
	before, after *schema.Record
	// loud is set where what it states differs in more than a note or a former
	// label: what names it may be judged otherwise.
	loud bool
	// laid is set where it is a cable that lies elsewhere, or is another one; named
	// where it is only called otherwise, or may stand elsewhere in the order of records.
	laid, named bool
	// moved is set where nothing differs but its place in the order of records, turned
	// where the runs of a bundle changed places in it.
	moved, turned bool
}

// A plan is what a step will do.
type plan struct {
	changes []Change
	// lists are the pieces of each changed file with their new places, those left out
	// that stand at the start or the end of the file where they stood before; starts
	// are how many those at the start are.
	lists  [][]settled
	starts []int
	// gone are the pieces that will not be there any more.
	gone  []*piece
	stirs []stir
	// old are the files as they were.
	old map[string]*schema.File
}

// settled is a piece with its new place.
type settled struct {
	*piece
	to    place
	inner []settled
	// kept is set where the piece was there before and states the same, moved where
	// it stands elsewhere in the order of records, same where a bundle has the same
	// runs that it had.
	kept, moved, same bool
}

// match finds which pieces of the files stay, and makes a plan of the step.
func (s *Standing) match(changes []Change) *plan {
	p := &plan{changes: changes, lists: make([][]settled, len(changes)), starts: make([]int, len(changes)), old: make(map[string]*schema.File, len(changes))}
	var loose []*piece
	for i, c := range changes {
		p.old[c.Path] = nil
		var stood []*piece
		if f := s.files[c.Path]; f != nil {
			p.old[c.Path], stood = f.file, f.pieces
		}
		var left []*piece
		p.starts[i], p.lists[i], left = stay(stood, c.File)
		loose = append(loose, left...)
	}
	pool := newPool(loose)
	for i := range p.lists {
		for n := range p.lists[i] {
			if it := &p.lists[i][n]; it.piece == nil {
				it.piece = pool.same(it.to)
			}
		}
	}
	for i := range p.lists {
		for n := range p.lists[i] {
			if it := &p.lists[i][n]; it.piece == nil {
				it.piece = pool.namesake(it.to)
			}
		}
	}
	p.gone = pool.left()
	for i := range p.lists {
		p.compare(p.lists[i])
	}
	for _, g := range p.gone {
		p.stir(stir{piece: g, before: g.now.record, loud: true, laid: true})
		for _, in := range g.inner {
			p.stir(stir{piece: in, before: in.now.record, loud: true, laid: true})
		}
	}
	p.heirs()
	return p
}

// heirs marks what comes under the label of what is gone, as a run that leaves its
// bundle does: it may stand elsewhere in the order of records.
func (p *plan) heirs() {
	gone := make(map[string]bool)
	for _, at := range p.stirs {
		if at.after == nil {
			gone[at.before.Label] = true
		}
	}
	for i := range p.stirs {
		if at := &p.stirs[i]; at.before == nil && gone[at.after.Label] {
			at.named = true
		}
	}
}

// stay finds again what stands unchanged at the start and at the end of a file, which
// is most of it: start is how many pieces stay at the start, list what does not stay
// where it stood, with its new places, left the pieces that are to be found again.
func stay(stood []*piece, f *schema.File) (start int, list []settled, left []*piece) {
	if f == nil {
		return 0, nil, stood
	}
	n, m := len(stood), len(f.Entries)
	for start < min(n, m) && stood[start].now.record == f.Entries[start].Record {
		start++
	}
	for n > start && m > start && stood[n-1].now.record == f.Entries[m-1].Record {
		n, m = n-1, m-1
	}
	end := m
	if len(stood) != len(f.Entries) {
		end = len(f.Entries) // what stands at the end stands elsewhere among the records
	}
	list = make([]settled, end-start)
	for i := range list {
		e := &f.Entries[start+i]
		list[i].to = place{record: e.Record, path: e.Path, at: start + i}
		if start+i >= m {
			list[i].piece = stood[n+start+i-m]
		}
	}
	return start, list, stood[start:n]
}

func (p *plan) stir(at stir) { p.stirs = append(p.stirs, at) }

// compare finds what stirs in one file or one bundle: a piece that comes before
// one that stood before it has moved.
func (p *plan) compare(list []settled) {
	last := -1
	for i := range list {
		it := &list[i]
		if it.piece == nil {
			it.piece = &piece{}
			p.fresh(it)
			continue
		}
		it.moved = it.now.path != it.to.path || it.now.at < last
		if !it.moved {
			last = it.now.at
		}
		p.known(it)
	}
}

// fresh is a piece that was not there before, with all that is in it.
func (p *plan) fresh(it *settled) {
	p.stir(stir{piece: it.piece, after: it.to.record, loud: true, laid: true})
	for i, in := range runsIn(it.to.record) {
		inner := settled{piece: &piece{top: it.piece}, to: it.to.inside(in, i)}
		p.stir(stir{piece: inner.piece, after: in, loud: true, laid: true})
		it.inner = append(it.inner, inner)
	}
}

// known compares a piece with what it was.
func (p *plan) known(it *settled) {
	was, is := it.now.record, it.to.record
	own, loud := compare(was, is)
	laid := own && !sameLay(was, is)
	inner := p.runs(it)
	if own || it.moved || inner.stirred {
		p.stir(stir{
			piece: it.piece, before: was, after: is, loud: loud, laid: laid, named: it.moved || was.Label != is.Label,
			moved: !own && !inner.differs && !inner.turned, turned: inner.turned,
		})
	}
	if loud {
		for _, in := range it.inner {
			p.stir(stir{piece: in.piece, before: in.now.record, after: in.to.record, loud: true, laid: laid}) // it takes what it does not state from the bundle
		}
	}
	it.kept = !own
}

// innerStir says whether any run of a bundle stirs, whether in more than its place,
// and whether it changed places with another one of the bundle.
type innerStir struct{ stirred, differs, turned bool }

// carry takes the runs of a bundle along that moves and states what it stated: every
// run is the same one in the same order.
func (p *plan) carry(it *settled) {
	list := runsIn(it.to.record)
	it.inner = make([]settled, len(list))
	for i, in := range it.piece.inner {
		r := list[i]
		it.inner[i] = settled{piece: in, to: it.to.inside(r, i), kept: true}
		p.stir(stir{piece: in, before: r, after: r, named: true, moved: true})
	}
}

// runs matches the runs of a bundle, and says what stirs there.
func (p *plan) runs(it *settled) (all innerStir) {
	if it.now.record == it.to.record {
		if it.same = !it.moved; it.moved {
			p.carry(it)
		}
		return innerStir{stirred: it.moved && len(it.inner) > 0}
	}
	left := pair(it)
	n := len(p.stirs)
	last := -1
	for i := range it.inner {
		in := &it.inner[i]
		if in.piece == nil {
			in.piece = &piece{top: it.piece}
			p.stir(stir{piece: in.piece, after: in.to.record, loud: true, laid: true})
			continue
		}
		stood := slices.Index(it.piece.inner, in.piece)
		own, loud := compare(in.now.record, in.to.record)
		all.turned = all.turned || stood < last
		if out := it.moved || stood < last; own || out {
			was, is := in.now.record, in.to.record
			p.stir(stir{piece: in.piece, before: was, after: is, loud: loud, laid: !sameLay(was, is), named: out || was.Label != is.Label, moved: !own})
		}
		last = max(last, stood)
		in.kept = !own
	}
	p.gone = append(p.gone, left...)
	all.differs = len(left) > 0 || slices.ContainsFunc(p.stirs[n:], func(at stir) bool { return !at.moved })
	all.stirred = len(p.stirs) > n || all.differs
	return all
}

// pair finds the runs of a bundle again, and returns those that are not there any more.
func pair(it *settled) (left []*piece) {
	list := runsIn(it.to.record)
	left = slices.Clone(it.piece.inner)
	take := func(is func(*piece) bool) *piece {
		i := slices.IndexFunc(left, is)
		if i < 0 {
			return nil
		}
		found := left[i]
		left = slices.Delete(left, i, i+1)
		return found
	}
	it.inner = make([]settled, len(list))
	for i, r := range list {
		found := take(func(q *piece) bool { return q.now.record == r })
		if found == nil {
			found = take(func(q *piece) bool { return q.now.record.Label == r.Label })
		}
		it.inner[i] = settled{piece: found, to: it.to.inside(r, i)}
	}
	return left
}

// runsIn are the runs of a bundle.
func runsIn(r *schema.Record) []*schema.Record {
	if r.Kind.Name != schema.KindBundle {
		return nil
	}
	return r.Blocks(schema.KindRun)
}
