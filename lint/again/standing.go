package again

import (
	"slices"

	"homerun/lint"
	"homerun/schema"
)

// Options say what a standing is of, and what it is judged by.
type Options struct {
	// Dir is the plant's folder.
	Dir string
	// Rules are those to judge by, those about a change left out; Known are the
	// names of all rules there are.
	Rules []*lint.Rule
	Known []string
	// Head stands in the place of the plant's own record where it is set: the
	// records are then judged by the standard and codes that it states.
	Head *schema.Record
}

// A Standing is the records of a plant as they stand, with what was found in them.
type Standing struct {
	options       Options
	along, within []*lint.Rule
	// files are the files as they are, old those that the last step changed as they were.
	files map[string]*standingFile
	old   map[string]*schema.File
	// names are the labels that anything bears, names or is about, nobody is any other.
	names  map[string]*name
	nobody name
	// kin are the labels that may be taken for each other.
	kin kin
	// twice counts the labels that have several bearers.
	twice int
	// lying are the runs in a pathway, shifts what the last step changed of that.
	lying  map[string]map[sort][]*piece
	shifts []shift
	// piled is what piles told of the state at hand.
	piled map[pileKey][]pile
	// heads are the plant records, policies and waivers the owner's decisions.
	heads, policies, waivers []*piece
	// astray are the tests of which the run can not be found.
	astray map[*piece]bool
	// wakers are the records that a rule waits for.
	wakers []*waker
	pieces int
	// step counts what changed the records, round what was judged.
	step, round int
	// mark is the state at hand, nil before the first step.
	mark *Mark
	// found are the findings by rule and record, before any waiver.
	found map[spot][]lint.Finding
	outcome
	// paths are the files by the keys of their names, likePaths counts the keys
	// that several share.
	paths     map[string]int
	likePaths int
}

// standingFile is a file with the pieces that stand in it, in their order.
type standingFile struct {
	file   *schema.File
	pieces []*piece
}

// A waker is what a rule waits for, and the pieces that are it.
type waker struct {
	is     func(*schema.Record) bool
	pieces []*piece
	// within is set where the rule goes by what lies in a pathway.
	within bool
}

// New returns a standing without any records.
func New(o Options) *Standing {
	s := &Standing{
		options: o, files: make(map[string]*standingFile), names: make(map[string]*name),
		kin: newKin(), lying: make(map[string]map[sort][]*piece), piled: make(map[pileKey][]pile), paths: make(map[string]int), astray: make(map[*piece]bool), found: make(map[spot][]lint.Finding),
	}
	for _, r := range o.Rules {
		switch {
		case r.Change:
			continue
		case r.Reach == lint.Within:
			s.within = append(s.within, r)
		case r.Check != nil:
			s.along = append(s.along, r)
		}
		for _, is := range r.Wakes {
			s.wakers = append(s.wakers, &waker{is: is, within: r.Reach == lint.Within})
		}
	}
	return s
}

// reserve makes the indices of an empty standing as large as the files need.
func (s *Standing) reserve(changes []Change) {
	n := 0
	for _, c := range changes {
		if c.File == nil {
			continue
		}
		for i := range c.File.Entries {
			n += 1 + len(runsIn(c.File.Entries[i].Record))
		}
	}
	s.names, s.kin.by = make(map[string]*name, n), make(map[uint64]relatives, n)
}

// Problems is how many mistakes of the records keep parts of them from being read.
func (s *Standing) Problems() int { return s.problems }

// Waivers are the waivers in the order of the records.
func (s *Standing) Waivers() []schema.Entry {
	slices.SortFunc(s.waivers, s.order(after))
	all := make([]schema.Entry, len(s.waivers))
	for i, p := range s.waivers {
		all[i] = s.entry(after, p)
	}
	return all
}

// Any says whether there are any files.
func (s *Standing) Any() bool { return len(s.files) > 0 }

