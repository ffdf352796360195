package again

import (
	"slices"

	"homerun/schema"
	"homerun/schema/plant"
)

// excerpt builds a plant of some pieces as a view has them. Files that the step
// changes are there with their mistakes.
func (s *Standing) excerpt(v view, in []*piece, p *plan, form form) *plant.Plant {
	files := s.filed(v, in, func(r *schema.Record) *schema.Record { return r })
	for _, c := range p.changes {
		f := p.fileIn(v, c)
		if f == nil || len(f.Problems) == 0 {
			continue
		}
		n := slices.IndexFunc(files, func(f *schema.File) bool { return f.Path == c.Path })
		if n < 0 {
			n = len(files)
			files = append(files, &schema.File{Path: c.Path})
		}
		files[n].Problems = f.Problems
	}
	if len(files) == 0 && !s.anyIn(v, p) {
		return nil
	}
	inner := s.bundled(v, in)
	return s.build(files, form, func(run *schema.Record) bool { return inner[run] })
}

// filed are the files of some pieces as a view has them, each with those records only,
// as they are to stand there.
func (s *Standing) filed(v view, in []*piece, as func(*schema.Record) *schema.Record) []*schema.File {
	var files []*schema.File
	places := s.sorted(v, in)
	for len(places) > 0 {
		path := places[0].path
		n := slices.IndexFunc(places, func(at place) bool { return at.path != path })
		if n < 0 {
			n = len(places)
		}
		stood, f := s.file(v, path), &schema.File{Path: path, Entries: make([]schema.Entry, n)}
		for i, at := range places[:n] {
			f.Entries[i] = schema.Entry{Record: as(at.record), Path: path, Line: stood.Entries[at.at].Line}
		}
		files, places = append(files, f), places[n:]
	}
	return files
}

// bundled are those of some pieces that stand in a bundle, as a view has them.
func (s *Standing) bundled(v view, in []*piece) map[*schema.Record]bool {
	records := make(map[*schema.Record]bool)
	for _, at := range in {
		if at.top != nil {
			records[s.in(v, at).record] = true
		}
	}
	return records
}

// anyIn says whether a view has any files, be it that none of them is looked at.
func (s *Standing) anyIn(v view, p *plan) bool {
	unchanged := func(path string) bool { _, changed := p.old[path]; return !changed }
	for path := range s.files {
		if v == after || unchanged(path) {
			return true
		}
	}
	return slices.ContainsFunc(p.changes, func(c Change) bool { return p.fileIn(v, c) != nil })
}

// fileIn is a changed file as a view has it.
func (p *plan) fileIn(v view, c Change) *schema.File {
	if v == before {
		return p.old[c.Path]
	}
	return c.File
}

// sorted are where those pieces stand that are there in a view, at the top of files, in
// their order.
func (s *Standing) sorted(v view, in []*piece) []place {
	list := make([]place, 0, len(in))
	for _, p := range in {
		if at := s.in(v, p); p.top == nil && at.record != nil {
			list = append(list, at)
		}
	}
	slices.SortFunc(list, place.compare)
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
	return s.build(files, form, nil)
}

func (s *Standing) build(files []*schema.File, form form, keep func(*schema.Record) bool) *plant.Plant {
	slices.SortFunc(files, func(a, b *schema.File) int { return compareText(a.Path, b.Path) })
	made := func(dir string, files []*schema.File) *plant.Plant { return plant.Excerpt(dir, files, keep) }
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
	// laidOnly is as judged, without links and channels.
	laidOnly
)
