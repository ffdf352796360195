package diffreport

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// stock collects what the work uses up.
type stock struct{ items map[string]*Material }

func newStock() stock { return stock{items: make(map[string]*Material)} }

func (s stock) item(name string) *Material {
	m := s.items[name]
	if m == nil {
		m = &Material{Item: name}
		s.items[name] = m
	}
	return m
}

// cable takes the length of a run off the reel.
func (s stock) cable(r *plant.Run) {
	name := "cable of a type that is not stated"
	if r.Cable != nil {
		name = r.Cable.Label
	}
	m := s.item(name)
	length, known := r.Length()
	if !known {
		m.Unknown = append(m.Unknown, r.Label)
		return
	}
	if sum := m.Length + length; sum >= m.Length {
		m.Length = sum
	}
	m.Parts = append(m.Parts, Part{Record: r.Label, Length: length})
}

// cord takes one cord.
func (s stock) cord(c *plant.Cord) {
	name := "cord"
	if c.Cable != nil {
		name += " " + c.Cable.Label
	}
	if length, known := c.CordLength(); known {
		name += ", " + length.String()
	}
	s.pieces(name, c.Label, 1)
}

// jacks takes the jacks or fibre connectors of one end of a run. An end in
// equipment is a plug.
func (s stock) jacks(run string, e end) {
	h := e.holder()
	if h == nil {
		return
	}
	name := "termination"
	if h.IsEquipment() {
		name = "plug"
	}
	if category, ok := h.Category(); ok {
		name = "jack, Category " + category
		if v := h.Own("pinout"); v != nil && !v.Bad {
			name += ", " + v.Text
		}
	} else if v := h.Own("connector"); v != nil && !v.Bad {
		name = "fibre connector, " + v.Text
	}
	s.pieces(name, run, len(e.row))
}

func (s stock) pieces(name, record string, n int) {
	m := s.item(name)
	m.Count += n
	m.Parts = append(m.Parts, Part{Record: record, Count: n})
}

// materials lists the stock by item.
func (p *planner) materials() []Material {
	all := make([]Material, 0, len(p.used.items))
	for _, m := range p.used.items {
		slices.SortStableFunc(m.Parts, func(a, b Part) int { return cmp.Compare(a.Record, b.Record) })
		slices.Sort(m.Unknown)
		m.Parts = together(m.Parts)
		all = append(all, *m)
	}
	slices.SortFunc(all, func(a, b Material) int { return cmp.Compare(a.Item, b.Item) })
	return all
}

// together adds up the neighbouring parts of one record.
func together(parts []Part) []Part {
	var out []Part
	for _, p := range parts {
		if n := len(out); n > 0 && out[n-1].Record == p.Record && p.Length == 0 && out[n-1].Length == 0 {
			out[n-1].Count += p.Count
			continue
		}
		out = append(out, p)
	}
	return out
}

// Quantity prints how much is used, in a system of units.
func (m *Material) Quantity(s unit.System) string {
	switch {
	case m.Count > 0:
		return fmt.Sprint(m.Count)
	case len(m.Parts) == 0:
		return notStated
	}
	return m.Length.Text(s)
}

// Working prints the sum that gives the quantity.
func (m *Material) Working(s unit.System) string {
	parts := make([]string, 0, len(m.Parts)+1)
	for _, p := range m.Parts {
		switch {
		case p.Length > 0:
			parts = append(parts, p.Record+" "+p.Length.Text(s))
		case p.Count > 1:
			parts = append(parts, fmt.Sprintf("%s %d", p.Record, p.Count))
		default:
			parts = append(parts, p.Record)
		}
	}
	text := strings.Join(parts, " + ")
	if len(m.Unknown) > 0 {
		text = strings.TrimPrefix(text+"; without a stated length: "+strings.Join(m.Unknown, ", "), "; ")
	}
	return text
}

// TestLimit is what a run of a cable type is tested against: the permanent link of
// its category, or for ISO of the class that the category makes up (ISO/IEC
// 11801-1), and the loss of the link for fibre and coaxial cable.
func TestLimit(c *plant.Cable, regime standard.Regime) string {
	switch c.Medium() {
	case plant.TwistedPair:
		word, known := c.Category()
		category, err := standard.ParseCategory(word)
		switch {
		case !known || err != nil:
		case regime == standard.ISO && category.Class() != "":
			return "ISO permanent link, Class " + category.Class()
		default:
			return "TIA permanent link, Category " + word
		}
	case plant.Fibre:
		word, _ := schema.CableFibre.In(c.Record())
		return "loss and length of the link at both wavelengths, " + word
	case plant.Coax:
		return "loss of the link over its band, 75 ohm"
	case plant.Unstated:
	}
	return "the records state no category: agree the limit first"
}
