package rules

import (
	"fmt"
	"strings"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// RatingEuroclass checks the reaction to fire of a cable against the lowest
// class that the plant or a space allows.
var RatingEuroclass = &lint.Rule{
	Name: "rating-euroclass", Title: "Checks that a cable's Euroclass and its s, d and a classes reach what the plant and its spaces ask for",
	Severity: lint.Nonconformity, Reach: lint.Along, Safety: true, Check: ratingEuroclass,
}

func ratingEuroclass(p *lint.Pass) {
	if p.Plant.Fire != standard.EN50575 {
		return
	}
	c := &euroclassCheck{
		Pass: p, own: make(map[*plant.Space]minimum), classes: make(map[*plant.Cable]standard.Euroclass, len(p.Plant.Cables)),
		short: make(map[classPair][]standard.Shortfall), told: make(map[*plant.Cable]bool), outdoors: make(map[*plant.Space]bool),
	}
	c.whole, _ = euroclass(p.Plant.Entry, schema.PlantMinClass)
	for _, s := range p.Plant.Spaces {
		if by := statedIn(s, schema.SpaceMinClass.Field); by != nil {
			if least, ok := euroclass(by.Entry, schema.SpaceMinClass); ok {
				c.own[s] = minimum{least, by}
			}
		}
		if !inside(airsOf(s)) {
			c.outdoors[s] = true
		}
	}
	if c.whole.IsZero() && len(c.own) == 0 {
		return
	}
	for _, k := range p.Plant.Cables {
		if class, ok := euroclass(k.Entry, schema.CableClass); ok {
			c.classes[k] = class
		}
	}
	for _, r := range p.Plant.Runs {
		c.run(r)
	}
}

func euroclass(e schema.Entry, h schema.Handle[string]) (standard.Euroclass, bool) {
	if e.Record == nil {
		return standard.Euroclass{}, false
	}
	text, ok := h.In(e.Record)
	if !ok {
		return standard.Euroclass{}, false
	}
	class, err := standard.ParseEuroclass(text)
	return class, err == nil
}

// A euroclassCheck is what one check of a plant remembers.
type euroclassCheck struct {
	*lint.Pass
	whole   standard.Euroclass
	own     map[*plant.Space]minimum
	classes map[*plant.Cable]standard.Euroclass
	short   map[classPair][]standard.Shortfall
	told    map[*plant.Cable]bool
	// outdoors are the spaces that the plant's minimum does not reach.
	outdoors map[*plant.Space]bool
}

type classPair struct{ has, least standard.Euroclass }

// A minimum is what is asked in a space, and the space that states it: the
// same one, or one that it is part of.
type minimum struct {
	least standard.Euroclass
	by    *plant.Space
}

// run holds a run against each space that states a class of its own and, where
// none of them reports, against the plant's class.
func (c *euroclassCheck) run(r *plant.Run) {
	if r.Cable == nil {
		return
	}
	class, known := c.classes[r.Cable]
	found, indoors := false, false
	var last *plant.Space
	for _, s := range r.Spaces() {
		indoors = indoors || !c.outdoors[s]
		asked := c.own[s]
		if asked.by == nil || asked.by == last {
			continue
		}
		last = asked.by
		if !known {
			c.unclassed(r, s)
			return
		}
		if short := c.compare(class, asked.least); len(short) > 0 {
			c.report(r, asked.by.Entry, schema.SpaceMinClass.Field, class, asked.least, short)
			found = true
		}
	}
	switch {
	case found || !indoors || c.whole.IsZero():
	case !known:
		c.unclassed(r, nil)
	default:
		if short := c.compare(class, c.whole); len(short) > 0 {
			c.report(r, c.Plant.Entry, schema.PlantMinClass.Field, class, c.whole, short)
		}
	}
}

func (c *euroclassCheck) compare(has, least standard.Euroclass) []standard.Shortfall {
	pair := classPair{has, least}
	short, seen := c.short[pair]
	if !seen {
		short = has.Short(least)
		c.short[pair] = short
	}
	return short
}

// report writes the finding; asked is the space or the plant that asks.
func (c *euroclassCheck) report(r *plant.Run, asked schema.Entry, field *schema.Field, has, least standard.Euroclass, short []standard.Shortfall) {
	f := lint.About(r.Entry)
	parts := make([]string, len(short))
	f.Working = []lint.Term{
		term("cable", schema.Printable(r.Cable.Label)+", "+has.String()),
		term("minimum", fmt.Sprintf("%s, from %s %s", least, asked.Kind.Name, schema.Printable(asked.Label))),
	}
	for i, s := range short {
		parts[i] = s.Part
		f.Working = append(f.Working, term(s.Part, fmt.Sprintf("has %s, needs %s", s.Has, s.Needs)))
	}
	f.Message = fmt.Sprintf("%s: Euroclass %s falls short in %s, %s %s asks for %s",
		schema.Printable(r.Label), has, strings.Join(parts, ", "), asked.Kind.Name, schema.Printable(asked.Label), least)
	f.Result, f.Limit, f.Source = has.String(), least.String(), standard.EuroclassSource().String()
	f.Next = fmt.Sprintf("pull a cable of %s or better; national rules and the authority having jurisdiction decide", least)
	f.Key = []string{asked.Label}
	f.Excess = float64(len(short))
	f.Related = []schema.Note{
		beside(asked, field, "asks for "+least.String()),
		beside(r.Cable.Entry, schema.CableClass.Field, "the cable, "+has.String()),
	}
	c.Report(f)
}

// unclassed names a cable type that states no class, once. What was written and
// could not be read is not taken for unstated.
func (c *euroclassCheck) unclassed(r *plant.Run, s *plant.Space) {
	k := r.Cable
	if c.told[k] || lost(k.Entry, schema.CableClass.Field) {
		return
	}
	c.told[k] = true
	where := "the plant"
	if s != nil {
		where = "space " + schema.Printable(s.Label)
	}
	f := lint.AboutField(k.Entry, schema.CableClass.Field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: Euroclass not stated; run %s can not be checked against what %s asks for", schema.Printable(k.Label), schema.Printable(r.Label), where)
	f.Next = "state euroclass as the declaration of performance or the jacket gives it, such as Cca-s1b,d2,a2"
	f.Key = []string{schema.CableClass.Name}
	f.Source = standard.EuroclassSource().String()
	c.Report(f)
}
