package labels

import (
	"cmp"
	"slices"
	"strings"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
)

// A Label is one piece of tape or card.
type Label struct {
	// ID is the identifier: it is printed, and the code on the label holds it.
	ID string
	// Kind says in words what is labelled, such as "run" or "fire-stop, 1 h".
	Kind string
	// Space is the room in which it is put on, empty where the records do not
	// say; At says where exactly.
	Space, At string

	rank int
}

// A Strip is the labels of a holder's ports, to be put on in one piece.
type Strip struct {
	// Holder is the panel or outlet, Space its room.
	Holder, Space string
	// Ports are the ports as references write them, "1A-A:07".
	Ports []string
}

// A Set is the labels that a plant or a change of it needs.
type Set struct {
	// Plant is the plant's label, Order the number of the work order; empty
	// for a whole plant.
	Plant, Order string
	// Labels stand room by room, each as often as it is needed.
	Labels []Label
	Strips []Strip
	// Planned are the runs that have no label yet, since they have no cable.
	Planned []string
}

// Whole returns the labels of a plant: those of the order that builds it, and
// those of the runs that stay in place out of use, which no order would pull.
func Whole(p *plant.Plant) Set {
	order := diffreport.Plan(nil, p, diffreport.Compare(nil, p, diffreport.Options{}), diffreport.PlanOptions{})
	pulled := make(map[string]bool)
	for _, id := range order.Labels {
		pulled[id] = true
	}
	var planned []string
	for _, r := range p.Runs {
		state, known := r.State()
		switch {
		case known && state == schema.StatePlanned:
			planned = append(planned, r.Label)
		case !pulled[r.Label]:
			order.Labels = append(order.Labels, r.Label, r.Label)
		}
	}
	slices.SortFunc(planned, schema.Natural)
	set := For(order, p)
	set.Order, set.Planned = "", planned
	return set
}

// For returns the labels that an order needs, with their places in the later of
// the two plants that it was made of, which may be nil.
func For(order diffreport.Order, head *plant.Plant) Set {
	set := Set{Plant: order.Plant, Order: order.Number}
	if head == nil {
		head = &plant.Plant{}
	}
	left := make(map[string][]diffreport.Firestop)
	for _, stop := range order.Firestops {
		left[stop.ID] = slices.Repeat([]diffreport.Firestop{stop}, len(stop.Between))
	}
	printed := make(map[string]int)
	for _, id := range order.Labels {
		if stops := left[id]; len(stops) > 0 {
			set.Labels = append(set.Labels, firestopLabel(stops[0], len(stops), head.Units))
			left[id] = stops[1:]
			continue
		}
		item, _ := head.Find(id)
		set.Labels = append(set.Labels, labelOf(id, item, printed[id]))
		printed[id]++
	}
	for _, holder := range order.Strips {
		item, _ := head.Find(holder)
		set.Strips = append(set.Strips, stripsOf(item)...)
	}
	slices.SortStableFunc(set.Labels, func(a, b Label) int {
		return cmp.Or(schema.Natural(a.Space, b.Space), cmp.Compare(a.rank, b.rank), schema.Natural(a.ID, b.ID), schema.Natural(a.At, b.At))
	})
	slices.SortStableFunc(set.Strips, func(a, b Strip) int {
		return cmp.Or(schema.Natural(a.Space, b.Space), schema.Natural(a.Holder, b.Holder))
	})
	return set
}

// stripsOf are the port labels of an item: none where it has no ports. Those of
// equipment are numbered by its maker, so an order never asks for them.
func stripsOf(item plant.Item) []Strip {
	h, ok := item.(*plant.Holder)
	if !ok || len(h.Ports) == 0 {
		return nil
	}
	strip := Strip{Holder: h.Label, Space: spaceName(h.Space), Ports: make([]string, len(h.Ports))}
	for i := range h.Ports {
		strip.Ports[i] = h.Ports[i].String()
	}
	return []Strip{strip}
}

// rankOf orders the kinds in one room as the record language does.
func rankOf(kind string) int {
	return slices.IndexFunc(schema.Kinds(), func(k *schema.Kind) bool { return k.Name == kind })
}

// kindWords is a kind's name as people write it.
func kindWords(kind string) string { return strings.ReplaceAll(kind, "-", " ") }
