package again

// A group is some pieces in one step, each once, in the order in which they came to it.
// It is written on the pieces themselves: most steps look at the same few pieces over
// and over.
type group struct {
	sign  sign
	round int
	list  []*piece
}

// A sign is what a piece is marked with that is in a group.
type sign uint16

const (
	readBefore sign = 1 << iota
	wholeBefore
	laidBefore
	readAfter
	wholeAfter
	laidAfter
	laidEver
	inExcerpt
	clean
)

func (s *Standing) newGroup(of sign) group { return group{sign: of, round: s.round} }

func (g *group) has(p *piece) bool { return p.round == g.round && p.signs&g.sign != 0 }

// add takes a piece in, and says whether it was not there.
func (g *group) add(p *piece) bool {
	if p.round != g.round {
		p.round, p.signs = g.round, 0
	}
	if p.signs&g.sign != 0 {
		return false
	}
	p.signs |= g.sign
	g.list = append(g.list, p)
	return true
}

// cut takes out all but the first so many.
func (g *group) cut(to int) {
	for _, p := range g.list[to:] {
		p.signs &^= g.sign
	}
	g.list = g.list[:to]
}

func (g *group) addAll(list []*piece) {
	for _, p := range list {
		g.add(p)
	}
}
