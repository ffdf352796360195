package takeoff

import (
	"strconv"

	"homerun/schema"
	"homerun/schema/plant"
)

// stop is one rated crossing of a pathway.
type stop struct {
	pathway *plant.Pathway
	nth     int
}

// firestops counts each rated wall and floor that a pathway goes through, once:
// to be closed anew where the pathway is new, otherwise to be opened for the
// cable and put back to its rating.
func (c *counter) firestops(w *plant.Pathway) {
	for i, e := range w.Record().Blocks(schema.KindCrossing) {
		if c.stops[stop{w, i}] {
			continue
		}
		c.stops[stop{w, i}] = true
		name := "opened and put back"
		if c.fresh[w.Record()] {
			name = "closed anew"
		}
		rating, stated := schema.CrossingRating.In(e)
		if !stated {
			it := c.item(GroupFirestop, name+", rating of the wall or floor not stated")
			it.Count++
			it.Unknown = append(it.Unknown, w.Label)
			continue
		}
		if rating > 0 {
			c.pieces(GroupFirestop, name+", rated "+rating.Text(c.plant.Units), w.Label, 1)
		}
	}
}

func itoa(n int) string { return strconv.Itoa(n) }
