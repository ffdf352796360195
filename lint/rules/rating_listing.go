package rules

import (
	"fmt"
	"strings"

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
	Severity: lint.Nonconformity, Safety: true, Check: ratingListing,
}

func ratingListing(p *lint.Pass) {
	if !p.Plant.Fire.NEC() {
		return
	}
	c := &listingCheck{
		Pass: p, airs: make(map[*plant.Space][]standard.Space, len(p.Plant.Spaces)), enclosures: make(map[*plant.Pathway][]standard.Enclosure, len(p.Plant.Pathways)),
		listings: make(map[*plant.Cable]standard.Listing), permits: make(map[permitKey]standard.Permission), told: make(map[*schema.Record]bool),
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
				c.listings[k] = l
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
	listings   map[*plant.Cable]standard.Listing
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
		c.way, c.cable, c.listing = r.Way, r.Cable, c.listings[r.Cable]
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

// contention names the field on which the verdict depends, once.
func (c *listingCheck) contention(at *ruling) {
	if len(c.airs[at.space]) > 1 {
		words := make([]string, 0, 2)
		for _, a := range c.airs[at.space] {
			words = append(words, a.String())
		}
		c.missing(at.space.Entry, schema.SpaceAir.Field, fmt.Sprintf("%s: air not stated; whether listing %s may lie here depends on it: %s",
			schema.Printable(at.space.Label), at.listing, strings.Join(words, " or ")), at.permit.Source)
		return
	}
	field, word := schema.PathwayEnclosure.Field, "enclosure"
	if kind, _ := schema.PathwayKind.In(at.pathway.Record()); kind == "conduit" {
		field, word = schema.PathwayMaterial.Field, "material"
	}
	c.missing(at.pathway.Entry, field, fmt.Sprintf("%s: %s not stated; whether listing %s may lie in %s space %s depends on it",
		schema.Printable(at.pathway.Label), word, at.listing, at.air, schema.Printable(at.space.Label)), at.permit.Source)
}

// unlisted names a cable type that states no listing, once, where a run of it
// lies within the building.
func (c *listingCheck) unlisted(r *plant.Run) {
	k := r.Cable
	if k == nil || c.told[k.Record()] || k.Own(schema.CableListing.Name) != nil || k.Damaged {
		return
	}
	for _, s := range r.Spaces() {
		if inside(c.airs[s]) {
			c.missing(k.Entry, schema.CableListing.Field, fmt.Sprintf("%s: listing not stated; run %s lies inside, in %s, and can not be checked",
				schema.Printable(k.Label), schema.Printable(r.Label), schema.Printable(s.Label)), standard.Source{})
			return
		}
	}
}

// missing names a field without which the check can not be made.
func (c *listingCheck) missing(e schema.Entry, field *schema.Field, message string, source standard.Source) {
	if c.told[e.Record] {
		return
	}
	c.told[e.Record] = true
	f := lint.AboutField(e, field)
	f.Severity = lint.Observation
	f.Message = message
	f.Next = fmt.Sprintf("state %s: %s", field.Name, field.Doc)
	f.Key = []string{field.Name}
	if source.Confidence != 0 {
		f.Source = source.String()
	}
	c.Report(f)
}
