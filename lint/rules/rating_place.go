package rules

import (
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// What the fire code sees of a space and of a pathway. A record that leaves it
// open gives every answer that it may mean: a rule then judges each, and only
// where all agree is there a verdict.

// airsOf returns what the fire code may see in a space; nothing where that can
// not be told at all. A part of a space of the same kind, such as half of a
// ceiling void, takes from the whole what it does not state.
func airsOf(s *plant.Space) []standard.Space {
	for range deepestSpace {
		if s.Inside == nil || s.Damaged || s.Own(schema.SpaceAir.Name) != nil || !sameKind(s, s.Inside) {
			break
		}
		s = s.Inside
	}
	if text, ok := schema.SpaceAir.In(s.Record()); ok {
		air, err := standard.ParseSpace(text)
		if err != nil {
			return nil
		}
		return []standard.Space{air}
	}
	kind, ok := schema.SpaceKind.In(s.Record())
	if !ok || lost(s.Entry, schema.SpaceAir.Field) {
		return nil
	}
	switch kind {
	case "ceiling-void", "floor-void":
		return []standard.Space{standard.GeneralSpace, standard.PlenumSpace}
	case "riser-shaft":
		return []standard.Space{standard.RiserSpace, standard.RiserFireproof}
	case "outdoor":
		return []standard.Space{standard.Outdoor}
	}
	return []standard.Space{standard.GeneralSpace}
}

// enclosuresOf returns how a pathway may enclose its cable; nothing where that
// can not be told at all.
func enclosuresOf(w *plant.Pathway) []standard.Enclosure {
	if text, ok := schema.PathwayEnclosure.In(w.Record()); ok {
		e, err := standard.ParseEnclosure(text)
		if err != nil {
			return nil
		}
		return []standard.Enclosure{e}
	}
	kind, ok := schema.PathwayKind.In(w.Record())
	material, readable := schema.PathwayMaterial.Or(w.Record(), "")
	if !ok || !readable || lost(w.Entry, schema.PathwayEnclosure.Field) {
		return nil
	}
	switch kind {
	case "conduit":
		return byMaterial(material, standard.MetalRaceway, standard.NonMetalRaceway)
	case "raceway":
		switch material {
		case "metal":
			return []standard.Enclosure{standard.MetalRaceway}
		case "non-metal":
			return []standard.Enclosure{standard.PlenumRaceway, standard.NonMetalRaceway}
		}
		return []standard.Enclosure{standard.MetalRaceway, standard.Bare}
	case "tray", "ladder", "basket":
		return []standard.Enclosure{standard.CableTray}
	case "duct":
		if material == "metal" {
			return []standard.Enclosure{standard.MetalRaceway}
		}
		return []standard.Enclosure{standard.NonMetalRaceway}
	}
	return []standard.Enclosure{standard.Bare}
}

func sameKind(a, b *plant.Space) bool {
	kind, ok := schema.SpaceKind.In(a.Record())
	other, known := schema.SpaceKind.In(b.Record())
	return ok && known && kind == other
}

// statedIn finds the space that states a field for this one: itself, or the
// nearest that it is part of. It is nil where none does.
func statedIn(s *plant.Space, f *schema.Field) *plant.Space {
	for range deepestSpace {
		if s == nil || s.Own(f.Name) != nil {
			return s
		}
		if s.Damaged {
			return nil
		}
		s = s.Inside
	}
	return nil
}

func byMaterial(material string, metal, other standard.Enclosure) []standard.Enclosure {
	switch material {
	case "metal":
		return []standard.Enclosure{metal}
	case "non-metal":
		return []standard.Enclosure{other}
	}
	return []standard.Enclosure{metal, other}
}

// inside says whether a space may lie within the building.
func inside(airs []standard.Space) bool {
	return len(airs) > 0 && airs[0] != standard.Outdoor
}

// lost says whether a field of an entry may have been written and lost: it
// could not be read, or part of the record could not.
func lost(e schema.Entry, f *schema.Field) bool {
	v := e.Lookup(f)
	return v == nil && e.Damaged || v != nil && v.Bad
}

// beside is a note about another record that belongs to a finding.
func beside(e schema.Entry, f *schema.Field, message string) schema.Note {
	return schema.Note{Kind: e.Kind.Name, Label: e.Label, At: e.Where(f), Message: message}
}

// stated says whether a value is written or follows from something else.
func stated(e schema.Entry, f *schema.Field, otherwise string) string {
	if e.Lookup(f) != nil {
		return "stated"
	}
	return "from its " + otherwise
}
