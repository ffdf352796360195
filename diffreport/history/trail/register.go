package trail

import (
	"cmp"
	"sort"

	"homerun/schema/vcs"
)

// register is what is remembered of a history: its commits with the files of
// records that they changed, and which tokens stand in which version of a file.
type register struct {
	paths  []string
	blobs  []version
	chains [][]int32
	steps  map[string]*step
	// spans are sorted. They say where in a chain of versions a token stands.
	spans []span
	// fresh is how many spans there were when everything was read at once.
	fresh int

	pathNo, blobNo map[string]int32
}

// version is one content of a file. Versions that grew out of each other are
// neighbours in a chain, where at is its place.
type version struct {
	id        string
	chain, at int32
	// mark is equal where the lines are that can name a plant; 0 is not known.
	mark uint64
}

// step is what one commit did to files of records, against each of its parents.
type step struct {
	parents  []string
	boundary bool
	deltas   []delta
}

// delta is one path that differs. Before and after are versions, none where the
// path holds no plain file.
type delta struct{ parent, path, before, after int32 }

const none = -1

// span says that a token stands in the versions from one place of a chain to
// another, both included.
type span struct {
	token           token
	chain, from, to int32
}

func compareSpans(a, b span) int {
	return cmp.Or(cmp.Compare(a.token, b.token), cmp.Compare(a.chain, b.chain), cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to))
}

func newRegister() *register {
	return &register{steps: make(map[string]*step), pathNo: make(map[string]int32), blobNo: make(map[string]int32)}
}

// number gives a text its place in a list, a new one at its end.
func number(no map[string]int32, text string, add func()) int32 {
	n, known := no[text]
	if !known {
		n = int32(len(no))
		no[text] = n
		add()
	}
	return n
}

func (r *register) path(name string) int32 {
	return number(r.pathNo, name, func() { r.paths = append(r.paths, name) })
}

// blob numbers a version; one that is new has no chain yet.
func (r *register) blob(id string) int32 {
	return number(r.blobNo, id, func() { r.blobs = append(r.blobs, version{id: id, chain: none}) })
}

// holding is the set of versions in which one of some tokens may stand.
func (r *register) holding(wanted ...token) set {
	found := newSet(len(r.blobs))
	for _, t := range append(wanted, odd) {
		first := sort.Search(len(r.spans), func(i int) bool { return r.spans[i].token >= t })
		for _, s := range r.spans[first:] {
			if s.token != t {
				break
			}
			for _, b := range r.chains[s.chain][s.from : s.to+1] {
				found.add(b)
			}
		}
	}
	return found
}

// all is the set of every version.
func (r *register) all() set {
	s := newSet(len(r.blobs))
	for b := range r.blobs {
		s.add(int32(b))
	}
	return s
}

// set is a set of versions.
type set []uint64

func newSet(n int) set { return make(set, n/64+1) }

func (s set) add(b int32)      { s[b/64] |= 1 << (b % 64) }
func (s set) has(b int32) bool { return b >= 0 && s[b/64]&(1<<(b%64)) != 0 }

// take adds a commit.
func (r *register) take(c *vcs.Commit) {
	s := &step{parents: c.Parents, boundary: c.Boundary}
	for _, d := range c.Changed {
		if !isRecords(d.Path) {
			continue
		}
		at := delta{parent: int32(d.Parent), path: r.path(d.Path), before: none, after: none}
		if regular(d.BeforeMode) {
			at.before = r.blob(d.Before)
		}
		if regular(d.AfterMode) {
			at.after = r.blob(d.After)
		}
		s.deltas = append(s.deltas, at)
	}
	r.steps[c.ID] = s
	r.link(s)
}

// link puts the versions that a commit brought into chains. A file that came
// where another went is taken for the same one, moved.
func (r *register) link(s *step) {
	var gone []int32
	for _, d := range s.deltas {
		if d.after == none && d.before != none {
			gone = append(gone, r.blobs[d.before].chain)
		}
	}
	for _, d := range s.deltas {
		r.chain(d.before, none)
		if d.after == none || r.blobs[d.after].chain != none {
			continue
		}
		onto := int32(none)
		switch {
		case d.before != none:
			onto = r.blobs[d.before].chain
		case len(gone) > 0:
			onto, gone = gone[0], gone[1:]
		}
		r.chain(d.after, onto)
	}
}

// chain puts a version at the end of a chain, of a new one where there is none
// or where that was closed.
func (r *register) chain(b, onto int32) {
	if b == none || r.blobs[b].chain != none {
		return
	}
	if onto == none {
		onto = int32(len(r.chains))
		r.chains = append(r.chains, nil)
	}
	r.blobs[b].chain, r.blobs[b].at = onto, int32(len(r.chains[onto]))
	r.chains[onto] = append(r.chains[onto], b)
}

// joined merges two sorted lists of spans; what follows each other becomes one.
func joined(a, b []span) []span {
	all := make([]span, 0, len(a)+len(b))
	for len(a) > 0 || len(b) > 0 {
		next := &a
		if len(a) == 0 || len(b) > 0 && compareSpans(b[0], a[0]) < 0 {
			next = &b
		}
		s := (*next)[0]
		*next = (*next)[1:]
		if n := len(all) - 1; n >= 0 && all[n].token == s.token && all[n].chain == s.chain && all[n].to+1 == s.from {
			all[n].to = s.to
			continue
		}
		all = append(all, s)
	}
	return all
}
