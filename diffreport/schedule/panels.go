package schedule

import (
	"slices"

	"homerun/schema"
	"homerun/schema/plant"
)

// panels is the panel schedule: every port of every panel, with what is behind and
// before it.
func panels() Schedule {
	return Schedule{
		Name: "panel-schedule", Doc: "every port: the run behind it, the cord before it",
		headings: []string{"Panel", "Space", "Rack", "Unit", "Port", "Run", "Goes to", "Serves", "State", "Cord", "Patched to"},
		rows: func(s *survey) [][]any {
			var rows [][]any
			for _, h := range s.panels() {
				for i := range h.Ports {
					rows = append(rows, s.port(h, &h.Ports[i]))
				}
			}
			return rows
		},
	}
}

// free is what is said of a side of a port that nothing uses.
const free = "free"

func (s *survey) panels() []*plant.Holder {
	all := slices.DeleteFunc(slices.Clone(s.Holders), func(h *plant.Holder) bool {
		return h.Record().Kind.Name != schema.KindPanel || !s.asked(h.Space)
	})
	slices.SortStableFunc(all, func(a, b *plant.Holder) int { return schema.Natural(a.Label, b.Label) })
	return all
}

func (s *survey) port(h *plant.Holder, p *plant.Port) []any {
	row := []any{
		label(h), spaceOf(h.Space), s.show(h.Record(), schema.PanelRack.Field), s.show(h.Record(), schema.PanelUnit.Field), schema.Printable(p.String()),
	}
	if r := p.Rear; r != nil {
		row = append(row, label(r), portOf(r.Other(p)), s.show(r.Record(), schema.RunServes.Field), s.state(r))
	} else {
		row = append(row, free, "", "", "")
	}
	if c := p.Front; c != nil {
		return append(row, label(c), portOf(c.Other(p)))
	}
	return append(row, free, "")
}

func portOf(p *plant.Port) string {
	if p == nil {
		return "not recorded"
	}
	return schema.Printable(p.String())
}
