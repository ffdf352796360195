package trail

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"slices"

	"homerun/diffreport/history"
	"homerun/schema"
)

// subject is what is followed: a label, and whether what names it counts too.
type subject struct {
	label string
	what  history.Interest
}

// followed is what is known about one subject over all commits.
type followed struct {
	subject
	// gists are, by version, those of its records. A version without any is not
	// listed.
	gists map[int32][]digest
}

// digest stands for the gist of a record. Nobody finds two texts of one digest, so
// none can be written that hides a change.
type digest [sha256.Size]byte

func compareDigests(a, b digest) int { return bytes.Compare(a[:], b[:]) }

// follow looks a subject up, once: in the register the versions that may hold
// it, and in those the records that do.
func (t *Trail) follow(s subject) (*followed, error) {
	if f := t.labels[s]; f != nil {
		return f, nil
	}
	f := &followed{subject: s, gists: make(map[int32][]digest)}
	w := &wants{tokens: make(map[token]bool)}
	way := defines
	if s.what == history.Ties {
		way = mention
	}
	w.want(s.label, way)
	versions := t.moving(t.bearing(w))
	ids := make([]string, len(versions))
	for i, b := range versions {
		ids[i] = t.blobs[b].id
	}
	reader := schema.NewReader()
	reader.Bound(mostFollowed)
	files := reader.PartVersions(w.has)
	err := t.Repo.Pour(t.ctx, ids, func(i int, text []byte) error {
		if found := gistsIn(files.Read(t.lineOf(versions[i]), text), &s); found != nil {
			f.gists[versions[i]] = found
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	t.labels[s] = f
	return f, nil
}

// mostFollowed bounds the blocks that are remembered while a subject is looked for,
// in bytes.
const mostFollowed = 16 << 20

// lineOf names the line of versions that one belongs to, each told by the one before.
func (t *Trail) lineOf(b int32) string {
	for t.blobs[b].base != none {
		b = t.blobs[b].base
	}
	return t.blobs[b].id
}

// gistsIn are those of the records of a file that are of the subject, in the order
// of the text: of a label that is given twice, the first is meant.
func gistsIn(f *schema.File, s *subject) []digest {
	var found []digest
	take := func(r *schema.Record) {
		if s.concerns(r) {
			found = append(found, sha256.Sum256([]byte(r.Kind.Name+"\x00"+history.Gist(r))))
		}
	}
	for i := range f.Entries {
		take(f.Entries[i].Record)
		for _, r := range f.Entries[i].Inner {
			take(r)
		}
	}
	return found
}

// concerns says whether a record is of the label or, where that counts, names it.
func (s *subject) concerns(r *schema.Record) bool {
	return r.Label == s.label || s.what == history.Ties && names(r, s.label)
}

// moving is those of some versions that the commits of this history brought or
// took, in the order of the register.
func (t *Trail) moving(of set) []int32 {
	seen := newSet(len(t.blobs))
	var list []int32
	for _, id := range t.order {
		for _, d := range t.steps[id].deltas {
			for _, b := range []int32{d.before, d.after} {
				if of.has(b) && !seen.has(b) {
					seen.add(b)
					list = append(list, b)
				}
			}
		}
	}
	slices.SortFunc(list, cmp.Compare[int32])
	return list
}

// touched says whether a commit can have changed the subject against a parent:
// a record of it is on one side only or, if it is given twice, first in another
// file, or the plant may be another.
func (e *excerpt) touched() bool {
	var before, after []digest
	unsettled := false
	for i := range e.at.deltas {
		d := &e.at.deltas[i]
		if d.parent != e.parent {
			continue
		}
		unsettled = unsettled || e.unsettles(d)
		e.moved = e.moved || !slices.Equal(e.gists[d.before], e.gists[d.after])
		before = append(before, e.gists[d.before]...)
		after = append(after, e.gists[d.after]...)
	}
	if len(before) == len(after) {
		slices.SortFunc(before, compareDigests)
		slices.SortFunc(after, compareDigests)
	}
	return unsettled || e.moved || !slices.Equal(before, after)
}
