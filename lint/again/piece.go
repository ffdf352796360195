package again

import (
	"cmp"
	"strings"

	"homerun/schema"
)

// A piece is one record of the standing: a block at the top of a file, or a run
// inside a bundle. It stays the same piece while its file, its place or what it
// states changes.
type piece struct {
	now, was place
	// step is the last step that changed it; was is as it stood before that.
	step int
	// signs are the groups that hold it in a round.
	signs sign
	round int
	// top is the bundle that a run stands in, inner the runs of a bundle.
	top   *piece
	inner []*piece
	// bears is the name of its label, nil without one, refs are the names that it names.
	bears *name
	refs  []ref
	// berths are where a run lies.
	berths []berth
}

// A place is a record and where it stands: in which file, as the how manieth of its
// records, and as the how manieth run of its bundle, which alone says where that
// stands. Its record is nil where the piece is not there.
type place struct {
	record *schema.Record
	path   string
	at     int
	nth    int
}

// inside is the place of a run in the bundle that stands here.
func (p place) inside(run *schema.Record, n int) place {
	p.record, p.nth = run, n
	return p
}

// A view chooses the state before or after the step at hand.
type view uint8

const (
	before view = iota
	after
)

// in is the piece as a view has it.
func (s *Standing) in(v view, p *piece) place {
	if v == before && p.step == s.step {
		return p.was
	}
	return p.now
}

// entry is a piece at the top of a file as a view has it, on the line where it stands
// there.
func (s *Standing) entry(v view, p *piece) schema.Entry {
	at := s.in(v, p)
	return schema.Entry{Record: at.record, Path: at.path, Line: s.file(v, at.path).Entries[at.at].Line}
}

// file is a file as a view has it.
func (s *Standing) file(v view, path string) *schema.File {
	if file, changed := s.old[path]; v == before && changed {
		return file
	}
	return s.files[path].file
}

// outer is the piece at the top of the file that holds a piece.
func (p *piece) outer() *piece {
	if p.top != nil {
		return p.top
	}
	return p
}

// order compares two pieces by where they stand in a view.
func (s *Standing) order(v view) func(a, b *piece) int {
	return func(a, b *piece) int {
		if a.outer() == b.outer() {
			return cmp.Compare(s.in(v, a).nth, s.in(v, b).nth)
		}
		return s.in(v, a.outer()).compare(s.in(v, b.outer()))
	}
}

// compare says which of two places at the top of files stands before the other.
func (p place) compare(q place) int {
	if by := strings.Compare(p.path, q.path); by != 0 {
		return by
	}
	return cmp.Compare(p.at, q.at)
}

// A ref is a name that a record names; with the ports where it names ports.
type ref struct {
	*name
	first, last int
}

// ports says whether the reference is to ports.
func (r ref) ports() bool { return r.first > 0 }

// meets says whether two references name a port in common.
func (r ref) meets(other ref) bool {
	return r.name == other.name && other.ports() && r.first <= other.last && other.first <= r.last
}

// refsOf lists what a record names, in the blocks inside it too, but for the runs
// of a bundle, which are pieces of their own.
func (s *Standing) refsOf(r *schema.Record) []ref {
	var all []ref
	for i := range r.Values {
		v := &r.Values[i]
		switch {
		case v.Bad:
		case v.Field.Type == schema.Reference:
			all = append(all, ref{name: s.nameOf(v.Text)})
		case v.Field.Type == schema.PortReference:
			all = append(all, ref{s.nameOf(v.Text), int(v.Number), int(v.Last)})
		case v.Field.Type == schema.References, v.Field == schema.WaiverRecords.Field:
			for _, label := range v.List {
				all = append(all, ref{name: s.nameOf(label)})
			}
		}
	}
	for _, in := range r.Inner {
		if in.Kind.Name == schema.KindRun {
			continue
		}
		if len(in.Kind.Refers) > 0 {
			all = append(all, ref{name: s.nameOf(in.Label)})
		}
		all = append(all, s.refsOf(in)...)
	}
	return all
}

// isCable says whether a kind is that of something with two ends.
func isCable(kind string) bool { return kind == schema.KindRun || kind == schema.KindCord }
