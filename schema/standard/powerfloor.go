package standard

import "homerun/schema/unit"

// PowerRoute is what the power cable beside a pathway runs in. The zero value is none
// stated, and counts as open.
type PowerRoute uint8

// The routes.
const (
	PowerOpen PowerRoute = iota + 1
	PowerInRaceway
	PowerInSheath // metal-sheathed or metal-clad cable
)

// powerRoutes are the words for the routes.
var powerRoutes = []string{PowerOpen: "open", PowerInRaceway: "raceway", PowerInSheath: "metal-sheath"}

// String returns the word for the route, as in a record; empty for none stated.
func (p PowerRoute) String() string { return wordOf(powerRoutes, int(p)) }

// ParsePowerRoute reads "open", "raceway" or "metal-sheath". The error is a *unit.Error.
func ParsePowerRoute(s string) (PowerRoute, error) {
	i, err := indexOf(powerRoutes, "route of the power cable", s)
	return PowerRoute(i), err
}

// FloorCase is how power and communications cable lie beside each other.
type FloorCase struct {
	Power         PowerRoute
	DataInRaceway bool // the communications cable is in a raceway
	Divided       bool // a fixed non-conductor, or a barrier, parts them besides the insulation
}

// PowerFloor returns the least distance that an edition of the NEC asks for between
// communications and power cable, 50 mm (2 in), or 0 with the exception that lifts it. ok is
// false where the code is no edition of the NEC.
func PowerFloor(code FireCode, c FloorCase) (least unit.Length, exception string, src Source, ok bool) {
	if !code.NEC() {
		return 0, "", Source{}, false
	}
	src = Source{Body: "NFPA", Edition: "70-2017", Clause: "800.133(A)(2)", Confidence: Confirmed}
	if code != NEC2017 {
		src.Edition, src.Note = "70-2020", "rule confirmed for NEC 2017, for this edition from memory"
	}
	if code == NEC2023 {
		src.Edition = "70-2023"
	}
	switch {
	case c.Power == PowerInRaceway:
		return 0, "the power cable is in a raceway", src, true
	case c.Power == PowerInSheath:
		return 0, "the power cable is metal-sheathed", src, true
	case c.DataInRaceway:
		return 0, "the communications cable is in a raceway", src, true
	case c.Divided:
		return 0, "a fixed non-conductor parts them", src, true
	default:
		return 50 * unit.Millimetre, "", src, true
	}
}

// PowerBand is the power of the circuits beside a pathway, at up to 480 V.
type PowerBand uint8

// The bands.
const (
	Under2kVA PowerBand = iota + 1
	To5kVA
	Over5kVA
)

// Neighbours is how power and data cable are enclosed beside each other.
type Neighbours uint8

// The cases of the older ANSI/TIA table.
const (
	OpenBesideOpen       Neighbours = iota + 1 // unscreened power, open or non-metal pathway
	OpenBesideConduit                          // unscreened power, pathway of bonded metal conduit
	ConduitBesideConduit                       // both in bonded metal conduit
)

// quotedInches are the distances of the table, in tenths of an inch. Those between two
// conduits are quoted in two ways; the larger stands here.
var quotedInches = [][3]int64{
	OpenBesideOpen:       {50, 120, 240},
	OpenBesideConduit:    {25, 60, 120},
	ConduitBesideConduit: {12, 60, 120},
}

// QuotedSeparation returns the distance from power cable of the original ANSI/TIA-569
// table. Later editions refer branch circuits of 20 A to the NEC instead. ok is false for an
// unknown case.
func QuotedSeparation(n Neighbours, b PowerBand) (l unit.Length, src Source, ok bool) {
	if n < OpenBesideOpen || n > ConduitBesideConduit || b < Under2kVA || b > Over5kVA {
		return 0, Source{}, false
	}
	src = Source{
		Body: "ANSI/TIA", Edition: "569-A", Clause: "separation from power up to 480 V", Confidence: Confirmed,
		Note: "as quoted in the literature; 569-B of 2004 refers branch circuits of 20 A to the NEC",
	}
	if n == ConduitBesideConduit {
		src.Confidence = Conflicting
	}
	return unit.Length(quotedInches[n][b-Under2kVA]) * unit.Inch / 10, src, true
}
