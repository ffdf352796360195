package diffreport

import (
	"homerun/schema"
	"homerun/schema/plant"
)

// neighbours says which records of the later plant lie or stand with what changes
// on site: cables in the same pathways, all hardware where a rack or busbar is
// worked on, and everything that others refer to. Cords and tests do not lie
// anywhere.
func (x *scene) neighbours() func(subject) bool {
	ways := x.waysTouched()
	framed := false
	for i := range x.changes {
		c := &x.changes[i]
		framed = framed || x.at[c] != nil && (c.Kind == schema.KindRack || c.Kind == schema.KindBusbar)
	}
	return func(s subject) bool {
		switch it := s.item.(type) {
		case *plant.Cord, *plant.Test:
			return false
		case *plant.Run:
			return lies(it, ways)
		case *plant.Bundle:
			for _, r := range it.Runs {
				if lies(r, ways) {
					return true
				}
			}
			return false
		case *plant.Holder:
			return framed || x.touched[it.Label]
		}
		return true
	}
}

// waysTouched are the pathways of the later plant that are worked in or worked on.
func (x *scene) waysTouched() map[*plant.Pathway]bool {
	ways := make(map[*plant.Pathway]bool)
	add := func(label string) {
		it, _ := x.head.Find(label)
		if path, ok := it.(*plant.Pathway); ok {
			ways[path] = true
		}
	}
	for _, w := range x.works {
		for s, r := range []*plant.Run{w.run.before, w.run.after} {
			if r == nil || r.Way == nil {
				continue
			}
			for _, path := range r.Way.Pathways {
				add(x.labelNow(side(s), path.Label))
			}
		}
	}
	for i := range x.changes {
		if c := &x.changes[i]; x.at[c] != nil {
			add(c.Label)
		}
	}
	return ways
}

func lies(r *plant.Run, ways map[*plant.Pathway]bool) bool {
	if r.Way == nil {
		return false
	}
	for _, path := range r.Way.Pathways {
		if ways[path] {
			return true
		}
	}
	return false
}
