package diffreport

import (
	"slices"

	"homerun/schema"
	"homerun/schema/plant"
)

// An excerpt collects records of both plants, under the labels of the later.
type excerpt struct {
	*planner
	entries []schema.Entry
	has     map[string]bool
}

func (x *excerpt) take(s side, e schema.Entry, label string) {
	if e.Record == nil || x.has[label] {
		return
	}
	x.has[label] = true
	x.entries = append(x.entries, schema.Entry{Record: x.carry(s, e.Record, label, nil), Path: schema.PlantFile, Line: e.Line})
}

// carry is a record under another label, with its references under the labels
// of the later plant.
func (x *excerpt) carry(s side, r *schema.Record, label string, parent *schema.Record) *schema.Record {
	if s == later && label == r.Label && parent == nil {
		return r
	}
	now := *r
	now.Label, now.Parent = label, parent
	if s == later {
		return &now
	}
	now.Values = referring(r.Values, x.roomNow)
	return &now
}

// referring are values with what they refer to under other labels.
func referring(values []schema.Value, called func(label string) string) []schema.Value {
	values = slices.Clone(values)
	for i := range values {
		v := &values[i]
		if v.Bad || !refers(v.Field) {
			continue
		}
		v.Text = called(v.Text)
		v.List = slices.Clone(v.List)
		for k, text := range v.List {
			v.List[k] = called(text)
		}
	}
	return values
}

// frame takes what cables lie in and end at, and what they are judged by.
func (x *excerpt) frame(s side, paths []string) {
	from := x.plantOf(s)
	x.take(s, from.Entry, "the plant")
	all := func(string) bool { return true }
	excerpted(x, s, from.Spaces, all)
	excerpted(x, s, from.Cables, all)
	excerpted(x, s, from.Interferences, all)
	excerpted(x, s, from.Pathways, func(label string) bool { return slices.Contains(paths, label) })
	for _, e := range append(slices.Clone(from.Policies), from.Waivers...) {
		x.take(s, e, e.Label)
	}
}

func excerpted[T plant.Item](x *excerpt, s side, items []T, wanted func(label string) bool) {
	for _, it := range items {
		label := x.labelNow(s, it.Record().Label)
		if wanted(label) {
			x.take(s, it.Place(), label)
		}
	}
}

func (p *planner) plantOf(s side) *plant.Plant {
	if s == earlier {
		return p.base
	}
	return p.head
}

// labelNow is a label under which the later plant knows a record.
func (p *planner) labelNow(s side, label string) string {
	if s == earlier {
		return p.roomNow(label)
	}
	return label
}

// cables takes the runs that lie in the pathways, in their bundles; of the
// earlier plant beside the later only those that are taken out.
func (x *excerpt) cables(s side, paths []string, leaving map[string]bool) {
	bundles := make(map[*plant.Bundle][]*plant.Run)
	for _, r := range x.runsIn(s, paths) {
		if leaving != nil && !leaving[r.Label] || physical(r) == nil {
			continue
		}
		for _, row := range []plant.Row{r.From, r.To} {
			if len(row) > 0 {
				x.take(s, row[0].Holder.Place(), x.labelNow(s, row[0].Holder.Label))
			}
		}
		if r.Bundle != nil {
			bundles[r.Bundle] = append(bundles[r.Bundle], r)
			continue
		}
		x.run(s, r, leaving)
	}
	for _, b := range x.plantOf(s).Bundles {
		if runs := bundles[b]; len(runs) > 0 {
			x.bundle(s, b, runs, leaving)
		}
	}
}

// runsIn are the runs that lie in some pathways, each once.
func (x *excerpt) runsIn(s side, paths []string) []*plant.Run {
	var all []*plant.Run
	met := make(map[*plant.Run]bool)
	for _, w := range x.plantOf(s).Pathways {
		if !slices.Contains(paths, x.labelNow(s, w.Label)) {
			continue
		}
		for _, r := range w.Runs {
			if !met[r] {
				met[r] = true
				all = append(all, r)
			}
		}
	}
	return all
}

// marked is the label of a cable, told from that of its successor.
func (x *excerpt) marked(s side, label string, leaving map[string]bool) string {
	label = x.labelNow(s, label)
	if leaving != nil {
		label += oldMark
	}
	return label
}

func (x *excerpt) run(s side, r *plant.Run, leaving map[string]bool) {
	x.take(s, r.Place(), x.marked(s, r.Label, leaving))
}

func (x *excerpt) bundle(s side, b *plant.Bundle, runs []*plant.Run, leaving map[string]bool) {
	label := x.marked(s, b.Label, leaving)
	if x.has[label] {
		return
	}
	x.has[label] = true
	now := *x.carry(s, b.Record(), label, nil)
	now.Inner = nil
	for _, r := range runs {
		now.Inner = append(now.Inner, x.carry(s, r.Record(), x.marked(s, r.Label, leaving), &now))
	}
	x.entries = append(x.entries, schema.Entry{Record: &now, Path: schema.PlantFile, Line: b.Line})
}
