package standard

import "strings"

// substitution says what a type may be replaced by.
type substitution struct {
	name string
	by   string
}

// substitutions are NFPA 70-2017, Tables 725.154(A), 800.154(d), 820.154(b) and, from
// memory, 770.154(b). Network-powered broadband types, which may stand in for some, are
// left out: no listing of them is read.
var substitutions = []substitution{
	{"CMR", "CMP"},
	{"CMG", "CMP CMR CM"},
	{"CM", "CMP CMR CMG"},
	{"CMX", "CMP CMR CMG CM"},
	{"CATVP", "CMP"},
	{"CATVR", "CATVP CMP CMR"},
	{"CATV", "CATVP CMP CATVR CMR CMG CM"},
	{"CATVX", "CATVP CMP CATVR CMR CMG CM CATV"},
	{"CL3P", "CMP"},
	{"CL2P", "CMP CL3P"},
	{"CL3R", "CMP CL3P CMR"},
	{"CL2R", "CMP CL3P CL2P CMR CL3R"},
	{"CL3", "CMP CL3P CMR CL3R CMG CM PLTC"},
	{"CL2", "CMP CL3P CL2P CMR CL3R CL2R CMG CM PLTC CL3"},
	{"CL3X", "CMP CL3P CMR CL3R CMG CM PLTC CL3 CMX"},
	{"CL2X", "CMP CL3P CL2P CMR CL3R CL2R CMG CM PLTC CL3 CL2 CMX CL3X"},
	{"OFCP", "OFNP"},
	{"OFNR", "OFNP"},
	{"OFCR", "OFNP OFCP OFNR"},
	{"OFNG", "OFNP OFNR OFN"},
	{"OFN", "OFNP OFNR OFNG"},
	{"OFCG", "OFNP OFCP OFNR OFCR OFNG OFN OFC"},
	{"OFC", "OFNP OFCP OFNR OFCR OFNG OFN OFCG"},
}

// Substitutes returns the types that may be used in place of a listing, the strictest of
// each family first; none for a type that nothing may replace. Coaxial cable is
// replaced only by cable of the same construction.
func (l Listing) Substitutes() ([]Listing, Source) {
	src := substitutesSource(l.Family())
	for _, s := range substitutions {
		if s.name != l.Type() {
			continue
		}
		var out []Listing
		for name := range strings.FieldsSeq(s.by) {
			by, ok := listingNamed(name)
			if !ok {
				panic("standard: substitute " + name + " is no type")
			}
			out = append(out, by)
		}
		return out, src
	}
	return nil, src
}

// MayReplace reports whether a cable of this listing may be used where the other is asked
// for: it is of the same type, or among its substitutes.
func (l Listing) MayReplace(other Listing) bool {
	if l.IsZero() || other.IsZero() {
		return false
	}
	if l.Type() == other.Type() {
		return true
	}
	by, _ := other.Substitutes()
	for _, s := range by {
		if s.Type() == l.Type() {
			return true
		}
	}
	return false
}

// Remedies returns the types that may stand in a space in place of a listing that may not:
// its substitutes that the space permits or, where it has none, the types of its own
// family that the space permits.
func Remedies(code FireCode, l Listing, s Space, e Enclosure) []Listing {
	by, _ := l.Substitutes()
	if out := permitted(by, code, l, s, e); len(out) > 0 {
		return out
	}
	family := make([]Listing, 0, 6)
	for i, t := range types {
		if t.family == l.Family() {
			family = append(family, Listing{index: i + 1})
		}
	}
	return permitted(family, code, l, s, e)
}

// permitted keeps the listings that a space permits, other than the type asked about.
func permitted(from []Listing, code FireCode, not Listing, s Space, e Enclosure) []Listing {
	var out []Listing
	for _, l := range from {
		if p, ok := Permit(code, l, s, e); ok && p.Permitted && l.Type() != not.Type() {
			out = append(out, l)
		}
	}
	return out
}

// substitutesSource returns where the list of a family stands.
func substitutesSource(f Family) Source {
	src := Source{Body: "NFPA", Edition: "70-2017", Confidence: Confirmed}
	switch f {
	case Communications:
		src.Clause = "Table 800.154(d)"
	case Coaxial:
		src.Clause = "Table 820.154(b)"
	case Class2, Class3, PowerLimitedTray:
		src.Clause = "Table 725.154(A)"
	case Optical, OpticalConductive:
		src.Clause, src.Confidence = "Table 770.154(b)", Conflicting
		src.Note = "one source lets nothing stand in for OFCP"
	}
	return src
}
