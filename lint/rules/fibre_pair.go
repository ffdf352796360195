package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// sent is the position of a pair that is followed, 1 of 1 and 2: every piece of
// equipment sends on the same one, whichever that is, and receives on the other.
const sent = 1

// A pairWalk is a fibre of a pair on its way over cords and trunks.
type pairWalk struct {
	position int
	terms    []lint.Term
	cords    []*plant.Cord
	source   standard.Source
}

// side is the word for a position of a pair.
func side(position int) string {
	if position == sent {
		return "A"
	}
	return "B"
}

// to moves the fibre and writes down how.
func (w *pairWalk) to(what, how string, position int) {
	w.terms = append(w.terms, term(what, fmt.Sprintf("%s: %s to %s", how, side(w.position), side(position))))
	w.position = position
}

// cord takes the fibre over a cord of a make: one that is crossed leads A to B.
func (w *pairWalk) cord(c *plant.Cord, made string) {
	w.cords = append(w.cords, c)
	far := w.position
	if made == crossedCord {
		far = 3 - w.position
	}
	w.to("cord "+schema.Printable(c.Label), made, far)
}

// crossedCord is the make of a duplex cord that changes sides.
const crossedCord = "A-to-B"

// trunk takes the fibre over an array cable. Of its fibres each pair begins at
// an odd position, so which of the pair a position is follows from that alone.
func (w *pairWalk) trunk(r *plant.Run, a arrayType) bool {
	far, src, ok := a.polarity.FarPosition(w.position, a.fibres)
	if !ok {
		return false
	}
	w.source = src
	w.to("run "+schema.Printable(r.Label), fmt.Sprintf("type %s, position %d of %d to %d", a.polarity, w.position, a.fibres, far), 2-far%2)
	return true
}

// finding says that what is sent arrives where the other end sends as well. It
// is about the last cord of the channel, since a cord is what can be exchanged.
func (w *pairWalk) finding(c *plant.Channel) lint.Finding {
	last := w.cords[len(w.cords)-1]
	f := lint.About(last.Entry)
	f.Severity = degree(w.source)
	trunk := c.Links[0].Lead()
	f.Message = fmt.Sprintf("%s: what %s sends over %s arrives where %s sends too", schema.Printable(last.Label), schema.Printable(c.Start.String()),
		schema.Printable(trunk.Label), schema.Printable(c.End.String()))
	f.Working = append([]lint.Term{term(schema.Printable(c.Start.String())+" sends", "on A, say, as "+schema.Printable(c.End.String())+" does; both receive on B")}, w.terms...)
	f.Result, f.Limit, f.Source = "arrives on "+side(w.position), "arrives on "+side(3-sent), w.source.String()
	f.Next = "exchange one of the cords for one of the other make, A-to-A for A-to-B or back"
	f.Excess = 1
	for _, cord := range w.cords[:len(w.cords)-1] {
		f.Key = append(f.Key, cord.Label)
		f.Related = append(f.Related, note(cord.Entry, "the other cord"))
	}
	for _, l := range c.Links {
		f.Related = append(f.Related, note(l.Lead().Entry, "the array trunk"))
	}
	return f
}
