package plant

import (
	"slices"

	"homerun/schema"
	"homerun/schema/unit"
)

// item is what every type of the plant has: its record in its place.
type item struct{ schema.Entry }

// Record is the item's record.
func (i item) Record() *schema.Record { return i.Entry.Record }

// Place is the item's record in its file.
func (i item) Place() schema.Entry { return i.Entry }

// A Space is a room, void, shaft or outdoor area.
type Space struct {
	item
	// Inside is the larger space it is part of, or nil.
	Inside *Space
}

// Within says whether a space is another one or inside it, in up to 16 steps:
// records may state a ring. A nil Space is within none.
func (s *Space) Within(other *Space) bool {
	const most = 16
	for range most {
		if s == nil || s == other {
			return s != nil
		}
		s = s.Inside
	}
	return false
}

// A Pathway is what cable lies in between two places.
type Pathway struct {
	item
	// Through are the spaces it passes, in order; unresolved ones left out.
	Through []*Space
	// Near are the sources of interference beside it.
	Near []Nearby
	// Runs are the runs laid in it, in the order of the records.
	Runs []*Run
	// Loads are the same runs counted by what they are, in the order in which each
	// first occurs.
	Loads []Load

	laid    int // how many runs there are to be
	loading int // the load that was counted last: neighbours are alike
}

// A Load is the runs of one cable type and one state of life in a pathway.
type Load struct {
	// Cable is the type, nil where it was not found.
	Cable *Cable
	// First is the first of the runs, in whose state all of them are.
	First *Run
	// Count is how many there are. A run that passes a pathway twice lies in it
	// twice.
	Count int
}

// Lying is how many cables lie in the pathway.
func (w *Pathway) Lying() int {
	n := 0
	for i := range w.Loads {
		n += w.Loads[i].Count
	}
	return n
}

// Load adds a number of cables to what lies in the pathway, of the type and in the
// state of a run that is the first of them. Build does it for every run; who knows
// the numbers need not build all of them.
func (w *Pathway) Load(r *Run, count int) {
	same := func(l Load) bool {
		return l.Cable == r.Cable && l.First.state == r.state && l.First.hasState == r.hasState
	}
	if len(w.Loads) == 0 || !same(w.Loads[w.loading]) {
		w.loading = slices.IndexFunc(w.Loads, same)
	}
	if w.loading < 0 {
		w.loading = len(w.Loads)
		w.Loads = append(w.Loads, Load{Cable: r.Cable, First: r})
	}
	w.Loads[w.loading].Count += count
}

// Nearby is a source of interference at a stated distance from a pathway.
type Nearby struct {
	schema.Entry
	Source *Interference
}

// An Interference is a lamp or machine that disturbs unscreened pairs.
type Interference struct {
	item
	Space *Space
}

// A Cable is a type of cable or cord.
type Cable struct {
	item
	medium Medium
	order  int
}

// Order is the place of the cable type among those of its plant, from 0.
func (c *Cable) Order() int { return c.order }

// A Medium is what carries the signal.
type Medium uint8

// The media. The zero Medium is a cable type that does not say.
const (
	Unstated Medium = iota
	TwistedPair
	Fibre
	Coax
)

// Medium is what the cable type's fields say it is. A nil Cable says nothing.
func (c *Cable) Medium() Medium {
	if c == nil {
		return Unstated
	}
	return c.medium
}

// mediumOf tells the medium by the field that states the class of cable.
func mediumOf(r *schema.Record) Medium {
	switch {
	case r.Own("category") != nil:
		return TwistedPair
	case r.Own("fibre") != nil:
		return Fibre
	case r.Own("series") != nil:
		return Coax
	}
	return Unstated
}

// Category is the category of a twisted-pair cable type. A nil Cable has none.
func (c *Cable) Category() (string, bool) { return stated(c, schema.CableCategory) }

// Screen is the construction code of the cable type. A nil Cable has none.
func (c *Cable) Screen() (string, bool) { return stated(c, schema.CableScreen) }

// Listing is the fire listing of the cable type. A nil Cable has none.
func (c *Cable) Listing() (string, bool) { return stated(c, schema.CableListing) }

