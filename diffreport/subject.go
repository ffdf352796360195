package diffreport

import (
	"homerun/schema"
	"homerun/schema/plant"
)

// A subject is one record that is compared by itself: every record of a plant
// but the blocks inside a pathway, which belong to it.
type subject struct {
	schema.Entry
	// item is the record in the plant's graph; nil for the plant record,
	// waivers and policies, which nothing is connected to.
	item plant.Item
}

// key finds a subject's namesake on the other side.
type key struct {
	kind  *schema.Kind
	label string
}

func (s subject) key() key { return key{s.Kind, s.Label} }

// run is the subject as a run, nil when it is something else.
func (s subject) run() *plant.Run {
	r, _ := s.item.(*plant.Run)
	return r
}

// holder is the subject as what has ports, nil when it is something else.
func (s subject) holder() *plant.Holder {
	h, _ := s.item.(*plant.Holder)
	return h
}

// bundle is the label of the bundle that a run stands in.
func (s subject) bundle() string {
	if s.Parent == nil {
		return ""
	}
	return s.Parent.Label
}

// subjects lists the records of a plant, kind by kind in the order in which
// labels carry over: what a record refers to stands before it. Runs stand
// before bundles, since a bundle states only what its runs do not.
func subjects(p *plant.Plant) []subject {
	n := len(p.Spaces) + len(p.Cables) + len(p.Busbars) + len(p.Racks) + len(p.Interferences) + len(p.Pathways) +
		len(p.Holders) + len(p.Runs) + len(p.Bundles) + len(p.Cords) + len(p.Tests) + len(p.Waivers) + len(p.Policies) + 1
	all := make([]subject, 0, n)
	if p.Entry.Record != nil {
		all = append(all, subject{Entry: p.Entry})
	}
	all = list(all, p.Spaces)
	all = list(all, p.Cables)
	all = list(all, p.Busbars)
	all = list(all, p.Racks)
	all = list(all, p.Interferences)
	all = list(all, p.Pathways)
	all = list(all, p.Holders)
	all = list(all, p.Runs)
	all = list(all, p.Bundles)
	all = list(all, p.Cords)
	all = list(all, p.Tests)
	for _, e := range p.Waivers {
		all = append(all, subject{Entry: e})
	}
	for _, e := range p.Policies {
		all = append(all, subject{Entry: e})
	}
	return all
}

func list[T plant.Item](all []subject, items []T) []subject {
	for _, it := range items {
		all = append(all, subject{Entry: it.Place(), item: it})
	}
	return all
}
