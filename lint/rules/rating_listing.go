package rules

import (
	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// RatingListing checks the fire listing of a cable against every space it lies
// in, by the permission tables of NFPA 70.
var RatingListing = &lint.Rule{
	Name: "rating-listing", Title: "Checks that a cable's fire listing is permitted in every space that the cable lies in",
	Severity: lint.Nonconformity, Reach: lint.Along, Safety: true, Check: ratingListing,
}

func ratingListing(p *lint.Pass) {
	if !p.Plant.Fire.NEC() {
		return
	}
	c := &listingCheck{
		Pass: p, airs: make(map[*plant.Space][]standard.Space, len(p.Plant.Spaces)), enclosures: make(map[*plant.Pathway][]standard.Enclosure, len(p.Plant.Pathways)),
		permits: make(map[permitKey]standard.Permission), told: make(map[*schema.Record]bool),
		ends: make(map[endKey][]ruling),
	}
	for _, s := range p.Plant.Spaces {
		c.airs[s] = airsOf(s)
	}
	for _, w := range p.Plant.Pathways {
		c.enclosures[w] = enclosuresOf(w)
	}
	for _, k := range p.Plant.Cables {
		if text, ok := k.Listing(); ok {
			if l, err := standard.ParseListing(text); err == nil {
				c.listings.set(p.Plant, k, l)
			}
		}
	}
	for _, r := range p.Plant.Runs {
		c.run(r)
	}
}

// A listingCheck is what one check of a plant remembers, so that a cell of the
// table is looked up once and a missing field is named once.
type listingCheck struct {
	*lint.Pass
	airs       map[*plant.Space][]standard.Space
	enclosures map[*plant.Pathway][]standard.Enclosure
	listings   byCable[standard.Listing]
	permits    map[permitKey]standard.Permission
	told       map[*schema.Record]bool
	ends       map[endKey][]ruling

	// The last route and cable, and what was wrong along it: the runs of a
	// bundle follow each other and share both.
	way     *plant.Way
	cable   *plant.Cable
	listing standard.Listing
	along   []ruling
}

type permitKey struct {
	listing   standard.Listing
	space     standard.Space
	enclosure standard.Enclosure
}

type endKey struct {
	cable *plant.Cable
	space *plant.Space
}

// A berth is one stretch of a cable: a space and the pathway it lies in there;
// nil where a cable ends in the space and lies bare.
type berth struct {
	space   *plant.Space
	pathway *plant.Pathway
	// below is the space on another floor that the pathway comes from, where
	// the records name no riser between them.
	below *plant.Space
}

// A ruling is what the code says of a cable in a berth.
type ruling struct {
	berth
	listing   standard.Listing
	air       standard.Space
	enclosure standard.Enclosure
	permit    standard.Permission
	verdict   verdict
	// measure is what was held against the permission's bound.
	measure unit.Length
}

type verdict uint8

const (
	fine        verdict = iota
	refused             // the listing may not lie there
	beyond              // it may, up to a bound that is exceeded
	open                // it may, up to a bound that the records do not measure
	contentious         // it depends on a field that is not stated
)

func (c *listingCheck) run(r *plant.Run) {
	if r.Way != c.way || r.Cable != c.cable {
		c.way, c.cable, c.listing = r.Way, r.Cable, c.listings.at(r.Cable)
		c.along = c.follow(r.Way, r.Cable, c.listing)
	}
	listing := c.listing
	if listing.IsZero() {
		c.unlisted(r)
		return
	}
	found := c.end(nil, r.Cable, listing, r.From.Space())
	found = append(found, c.along...)
	found = c.end(found, r.Cable, listing, r.To.Space())
	for i := range found {
		if !spaceBefore(found[:i], found[i].space) {
			c.report(r, &found[i])
		}
	}
}

// end judges a cable in a room in which it ends.
func (c *listingCheck) end(found []ruling, k *plant.Cable, l standard.Listing, s *plant.Space) []ruling {
	if s == nil {
		return found
	}
	key := endKey{k, s}
	ruled, seen := c.ends[key]
	if !seen {
		ruled = c.add(nil, k, l, berth{space: s})
		c.ends[key] = ruled
	}
	return append(found, ruled...)
}

// follow judges a cable along a route, pathway by pathway.
func (c *listingCheck) follow(way *plant.Way, k *plant.Cable, l standard.Listing) []ruling {
	if way == nil || l.IsZero() {
		return nil
	}
	var found []ruling
	for _, w := range way.Pathways {
		for i, s := range w.Through {
			found = c.add(found, k, l, berth{space: s, pathway: w})
			if i > 0 {
				found = c.rise(found, k, l, w, w.Through[i-1], s)
			}
		}
	}
	return found
}

func (c *listingCheck) add(found []ruling, k *plant.Cable, l standard.Listing, at berth) []ruling {
	ruled := c.judge(k, l, at, c.airs[at.space])
	switch ruled.verdict {
	case fine:
		return found
	case contentious:
		c.contention(&ruled)
		return found
	case refused, beyond, open:
	}
	return append(found, ruled)
}

// spaceBefore says whether a space already has its finding: one for a run and
// a space, however many of its pathways are there.
func spaceBefore(found []ruling, s *plant.Space) bool {
	for i := range found {
		if found[i].space == s {
			return true
		}
	}
	return false
}
