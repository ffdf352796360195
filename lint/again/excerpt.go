package again

import (
	"maps"
	"slices"

	"homerun/schema"
	"homerun/schema/plant"
)

// excerpt builds a plant of some pieces as a view has them. Files that the step
// changes are there with their mistakes.
func (s *Standing) excerpt(v view, in map[*piece]bool, p *plan, form form) *plant.Plant {
	files := make(map[string]*schema.File)
	file := func(path string) *schema.File {
		f := files[path]
		if f == nil {
			f = &schema.File{Path: path}
			files[path] = f
		}
		return f
	}
	for _, at := range s.sorted(v, in) {
		e := s.in(v, at).entry()
		e.Record = form.of(s, v, at)
		f := file(e.Path)
		f.Entries = append(f.Entries, e)
	}
	for _, c := range p.changes {
		if f := p.fileIn(v, c); f != nil && len(f.Problems) > 0 {
			file(c.Path).Problems = f.Problems
		}
	}
	if len(files) == 0 {
		return nil
	}
	return s.build(slices.Collect(maps.Values(files)), form)
}

// fileIn is a changed file as a view has it.
func (p *plan) fileIn(v view, c Change) *schema.File {
	if v == before {
		return p.old[c.Path]
	}
	return c.File
}

// sorted are the pieces at the top of files that are there in a view, in order.
func (s *Standing) sorted(v view, in map[*piece]bool) []*piece {
	list := make([]*piece, 0, len(in))
	for at := range in {
		if at.top == nil && s.in(v, at).record != nil {
			list = append(list, at)
		}
	}
	slices.SortFunc(list, s.order(v))
	return list
}

// entire builds the plant of all files as a view has them.
func (s *Standing) entire(v view, p *plan, form form) *plant.Plant {
	files := make([]*schema.File, 0, len(s.files)+len(p.changes))
	for path, f := range s.files {
		if _, changed := p.old[path]; !changed {
			files = append(files, f.file)
		}
	}
	for _, c := range p.changes {
		if f := p.fileIn(v, c); f != nil {
			files = append(files, f)
		}
	}
	if len(files) == 0 {
		return nil
	}
	return s.build(files, form)
}

func (s *Standing) build(files []*schema.File, form form) *plant.Plant {
	slices.SortFunc(files, func(a, b *schema.File) int { return compareText(a.Path, b.Path) })
	made := plant.Build
	if form == laidOnly {
		made = plant.Lay
	}
	p := made(s.options.Dir, files)
	if form == asStated || s.options.Head == nil || p.Entry.Record == nil || p.Entry.Record == s.options.Head {
		return p
	}
	for i, f := range files {
		own := *f
		own.Entries = slices.Clone(f.Entries)
		for j := range own.Entries {
			if own.Entries[j].Record == p.Entry.Record {
				own.Entries[j].Record = s.options.Head
			}
		}
		files[i] = &own
	}
	return made(s.options.Dir, files)
}

// A form is how records stand in an excerpt.
type form uint8

const (
	// asStated is as they are.
	asStated form = iota
	// judged is with the plant record that they are judged by.
	judged
	// laidOnly is as judged, of cables only what they are and where they lie.
	laidOnly
)

// of is the record of a piece in a form.
func (f form) of(s *Standing, v view, p *piece) *schema.Record {
	r := s.in(v, p).record
	if f != laidOnly || r.Kind.Name != schema.KindRun && r.Kind.Name != schema.KindBundle {
		return r
	}
	if p.bareOf != r {
		p.bare, p.bareOf = bare(r, nil), r
	}
	return p.bare
}

// bare is a run or bundle without what only its ends and its length matter to.
func bare(r, parent *schema.Record) *schema.Record {
	now := *r
	now.Parent, now.Inner, now.Values = parent, nil, nil
	fields := layFields()
	for i := range r.Values {
		if slices.Contains(fields[:], r.Values[i].Field.Name) {
			now.Values = append(now.Values, r.Values[i])
		}
	}
	for _, in := range runsIn(r) {
		now.Inner = append(now.Inner, bare(in, &now))
	}
	return &now
}

// laid are the pieces that the pathways of an area are judged by in the state at
// hand: all cables in them, and what those name beside their ends.
func (a *area) laid() map[*piece]bool {
	in := make(map[*piece]bool)
	var mark func(p *piece)
	mark = func(p *piece) {
		if in[p] {
			return
		}
		in[p] = true
		if p.top != nil {
			mark(p.top)
		}
		for _, run := range p.inner {
			mark(run)
		}
		cable := isCable(p.now.record.Kind.Name)
		for _, at := range p.refs {
			if cable && at.ports() {
				continue
			}
			for _, q := range a.bearers[at.label] {
				mark(q)
			}
		}
	}
	for w := range a.ways {
		if w.now.record == nil {
			continue
		}
		mark(w)
		for _, q := range a.namers[w.now.record.Label] {
			mark(q)
		}
	}
	for _, list := range [][]*piece{a.heads, a.policies} {
		for _, p := range list {
			mark(p)
		}
	}
	for _, w := range a.wakers {
		for _, p := range w.pieces {
			if p.now.record.Kind.Name == schema.KindPathway {
				mark(p)
				break
			}
		}
	}
	return in
}
