package rules

import (
	"fmt"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// bareOnly is how a cable lies where it leaves its pathway and ends.
var bareOnly = []standard.Enclosure{standard.Bare}

// judge holds a cable against every reading of a berth.
func (c *listingCheck) judge(k *plant.Cable, l standard.Listing, at berth, airs []standard.Space) ruling {
	enclosures := bareOnly
	if at.pathway != nil {
		enclosures = c.enclosures[at.pathway]
	}
	var first ruling
	passes, fails := 0, 0
	for _, air := range airs {
		for _, e := range enclosures {
			ruled := ruling{berth: at, listing: l, air: air, enclosure: e}
			if !c.look(&ruled, k) {
				continue
			}
			if ruled.verdict == fine {
				passes++
			} else if fails++; fails == 1 {
				first = ruled
			}
		}
	}
	if passes > 0 && fails > 0 {
		first.verdict = contentious
	}
	return first
}

// look finds the cell of the table and holds the bound against what is known.
func (c *listingCheck) look(at *ruling, k *plant.Cable) bool {
	if isTray(at.enclosure) && isRiser(at.air) {
		at.enclosure = standard.Bare // the code gives a tray no credit in a vertical run
	}
	key := permitKey{at.listing, at.air, at.enclosure}
	permit, seen := c.permits[key]
	if !seen {
		permit, _ = standard.Permit(c.Plant.Fire, at.listing, at.air, at.enclosure)
		c.permits[key] = permit
	}
	if permit.Source.Confidence == 0 {
		return false // the code has nothing to say, as of a space outdoors
	}
	at.permit = permit
	if !permit.Permitted {
		at.verdict = refused
		return true
	}
	at.verdict = c.bounded(at, k)
	return true
}

func isTray(e standard.Enclosure) bool {
	return e == standard.CableTray || e == standard.SolidCoveredTray
}

func isRiser(s standard.Space) bool {
	return s == standard.RiserSpace || s == standard.RiserFireproof || s == standard.RiserDwelling
}

// bounded holds the bound of a permission against the records. How much of a
// cable lies bare in its last room is never recorded, so that is not asked.
func (c *listingCheck) bounded(at *ruling, k *plant.Cable) verdict {
	known := false
	switch bound := at.permit.Bound; bound.On {
	case standard.Diameter:
		if at.measure, known = schema.CableDiameter.In(k.Record()); !known {
			c.missing(k.Entry, schema.CableDiameter.Field, fmt.Sprintf("%s: diameter not stated; listing %s may lie in a %s space only under %s",
				schema.Printable(k.Label), at.listing, at.air, bound.Most.Text(c.Units())), at.permit.Source)
		}
	case standard.LengthInSpace, standard.ExposedLength:
		if at.pathway != nil {
			at.measure, known = schema.PathwayLength.In(at.pathway.Record())
		}
	}
	switch {
	case !known || at.permit.Bound.Admits(at.measure):
		return fine
	case at.permit.Bound.On != standard.Diameter && passesOthers(at.pathway):
		return open
	}
	return beyond
}

// passesOthers says whether a pathway passes more spaces than one, found or not.
func passesOthers(w *plant.Pathway) bool {
	through, _ := schema.PathwayThrough.In(w.Record())
	return len(through) > 1
}
