package diffreport

import (
	"fmt"
	"slices"
	"strings"

	"homerun/schema"
)

// replay carries out the steps on a model of the port sides and says what does
// not work: a side that would hold two cables, or an end that is not the later
// plant.
func (p *planner) replay(steps []Step) []string {
	on, clashes := p.begins()
	for _, step := range steps {
		for _, f := range step.frees {
			if i := slices.Index(on[f.side], f.cable); i >= 0 {
				on[f.side] = slices.Delete(on[f.side], i, i+1)
			}
		}
		for _, t := range step.takes {
			for _, there := range on[t.side] {
				clashes = append(clashes, fmt.Sprintf("step %d: %s already holds %s when %s is connected", step.Number, t.side, shown(there), shown(t.cable)))
			}
			on[t.side] = append(on[t.side], t.cable)
		}
	}
	want := p.occupancy(later)
	for at := range want {
		slices.Sort(want[at])
		slices.Sort(on[at])
		if !slices.Equal(on[at], want[at]) {
			clashes = append(clashes, fmt.Sprintf("%s: the steps end with %s there, the records with %s", at, holding(on[at]), holding(want[at])))
		}
	}
	for at, left := range on {
		if len(left) > 0 && len(want[at]) == 0 {
			clashes = append(clashes, fmt.Sprintf("%s: the steps end with %s there, the records with nothing", at, holding(left)))
		}
	}
	return tidy(clashes)
}

// begins is what is on the port sides when the work begins: what the earlier
// plant has, as the records correct it. A cable that is found withdrawn in place
// was there all along. Clashes are sides that two cables would have had.
func (p *planner) begins() (on map[portSide][]string, clashes []string) {
	on = p.occupancy(earlier)
	for i := range p.changes {
		c := &p.changes[i]
		if c.onSite() || c.Kind != schema.KindRun {
			continue
		}
		was, is := runEnds(c.before.run()), runEnds(c.after.run())
		label := c.Label
		if c.After.Record == nil {
			label += gone
		}
		for e := range was {
			left, found := p.sides(earlier, was[e]), p.sides(later, is[e])
			if equalSides(left, found) {
				continue
			}
			for _, at := range left {
				on[at] = slices.DeleteFunc(on[at], func(there string) bool { return there == label })
			}
			clashes = append(clashes, p.finds(on, found, label)...)
		}
	}
	return on, clashes
}

// finds puts a cable on sides where the records find it.
func (p *planner) finds(on map[portSide][]string, sides []portSide, label string) (clashes []string) {
	for _, at := range sides {
		if !p.touched[at.holder] {
			continue
		}
		if len(on[at]) > 0 {
			clashes = append(clashes, fmt.Sprintf("%s: the records find %s there, where they had %s", at, shown(label), holding(on[at])))
		}
		on[at] = append(on[at], label)
	}
	return clashes
}

// holding names what is on a side.
func holding(cables []string) string {
	if len(cables) == 0 {
		return "nothing"
	}
	names := make([]string, len(cables))
	for i, c := range cables {
		names[i] = shown(c)
	}
	return strings.Join(names, " and ")
}
