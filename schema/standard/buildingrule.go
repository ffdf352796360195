package standard

import (
	"slices"

	"homerun/schema/unit"
)

// FirestopRule returns where the code asks that openings around penetrations of rated walls,
// floors and ceilings be fire-stopped to keep their rating. ok is false where the code is no
// edition of the NEC and for no family.
func FirestopRule(code FireCode, f Family) (src Source, ok bool) {
	if !code.NEC() {
		return Source{}, false
	}
	clause := "300.21"
	switch f {
	case Communications:
		clause = "300.21 and 800.26"
	case Coaxial, Class2, Class3, PowerLimitedTray, Optical, OpticalConductive:
	default:
		return Source{}, false
	}
	return inEdition(code, clause), true
}

// OutsidePlant is what the code allows cable that is not listed for use inside a building.
type OutsidePlant struct {
	Most   unit.Length // inside, from the point of entrance
	Barred []Space     // where it may not go at all
	Source Source
}

// Bars reports whether unlisted cable may not go into a space at all.
func (o OutsidePlant) Bars(s Space) bool {
	return slices.Contains(o.Barred, s)
}

// OutsidePlantLimit returns how far unlisted outside-plant cable may come into a building: 15
// m (50 ft) from the point of entrance to an enclosure or a listed primary protector, and not
// in risers, ducts or plenums. Metal conduit that is bonded moves the point of entrance
// inwards. ok is false where the code is no edition of the NEC, and for families without such
// an allowance.
func OutsidePlantLimit(code FireCode, f Family) (o OutsidePlant, ok bool) {
	clause := ""
	switch f {
	case Communications:
		clause = "800.48"
	case Coaxial:
		clause = "820.48"
	case Optical, OpticalConductive:
		clause = "770.48(A)"
	case Class2, Class3, PowerLimitedTray:
	}
	if !code.NEC() || clause == "" {
		return OutsidePlant{}, false
	}
	return OutsidePlant{
		Most: 15 * unit.Metre, Barred: []Space{PlenumSpace, DuctSpace, RiserSpace, RiserFireproof, RiserDwelling},
		Source: inEdition(code, clause),
	}, true
}

// JacketRating returns the least temperature rating that a listed communications cable has,
// 60 C; only a higher one is printed on its jacket. ok is false where the code is no edition
// of the NEC.
func JacketRating(code FireCode) (least unit.Temperature, src Source, ok bool) {
	if !code.NEC() {
		return 0, Source{}, false
	}
	return 60 * unit.DegreeCelsius, inEdition(code, "800.179"), true
}
