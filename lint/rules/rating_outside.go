package rules

import (
	"fmt"
	"slices"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// RatingOutsidePlant checks how far cable from outside that has no listing
// comes into the building.
var RatingOutsidePlant = &lint.Rule{
	Name: "rating-outside-plant", Title: "Checks that unlisted cable from outside ends near its entrance and keeps out of risers, ducts and plenums",
	Severity: lint.Nonconformity, Reach: lint.Along, Safety: true, Limit: lint.GreatestLength, Check: ratingOutsidePlant,
}

func ratingOutsidePlant(p *lint.Pass) {
	c := &outsideCheck{Pass: p, told: make(map[*schema.Record]bool)}
	for _, r := range p.Plant.Runs {
		if r.Cable == nil || r.Way == nil || !r.Way.Known || !unlistedCable(r.Cable) || !leavesBuilding(r) {
			continue
		}
		family, _ := familyOf(r.Cable)
		rule, ok := standard.OutsidePlantLimit(p.Plant.Fire, family)
		if !ok {
			continue
		}
		c.run(r, &rule)
	}
}

// unlistedCable says whether a cable type states no fire listing.
func unlistedCable(c *plant.Cable) bool {
	return c.Own(schema.CableListing.Name) == nil && !c.Damaged
}

// leavesBuilding says whether a run starts, ends or passes outdoors.
func leavesBuilding(r *plant.Run) bool {
	return slices.ContainsFunc(r.Spaces(), outdoors)
}

func outdoors(s *plant.Space) bool {
	airs := airsOf(s)
	return len(airs) > 0 && airs[0] == standard.Outdoor
}

type outsideCheck struct {
	*lint.Pass
	told map[*schema.Record]bool
}

// run follows a cable inwards from the outermost pathways to both ends.
func (c *outsideCheck) run(r *plant.Run, rule *standard.OutsidePlant) {
	paths := r.Way.Pathways
	first, last := len(paths), -1
	for i, w := range paths {
		for _, s := range w.Through {
			if outdoors(s) {
				first, last = min(first, i), max(last, i)
			}
		}
	}
	from, to := r.From.Space(), r.To.Space()
	if last < 0 { // only an end is outdoors: the cable enters with its first or last pathway
		if from != nil && outdoors(from) {
			first, last = -1, -1
		} else {
			first, last = len(paths), len(paths)
		}
	}
	if from != nil && !outdoors(from) {
		c.judge(r, rule, inwards(paths, first, -1, from, c.Units()))
	}
	if to != nil && !outdoors(to) {
		c.judge(r, rule, inwards(paths, last, 1, to, c.Units()))
	}
}

// judge holds one stretch against the spaces that are barred and the length.
func (c *outsideCheck) judge(r *plant.Run, rule *standard.OutsidePlant, in stretch) {
	seen := make(map[*plant.Space]bool)
	for _, at := range in.spaces {
		if seen[at.space] || outdoors(at.space) {
			continue
		}
		barred, all := barredIn(at.space, rule)
		if barred == 0 {
			continue
		}
		seen[at.space] = true
		switch {
		case barred < all:
			c.undecided(r, rule, at.space.Entry, schema.SpaceAir.Field)
		case at.conduit != nil:
			c.undecided(r, rule, at.conduit.Entry, schema.PathwayMaterial.Field)
		default:
			c.Report(c.barred(r, rule, at.space))
		}
	}
	most, own := c.Most(rule.Most)
	switch standing := lawOf(rule.Source, own); {
	case in.surely > most:
		c.Report(c.tooFar(r, in, most, standing.between(in.surely, feetOfEntrance, own)))
	case in.surely.Plus(in.perhaps) > most:
		standing.severity = lint.Observation
		c.Report(c.tooFar(r, in, most, standing))
	}
}

// barredIn counts the readings of a space, and those in which the cable may
// not lie there.
func barredIn(s *plant.Space, rule *standard.OutsidePlant) (barred, all int) {
	airs := airsOf(s)
	for _, a := range airs {
		if rule.Bars(a) {
			barred++
		}
	}
	return barred, len(airs)
}

func (c *outsideCheck) barred(r *plant.Run, rule *standard.OutsidePlant, s *plant.Space) lint.Finding {
	air := airsOf(s)[0]
	f := lint.About(r.Entry)
	f.Message = fmt.Sprintf("%s: cable %s has no listing and lies in %s space %s, not permitted there",
		schema.Printable(r.Label), schema.Printable(r.Cable.Label), air, schema.Printable(s.Label))
	f.Working = []lint.Term{
		term("cable", schema.Printable(r.Cable.Label)+", no listing stated"),
		term("space", fmt.Sprintf("%s, %s (%s)", schema.Printable(s.Label), air, stated(s.Entry, schema.SpaceAir.Field, "kind"))),
	}
	f.Result, f.Limit, f.Source = air.String(), "no riser, duct or plenum", rule.Source.String()
	f.Next = "bring it in through bonded metal conduit, end it at the entrance and go on with listed cable, or state the listing; the authority having jurisdiction decides"
	f.Key = []string{s.Label}
	f.Related = []schema.Note{beside(s.Entry, schema.SpaceAir.Field, "the space, "+air.String()), note(r.Cable.Entry, "the cable")}
	return f
}

// undecided names the field of a space or of a conduit that decides, once.
func (c *outsideCheck) undecided(r *plant.Run, rule *standard.OutsidePlant, e schema.Entry, field *schema.Field) {
	if c.told[e.Record] || lost(e, field) {
		return
	}
	c.told[e.Record] = true
	f := lint.AboutField(e, field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: %s not stated; whether unlisted cable of run %s may lie here depends on it", schema.Printable(e.Label), field.Name, schema.Printable(r.Label))
	f.Source = rule.Source.String()
	f.Next = fmt.Sprintf("state %s: %s", field.Name, field.Doc)
	f.Key = []string{field.Name}
	c.Report(f)
}

func (c *outsideCheck) tooFar(r *plant.Run, in stretch, most unit.Length, law law) lint.Finding {
	total := in.surely.Plus(in.perhaps)
	shown, limit := total.Beside(most, c.Units())
	word := ""
	if in.perhaps > 0 {
		word = "up to "
	}
	f := lint.About(r.Entry)
	f.Severity = law.severity
	f.Message = fmt.Sprintf("%s: cable %s has no listing and comes %s%s into the building, limit %s",
		schema.Printable(r.Label), schema.Printable(r.Cable.Label), word, shown, limit)
	f.Working = append([]lint.Term{term("cable", schema.Printable(r.Cable.Label)+", no listing stated")}, in.terms...)
	f.Working = append(f.Working, term("inside from the entrance", word+shown))
	f.Result, f.Limit, f.Source = word+shown, limit, law.source
	f.Next = "end it nearer to the entrance and go on with listed cable, or bring it in through bonded metal conduit; the authority having jurisdiction decides"
	f.Key = []string{"length", in.end.Label}
	f.Excess = (total - most).Metres()
	f.Related = []schema.Note{note(r.Cable.Entry, "the cable")}
	return f
}
