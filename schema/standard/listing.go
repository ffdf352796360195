package standard

import (
	"slices"
	"strings"

	"homerun/schema/unit"
)

// Family is a family of listed cable, NFPA 70.
type Family uint8

// The families.
const (
	Communications    Family = iota + 1 // CM types
	Coaxial                             // CATV types
	Class2                              // CL2 types
	Class3                              // CL3 types
	PowerLimitedTray                    // PLTC
	Optical                             // OFN types, without metal
	OpticalConductive                   // OFC types, with metal
)

// Grade is what fire test a listed cable has passed. The strictest has the smallest
// number; under-carpet cable stands outside the order.
type Grade uint8

// The grades.
const (
	Plenum Grade = iota + 1
	Riser
	General
	Limited
	UnderCarpetGrade
)

// listed is one type of cable.
type listed struct {
	name   string
	family Family
	grade  Grade
}

// types are the types of NFPA 70-2017, Tables 725.154, 800.179, 820.179 and 770.179,
// the strictest of each family first.
var types = []listed{
	{"CMP", Communications, Plenum},
	{"CMR", Communications, Riser},
	{"CMG", Communications, General},
	{"CM", Communications, General},
	{"CMX", Communications, Limited},
	{"CMUC", Communications, UnderCarpetGrade},
	{"CATVP", Coaxial, Plenum},
	{"CATVR", Coaxial, Riser},
	{"CATV", Coaxial, General},
	{"CATVX", Coaxial, Limited},
	{"CL3P", Class3, Plenum},
	{"CL3R", Class3, Riser},
	{"CL3", Class3, General},
	{"CL3X", Class3, Limited},
	{"CL2P", Class2, Plenum},
	{"CL2R", Class2, Riser},
	{"CL2", Class2, General},
	{"CL2X", Class2, Limited},
	{"PLTC", PowerLimitedTray, General},
	{"OFNP", Optical, Plenum},
	{"OFNR", Optical, Riser},
	{"OFNG", Optical, General},
	{"OFN", Optical, General},
	{"OFCP", OpticalConductive, Plenum},
	{"OFCR", OpticalConductive, Riser},
	{"OFCG", OpticalConductive, General},
	{"OFC", OpticalConductive, General},
}

// Listing is the fire listing printed on a jacket. The zero value is none. Two
// listings compare with ==.
type Listing struct {
	index    int // into types, counted from 1
	ampacity unit.Current
}

// ParseListing reads "CMP", "OFNR", "CATV", ... or, for copper cable listed for limited
// power, "CL2P-LP(0.5A)" with the current that each conductor may carry. The error is a
// *unit.Error.
func ParseListing(s string) (Listing, error) {
	name, suffix, limited := strings.Cut(s, "-LP")
	l, ok := listingNamed(name)
	if !ok {
		return Listing{}, unknownListing(s, name)
	}
	if !limited {
		return l, nil
	}
	if f := l.Family(); f != Communications && f != Class2 && f != Class3 {
		return Listing{}, refuse(s, "listing "+name+" is not made with a limited-power suffix", name)
	}
	inner, closed := strings.CutSuffix(suffix, ")")
	inner, opened := strings.CutPrefix(inner, "(")
	amperes, err := unit.ParseCurrent(inner)
	if !opened || !closed || err != nil || amperes <= 0 {
		return Listing{}, refuse(s, "listing "+shown(s)+" does not end in the current of a conductor", name+"-LP(0.5A)")
	}
	l.ampacity = amperes
	if l.String() != s {
		return Listing{}, refuse(s, "listing "+shown(s)+" is not in the form that is read", l.String())
	}
	return l, nil
}

// listingNamed finds a type by its name.
func listingNamed(name string) (Listing, bool) {
	i := slices.IndexFunc(types, func(t listed) bool { return t.name == name })
	return Listing{index: i + 1}, i >= 0
}

// unknownListing words the refusal of a name that is no type.
func unknownListing(s, name string) error {
	if _, ok := listingNamed(strings.ToUpper(name)); ok {
		return refuse(s, "listing "+shown(s)+" is not in capital letters", strings.ToUpper(s))
	}
	return &unit.Error{Text: s, Message: "listing " + shown(s) + " is not known", Next: "use one of " + strings.Join(ListingNames(), ", ")}
}

// ListingNames returns the types that are read, by family, the strictest first.
func ListingNames() []string {
	names := make([]string, len(types))
	for i, t := range types {
		names[i] = t.name
	}
	return names
}

// entry returns the type of the listing.
func (l Listing) entry() listed {
	if l.index == 0 {
		return listed{}
	}
	return types[l.index-1]
}

// String returns the listing as printed, "CL2P-LP(0.5A)".
func (l Listing) String() string {
	if l.ampacity == 0 {
		return l.Type()
	}
	whole, fraction := int64(l.ampacity/unit.Ampere), int64(l.ampacity%unit.Ampere)
	return l.Type() + "-LP(" + decimal(whole, fraction, 6) + "A)"
}

// Type returns the listing without a limited-power suffix: it may be used wherever the
// type may (NFPA 70-2017, 725.144(B)).
func (l Listing) Type() string { return l.entry().name }

// Family returns the family of the listing.
func (l Listing) Family() Family { return l.entry().family }

// Grade returns the grade of the listing.
func (l Listing) Grade() Grade { return l.entry().grade }

// Ampacity returns the current that each conductor of a limited-power cable may carry
// in a bundle of any size; ok is false for a cable without the suffix.
func (l Listing) Ampacity() (i unit.Current, ok bool) { return l.ampacity, l.ampacity != 0 }

// IsZero reports whether there is no listing.
func (l Listing) IsZero() bool { return l.index == 0 }
