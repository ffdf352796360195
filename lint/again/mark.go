package again

import (
	"slices"

	"homerun/lint"
	"homerun/schema/unit"
)

// A Mark is a state of a standing that it can return to. From mark to mark it is
// remembered what was found, so that a state is not judged twice.
type Mark struct {
	// before is the state from which this one was come to, nil where that is
	// forgotten; depth counts the states before it.
	before *Mark
	depth  int
	// way is what differs from there.
	way difference
	outcome
}

// An outcome is what a standing has come to beside its findings: it is kept whole for
// each state.
type outcome struct {
	// problems is how many mistakes of the records there are.
	problems int
	// reviewed are the findings about waivers and policies, held the waivers as they
	// held on that day, nil without any.
	reviewed []lint.Finding
	held     *lint.Leave
	today    unit.Date
}

// A difference is the findings that a step took away and brought, as they are carried.
type difference struct{ gone, come []lint.Finding }

// mostMarks is how many states are remembered before one.
const mostMarks = 1024

// Mark is the state at hand, nil before the first step.
func (s *Standing) Mark() *Mark { return s.mark }

// Forget lets go of the states before a mark: nobody returns to them any more.
func (m *Mark) Forget() {
	if m != nil {
		m.before, m.depth, m.way = nil, 0, difference{}
	}
}

// noteMark notes the state that a step has come to.
func (s *Standing) noteMark(way difference) {
	m := &Mark{outcome: s.outcome}
	if s.mark != nil && s.mark.depth < mostMarks {
		m.before, m.depth, m.way = s.mark, s.mark.depth+1, way
	}
	s.mark = m
}

// Return changes the files back to those of a mark, whose records they have to be,
// with what was found there, and the day. It judges nothing; known is false, and
// nothing was changed, where the way to the mark is not remembered; to no mark there is
// none.
func (s *Standing) Return(changes []Change, to *Mark) (known bool, err error) {
	up, down, known := s.mark.path(to)
	if !known {
		return false, nil
	}
	p := s.match(changes)
	s.apply(p)
	s.findAstray(p)
	for _, m := range up {
		if _, err := s.remember(m.way.come, m.way.gone); err != nil {
			return true, err
		}
	}
	for _, m := range slices.Backward(down) {
		if _, err := s.remember(m.way.gone, m.way.come); err != nil {
			return true, err
		}
	}
	s.mark, s.outcome = to, to.outcome
	return true, nil
}

// path finds the states that are left on the way to another one, and those that are
// come to, the last one first.
func (m *Mark) path(to *Mark) (up, down []*Mark, known bool) {
	for m != to {
		switch {
		case m == nil || to == nil:
			return nil, nil, false
		case m.depth >= to.depth:
			up, m = append(up, m), m.before
		default:
			down, to = append(down, to), to.before
		}
	}
	return up, down, m != nil
}
