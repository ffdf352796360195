package again

import (
	"slices"

	"homerun/schema"
	"homerun/schema/plant"
)

// layOut builds a plant to judge pathways by: the pathways with what they name, and of
// the cables in them the first of each sort, of which the piles tell how many there
// are. Of cables it holds only what they are and where they lie.
func (s *Standing) layOut(v view, ways map[*piece]bool, in []*piece) *plant.Plant {
	b := &barer{wanted: s.bundled(v, in), is: make(map[*schema.Record]*schema.Record)}
	files := s.filed(v, in, func(r *schema.Record) *schema.Record {
		if r.Kind.Name == schema.KindRun || r.Kind.Name == schema.KindBundle {
			return b.bare(r, nil)
		}
		return r
	})
	if len(files) == 0 {
		return nil
	}
	built := s.build(files, laidOnly, nil)
	runs := make(map[*schema.Record]*plant.Run, len(built.Runs))
	for _, r := range built.Runs {
		runs[r.Record()] = r
	}
	judged := make(map[*schema.Record]bool, len(ways))
	for way := range ways {
		judged[s.in(v, way).record] = true
	}
	for _, w := range built.Pathways {
		w.Runs, w.Loads = nil, nil
		if !judged[w.Record()] {
			continue
		}
		for _, at := range s.piles(v, w.Label) {
			w.Load(runs[b.is[s.in(v, at.first).record]], at.count)
		}
	}
	return built
}

// A barer makes runs and bundles bare.
type barer struct {
	// wanted are the runs that stay in their bundles, is what each record is made.
	wanted map[*schema.Record]bool
	is     map[*schema.Record]*schema.Record
}

// bare is a run or bundle without what only its ends and its length matter to, a
// bundle with those of its runs that are wanted.
func (b *barer) bare(r, parent *schema.Record) *schema.Record {
	now := *r
	b.is[r] = &now
	now.Parent, now.Inner, now.Values = parent, nil, nil
	fields := layFields()
	for i := range r.Values {
		if slices.Contains(fields[:], r.Values[i].Field.Name) {
			now.Values = append(now.Values, r.Values[i])
		}
	}
	for _, in := range runsIn(r) {
		if b.wanted[in] {
			now.Inner = append(now.Inner, b.bare(in, &now))
		}
	}
	return &now
}

// lays are the pieces that pathways are judged by, in the state at hand: what they
// name, and the first of each sort of cable in them with what it names beside its
// ends.
func (a *area) lays(in *group, ways, stirs map[*piece]bool, views ...view) {
	var mark func(p *piece)
	mark = func(p *piece) {
		if !in.add(p) {
			return
		}
		if p.top != nil {
			mark(p.top)
		}
		if p.now.record == nil {
			return // gone: what it named was taken while it stood
		}
		cable := isCable(p.now.record.Kind.Name)
		for _, at := range p.refs {
			if cable && at.ports() {
				continue
			}
			for _, q := range at.bearers {
				mark(q)
			}
		}
	}
	for w := range ways {
		mark(w)
		for _, v := range views {
			r := a.Standing.in(v, w).record
			if r == nil {
				continue
			}
			for _, at := range a.piles(v, r.Label) {
				mark(at.first)
			}
		}
	}
	for _, list := range [][]*piece{a.heads, a.policies} {
		for _, p := range list {
			mark(p)
		}
	}
	for _, w := range a.wakers {
		if p := w.still(stirs); w.within && p != nil {
			mark(p)
		}
	}
}
