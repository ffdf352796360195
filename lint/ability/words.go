package ability

import (
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// How a trace words what stands on the way.

// joined puts what is known behind a label.
func joined(parts ...string) string {
	var text strings.Builder
	for _, p := range parts {
		if p != "" {
			text.WriteString(", " + p)
		}
	}
	return text.String()
}

func lengthWords(declared func() (unit.Length, bool), in unit.System) string {
	l, stated := declared()
	if !stated {
		return "length not stated"
	}
	return l.Text(in)
}

// cableWords is what the type of a cable states: category or class, screen,
// conductors.
func cableWords(c *plant.Cable) string {
	if c == nil {
		return "type not stated"
	}
	var parts []string
	add := func(before string, h schema.Handle[string]) {
		if word, stated := h.In(c.Record()); stated {
			parts = append(parts, before+word)
		}
	}
	add("category ", schema.CableCategory)
	add("", schema.CableFibre)
	add("series ", schema.CableSeries)
	add("", schema.CableScreen)
	if wire, stated := schema.CableConductors.In(c.Record()); stated {
		parts = append(parts, wire.String())
	}
	return strings.Join(parts, " ")
}

func stateWords(r *plant.Run) string {
	state, known := r.State()
	switch {
	case !known:
		return "state unreadable"
	case state == schema.StateInService:
		return ""
	}
	return state
}

// wayWords lists the pathways and spaces of a run.
func wayWords(r *plant.Run, in unit.System) string {
	if r.Way == nil || len(r.Way.Pathways) == 0 {
		return ""
	}
	names := make([]string, 0, len(r.Way.Pathways))
	for _, w := range r.Way.Pathways {
		names = append(names, schema.Printable(w.Label))
	}
	spaces := make([]string, 0, len(r.Way.Spaces))
	for _, s := range r.Way.Spaces {
		text := schema.Printable(s.Label)
		if t, stated := schema.SpaceTemperature.In(s.Record()); stated {
			text += " (" + t.Text(in) + ")"
		}
		spaces = append(spaces, text)
	}
	return "in " + strings.Join(names, ", ") + ", through " + strings.Join(spaces, ", ")
}

func holderWords(h *plant.Holder) string {
	if h.IsEquipment() {
		if kind, stated := schema.EquipmentKind.In(h.Record()); stated {
			return strings.ReplaceAll(kind, "-", " ")
		}
	}
	return strings.ReplaceAll(h.Kind.Name, "-", " ")
}

func hardwareWords(h *plant.Holder) string {
	text := ""
	if category, stated := h.Category(); stated {
		text = "category " + category
	}
	if screen, stated := h.Screen(); stated {
		text = strings.TrimSpace(text + " " + screen)
	}
	return text
}

func spaceWords(s *plant.Space) string {
	if s == nil {
		return "space not stated"
	}
	text := "in " + schema.Printable(s.Label)
	if title, stated := schema.SpaceTitle.In(s.Record()); stated {
		text += " (" + schema.Printable(title) + ")"
	}
	return text
}
