package audit

import (
	"hash/maphash"
	"maps"
	"slices"
)

// shards is into how many parts the findings of a commit are divided: a branch
// shares all parts with the commit that it left but those that differ.
const shards = 256

// state is what stands at one commit: nonconformities one by one, observations
// as numbers. It is copied at each branch and changed in place along a line.
type state struct {
	seed  maphash.Seed
	owner *owner
	parts [shards]*part

	nonconformities, observations, waived int
	// byRule counts the nonconformities that no waiver covers.
	byRule map[string]int
}

// owner is who may write a part in place: nobody else has it.
type owner struct{ _ byte }

type part struct {
	owner   *owner
	entries map[string][]entry
}

// entry is one nonconformity at one commit.
type entry struct {
	*Standing
	waiver string
}

func newState(seed maphash.Seed) *state {
	return &state{seed: seed, owner: &owner{}, byRule: make(map[string]int)}
}

// branch copies the state. Both copies then hold parts that are not theirs alone.
func (s *state) branch() *state {
	b := *s
	s.owner, b.owner = &owner{}, &owner{}
	b.byRule = maps.Clone(s.byRule)
	return &b
}

// at finds the part of a key, one that may be written.
func (s *state) at(key string) *part {
	slot := &s.parts[maphash.String(s.seed, key)%shards]
	switch {
	case *slot == nil:
		*slot = &part{owner: s.owner, entries: make(map[string][]entry)}
	case (*slot).owner != s.owner:
		own := &part{owner: s.owner, entries: make(map[string][]entry, len((*slot).entries))}
		for k, list := range (*slot).entries {
			own.entries[k] = slices.Clip(list)
		}
		*slot = own
	}
	return *slot
}

// see lists the entries of a key.
func (s *state) see(key string) []entry {
	if p := s.parts[maphash.String(s.seed, key)%shards]; p != nil {
		return p.entries[key]
	}
	return nil
}

func (s *state) push(key string, e entry) {
	p := s.at(key)
	p.entries[key] = append(p.entries[key], e)
	s.count(e, 1)
}

// pop takes an entry of a key away; false where there is none.
func (s *state) pop(key string) (entry, bool) {
	p := s.at(key)
	list := p.entries[key]
	if len(list) == 0 {
		return entry{}, false
	}
	e := list[0]
	if len(list) == 1 {
		delete(p.entries, key)
	} else {
		p.entries[key] = list[1:len(list):len(list)]
	}
	s.count(e, -1)
	return e, true
}

func (s *state) count(e entry, by int) {
	if e.waiver != "" {
		s.waived += by
		return
	}
	s.nonconformities += by
	if s.byRule[e.Rule] += by; s.byRule[e.Rule] == 0 {
		delete(s.byRule, e.Rule)
	}
}

// note counts an observation that came or went.
func (s *state) note(f *Finding, by int) {
	if f.Waiver != "" {
		s.waived += by
		return
	}
	s.observations += by
}
