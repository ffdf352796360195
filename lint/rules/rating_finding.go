package rules

import (
	"fmt"
	"slices"
	"strings"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// report writes the finding about a run and a space.
func (c *listingCheck) report(r *plant.Run, at *ruling) {
	f := lint.About(r.Entry)
	f.Key = []string{at.space.Label}
	f.Source = at.permit.Source.String()
	if !at.permit.Source.Sure() {
		f.Severity = lint.Observation
	}
	f.Working = []lint.Term{
		term("cable", fmt.Sprintf("%s, listing %s", schema.Printable(r.Cable.Label), at.listing)),
		term("space", fmt.Sprintf("%s, %s (%s)", schema.Printable(at.space.Label), at.air, stated(at.space.Entry, schema.SpaceAir.Field, "kind"))),
		term("lies", lies(at)),
	}
	if at.verdict == refused {
		c.refusal(&f, r, at)
	} else {
		c.excess(&f, r, at)
	}
	f.Related = append(f.Related, beside(at.space.Entry, schema.SpaceAir.Field, "the space, "+at.air.String()))
	if at.pathway != nil {
		f.Related = append(f.Related, beside(at.pathway.Entry, schema.PathwayEnclosure.Field, "the pathway there"))
	}
	f.Related = append(f.Related, beside(r.Cable.Entry, schema.CableListing.Field, "the cable, listing "+at.listing.String()))
	c.Report(f)
}

// lies says how the cable lies in the space, and how that is known.
func lies(at *ruling) string {
	if at.pathway == nil {
		return "bare, since it ends here"
	}
	kind, _ := schema.PathwayKind.In(at.pathway.Record())
	return fmt.Sprintf("%s %s, enclosure %s (%s)", kind, schema.Printable(at.pathway.Label), at.enclosure, stated(at.pathway.Entry, schema.PathwayEnclosure.Field, "kind"))
}

func (c *listingCheck) refusal(f *lint.Finding, r *plant.Run, at *ruling) {
	allowed := "nothing of its kind"
	if remedies := standard.Remedies(c.Plant.Fire, at.listing, at.air, at.enclosure); len(remedies) > 0 {
		allowed = orList(remedies)
		f.Next = "pull " + allowed + " instead"
	} else {
		f.Next = "take the cable out of this space"
	}
	f.Message = fmt.Sprintf("%s: listing %s in %s space %s, permitted here: %s",
		schema.Printable(r.Label), at.listing, at.air, schema.Printable(at.space.Label), allowed)
	if at.below != nil {
		vertical(f, r, at, allowed)
	}
	if ways := c.enclosing(at); ways != "" {
		f.Next += ", or lay it in " + ways
	}
	f.Next += "; the authority having jurisdiction decides"
	f.Working = append(f.Working, term("table", fmt.Sprintf("%s, %s, enclosure %s: not permitted", at.listing, at.air, at.enclosure)))
	f.Result, f.Limit = at.listing.String(), allowed
	f.Excess = float64(at.listing.Grade())
}

// enclosing names the enclosures in which the listing could stay.
func (c *listingCheck) enclosing(at *ruling) string {
	var ways []string
	for _, e := range []standard.Enclosure{standard.MetalRaceway, standard.SolidCoveredTray} {
		if permit, ok := standard.Permit(c.Plant.Fire, at.listing, at.air, e); ok && permit.Permitted && permit.Source.Sure() {
			ways = append(ways, "a "+e.String())
		}
	}
	return strings.Join(ways, " or ")
}

func (c *listingCheck) excess(f *lint.Finding, r *plant.Run, at *ruling) {
	bound := at.permit.Bound
	what, word := "pathway length", "at most"
	if bound.On == standard.Diameter {
		what = "diameter"
	}
	if bound.Under {
		word = "under"
	}
	value, limit := at.measure.Beside(bound.Most, c.Units())
	f.Message = fmt.Sprintf("%s: listing %s in %s space %s, %s %s, permitted %s %s",
		schema.Printable(r.Label), at.listing, at.air, schema.Printable(at.space.Label), what, value, word, limit)
	f.Working = append(f.Working, term(what, value), term("bound", bound.On.String()+" "+word+" "+limit))
	f.Result, f.Limit, f.Excess = value, limit, (at.measure - bound.Most).Metres()
	f.Next = "pull a stricter listing, or lay it in a metal-raceway; the authority having jurisdiction decides"
	if at.verdict == open {
		f.Severity = lint.Observation
		f.Message += ", and the pathway passes other spaces too"
		f.Next = "measure how much of it lies here; " + f.Next
	}
	if at.permit.Note != "" {
		f.Working = append(f.Working, term("condition", at.permit.Note))
	}
}

// orList writes listings as "CMP, CMR or CM", each once.
func orList(listings []standard.Listing) string {
	words := make([]string, 0, len(listings))
	for _, l := range listings {
		if !slices.Contains(words, l.Type()) {
			words = append(words, l.Type())
		}
	}
	if len(words) == 1 {
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
}
