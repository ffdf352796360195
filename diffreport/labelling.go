package diffreport

import (
	"slices"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// A Firestop is what closes an opening in a rated wall or floor, as a crossing
// states it. It is labelled on both sides: ANSI/TIA-606-A, fire-stopping
// locations, as quoted in the literature.
type Firestop struct {
	ID     string
	Rating unit.Period
	// Between are the two spaces that it separates, empty where the records do
	// not say; Through is the pathway that goes through it.
	Between [2]string
	Through string
}

// twoEnds says whether a kind of record is labelled at two ends.
func twoEnds(kind string) bool {
	return kind == schema.KindRun || kind == schema.KindCord || kind == schema.KindPathway
}

// toPrint notes the labels of one record of the later plant: one, or one for
// each end, and a strip for its ports where it has some.
func (p *planner) toPrint(kind, label string) {
	p.labels = append(p.labels, label)
	if twoEnds(kind) {
		p.labels = append(p.labels, label)
	}
	it, _ := p.head.Find(label)
	if h, ok := it.(*plant.Holder); ok && !h.IsEquipment() && len(h.Ports) > 0 {
		p.strips = append(p.strips, label)
	}
}

// everyLabel lists what has to be printed: labels, port strips and fire-stops,
// whose labels stand among the others.
func (p *planner) everyLabel() (labels, strips []string, stops []Firestop) {
	labels, stops = p.labels, madeAnew(p.base, p.head)
	for _, s := range stops {
		for range s.Between {
			labels = append(labels, s.ID)
		}
	}
	slices.Sort(labels)
	return labels, tidy(p.strips), stops
}

// madeAnew lists every fire-stop that the earlier plant does not have, or has
// with another rating, in the order of the records.
func madeAnew(base, head *plant.Plant) []Firestop {
	before := make(map[string]Firestop)
	for _, s := range firestops(base) {
		before[s.ID] = s
	}
	return slices.DeleteFunc(firestops(head), func(is Firestop) bool {
		was, stood := before[is.ID]
		return stood && was.Rating == is.Rating
	})
}

// firestops lists a plant's fire-stops. One that closes the opening of several
// pathways is one fire-stop.
func firestops(p *plant.Plant) []Firestop {
	var all []Firestop
	met := make(map[string]bool)
	for _, path := range p.Pathways {
		for _, c := range path.Blocks(schema.KindCrossing) {
			id, stated := schema.CrossingFirestop.In(c)
			if !stated || id == "" || met[id] {
				continue
			}
			met[id] = true
			s := Firestop{ID: id, Through: path.Label}
			s.Rating, _ = schema.CrossingStopped.In(c)
			if rooms, ok := schema.CrossingBetween.In(c); ok && len(rooms) == len(s.Between) {
				s.Between = [2]string(rooms)
			}
			all = append(all, s)
		}
	}
	return all
}
