package rules

import (
	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// The rules of this family hold power over Ethernet against what a device asks
// for, and the bundles that carry it against what their conductors bear.

// An ask is what a device says it needs.
type ask struct {
	class    standard.PowerClass
	hasClass bool
	needs    unit.Power
	hasNeeds bool
}

// A feed is a device and what powers it over a channel, or over one cord.
type feed struct {
	source, device *plant.Holder
	ask            ask
	supply         standard.PowerType
	channel        *plant.Channel
	cord           *plant.Cord
}

// askOf is what a piece of equipment asks for; ok is false where it says nothing
// or nothing that can be read.
func askOf(h *plant.Holder) (a ask, ok bool) {
	class, stated := schema.EquipmentClass.In(h.Record())
	if stated {
		a.class, a.hasClass = standard.PowerClassOf(class)
	}
	a.needs, a.hasNeeds = schema.EquipmentNeeds.In(h.Record())
	return a, a.hasClass || a.hasNeeds
}

// wants is the class that the device is powered by: its own, or the lowest that
// gives it what it needs.
func (a ask) wants() (standard.PowerClass, bool) {
	if a.hasClass {
		return a.class, true
	}
	return standard.ClassFor(a.needs)
}

// feeds finds every device that asks for power with what is at the other end of
// its twisted pair. The supply is zero where that does not say what it supplies.
func feeds(p *lint.Pass) []feed {
	asks := make(map[*plant.Holder]ask)
	for _, h := range p.Plant.Holders {
		if !h.IsEquipment() {
			continue
		}
		if a, ok := askOf(h); ok {
			asks[h] = a
		}
	}
	if len(asks) == 0 {
		return nil
	}
	supplies := make(map[*plant.Holder]standard.PowerType)
	for _, h := range p.Plant.Holders {
		if t := supplyOf(h); t != 0 {
			supplies[h] = t
		}
	}
	var all []feed
	add := func(a, b *plant.Port, f feed) {
		if a == nil || b == nil {
			return
		}
		for _, ends := range [...][2]*plant.Port{{a, b}, {b, a}} {
			f.source, f.device = ends[0].Holder, ends[1].Holder
			wanted, known := asks[f.device]
			if !known || !f.source.IsEquipment() || f.source == f.device {
				continue
			}
			f.ask = wanted
			f.supply = supplies[f.source]
			if _, other := asks[f.source]; other && f.supply == 0 {
				continue // two devices: neither is known to power the other
			}
			all = append(all, f)
		}
	}
	for _, c := range p.Plant.Channels {
		if overTwistedPair(c) {
			add(c.Start, c.End, feed{channel: c})
		}
	}
	for _, c := range p.Plant.Cords {
		if c.Cable.Medium() == plant.TwistedPair {
			add(c.From, c.To, feed{cord: c})
		}
	}
	return all
}

// supplyOf is the type that a piece of equipment supplies, none where it does
// not say.
func supplyOf(h *plant.Holder) standard.PowerType {
	if !h.IsEquipment() {
		return 0
	}
	word, stated := schema.EquipmentSupplies.In(h.Record())
	if !stated {
		return 0
	}
	t, err := standard.ParsePowerType(word)
	if err != nil {
		return 0
	}
	return t
}

// overTwistedPair says whether all links of a channel are twisted pair in use.
func overTwistedPair(c *plant.Channel) bool {
	for _, l := range c.Links {
		if l.Medium() != plant.TwistedPair || !l.Live() {
			return false
		}
	}
	return true
}

// askTerms are what a device asks for.
func (f *feed) askTerms() []lint.Term {
	var terms []lint.Term
	name := schema.Printable(f.device.Label)
	if f.ask.hasClass {
		terms = append(terms, term(name+" asks for", className(f.ask.class)))
	}
	if f.ask.hasNeeds {
		terms = append(terms, term(name+" needs", f.ask.needs.String()+" at its port"))
	}
	return terms
}

// className is a class with what it lets a device take.
func className(c standard.PowerClass) string {
	return "class " + decimals(float64(c.Class), 0) + ", " + c.DevicePower.String() + " at the device"
}

// notes are the records between the source and the device.
func (f *feed) notes() []schema.Note {
	notes := []schema.Note{note(f.source.Entry, "powers it")}
	if f.cord != nil {
		return append(notes, note(f.cord.Entry, "is the cord between them"))
	}
	for _, part := range f.channel.Parts {
		if part.Cord != nil {
			notes = append(notes, note(part.Cord.Entry, "is part of the channel"))
			continue
		}
		for _, r := range part.Link.Runs {
			notes = append(notes, note(r.Entry, "is part of the channel"))
		}
	}
	return notes
}
