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
	// laid is set where it is a cable that lies elsewhere, or another cable, or
	// elsewhere in the order of cables.
	laid bool
}

// A plan is what a step will do.
type plan struct {
	changes []Change
	// lists are the pieces of each changed file with their new places.
	lists [][]settled
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
	// it stands elsewhere in the order of records.
	kept, moved bool
}

// match finds which pieces of the files stay, and makes a plan of the step.
func (s *Standing) match(changes []Change) *plan {
	p := &plan{changes: changes, lists: make([][]settled, len(changes)), old: make(map[string]*schema.File, len(changes))}
	pool := newPool()
	for _, c := range changes {
		p.old[c.Path] = nil
		if f := s.files[c.Path]; f != nil {
			p.old[c.Path] = f.file
			for _, at := range f.pieces {
				pool.add(at)
			}
		}
	}
	for i, c := range changes {
		if c.File != nil {
			p.lists[i] = make([]settled, len(c.File.Entries))
			for n, e := range c.File.Entries {
				to := place{e.Record, e.Path, n, e.Line}
				p.lists[i][n] = settled{piece: pool.same(to), to: to}
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
		p.stir(stir{g, g.now.record, nil, true, true})
		for _, in := range g.inner {
			p.stir(stir{in, in.now.record, nil, true, true})
		}
	}
	return p
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
	p.stir(stir{it.piece, nil, it.to.record, true, true})
	for _, in := range runsIn(it.to.record) {
		inner := settled{piece: &piece{top: it.piece}, to: place{in, it.to.path, it.to.at, it.to.line}}
		p.stir(stir{inner.piece, nil, in, true, true})
		it.inner = append(it.inner, inner)
	}
}

// known compares a piece with what it was.
func (p *plan) known(it *settled) {
	was, is := it.now.record, it.to.record
	own, loud := differs(was, is)
	laid := it.moved || own && !sameLay(was, is)
	inner := p.runs(it)
	if own || it.moved || inner {
		p.stir(stir{it.piece, was, is, loud, laid})
	}
	if loud {
		for _, in := range it.inner {
			p.stir(stir{in.piece, in.now.record, in.to.record, true, laid}) // it takes what it does not state from the bundle
		}
	}
	it.kept = !own
}

// runs matches the runs of a bundle, and says whether any of them stirs.
func (p *plan) runs(it *settled) (stirred bool) {
	list := runsIn(it.to.record)
	if len(list) == 0 && len(it.piece.inner) == 0 {
		return false
	}
	left := slices.Clone(it.piece.inner)
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
		it.inner[i] = settled{piece: found, to: place{r, it.to.path, it.to.at, it.to.line}}
	}
	n := len(p.stirs)
	last := -1
	for i := range it.inner {
		in := &it.inner[i]
		if in.piece == nil {
			in.piece = &piece{top: it.piece}
			p.stir(stir{in.piece, nil, in.to.record, true, true})
			continue
		}
		stood := slices.Index(it.piece.inner, in.piece)
		own, loud := differs(in.now.record, in.to.record)
		if out := it.moved || stood < last; own || out {
			p.stir(stir{in.piece, in.now.record, in.to.record, loud, out || !sameLay(in.now.record, in.to.record)})
		}
		last = max(last, stood)
		in.kept = !own
	}
	p.gone = append(p.gone, left...)
	return len(p.stirs) > n || len(left) > 0
}

// runsIn are the runs of a bundle.
func runsIn(r *schema.Record) []*schema.Record {
	if r.Kind.Name != schema.KindBundle {
		return nil
	}
	return r.Blocks(schema.KindRun)
}
