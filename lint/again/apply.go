package again

import "homerun/schema"

// apply makes the plan the standing's own state. What was stays with the pieces
// until the next step.
func (s *Standing) apply(p *plan) {
	s.step++
	s.shifts = s.shifts[:0]
	clear(s.piled)
	s.old = p.old
	for _, g := range p.gone {
		s.remove(g)
		if g.top == nil {
			for _, in := range g.inner {
				s.remove(in)
			}
		}
	}
	for i, c := range p.changes {
		_, stood := s.files[c.Path]
		switch {
		case c.File == nil && stood:
			s.leavePath(c.Path)
			delete(s.files, c.Path)
			continue
		case c.File == nil:
			continue
		case !stood:
			s.enterPath(c.Path)
		}
		s.files[c.Path] = s.settleFile(s.files[c.Path], c.File, p.starts[i], p.lists[i])
	}
	for _, at := range p.stirs {
		s.berth(at.piece)
	}
}

// settleFile puts the pieces of a list in their places in a file; what stands before
// and behind them stays where it was.
func (s *Standing) settleFile(was *standingFile, file *schema.File, start int, list []settled) *standingFile {
	f := &standingFile{file: file, pieces: make([]*piece, len(file.Entries))}
	if was != nil {
		copy(f.pieces, was.pieces)
	}
	for i := range list {
		f.pieces[start+i] = list[i].piece
		s.settle(&list[i])
	}
	return f
}

func (s *Standing) remove(p *piece) {
	s.leave(p)
	p.was, p.now, p.step = p.now, place{}, s.step
}

// settle puts a piece in its new place, and in the indices what it states now.
func (s *Standing) settle(it *settled) {
	if !it.same && len(it.inner)+len(it.piece.inner) > 0 {
		inner := make([]*piece, len(it.inner))
		for i := range it.inner {
			inner[i] = it.inner[i].piece
			s.settle(&it.inner[i])
		}
		it.piece.inner = inner
	}
	p := it.piece
	p.was, p.step = p.now, s.step
	if it.kept && p.now.record != nil {
		p.now = it.to
		return
	}
	if p.now.record != nil {
		s.leave(p)
	}
	p.now = it.to
	s.enter(p)
}

// findAstray looks for tests of which the run can not be found, among those that stir
// and those of a run that does. Such a test may be of any run: it says whether there
// is another one than before, or one less.
func (s *Standing) findAstray(p *plan) (differs bool) {
	for _, at := range p.stirs {
		for _, r := range []*schema.Record{at.was.record, at.now.record} {
			if r == nil {
				continue
			}
			if r.Kind.Name == schema.KindTest && s.noteAstray(at.piece) {
				differs = true
			}
			if r.Label == "" {
				continue
			}
			for _, q := range s.of(r.Label).namers {
				if q.now.record.Kind.Name == schema.KindTest && s.noteAstray(q) {
					differs = true
				}
			}
		}
	}
	return differs
}

func (s *Standing) noteAstray(t *piece) (differs bool) {
	was := s.astray[t]
	delete(s.astray, t)
	if t.now.record == nil {
		return was
	}
	label, stated := schema.TestRun.In(t.now.record)
	if first := s.first(label); !stated || first == nil || first.now.record.Kind.Name != schema.KindRun {
		s.astray[t] = true
	}
	return was != s.astray[t]
}

// first is the piece that references by a label lead to.
func (s *Standing) first(label string) *piece {
	var first *piece
	for _, p := range s.of(label).bearers {
		if first == nil || s.order(after)(p, first) < 0 {
			first = p
		}
	}
	return first
}