func stated[T any](c *Cable, h schema.Handle[T]) (value T, known bool) {
	if c == nil {
		return value, false
	}
	return h.In(c.Record())
}

// A Rack is a rack, frame or cabinet.
type Rack struct {
	item
	Space *Space
	Bond  *Busbar
}

// A Busbar is a bonding busbar.
type Busbar struct {
	item
	Space *Space
	Bond  *Busbar
}

// Primary follows the bonds from a busbar to the primary one, over at most all
// busbars. Steps are the busbars passed, this one first.
func (b *Busbar) Primary() (steps []*Busbar, reached bool) {
	seen := map[*Busbar]bool{}
	for at := b; at != nil && !seen[at]; at = at.Bond {
		seen[at] = true
		steps = append(steps, at)
		if kind, ok := schema.BusbarKind.In(at.Record()); ok && kind == "primary" {
			return steps, true
		}
	}
	return steps, false
}

// A Bundle is cables pulled together along one route.
type Bundle struct {
	item
	Cable *Cable
	Way   *Way
	Runs  []*Run
}

// A Way is a route: pathways in order, with what follows from them. Runs of a
// bundle share it.
type Way struct {
	Pathways []*Pathway
	// Spaces are the spaces that the pathways pass, each once, in order.
	Spaces []*Space
	// Length is the sum of the pathways' lengths.
	Length unit.Length
	// Known is set when every pathway of the route was found and states its
	// spaces and length.
	Known bool
}

// A Run is one cable from termination to termination.
type Run struct {
	item
	Bundle *Bundle
	Cable  *Cable
	Way    *Way
	// From and To are the ports it takes at its ends, several for a cable
	// that fans out; empty where an end is not recorded or not found.
	From, To Row
	// Link is the permanent link it is part of.
	Link *Link
	// Tests are its measurements, oldest record first.
	Tests []*Test

	// What nearly every rule asks of every run is looked up once.
	length    unit.Length
	state     string
	hasLength bool
	hasState  bool
}

// State is where the run is in its life; a run that states nothing is in
// service. It is not known when what is written can not be read.
func (r *Run) State() (string, bool) { return r.state, r.hasState }

// Live says whether the run is meant to carry something, now or soon: it is
// planned, in service or spare, and not withdrawn.
func (r *Run) Live() bool {
	return r.hasState && (r.state == schema.StatePlanned || r.state == schema.StateInService || r.state == schema.StateSpare)
}

// Length is the declared length of the run.
func (r *Run) Length() (unit.Length, bool) { return r.length, r.hasLength }

// Other is the port at the run's other end; nil when that was not found. Ports of a
// row lead to the port of the same place in the other row, or to the last where
// that row is shorter.
func (r *Run) Other(p *Port) *Port { return opposite(r.From, r.To, p) }

// Spaces are all spaces that the run starts in, crosses and ends in, each
// once. Whether that is every one is known only where the route is.
func (r *Run) Spaces() []*Space {
	var spaces []*Space
	add := func(s *Space) {
		if s == nil {
			return
		}
		if slices.Contains(spaces, s) {
			return
		}
		spaces = append(spaces, s)
	}
	add(r.From.Space())
	if r.Way != nil {
		for _, s := range r.Way.Spaces {
			add(s)
		}
	}
	add(r.To.Space())
	return spaces
}

// A Cord is a patch, equipment or work-area cord.
type Cord struct {
	item
	// From and To are the first ports at its ends, nil where an end was not
	// found; FromRow and ToRow are all of them, for a duplex or fan-out cord.
	From, To       *Port
	FromRow, ToRow Row
	Cable          *Cable

	length    unit.Length
	hasLength bool
}

// Other is the port at the cord's other end; nil when that was not found. Ports
// of a row lead to the port of the same place in the other row, or to the last
// where that row is shorter: a duplex cord ends in one port of a switch.
func (c *Cord) Other(p *Port) *Port { return opposite(c.FromRow, c.ToRow, p) }

// A Test is one measurement of a run.
type Test struct {
	item
	Run *Run
}
