package plant

import (
	"fmt"
	"slices"

	"homerun/schema"
	"homerun/schema/unit"
)

// mostSuggestions bounds how often a lost reference is compared with every
// label: a plant with a missing file has thousands of them.
const mostSuggestions = 40

func (p *Plant) resolve() {
	for _, s := range p.Spaces {
		s.Inside = follow[*Space](p, s.Entry, schema.SpaceInside)
	}
	for _, b := range p.Busbars {
		b.Space = follow[*Space](p, b.Entry, schema.BusbarSpace)
		b.Bond = follow[*Busbar](p, b.Entry, schema.BusbarBond)
	}
	for _, r := range p.Racks {
		r.Space = follow[*Space](p, r.Entry, schema.RackSpace)
		r.Bond = follow[*Busbar](p, r.Entry, schema.RackBond)
	}
	for _, i := range p.Interferences {
		i.Space = follow[*Space](p, i.Entry, schema.InterferenceSpace)
	}
	for _, w := range p.Pathways {
		p.resolvePathway(w)
	}
	for _, h := range p.Holders {
		p.resolveHolder(h)
	}
	for _, b := range p.Bundles {
		b.Cable = follow[*Cable](p, b.Entry, schema.BundleCable)
		b.Way = p.way(b.Entry, schema.BundleRoute)
	}
	for _, r := range p.Runs {
		p.resolveRun(r)
	}
	for _, c := range p.Cords {
		p.resolveCord(c)
	}
	for _, t := range p.Tests {
		if t.Run = follow[*Run](p, t.Entry, schema.TestRun); t.Run != nil {
			t.Run.Tests = append(t.Run.Tests, t)
		}
	}
}

func (p *Plant) resolvePathway(w *Pathway) {
	w.Through = followAll[*Space](p, w.Entry, schema.PathwayThrough.Field)
	for _, in := range w.Inner {
		e := w.In(in)
		switch in.Kind.Name {
		case schema.KindNear:
			near := Nearby{Entry: e}
			if at, ok := p.find(e, in.Label, in.Kind.Refers, e.Within(in.LabelAt), ""); ok {
				near.Source, _ = at.(*Interference)
			}
			w.Near = append(w.Near, near)
		case schema.KindCrossing:
			followAll[*Space](p, e, schema.CrossingBetween.Field)
		}
	}
}

// resolveHolder follows what every kind with ports has under the same names.
func (p *Plant) resolveHolder(h *Holder) {
	h.Space = followNamed[*Space](p, h.Entry, "space")
	h.Rack = followNamed[*Rack](p, h.Entry, "rack")
	h.Bond = followNamed[*Busbar](p, h.Entry, "bond")
	if v := h.Own("ports"); v != nil && !v.Bad && (v.Number == 0 || v.Number > mostPorts) {
		p.problem(schema.BadValue, h.Entry, h.Within(v.At), fmt.Sprintf("%s: %d ports", schema.Printable(h.Label), v.Number), fmt.Sprintf("a record may have 1 to %d ports", mostPorts))
	}
}

func (p *Plant) resolveRun(r *Run) {
	r.length, r.hasLength = schema.RunLength.In(r.Record())
	r.state, r.hasState = schema.RunState.Or(r.Record(), schema.StateInService)
	if v := r.Record().Own(schema.RunCable.Name); v != nil || r.Bundle == nil {
		r.Cable = follow[*Cable](p, r.Entry, schema.RunCable)
	} else {
		r.Cable = r.Bundle.Cable
	}
	if v := r.Record().Own(schema.RunRoute.Name); v != nil || r.Bundle == nil {
		r.Way = p.way(r.Entry, schema.RunRoute)
	} else {
		r.Way = r.Bundle.Way
	}
	if r.Way != nil {
		for _, w := range r.Way.Pathways {
			w.Runs = append(w.Runs, r)
			w.Load(r, 1)
		}
	}
	r.From = p.row(r.Entry, schema.RunFrom)
	for i := range r.From {
		p.attach(&r.From[i], r, schema.RunFrom.Field)
	}
	r.To = p.row(r.Entry, schema.RunTo)
	for i := range r.To {
		p.attach(&r.To[i], r, schema.RunTo.Field)
	}
}

func (p *Plant) resolveCord(c *Cord) {
	c.length, c.hasLength = schema.CordLength.In(c.Record())
	c.Cable = follow[*Cable](p, c.Entry, schema.CordCable)
	c.FromRow, c.ToRow = p.row(c.Entry, schema.CordFrom), p.row(c.Entry, schema.CordTo)
	c.From, c.To = c.FromRow.First(), c.ToRow.First()
	for i := range c.FromRow {
		p.plug(&c.FromRow[i], c, schema.CordFrom.Field)
	}
	for i := range c.ToRow {
		p.plug(&c.ToRow[i], c, schema.CordTo.Field)
	}
}

