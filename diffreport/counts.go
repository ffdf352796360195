package diffreport

import "fmt"

// Counts are how many records are in each class.
type Counts struct {
	Moves, Adds, Changes, Removals, Relabels, RecordsOnly int
}

// Count counts changes by class.
func Count(changes []Change) Counts {
	var n Counts
	for i := range changes {
		switch changes[i].Class {
		case ClassMove:
			n.Moves++
		case ClassAdd:
			n.Adds++
		case ClassChange:
			n.Changes++
		case ClassRemoval:
			n.Removals++
		case ClassRelabel:
			n.Relabels++
		case ClassRecordsOnly:
			n.RecordsOnly++
		}
	}
	return n
}

// Words lists the classes that there is anything in, such as "2 moves", in the
// words that every document uses; nothing where nothing was changed.
func (n Counts) Words() []string {
	var parts []string
	for _, c := range []struct {
		n         int
		one, many string
	}{
		{n.Moves, "move", "moves"},
		{n.Adds, "add", "adds"},
		{n.Changes, "change", "changes"},
		{n.Removals, "removal", "removals"},
		{n.Relabels, "relabel", "relabels"},
		{n.RecordsOnly, "correction of the records only", "corrections of the records only"},
	} {
		switch {
		case c.n == 1:
			parts = append(parts, "1 "+c.one)
		case c.n > 1:
			parts = append(parts, fmt.Sprintf("%d %s", c.n, c.many))
		}
	}
	return parts
}
