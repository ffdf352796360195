package trail

import "homerun/schema/vcs"

// register is what is remembered of a history: its commits with the files of
// records that they changed, and which tokens stand in which version of a file.
type register struct {
	paths []string
	blobs []version
	steps map[string]*step
	index
	// fresh is how many events there were when everything was read at once.
	fresh int

	pathNo, blobNo map[string]int32
}

// version is one content of a file. It is told by another, its base, and by how
// often the tokens stand in it more or less often than there; none is the base of
// one that is told by itself.
type version struct {
	id   string
	base int32
	// like is an earlier version of the file, none where nothing came before.
	like int32
	// mark is equal where a plant's file gives its plants the same labels; 0 is not known.
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

// blob numbers a version.
func (r *register) blob(id string) int32 {
	return number(r.blobNo, id, func() { r.blobs = append(r.blobs, version{id: id, base: none, like: none}) })
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

// link says of the versions that a commit brought what they are like. A file that
// came where another went is taken for the same one, moved.
func (r *register) link(s *step) {
	var gone []int32
	for _, d := range s.deltas {
		if d.after == none && d.before != none {
			gone = append(gone, d.before)
		}
	}
	for _, d := range s.deltas {
		switch {
		case d.after == none:
		case d.before != none:
			r.alike(d.after, d.before)
		case len(gone) > 0:
			r.alike(d.after, gone[0])
			gone = gone[1:]
		}
	}
}

// alike keeps to the order of the versions, so that none is told by itself.
func (r *register) alike(b, to int32) {
	if to < b && r.blobs[b].like == none {
		r.blobs[b].like = to
	}
}
