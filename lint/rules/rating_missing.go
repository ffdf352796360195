package rules

import (
	"fmt"
	"strings"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

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
	family, _ := familyOf(k)
	if _, allowed := standard.OutsidePlantLimit(c.Plant.Fire, family); allowed && r.Way != nil && r.Way.Known && leavesBuilding(r) {
		return // cable from outside may be unlisted: rating-outside-plant sees to it
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
