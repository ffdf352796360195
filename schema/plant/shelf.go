package plant

import "homerun/schema"

// shelves hold the items of a plant that is being built, those of one type side by
// side: one allocation for each type instead of one for each item.
type shelves struct {
	spaces        []Space
	pathways      []Pathway
	interferences []Interference
	cables        []Cable
	racks         []Rack
	holders       []Holder
	busbars       []Busbar
	bundles       []Bundle
	runs          []Run
	cords         []Cord
	tests         []Test
}

// put lays an item on a shelf and returns where it is from now on.
func put[T any](shelf *[]T, it T) *T {
	*shelf = append(*shelf, it)
	return &(*shelf)[len(*shelf)-1]
}

// A tally counts the records of each kind that items are made of.
type tally struct {
	spaces, pathways, interferences, cables, racks, holders, busbars, bundles, runs, cords, tests, others int
}

func (p *builder) count(n *tally, r *schema.Record) {
	switch r.Kind.Name {
	case schema.KindSpace:
		n.spaces++
	case schema.KindPathway:
		n.pathways++
	case schema.KindInterference:
		n.interferences++
	case schema.KindCable:
		n.cables++
	case schema.KindRack:
		n.racks++
	case schema.KindPanel, schema.KindOutlet, schema.KindConsolidation, schema.KindClosure, schema.KindEquipment:
		n.holders++
	case schema.KindBusbar:
		n.busbars++
	case schema.KindBundle:
		n.bundles++
		n.runs += p.kept(r)
	case schema.KindRun:
		n.runs++
	case schema.KindCord:
		n.cords++
	case schema.KindTest:
		n.tests++
	default:
		n.others++
	}
}

// kept is how many of a bundle's runs are kept.
func (p *builder) kept(bundle *schema.Record) int {
	if p.keep == nil {
		return len(bundle.Inner)
	}
	n := 0
	for _, in := range bundle.Inner {
		if p.keep(in) {
			n++
		}
	}
	return n
}

// size makes index, lists and shelves as large as they have to be: growing them is
// what building a plant would otherwise spend its time on.
func (p *builder) size(files []*schema.File) {
	var n tally
	for _, f := range files {
		for i := range f.Entries {
			p.count(&n, f.Entries[i].Record)
		}
	}
	p.index = newIndex(n.spaces + n.pathways + n.interferences + n.cables + n.racks + n.holders + n.busbars + n.bundles + n.runs + n.cords + n.tests + n.others)
	p.Spaces, p.spaces = room[Space](n.spaces)
	p.Pathways, p.pathways = room[Pathway](n.pathways)
	p.Interferences, p.interferences = room[Interference](n.interferences)
	p.Cables, p.cables = room[Cable](n.cables)
	p.Racks, p.racks = room[Rack](n.racks)
	p.Holders, p.holders = room[Holder](n.holders)
	p.Busbars, p.busbars = room[Busbar](n.busbars)
	p.Bundles, p.bundles = room[Bundle](n.bundles)
	p.Runs, p.runs = room[Run](n.runs)
	p.Cords, p.cords = room[Cord](n.cords)
	p.Tests, p.tests = room[Test](n.tests)
}

// room is an empty list and an empty shelf for so many items.
func room[T any](n int) (list []*T, shelf []T) {
	if n == 0 {
		return nil, nil
	}
	return make([]*T, 0, n), make([]T, 0, n)
}
