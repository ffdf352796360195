package standard

import "homerun/schema/unit"

// Medium is a kind of cable as far as bending and pulling goes. The zero value is none.
type Medium uint8

// The kinds.
const (
	FourPair  Medium = iota + 1
	Multipair        // backbone cable of more than four pairs
	FibreCable
	CopperCord
	FibreCord
)

// Strain is whether a cable is at rest or being pulled. The zero value is none.
type Strain uint8

// The two states.
const (
	AtRest Strain = iota + 1
	Pulling
)

// BendRule is the least radius that a cable may be bent to: a multiple of its outside
// diameter, or a length of its own.
type BendRule struct {
	Times  int         // of the outside diameter; 0 where Fixed holds
	Fixed  unit.Length // whatever the diameter; 0 where Times holds
	Source Source
}

// Least returns the least radius for an outside diameter. ok is false where the rule needs
// the diameter and it is not over 0, or is over 1 m.
func (b BendRule) Least(diameter unit.Length) (radius unit.Length, ok bool) {
	if b.Times == 0 {
		return b.Fixed, b.Fixed > 0
	}
	if diameter <= 0 || diameter > thickest {
		return 0, false
	}
	return unit.Length(b.Times) * diameter, true
}

// BendRuleOf returns the least bend radius of a kind of cable. The data sheet of a cable goes
// before it. ok is false where no figure was found.
func BendRuleOf(r Regime, m Medium, s Strain) (b BendRule, ok bool) {
	switch r {
	case TIA:
		return tiaBend(m, s)
	case ISO:
		return isoBend(m, s)
	default:
		return BendRule{}, false
	}
}

// tiaBend is the column of ANSI/TIA. A cord of 568-C.0 may be bent to its own diameter; the
// later edition stands here.
func tiaBend(m Medium, s Strain) (BendRule, bool) {
	src := Source{Body: "ANSI/TIA", Edition: "568.0-D", Clause: "minimum bend radius", Confidence: Confirmed}
	switch {
	case m == FourPair && s == AtRest:
		return BendRule{Times: 4, Source: src}, true
	case m == Multipair && s == AtRest:
		return BendRule{Times: 10, Source: src}, true
	case m == FibreCable && s == AtRest:
		return BendRule{Times: 10, Source: src}, true
	case m == FibreCable && s == Pulling:
		return BendRule{Times: 20, Source: src}, true
	case m == CopperCord && s == AtRest:
		src.Confidence = Conflicting
		return BendRule{Times: 4, Source: src.noted("once the diameter in 568-C.0")}, true
	case m == FibreCord && s == AtRest:
		return BendRule{Fixed: 25 * unit.Millimetre, Source: src}, true
	default:
		return BendRule{}, false
	}
}

// isoBend is the column of EN 50174-2, which goes with ISO/IEC 11801.
func isoBend(m Medium, s Strain) (BendRule, bool) {
	src := Source{
		Body: "EN", Edition: "50174-2", Clause: "minimum bend radius", Confidence: Conflicting,
		Note: "sources quote 4 times the diameter at rest and 8 times while pulling",
	}
	switch {
	case m == FourPair && s == AtRest:
		return BendRule{Times: 4, Source: src}, true
	case m == FourPair && s == Pulling:
		return BendRule{Times: 8, Source: src}, true
	default:
		return BendRule{}, false
	}
}

// largestSix is the widest conduit whose bends are ruled by six times its diameter: trade
// size 2, which is a little over 2 in wide in every kind.
const largestSix = 21 * unit.Inch / 10

// ConduitRadius returns the least inside radius of a bend in a conduit of an inside diameter,
// from memory: six times the diameter up to trade size 2, ten times above it. ok is false for
// ISO/IEC, where no figure was found, and for a diameter that RoundSection refuses.
func ConduitRadius(r Regime, inside unit.Length) (radius unit.Length, src Source, ok bool) {
	if r != TIA || inside <= 0 || inside > widest {
		return 0, Source{}, false
	}
	src = Source{Body: "ANSI/TIA", Edition: "569", Clause: "bend radius of conduit", Confidence: FromMemory}
	if inside <= largestSix {
		return 6 * inside, src, true
	}
	return 10 * inside, src, true
}
