package again

import "slices"

// widest is how many ports a reference names at most for its pieces to be found by
// each port: cables fan out to a dozen, and a mistake may name thousands.
const widest = 32

// enterPorts finds a piece by the ports that it names, leavePorts no longer.
func (p *piece) enterPorts() {
	for _, at := range p.refs {
		switch {
		case !at.ports():
		case at.last-at.first >= widest:
			at.wide = append(at.wide, p)
		default:
			if at.byPort == nil {
				at.byPort = make(map[int][]*piece)
			}
			for n := at.first; n <= at.last; n++ {
				at.byPort[n] = append(at.byPort[n], p)
			}
		}
	}
}

func (p *piece) leavePorts() {
	for _, at := range p.refs {
		switch {
		case !at.ports():
		case at.last-at.first >= widest:
			at.wide = without(at.wide, p)
		default:
			for n := at.first; n <= at.last; n++ {
				if at.byPort[n] = without(at.byPort[n], p); len(at.byPort[n]) == 0 {
					delete(at.byPort, n)
				}
			}
		}
	}
}

// meeting are the pieces that name a port which a reference names too.
func (r ref) meeting() []*piece {
	if r.last-r.first >= widest {
		return slices.DeleteFunc(slices.Clone(r.namers), func(q *piece) bool { return !slices.ContainsFunc(q.refs, r.meets) })
	}
	if r.first == r.last && len(r.wide) == 0 {
		return r.byPort[r.first]
	}
	var all []*piece
	add := func(q *piece) {
		if !slices.Contains(all, q) {
			all = append(all, q)
		}
	}
	for n := r.first; n <= r.last; n++ {
		for _, q := range r.byPort[n] {
			add(q)
		}
	}
	for _, q := range r.wide {
		if slices.ContainsFunc(q.refs, r.meets) {
			add(q)
		}
	}
	return all
}
