package diffreport

import (
	"fmt"
	"slices"
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
)

// A portSide is one side of one port: what a single cable can be on.
type portSide struct {
	// holder is the label by which the planner knows the holder.
	holder string
	port   int
	front  bool
}

// A hold is a cable on a port side.
type hold struct {
	side  portSide
	cable string
}

func (s portSide) String() string {
	side := "rear"
	if s.front {
		side = "front"
	}
	return fmt.Sprintf("%s:%d %s", strings.TrimSuffix(s.holder, gone), s.port, side)
}

// An end is where a cable ends on one side of the comparison.
type end struct {
	row   plant.Row
	front bool
}

func (e end) holder() *plant.Holder {
	if len(e.row) == 0 {
		return nil
	}
	return e.row[0].Holder
}

// space is the label of the room that the end is in.
func (e end) space() string {
	if s := e.row.Space(); s != nil {
		return s.Label
	}
	return ""
}

// sides are the port sides that the end takes.
func (p *planner) sides(s side, e end) []portSide {
	h := e.holder()
	if h == nil {
		return nil
	}
	label := h.Label
	if s == earlier {
		label = p.same(label)
	}
	sides := make([]portSide, len(e.row))
	for i := range e.row {
		sides[i] = portSide{label, e.row[i].Number, e.front}
	}
	return sides
}

// runEnds are the two ends of a run that is there: a planned one has none. A
// run takes the rear, but the front where it starts at a point that joins two
// runs and where it ends in a plug.
func runEnds(r *plant.Run) [2]end {
	if r == nil {
		return [2]end{}
	}
	if (subject{Entry: r.Place(), item: r}).stage() == onPaper {
		return [2]end{}
	}
	front := func(row plant.Row, starts bool) bool {
		return len(row) > 0 && (row[0].Holder.IsEquipment() || starts && row[0].Holder.Joins())
	}
	return [2]end{{r.From, front(r.From, true)}, {r.To, front(r.To, false)}}
}

// cordEnds are the two ends of a cord.
func cordEnds(c *plant.Cord) [2]end {
	if c == nil {
		return [2]end{}
	}
	return [2]end{{c.FromRow, true}, {c.ToRow, true}}
}

// occupancy lists what is on the sides of the touched holders in one plant.
func (p *planner) occupancy(s side) map[portSide][]string {
	all := make(map[portSide][]string)
	put := func(item plant.Item, ends [2]end) {
		label := item.Record().Label
		if s == earlier {
			label = p.same(label)
		}
		for _, e := range ends {
			for _, at := range p.sides(s, e) {
				if p.touched[at.holder] && !slices.Contains(all[at], label) {
					all[at] = append(all[at], label)
				}
			}
		}
	}
	p.onTouched(s, func(item plant.Item) {
		switch it := item.(type) {
		case *plant.Run:
			put(it, runEnds(it))
		case *plant.Cord:
			put(it, cordEnds(it))
		}
	})
	return all
}

// onTouched visits the cables on touched holders, and those that claim a side
// which another one has.
func (p *planner) onTouched(s side, visit func(plant.Item)) {
	from := p.base
	if s == later {
		from = p.head
	}
	for _, h := range from.Holders {
		label := h.Label
		if s == earlier {
			label = p.same(label)
		}
		if !p.touched[label] {
			continue
		}
		for i := range h.Ports {
			port := &h.Ports[i]
			if port.Rear != nil {
				visit(port.Rear)
			}
			if port.Onward != nil {
				visit(port.Onward)
			}
			if port.Front != nil {
				visit(port.Front)
			}
		}
	}
	for _, c := range from.Clashes {
		visit(c.First)
		visit(c.Second)
	}
}

func shown(cable string) string { return strings.TrimSuffix(cable, gone) }

// claimedTwice lists the port sides that two records of the later plant claim,
// and changed cables whose end is no port of the records: no work can lead
// there.
func (p *planner) claimedTwice() []string {
	var clashes []string
	for _, c := range p.head.Clashes {
		clashes = append(clashes, fmt.Sprintf("%s %s: %s and %s are both recorded there", c.Port, c.Side, c.First.Record().Label, c.Second.Record().Label))
	}
	for i := range p.changes {
		c := &p.changes[i]
		if !c.onSite() || c.After.Record == nil {
			continue
		}
		for _, name := range []string{schema.RunFrom.Name, schema.RunTo.Name} {
			v := c.After.Own(name)
			if v == nil || v.Field.Type != schema.PortReference {
				continue
			}
			if lost(c.after, name) {
				clashes = append(clashes, fmt.Sprintf("%s: %s %s is no port of the records", c.Label, name, v.Show(p.head.Units)))
			}
		}
	}
	return tidy(clashes)
}

// lost says whether a stated end could not be followed to a port.
func lost(s subject, name string) bool {
	var ends [2]bool
	switch it := s.item.(type) {
	case *plant.Run:
		ends = [2]bool{len(it.From) == 0, len(it.To) == 0}
	case *plant.Cord:
		ends = [2]bool{it.From == nil, it.To == nil}
	}
	if name == schema.RunFrom.Name {
		return ends[0]
	}
	return ends[1]
}
