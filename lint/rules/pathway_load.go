package rules

import (
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// A load is the cables of one type in a pathway.
type load struct {
	cable *plant.Cable
	// diameter is that of one cable, where known.
	diameter unit.Length
	known    bool
	first    *plant.Run
	// count is how many lie there, planned how many of them only on paper.
	count, planned int
}

// loadsOf counts the cables in a pathway by type, in the order in which they
// first occur. What is out of use still takes up room.
func loadsOf(w *plant.Pathway) []load {
	loads := make([]load, 0, len(w.Loads))
	for i := range w.Loads {
		at := &w.Loads[i]
		n := indexOfLoad(loads, at.Cable)
		if n < 0 {
			n = len(loads)
			l := load{cable: at.Cable, first: at.First}
			if at.Cable != nil {
				l.diameter, l.known = schema.CableDiameter.In(at.Cable.Record())
				l.known = l.known && l.diameter > 0
			}
			loads = append(loads, l)
		}
		loads[n].count += at.Count
		if state, known := at.First.State(); known && state == schema.StatePlanned {
			loads[n].planned += at.Count
		}
	}
	return loads
}

func indexOfLoad(loads []load, c *plant.Cable) int {
	for i := range loads {
		if loads[i].cable == c {
			return i
		}
	}
	return -1
}

// diameters lists the diameter of every cable of known size; today leaves out
// those that are only planned.
func diameters(loads []load, today countOf) []unit.Length {
	var all []unit.Length
	for i := range loads {
		n := loads[i].count
		if today == inPlace {
			n -= loads[i].planned
		}
		if !loads[i].known {
			continue
		}
		for range n {
			all = append(all, loads[i].diameter)
		}
	}
	return all
}

// countOf says which cables count.
type countOf uint8

const (
	recorded countOf = iota // every one, planned or not
	inPlace                 // those that lie there today
)

// planned is how many of the cables are only planned.
func plannedIn(loads []load) int {
	n := 0
	for i := range loads {
		n += loads[i].planned
	}
	return n
}
