package labels

import (
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// sides is how often a fire-stop is labelled: on each side of the wall or floor
// that it closes. ANSI/TIA-606-A, fire-stopping locations, as quoted in the
// literature.
const sides = 2

// A seal is one fire-stop as a crossing states it.
type seal struct {
	rating  unit.Period
	between [sides]string
	through string
}

// firestops are the labels of every fire-stop that the earlier plant does not
// have, or has with another rating: it is made anew, and so is its label.
func firestops(base, head *plant.Plant) []Label {
	before, _ := sealsOf(base)
	after, order := sealsOf(head)
	var all []Label
	for _, id := range order {
		is := after[id]
		if was, stood := before[id]; stood && was.rating == is.rating {
			continue
		}
		kind := "fire-stop"
		if is.rating > 0 {
			kind += ", " + is.rating.Text(head.Units)
		}
		for _, side := range is.between {
			at := "at " + is.through
			if side == "" {
				at += ", one on each side"
			}
			all = append(all, Label{ID: id, Kind: kind, Space: side, At: at, rank: rankOf(schema.KindPathway)})
		}
	}
	return all
}

// sealsOf lists a plant's fire-stops by identifier, in the order of the records.
// One that closes the opening of several pathways is one fire-stop.
func sealsOf(p *plant.Plant) (seals map[string]seal, order []string) {
	seals = make(map[string]seal)
	if p == nil {
		return seals, nil
	}
	for _, path := range p.Pathways {
		for _, c := range path.Blocks(schema.KindCrossing) {
			id, stated := schema.CrossingFirestop.In(c)
			if _, again := seals[id]; !stated || id == "" || again {
				continue
			}
			s := seal{through: path.Label}
			s.rating, _ = schema.CrossingStopped.In(c)
			if rooms, ok := schema.CrossingBetween.In(c); ok && len(rooms) == sides {
				s.between = [sides]string(rooms)
			}
			seals[id] = s
			order = append(order, id)
		}
	}
	return seals, order
}
