package standard

import (
	"math/big"

	"homerun/schema/unit"
)

// nipple is the longest piece of conduit between boxes that counts as a nipple.
const nipple = 600 * unit.Millimetre

// ConduitFill returns the most that cables may fill of a conduit, in percent: 53 for one
// cable, 31 for two, 40 for more, and 60 in a nipple of at most 600 mm between boxes. A
// length of 0, not stated, is no nipple. ok is false where the code is no edition of the
// NEC. Whether it binds the cable at all is for FillApplies to say.
func ConduitFill(code FireCode, cables int, length unit.Length) (percent int, src Source, ok bool) {
	if !code.NEC() {
		return 0, Source{}, false
	}
	if length > 0 && length <= nipple {
		return 60, inEdition(code, "Chapter 9, Table 1, note 4"), true
	}
	return tableOne(cables), inEdition(code, "Chapter 9, Table 1"), true
}

// tableOne returns the limit by number of cables.
func tableOne(cables int) int {
	switch {
	case cables <= 1:
		return 53
	case cables == 2:
		return 31
	default:
		return 40
	}
}

// DesignFill returns the most that a family of cabling standards lets cables fill of a
// conduit, in percent, by number of cables. ok is false for ISO/IEC, where no figure was
// found.
func DesignFill(r Regime, cables int) (percent int, src Source, ok bool) {
	if r != TIA {
		return 0, Source{}, false
	}
	return tableOne(cables), Source{Body: "ANSI/TIA", Edition: "569-E", Clause: "conduit fill", Confidence: Confirmed, Note: "as quoted in the literature"}, true
}

// TrayLimits are the shares of a tray, basket or ladder that cables may fill, in percent.
type TrayLimits struct {
	Design int // when it is planned
	Most   int // ever
	Source Source
}

// TrayFill returns the limits of a tray, 25 and 50, from memory; owners often set their own.
// ok is false for ISO/IEC, where no figure was found.
func TrayFill(r Regime) (l TrayLimits, ok bool) {
	if r != TIA {
		return TrayLimits{}, false
	}
	return TrayLimits{Design: 25, Most: 50, Source: Source{Body: "ANSI/TIA", Edition: "569-E", Clause: "cable tray fill", Confidence: FromMemory}}, true
}

// FillApplies reports whether the code's own limit on the fill of a conduit binds cable of a
// family: it does for class 2 and 3, and not for communications, coaxial and optical cable
// without power conductors, whose overfilled conduit is a matter of the cabling standard. ok
// is false where the code is no edition of the NEC, and for no family.
func FillApplies(code FireCode, f Family) (applies bool, src Source, ok bool) {
	if !code.NEC() {
		return false, Source{}, false
	}
	switch f {
	case Communications:
		return false, inEdition(code, "800.110(B)"), true
	case Coaxial:
		return false, inEdition(code, "820.110(B)"), true
	case Optical, OpticalConductive:
		return false, inEdition(code, "770.110(B)(1)"), true
	case Class2, Class3:
		return true, inEdition(code, "725.3(A) and 300.17"), true
	case PowerLimitedTray:
		return true, inEdition(code, "725.3(A) and 300.17").unsure(), true
	default:
		return false, Source{}, false
	}
}

// CableCount is how many alike cables a section holds.
type CableCount struct {
	Plain   int // each within the limit
	Rounded int // with note 7: 0.8 of a cable counts as a whole one
}

// MostCables returns how many cables of a diameter fill a section up to a percentage. ok is
// false for no section and for a diameter that FillOf refuses.
func MostCables(s Section, diameter unit.Length, percent int) (n CableCount, ok bool) {
	if s.IsZero() || diameter <= 0 || diameter > thickest || percent < 0 {
		return CableCount{}, false
	}
	one, none := squared(diameter), new(big.Int)
	n.Plain = s.quotient(one, none, 100, int64(percent))
	n.Rounded = n.Plain
	next := int64(n.Plain+1)*10 - 2
	if s.compare(one, 100*next, 10*int64(percent)) <= 0 {
		n.Rounded++
	}
	return n, true
}

// CablesInConduit returns how many cables of a diameter a conduit holds by Table 1: as many
// as keep 40 percent where they are three or more, else two by 31 percent, else one by 53. ok
// as for MostCables.
func CablesInConduit(s Section, diameter unit.Length) (n CableCount, ok bool) {
	many, ok := MostCables(s, diameter, tableOne(3))
	if !ok {
		return CableCount{}, false
	}
	two, _ := MostCables(s, diameter, tableOne(2))
	one, _ := MostCables(s, diameter, tableOne(1))
	return CableCount{
		Plain:   tableCount(one.Plain, two.Plain, many.Plain),
		Rounded: tableCount(one.Rounded, two.Rounded, many.Rounded),
	}, true
}

// tableCount picks the count from what each limit alone would let in.
func tableCount(one, two, many int) int {
	switch {
	case many > 2:
		return many
	case two >= 2:
		return 2
	default:
		return min(1, one)
	}
}

// MayJam reports whether three alike cables may jam in a conduit when they are pulled: its
// inside diameter is between 2.8 and 3.2 times theirs. The code tells it for information. ok
// is false for diameters that are not over 0 or wider than RoundSection takes.
func MayJam(inside, cable unit.Length) (jams bool, src Source, ok bool) {
	if inside <= 0 || cable <= 0 || inside > widest || cable > widest {
		return false, Source{}, false
	}
	src = inEdition(NEC2017, "Chapter 9, Table 1, informational note 2").noted("for information")
	return 10*inside >= 28*cable && 10*inside <= 32*cable, src, true
}
