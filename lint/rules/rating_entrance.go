package rules

import (
	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// A stretch is the part of a run between an entrance to the building and an end.
type stretch struct {
	// surely is what certainly lies inside, perhaps what may lie there, for
	// all that is recorded.
	surely, perhaps unit.Length
	terms           []lint.Term
	// spaces are those passed, in order from the entrance.
	spaces []waypoint
	// end is the space in which it ends.
	end *plant.Space
}

// A waypoint is a space that a stretch lies in. Conduit is set where the cable lies
// in a conduit that may be of metal and so may keep the entrance outside.
type waypoint struct {
	space   *plant.Space
	conduit *plant.Pathway
}

// inwards measures from the pathway at which a cable comes in to its end, in
// steps of 1 or -1. Metal conduit that begins outdoors, or goes on from such,
// moves the entrance inwards.
func inwards(paths []*plant.Pathway, at, step int, end *plant.Space, units unit.System) stretch {
	in := stretch{end: end}
	extended := no
	if at >= 0 && at < len(paths) {
		extended = metalConduit(paths[at])
		in.enter(paths[at], extended, units)
	}
	for i := at + step; i >= 0 && i < len(paths); i += step {
		extended = min(extended, metalConduit(paths[i]))
		in.pass(paths[i], extended, units)
	}
	in.spaces = append(in.spaces, waypoint{space: end})
	return in
}

// answer is an answer that the records may leave open. The order is such that
// the lesser of two answers is that to both questions at once.
type answer uint8

const (
	no answer = iota
	maybe
	yes
)

// metalConduit says whether a pathway is conduit of metal.
func metalConduit(w *plant.Pathway) answer {
	kind, readable := schema.PathwayKind.In(w.Record())
	if readable && kind != "conduit" {
		return no
	}
	enclosures := enclosuresOf(w)
	switch {
	case !readable || len(enclosures) == 0:
		return maybe
	case len(enclosures) == 1 && enclosures[0] == standard.MetalRaceway:
		return yes
	case len(enclosures) == 1:
		return no
	}
	return maybe
}

// enter takes the pathway that comes in from outdoors: how much of it lies
// inside is not recorded.
func (in *stretch) enter(w *plant.Pathway, metal answer, units unit.System) {
	if metal == yes {
		return
	}
	within := 0
	for _, s := range w.Through {
		if !outdoors(s) {
			in.spaces = append(in.spaces, in.at(s, w, metal))
			within++
		}
	}
	if within == 0 {
		return
	}
	in.perhaps, _ = schema.PathwayLength.In(w.Record())
	in.terms = append(in.terms, term("pathway "+schema.Printable(w.Label), "up to "+in.perhaps.Text(units)+" of it inside"))
}

// pass takes a pathway further in.
func (in *stretch) pass(w *plant.Pathway, extended answer, units unit.System) {
	length, _ := schema.PathwayLength.In(w.Record())
	name := schema.Printable(w.Label)
	switch {
	case extended == yes:
		in.terms = append(in.terms, term("metal conduit "+name, "moves the entrance inwards"))
		return
	case extended == maybe:
		in.perhaps = in.perhaps.Plus(length)
		in.terms = append(in.terms, term("conduit "+name, "up to "+length.Text(units)+", where it is not of metal"))
	case placed(w):
		in.surely = in.surely.Plus(length)
		in.terms = append(in.terms, term("pathway "+name, length.Text(units)))
	default:
		in.perhaps = in.perhaps.Plus(length)
		in.terms = append(in.terms, term("pathway "+name, "up to "+length.Text(units)))
	}
	for _, s := range w.Through {
		in.spaces = append(in.spaces, in.at(s, w, extended))
	}
}

// at is a space of a pathway, with the conduit where that may be of metal.
func (in *stretch) at(s *plant.Space, w *plant.Pathway, metal answer) waypoint {
	if metal == maybe {
		return waypoint{space: s, conduit: w}
	}
	return waypoint{space: s}
}

// placed says whether each space of a pathway says what it is.
func placed(w *plant.Pathway) bool {
	for _, s := range w.Through {
		if len(airsOf(s)) == 0 {
			return false
		}
	}
	return true
}
