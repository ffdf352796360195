package rules

import (
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// familyOf is the family of the fire code that a cable type belongs to: by its
// listing, otherwise by what it is. Twisted pair without a listing counts as
// communications cable, fibre as cable without metal.
func familyOf(c *plant.Cable) (f standard.Family, ok bool) {
	if text, known := c.Listing(); known {
		if l, err := standard.ParseListing(text); err == nil {
			return l.Family(), true
		}
	}
	switch c.Medium() {
	case plant.TwistedPair:
		return standard.Communications, true
	case plant.Fibre:
		return standard.Optical, true
	case plant.Coax:
		return standard.Coaxial, true
	case plant.Unstated:
	}
	return 0, false
}
