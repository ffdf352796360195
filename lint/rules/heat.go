package rules

import (
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// heat is the hottest of some spaces; where is nil when none states a
// temperature.
type heat struct {
	where *plant.Space
	high  unit.Temperature
}

func (h *heat) see(s *plant.Space) {
	if s == nil {
		return
	}
	t, known := schema.SpaceTemperature.In(s.Record())
	if known && (h.where == nil || t > h.high) {
		h.where, h.high = s, t
	}
}

// heats finds the hottest space of routes, each route once: the runs of a
// bundle share theirs.
type heats struct{ ways map[*plant.Way]heat }

func newHeats() *heats { return &heats{ways: make(map[*plant.Way]heat)} }

// of is the hottest space that any part of the link lies in. Spaces that state
// no temperature are left out, since nobody can judge by them.
func (hs *heats) of(l *plant.Link) heat {
	var h heat
	for _, r := range l.Runs {
		if on := hs.along(r); on.where != nil && (h.where == nil || on.high > h.high) {
			h = on
		}
	}
	return h
}

// along is the hottest space of one run, its route before its ends.
func (hs *heats) along(r *plant.Run) heat {
	var h heat
	if r.Way != nil {
		on, seen := hs.ways[r.Way]
		if !seen {
			for _, s := range r.Way.Spaces {
				on.see(s)
			}
			hs.ways[r.Way] = on
		}
		h = on
	}
	h.see(r.From.Space())
	h.see(r.To.Space())
	return h
}
