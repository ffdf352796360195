package takeoff

import (
	"strings"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
)

// change counts what one record needs.
func (c *counter) change(ch *diffreport.Change) {
	fresh := ch.Before.Record == nil
	item, found := c.plant.Find(ch.Label)
	if !found || item.Record() != ch.After.Record {
		return // a label that is given twice: the linter names it
	}
	c.relabelled(ch, item)
	switch it := item.(type) {
	case *plant.Run:
		if fresh || ch.Class == diffreport.ClassAdd || ch.Meaning == schema.Repull {
			c.run(it)
		}
	case *plant.Cord:
		if fresh || ch.Meaning >= schema.Replace {
			c.cord(it)
		}
	case *plant.Holder:
		if fresh || ch.Meaning == schema.Replace {
			c.hardware(it.Entry, holderWords(it))
		}
	case *plant.Rack:
		if fresh || ch.Meaning == schema.Replace {
			c.hardware(it.Entry, "rack")
		}
	case *plant.Busbar:
		if fresh || ch.Meaning == schema.Replace {
			word, _ := schema.BusbarKind.In(it.Record())
			c.hardware(it.Entry, strings.TrimSpace(word+" busbar"))
		}
	case *plant.Pathway:
		if fresh || ch.Meaning == schema.Replace {
			c.pathway(it)
		}
	}
}

// relabelled counts the labels of what is only called something else.
func (c *counter) relabelled(ch *diffreport.Change, item plant.Item) {
	if ch.Former == "" {
		return
	}
	switch item.(type) {
	case *plant.Run, *plant.Cord:
		c.pieces(GroupLabel, "cable label, one at each end", ch.Kind+"s relabelled", 2)
	case *plant.Holder, *plant.Rack, *plant.Busbar, *plant.Pathway, *plant.Space:
		c.pieces(GroupLabel, "label on hardware and pathways", ch.Kind+"s relabelled", 1)
	}
}

func (c *counter) run(r *plant.Run) {
	if !r.Live() {
		c.left = append(c.left, r.Label)
		return
	}
	name, under := "type not stated", "runs by themselves"
	if r.Cable != nil {
		name = r.Cable.Label
	}
	if r.Bundle != nil {
		under = r.Bundle.Label
	}
	if length, stated := r.Length(); stated {
		c.metres(GroupCable, name, under, length)
		c.lengths[name] = append(c.lengths[name], piece{r.Label, length})
	} else {
		it := c.item(GroupCable, name)
		it.Unknown = append(it.Unknown, r.Label)
	}
	if len(r.From) > 0 && !r.From[0].Holder.Joins() {
		c.terminations(r.From) // where runs are joined the arriving one counts
	}
	c.terminations(r.To)
	c.pieces(GroupLabel, "cable label, one at each end", "runs", 2)
	if r.Way != nil {
		for _, w := range r.Way.Pathways {
			c.firestops(w)
		}
	}
}

// terminations counts what one end of a run is terminated in, a piece a port.
func (c *counter) terminations(row plant.Row) {
	if len(row) == 0 {
		return
	}
	h := row[0].Holder
	name := "termination, kind not stated"
	category, twisted := h.Category()
	connector := h.Own("connector")
	series := h.Own("series")
	switch {
	case h.IsEquipment():
		name = "plug"
	case h.Kind.Name == schema.KindClosure:
		name = "splice"
	case twisted:
		name = "jack, category " + category
		if screen, stated := h.Screen(); stated {
			name += ", " + screen
		}
	case connector != nil && !connector.Bad:
		name = "fibre connector, " + connector.Text
	case series != nil && !series.Bad:
		name = "coaxial connector, series " + series.Text
	}
	c.pieces(GroupTermination, name, h.Kind.Plural, len(row))
}

func (c *counter) cord(cord *plant.Cord) {
	name := "cord, type not stated"
	if cord.Cable != nil {
		name = cord.Cable.Label
	}
	length, stated := cord.CordLength()
	if !stated {
		it := c.item(GroupCord, name+", length not stated")
		it.Count++
		it.Unknown = append(it.Unknown, cord.Label)
	} else {
		c.pieces(GroupCord, name+", "+length.Text(c.plant.Units), "cords", 1)
	}
	c.pieces(GroupLabel, "cable label, one at each end", "cords", 2)
}

// hardware counts one piece of hardware and its label.
func (c *counter) hardware(e schema.Entry, name string) {
	c.pieces(GroupHardware, name, e.Kind.Plural, 1)
	c.pieces(GroupLabel, "label on hardware and pathways", e.Kind.Plural, 1)
}

// holderWords is what a panel, outlet or other holder is ordered as.
func holderWords(h *plant.Holder) string {
	parts := []string{strings.ReplaceAll(h.Kind.Name, "-", " ")}
	if v := h.Own("kind"); v != nil && !v.Bad {
		if h.IsEquipment() {
			return strings.ReplaceAll(v.Text, "-", " ") + " (equipment)"
		}
		parts[0] = v.Text + " " + parts[0]
	}
	if n := len(h.Ports); n == 1 {
		parts = append(parts, "1 port")
	} else if n > 1 {
		parts = append(parts, itoa(n)+" ports")
	}
	for _, field := range []struct{ name, before string }{{"category", "category "}, {"fibre", ""}, {"series", "series "}, {"connector", ""}, {"screen", ""}} {
		if v := h.Own(field.name); v != nil && !v.Bad {
			parts = append(parts, field.before+v.Text)
		}
	}
	return strings.Join(parts, ", ")
}

// pathway counts the metres of a pathway, by what it is.
func (c *counter) pathway(w *plant.Pathway) {
	kind, known := schema.PathwayKind.In(w.Record())
	length, stated := schema.PathwayLength.In(w.Record())
	if !known {
		kind = "kind not stated"
	}
	if diameter, sized := schema.PathwayDiameter.In(w.Record()); sized {
		kind += ", inside " + diameter.Text(c.plant.Units)
	} else if width, sized := schema.PathwayWidth.In(w.Record()); sized {
		kind += ", wide " + width.Text(c.plant.Units)
	}
	if stated {
		c.metres(GroupPathway, kind, w.Label, length)
	} else {
		it := c.item(GroupPathway, kind)
		it.Unknown = append(it.Unknown, w.Label)
	}
	c.pieces(GroupLabel, "label on hardware and pathways", w.Kind.Plural, 1)
	c.firestops(w)
}
