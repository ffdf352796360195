package weave

import (
	"slices"

	"homerun/schema/block"
)

// states are what a part of the result is to state, with ours and with theirs
// in the conflicts.
type states struct{ ours, theirs []string }

// both adds what the two agree about.
func (s *states) both(state string) {
	if state != "" {
		s.ours, s.theirs = append(s.ours, state), append(s.theirs, state)
	}
}

// either adds what they do not; nothing where a side has none.
func (s *states) either(ours, theirs string) {
	if ours != "" {
		s.ours = append(s.ours, ours)
	}
	if theirs != "" {
		s.theirs = append(s.theirs, theirs)
	}
}

// enclosed adds a block of which the parts are known.
func (s *states) enclosed(ours, theirs *block.Block, parts states) {
	s.either(blockState(ours, parts.ours), blockState(theirs, parts.theirs))
}

// proved reads a result again, once with each side's lines in the conflicts,
// and says whether it states what was joined.
func proved(pieces []piece, want states) bool {
	for of, expected := range [][]string{pickOurs: want.ours, pickTheirs: want.theirs} {
		read, err := readFile("", picked(pieces, pick(of)))
		if err != nil {
			return false
		}
		var found []string
		for i := range read.items {
			if state := read.items[i].state(); state != "" {
				found = append(found, state)
			}
		}
		slices.Sort(found)
		slices.Sort(expected)
		if !slices.Equal(found, expected) {
			return false
		}
	}
	return true
}
