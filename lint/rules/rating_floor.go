package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// A pathway may go from one floor to another without a riser among its spaces:
// a sleeve between two rooms one above the other. The fire code sees a vertical
// run through a floor there as well.

// riserOnly is how the code sees what goes through a floor.
var riserOnly = []standard.Space{standard.RiserSpace}

// rise judges a cable between two spaces on different floors.
func (c *listingCheck) rise(found []ruling, k *plant.Cable, l standard.Listing, w *plant.Pathway, from, to *plant.Space) []ruling {
	if !c.climbs(from, to) {
		return found
	}
	ruled := c.judge(k, l, berth{space: to, pathway: w, below: from}, riserOnly)
	if ruled.verdict != refused {
		return found // what depends on the enclosure alone is named in the spaces
	}
	return append(found, ruled)
}

// climbs says whether two spaces of one building are on different floors and
// neither is a riser or lies outdoors.
func (c *listingCheck) climbs(a, b *plant.Space) bool {
	for _, s := range []*plant.Space{a, b} {
		airs := c.airs[s]
		if !inside(airs) || isRiser(airs[0]) || airs[0] == standard.Dwelling {
			return false
		}
	}
	lower, known := textIn(a, schema.SpaceFloor)
	upper, alsoKnown := textIn(b, schema.SpaceFloor)
	if !known || !alsoKnown || lower == upper {
		return false
	}
	home, _ := textIn(a, schema.SpaceBuilding)
	other, _ := textIn(b, schema.SpaceBuilding)
	return home == other
}

// textIn is what a space states, or the space that it is part of.
func textIn(s *plant.Space, h schema.Handle[string]) (string, bool) {
	by := statedIn(s, h.Field)
	if by == nil {
		return "", false
	}
	return h.In(by.Record())
}

// vertical words the finding about a cable between floors. It is an
// observation: a cable in an open stairwell goes through no floor.
func vertical(f *lint.Finding, r *plant.Run, at *ruling, allowed string) {
	lower, _ := textIn(at.below, schema.SpaceFloor)
	upper, _ := textIn(at.space, schema.SpaceFloor)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: listing %s from floor %s to floor %s in %s, permitted in a vertical run: %s",
		schema.Printable(r.Label), at.listing, schema.Printable(lower), schema.Printable(upper), schema.Printable(at.pathway.Label), allowed)
	f.Working = append(f.Working, term("floors", fmt.Sprintf("%s is on floor %s, %s on floor %s, no riser between them is recorded",
		schema.Printable(at.below.Label), schema.Printable(lower), schema.Printable(at.space.Label), schema.Printable(upper))))
	f.Key = append(f.Key, "vertical")
	f.Related = append(f.Related, beside(at.below.Entry, schema.SpaceFloor.Field, "the other floor"))
}
