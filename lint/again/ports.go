package again

import "slices"

// A port is one of those that a label bears.
type port struct {
	label  string
	number int
}

// widest is how many ports a reference names at most for its pieces to be found by
// each port: cables fan out to a dozen, and a mistake may name thousands.
const widest = 32

// enterPorts finds a piece by the ports that it names, leavePorts no longer.
func (s *Standing) enterPorts(p *piece) {
	for _, at := range p.refs {
		switch {
		case !at.ports():
		case at.last-at.first >= widest:
			s.wide[at.label] = append(s.wide[at.label], p)
		default:
			for n := at.first; n <= at.last; n++ {
				key := port{at.label, n}
				s.ports[key] = append(s.ports[key], p)
			}
		}
	}
}

func (s *Standing) leavePorts(p *piece) {
	for _, at := range p.refs {
		switch {
		case !at.ports():
		case at.last-at.first >= widest:
			if s.wide[at.label] = without(s.wide[at.label], p); len(s.wide[at.label]) == 0 {
				delete(s.wide, at.label)
			}
		default:
			for n := at.first; n <= at.last; n++ {
				key := port{at.label, n}
				if s.ports[key] = without(s.ports[key], p); len(s.ports[key]) == 0 {
					delete(s.ports, key)
				}
			}
		}
	}
}

// meeting are the pieces that name a port which a reference names too.
func (s *Standing) meeting(at ref) []*piece {
	if at.last-at.first >= widest {
		return slices.DeleteFunc(slices.Clone(s.namers[at.label]), func(q *piece) bool { return !slices.ContainsFunc(q.refs, at.meets) })
	}
	wide := s.wide[at.label]
	if at.first == at.last && len(wide) == 0 {
		return s.ports[port{at.label, at.first}]
	}
	var all []*piece
	add := func(q *piece) {
		if !slices.Contains(all, q) {
			all = append(all, q)
		}
	}
	for n := at.first; n <= at.last; n++ {
		for _, q := range s.ports[port{at.label, n}] {
			add(q)
		}
	}
	for _, q := range wide {
		if slices.ContainsFunc(q.refs, at.meets) {
			add(q)
		}
	}
	return all
}
