package labels

import (
	"fmt"

	"homerun/schema"
	"homerun/schema/plant"
)

// labelOf makes the n-th label, counted from 0, of one record. A label whose
// record is not found is made all the same: what an order asks for is printed.
func labelOf(id string, item plant.Item, n int) Label {
	label := Label{ID: id, rank: -1}
	if item == nil {
		return label
	}
	kind := item.Place().Kind.Name
	label.Kind, label.rank = kindWords(kind), rankOf(kind)
	switch it := item.(type) {
	case *plant.Run:
		label.Space, label.At = endPlace(it.From, it.To, n)
	case *plant.Cord:
		label.Space, label.At = endPlace(it.FromRow, it.ToRow, n)
	case *plant.Space:
		label.Space, label.At = it.Label, "at the door"
	case *plant.Pathway:
		label.Space, label.At = pathwayPlace(it, n)
	case *plant.Holder:
		label.Space, label.At = spaceName(it.Space), hardwarePlace(it.Place())
	case *plant.Rack:
		label.Space, label.At = spaceName(it.Space), "on the rack"
	case *plant.Busbar:
		label.Space, label.At = spaceName(it.Space), "on the busbar"
	}
	return label
}

// endPlace is the place of a cable's n-th label: first the one end, then the
// other, then the first again.
func endPlace(from, to plant.Row, n int) (space, at string) {
	end := from
	if n%2 == 1 {
		end = to
	}
	if len(end) == 0 {
		return "", "at the end that is not recorded"
	}
	return spaceName(end.Space()), "at " + end.String()
}

// pathwayPlace is the place of a pathway's n-th label: first the one end, then
// the other, with where it leads from there.
func pathwayPlace(p *plant.Pathway, n int) (space, at string) {
	if len(p.Through) == 0 {
		return "", ""
	}
	from, to := p.Through[0].Label, p.Through[len(p.Through)-1].Label
	if from == to {
		return from, "at one end of it"
	}
	if n%2 == 1 {
		from, to = to, from
	}
	return from, "towards " + to
}

// hardwarePlace says where in its room a piece of hardware is.
func hardwarePlace(e schema.Entry) string {
	rack := e.Own("rack")
	if rack == nil || rack.Bad {
		return ""
	}
	at := "in rack " + rack.Text
	if place := e.Own("unit"); place != nil && !place.Bad {
		at += fmt.Sprintf(" unit %d", place.Number)
	}
	return at
}

func spaceName(s *plant.Space) string {
	if s == nil {
		return ""
	}
	return s.Label
}