// way follows a route and adds up what it passes.
func (p *Plant) way(e schema.Entry, h schema.Handle[[]string]) *Way {
	labels, stated := h.In(e.Record)
	if !stated {
		return nil
	}
	w := &Way{Pathways: followAll[*Pathway](p, e, h.Field)}
	w.Known = len(w.Pathways) == len(labels)
	seen := make(map[*Space]bool)
	for _, path := range w.Pathways {
		length, known := schema.PathwayLength.In(path.Record())
		through, _ := schema.PathwayThrough.In(path.Record())
		w.Known = w.Known && known && len(through) > 0 && len(path.Through) == len(through)
		w.Length = addLength(w.Length, length)
		for _, s := range path.Through {
			if !seen[s] {
				seen[s] = true
				w.Spaces = append(w.Spaces, s)
			}
		}
	}
	return w
}

// addLength adds two lengths that are not negative and stays at the greatest
// one instead of running over.
func addLength(a, b unit.Length) unit.Length {
	if sum := a + b; sum >= a {
		return sum
	}
	return 1<<63 - 1
}

// row finds the ports that a reference names. A port beyond the holder's last
// leaves the row empty; the linter's port rule names the place.
func (p *Plant) row(e schema.Entry, h schema.Handle[schema.Port]) Row {
	ref, ok := h.In(e.Record)
	if !ok {
		return nil
	}
	at, ok := p.find(e, ref.Label, h.Kinds, e.Where(h.Field), h.Name+": ")
	if !ok {
		return nil
	}
	holder, ok := at.(*Holder)
	if !ok || ref.Last > len(holder.Ports) {
		return nil
	}
	return holder.Ports[ref.First-1 : ref.Last : ref.Last]
}

// follow resolves a reference; nil when it is not stated or leads nowhere.
func follow[T Item](p *Plant, e schema.Entry, h schema.Handle[string]) T {
	return followField[T](p, e, h.Field)
}

func followNamed[T Item](p *Plant, e schema.Entry, name string) T {
	if f, ok := e.Kind.Field(name); ok {
		return followField[T](p, e, f)
	}
	var none T
	return none
}

func followField[T Item](p *Plant, e schema.Entry, f *schema.Field) T {
	var none T
	v := e.Own(f.Name)
	if v == nil || v.Bad {
		return none
	}
	at, ok := p.find(e, v.Text, f.Kinds, e.Within(v.At), f.Name+": ")
	if !ok {
		return none
	}
	found, ok := at.(T)
	if !ok {
		return none
	}
	return found
}

func followAll[T Item](p *Plant, e schema.Entry, f *schema.Field) []T {
	v := e.Own(f.Name)
	if v == nil || v.Bad {
		return nil
	}
	found := make([]T, 0, len(v.List))
	for _, label := range v.List {
		if at, ok := p.find(e, label, f.Kinds, e.Within(v.At), f.Name+": "); ok {
			if t, is := at.(T); is {
				found = append(found, t)
			}
		}
	}
	return found
}

// find looks a label up and names the problem where it leads nowhere or to a
// record of the wrong kind.
func (p *Plant) find(e schema.Entry, label string, kinds []string, at schema.Location, field string) (Item, bool) {
	it, ok := p.index[label]
	if !ok {
		p.lost(e, label, kinds, at, field)
		return nil, false
	}
	found := it.Place()
	if slices.Contains(kinds, found.Kind.Name) {
		return it, true
	}
	p.problem(schema.UnknownReference, e, at, fmt.Sprintf("%s: %s%s is %s", schema.Printable(e.Name()), field, schema.Quote(label), schema.OneOf([]string{found.Kind.Name})),
		"name "+schema.OneOf(kinds), schema.Note{Kind: found.Kind.Name, Label: label, At: found.Start(), Message: "stated here"})
	return nil, false
}

func (p *Plant) lost(e schema.Entry, label string, kinds []string, at schema.Location, field string) {
	next := fmt.Sprintf("add the %s, or correct the label", kinds[0])
	if p.tried < mostSuggestions {
		p.tried++
		if near := p.Nearest(label, kinds...); near != "" {
			next = fmt.Sprintf("did you mean %s?", schema.Quote(near))
		}
	}
	p.problem(schema.UnknownReference, e, at, fmt.Sprintf("%s: %sthere is no %s", schema.Printable(e.Name()), field, schema.Quote(label)), next)
}
