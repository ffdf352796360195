package standard

import "homerun/schema/unit"

// PullLimits are what may lie between two pull points of a conduit.
type PullLimits struct {
	Bends        unit.Angle // all bends together
	Length       unit.Length
	Source       Source
	LengthSource Source
}

// PullLimitsOf returns the limits of a family of cabling standards: two bends of 90 degrees
// and 30 m. ok is false for ISO/IEC, where no figure was found.
func PullLimitsOf(r Regime) (l PullLimits, ok bool) {
	if r != TIA {
		return PullLimits{}, false
	}
	src := Source{Body: "ANSI/TIA", Edition: "569", Clause: "bends between pull points", Confidence: Confirmed, Note: "as quoted by practitioners"}
	// One quotation alone tells the length, where two agree on the bends.
	length := src.unsure()
	length.Clause = "length between pull points"
	return PullLimits{Bends: 180 * unit.Degree, Length: 30 * unit.Metre, Source: src, LengthSource: length}, true
}

// CodeBends returns the most bend between two pull points by the electrical code, 360
// degrees. ok is false where the code is no edition of the NEC.
func CodeBends(code FireCode) (a unit.Angle, src Source, ok bool) {
	if !code.NEC() {
		return 0, Source{}, false
	}
	return 360 * unit.Degree, inEdition(code, "342.26, 344.26, 352.26 and 358.26"), true
}

// SupportSpacing returns the greatest distance between open supports such as hooks, 1.5 m. ok
// is false for ISO/IEC, where no figure was found.
func SupportSpacing(r Regime) (most unit.Length, src Source, ok bool) {
	if r != TIA {
		return 0, Source{}, false
	}
	return 1500 * unit.Millimetre, Source{Body: "ANSI/TIA", Edition: "569-A", Clause: "4.6.5", Confidence: Confirmed}, true
}

// PullTension returns the most force that a cable may be pulled with, in newtons: 110 for
// four-pair cable (25 lbf) and 222 for fibre cable of two or four fibres (50 lbf). strands
// is the number of fibres; 0 for copper. ok is false where no figure was found.
func PullTension(r Regime, m Medium, strands int) (newtons int, src Source, ok bool) {
	src = Source{Body: "ANSI/TIA", Edition: "568.0-D", Clause: "pulling tension", Confidence: Confirmed, Note: "as quoted in the literature"}
	switch {
	case r == TIA && m == FourPair:
		return 110, src, true
	case r == TIA && m == FibreCable && (strands == 2 || strands == 4):
		return 222, src, true
	default:
		return 0, Source{}, false
	}
}

// Untwist returns the most that a pair may be untwisted at a termination: 13 mm for category
// 5e and above, 75 mm for category 3, from memory. ok is false where no figure was found.
func Untwist(r Regime, c Category) (most unit.Length, src Source, ok bool) {
	src = Source{Body: "ANSI/TIA", Edition: "568.0-D", Clause: "untwist at the termination", Confidence: Confirmed, Note: "as quoted in the literature"}
	switch {
	case r != TIA || !c.known():
		return 0, Source{}, false
	case c == Cat3:
		return 75 * unit.Millimetre, src.unsure(), true
	case c == Cat5e || c == Cat6 || c == Cat6A:
		return 13 * unit.Millimetre, src, true
	default:
		return 0, Source{}, false
	}
}
