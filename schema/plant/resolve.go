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

func (p *builder) resolve() {
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
	p.layRuns()
	for _, c := range p.Cords {
		p.resolveCord(c)
	}
	for _, t := range p.Tests {
		t.Run = follow[*Run](p, t.Entry, schema.TestRun)
		switch {
		case t.Run == nil:
		case t.Run.Tests == nil:
			t.Run.Tests = p.tested.one(t)
		default:
			t.Run.Tests = append(t.Run.Tests, t)
		}
	}
}

func (p *builder) resolvePathway(w *Pathway) {
	w.Through = followAll(p, w.Entry, schema.PathwayThrough.Field, &p.through)
	for _, in := range w.Inner {
		e := w.In(in)
		switch in.Kind.Name {
		case schema.KindNear:
			near := Nearby{Entry: e}
			near.Source, _ = p.find(e, in.Label, in.Kind.Refers, nil).(*Interference)
			w.Near = append(w.Near, near)
		case schema.KindCrossing:
			followAll(p, e, schema.CrossingBetween.Field, &p.through)
		}
	}
}

// resolveHolder follows what every kind with ports has under the same names.
func (p *builder) resolveHolder(h *Holder) {
	h.Space = followNamed[*Space](p, h.Entry, "space")
	h.Rack = followNamed[*Rack](p, h.Entry, "rack")
	h.Bond = followNamed[*Busbar](p, h.Entry, "bond")
	if v := h.Own("ports"); v != nil && !v.Bad && (v.Number == 0 || v.Number > mostPorts) {
		p.problem(schema.BadValue, h.Entry, h.Within(v.At), fmt.Sprintf("%s: %d ports", schema.Printable(h.Label), v.Number), fmt.Sprintf("a record may have 1 to %d ports", mostPorts))
	}
}

func (p *builder) resolveRun(r *Run) {
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
			w.laid++
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

// layRuns lists for each pathway the runs in it, once it is known how many there are.
func (p *builder) layRuns() {
	for _, w := range p.Pathways {
		if w.laid > 0 {
			w.Runs = make([]*Run, 0, w.laid)
		}
	}
	for _, r := range p.Runs {
		if r.Way == nil {
			continue
		}
		for _, w := range r.Way.Pathways {
			w.Runs = append(w.Runs, r)
			w.Load(r, 1)
		}
	}
}

func (p *builder) resolveCord(c *Cord) {
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
func (p *builder) way(e schema.Entry, h schema.Handle[[]string]) *Way {
	labels, stated := h.In(e.Record)
	if !stated {
		return nil
	}
	w := &p.ways.one(Way{Pathways: followAll(p, e, h.Field, &p.passed)})[0]
	w.Known = len(w.Pathways) == len(labels)
	most := 0
	for _, path := range w.Pathways {
		length, known := schema.PathwayLength.In(path.Record())
		through, _ := schema.PathwayThrough.In(path.Record())
		w.Known = w.Known && known && len(through) > 0 && len(path.Through) == len(through)
		w.Length = addLength(w.Length, length)
		most += len(path.Through)
	}
	w.Spaces = p.passes(w.Pathways, most)
	return w
}

// fewSpaces is how many spaces are compared with each other: a map would cost more.
const fewSpaces = 16

// passes lists the spaces that pathways pass, at most so many, each once.
func (p *builder) passes(ways []*Pathway, most int) []*Space {
	all := p.through.list(min(most, len(p.Spaces)))
	var seen map[*Space]bool
	if most > fewSpaces {
		seen = make(map[*Space]bool, len(p.Spaces))
	}
	for _, path := range ways {
		for _, s := range path.Through {
			if seen[s] || seen == nil && slices.Contains(all, s) {
				continue
			}
			if seen != nil {
				seen[s] = true
			}
			all = append(all, s)
		}
	}
	return all
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
func (p *builder) row(e schema.Entry, h schema.Handle[schema.Port]) Row {
	v := e.Lookup(h.Field)
	if v == nil || v.Bad {
		return nil
	}
	holder, ok := p.find(e, v.Text, h.Kinds, v).(*Holder)
	if !ok || v.Last > int64(len(holder.Ports)) {
		return nil
	}
	return holder.Ports[v.Number-1 : v.Last : v.Last]
}

// follow resolves a reference; nil when it is not stated or leads nowhere.
func follow[T Item](p *builder, e schema.Entry, h schema.Handle[string]) T {
	return followField[T](p, e, h.Field)
}

func followNamed[T Item](p *builder, e schema.Entry, name string) T {
	if f, ok := e.Kind.Field(name); ok {
		return followField[T](p, e, f)
	}
	var none T
	return none
}

func followField[T Item](p *builder, e schema.Entry, f *schema.Field) T {
	var none T
	v := e.Own(f.Name)
	if v == nil || v.Bad {
		return none
	}
	found, ok := p.find(e, v.Text, f.Kinds, v).(T)
	if !ok {
		return none
	}
	return found
}

func followAll[T Item](p *builder, e schema.Entry, f *schema.Field, from *stock[T]) []T {
	v := e.Own(f.Name)
	if v == nil || v.Bad {
		return nil
	}
	found := from.list(len(v.List))
	for _, label := range v.List {
		if t, is := p.find(e, label, f.Kinds, v).(T); is {
			found = append(found, t)
		}
	}
	return found
}

// find looks up a label that a value names, or without a value that of the entry. It is
// nil, and a problem named, where that leads nowhere or to a record of the wrong kind.
func (p *builder) find(e schema.Entry, label string, kinds []string, v *schema.Value) Item {
	it := p.index.find(label)
	if it != nil && slices.Contains(kinds, it.Record().Kind.Name) {
		return it
	}
	p.astray(e, label, kinds, v, it)
	return nil
}

// astray names a reference that leads nowhere, or to what it should not.
func (p *builder) astray(e schema.Entry, label string, kinds []string, v *schema.Value, it Item) {
	at, field := e.LabelAt, ""
	if v != nil {
		at, field = v.At, v.Field.Name+": "
	}
	if it == nil {
		p.lost(e, label, kinds, e.Within(at), field)
		return
	}
	found := it.Place()
	p.problem(schema.UnknownReference, e, e.Within(at), fmt.Sprintf("%s: %s%s is %s", schema.Printable(e.Name()), field, schema.Quote(label), schema.OneOf([]string{found.Kind.Name})),
		"name "+schema.OneOf(kinds), schema.Note{Kind: found.Kind.Name, Label: label, At: found.Start(), Message: "stated here"})
}

func (p *builder) lost(e schema.Entry, label string, kinds []string, at schema.Location, field string) {
	next := fmt.Sprintf("add the %s, or correct the label", kinds[0])
	if p.tried < mostSuggestions {
		p.tried++
		if near := p.Nearest(label, kinds...); near != "" {
			next = fmt.Sprintf("did you mean %s?", schema.Quote(near))
		}
	}
	p.problem(schema.UnknownReference, e, at, fmt.Sprintf("%s: %sthere is no %s", schema.Printable(e.Name()), field, schema.Quote(label)), next)
}