// File is the file at a path, nil without one.
func (s *Standing) File(path string) *schema.File {
	if f := s.files[path]; f != nil {
		return f.file
	}
	return nil
}

// SetDir says that the plant's folder is another from the next step on.
func (s *Standing) SetDir(dir string) { s.options.Dir = dir }

// Files are the paths of the records, sorted.
func (s *Standing) Files() []string {
	paths := make([]string, 0, len(s.files))
	for path := range s.files {
		paths = append(paths, path)
	}
	slices.Sort(paths)
	return paths
}

// lies says whether a rule goes by what lies in a pathway.
func (s *Standing) lies(rule string) bool {
	return slices.ContainsFunc(s.within, func(r *lint.Rule) bool { return r.Name == rule })
}

// enter adds a piece to the indices, leave takes it out.
func (s *Standing) enter(p *piece) {
	r := p.now.record
	s.pieces++
	p.refs = s.refsOf(r)
	for _, at := range p.refs {
		at.namers = append(at.namers, p)
	}
	p.enterPorts()
	if list := s.ownerLists(r.Kind.Name); list != nil {
		*list = append(*list, p)
	}
	for _, w := range s.wakers {
		if w.is(r) {
			w.pieces = append(w.pieces, p)
		}
	}
	if r.Label != "" && r.Kind.Name != schema.KindPlant {
		s.bear(r.Label, p)
	}
}

func (s *Standing) leave(p *piece) {
	r := p.now.record
	s.pieces--
	p.leavePorts()
	for _, at := range p.refs {
		at.namers = without(at.namers, p)
		s.settleName(at.name)
	}
	if list := s.ownerLists(r.Kind.Name); list != nil {
		*list = without(*list, p)
	}
	for _, w := range s.wakers {
		if w.is(r) {
			w.pieces = without(w.pieces, p)
		}
	}
	delete(s.astray, p)
	if p.bears != nil {
		s.unbear(p)
	}
}

// ownerLists is the list in which records of a kind are kept beside the index.
func (s *Standing) ownerLists(kind string) *[]*piece {
	switch kind {
	case schema.KindPlant:
		return &s.heads
	case schema.KindPolicy:
		return &s.policies
	case schema.KindWaiver:
		return &s.waivers
	}
	return nil
}

func (s *Standing) bear(label string, p *piece) {
	n := s.nameOf(label)
	p.bears, n.bearers = n, append(n.bearers, p)
	switch len(n.bearers) {
	case 1:
		s.kin.enter(label, s.alike(label))
	case 2:
		s.twice++
	}
}

func (s *Standing) unbear(p *piece) {
	n := p.bears
	p.bears, n.bearers = nil, without(n.bearers, p)
	switch len(n.bearers) {
	case 0:
		s.kin.leave(n.label, s.alike(n.label))
		s.settleName(n)
	case 1:
		s.twice--
	}
}

// alike lists the keys of a label by all rules that fold labels.
func (s *Standing) alike(label string) []string {
	var keys []string
	for _, r := range s.along {
		if r.Alike != nil {
			keys = append(keys, r.Alike(label)...)
		}
	}
	return keys
}

// without takes one item out of a list of which the order does not matter.
func without[T comparable](list []T, it T) []T {
	i := slices.Index(list, it)
	if i < 0 {
		return list
	}
	last := len(list) - 1
	list[i] = list[last]
	var none T
	list[last] = none
	return list[:last]
}

// enterPath counts a file by the keys of its name, leavePath no longer.
func (s *Standing) enterPath(path string) {
	for _, key := range s.alike(path) {
		if s.paths[key]++; s.paths[key] == 2 {
			s.likePaths++
		}
	}
}

func (s *Standing) leavePath(path string) {
	for _, key := range s.alike(path) {
		switch s.paths[key]--; s.paths[key] {
		case 1:
			s.likePaths--
		case 0:
			delete(s.paths, key)
		}
	}
}
