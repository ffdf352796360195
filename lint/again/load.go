package again

import (
	"slices"

	"homerun/schema"
)

// What lies in a pathway is counted while records come and go, so that a pathway can
// be judged without going through all its cables: see plant.Load.

// A sort is what makes cables in a pathway alike: their type and their state.
type sort struct {
	cable, state string
	known        bool
}

// A berth is a pathway and the sort of a cable that lies in it.
type berth struct {
	way string
	sort
}

// A shift is a piece that came to a berth in the step at hand, or left it.
type shift struct {
	berth
	piece *piece
	came  bool
}

// berthsOf are where a run lies, once for each time that its route passes.
func berthsOf(p *piece) []berth {
	run := p.now.record
	if run == nil || run.Kind.Name != schema.KindRun {
		return nil
	}
	route, _ := schema.RunRoute.In(run)
	if len(route) == 0 {
		return nil
	}
	var is sort
	is.cable, _ = schema.RunCable.In(run)
	is.state, is.known = schema.RunState.Or(run, schema.StateInService)
	all := make([]berth, len(route))
	for i, way := range route {
		all[i] = berth{way, is}
	}
	return all
}

// berth brings a run to where it lies now, and notes what differs from before.
func (s *Standing) berth(p *piece) {
	now := berthsOf(p)
	if slices.Equal(p.berths, now) {
		return
	}
	for _, at := range p.berths {
		list := without(s.lying[at.way][at.sort], p)
		if s.lying[at.way][at.sort] = list; len(list) == 0 {
			delete(s.lying[at.way], at.sort)
		}
		s.shifts = append(s.shifts, shift{at, p, false})
	}
	for _, at := range now {
		if s.lying[at.way] == nil {
			s.lying[at.way] = make(map[sort][]*piece)
		}
		s.lying[at.way][at.sort] = append(s.lying[at.way][at.sort], p)
		s.shifts = append(s.shifts, shift{at, p, true})
	}
	p.berths = now
}

// A pile is the cables of one sort in a pathway.
type pile struct {
	sort
	first *piece
	count int
}

// piles are what lies in a pathway, in the order in which each first occurs. They
// are found once for each state.
func (s *Standing) piles(v view, way string) []pile {
	key := pileKey{v, way}
	all, known := s.piled[key]
	if !known {
		all = s.pile(v, way)
		s.piled[key] = all
	}
	return all
}

// A pileKey is a pathway in the state before the last step or after it.
type pileKey struct {
	view
	way string
}

func (s *Standing) pile(v view, way string) []pile {
	var all []pile
	for is, list := range s.lying[way] {
		all = append(all, pile{sort: is, count: len(list)})
	}
	came := make(map[berth][]*piece)
	if v == before {
		for _, sh := range s.shifts {
			if sh.way != way {
				continue
			}
			i := slices.IndexFunc(all, func(at pile) bool { return at.sort == sh.sort })
			if i < 0 {
				i = len(all)
				all = append(all, pile{sort: sh.sort})
			}
			if sh.came {
				all[i].count--
				came[sh.berth] = append(came[sh.berth], sh.piece)
				continue
			}
			all[i].count++
			all[i].take(s, v, sh.piece)
		}
	}
	for i := range all {
		at := &all[i]
		late := came[berth{way, at.sort}]
		for _, p := range s.lying[way][at.sort] {
			if len(late) == 0 || !slices.Contains(late, p) {
				at.take(s, v, p)
			}
		}
	}
	all = slices.DeleteFunc(all, func(at pile) bool { return at.count == 0 })
	order := s.order(v)
	slices.SortFunc(all, func(a, b pile) int { return order(a.first, b.first) })
	return all
}

// take makes a piece the first one where it stands before the others.
func (at *pile) take(s *Standing, v view, p *piece) {
	if at.first == nil || s.order(v)(p, at.first) < 0 {
		at.first = p
	}
}
