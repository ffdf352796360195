package standard

import "homerun/schema/unit"

// ambientRow is a row of the correction for ambient temperature: percent by rating, up to and
// with the temperature; 0 where the table gives none.
type ambientRow struct {
	celsius int64
	percent [3]int
}

// ambients are NFPA 70-2017, Table 310.15(B)(2)(a), from 30 C up. It corrects upwards below
// that, which is left out: a cooler space then counts as one at 30 C.
var ambients = []ambientRow{
	{30, [3]int{100, 100, 100}},
	{35, [3]int{91, 94, 96}},
	{40, [3]int{82, 88, 91}},
	{45, [3]int{71, 82, 87}},
	{50, [3]int{58, 75, 82}},
	{55, [3]int{41, 67, 76}},
	{60, [3]int{0, 58, 71}},
}

// AmbientCorrection returns the correction of an ampacity in percent for the temperature
// around a cable of a rating, 60 C, 75 C or 90 C. Between two rows the hotter one counts.
// ok is false for another rating, where the table gives no value, above 60 C, and for a code
// other than NEC 2017.
func AmbientCorrection(code FireCode, ambient, rated unit.Temperature) (percent int, src Source, ok bool) {
	column, ok := columnOf(rated)
	if code != NEC2017 || !ok || rated != unit.Temperature(columns[column])*unit.DegreeCelsius {
		return 0, Source{}, false
	}
	for _, row := range ambients {
		if ambient <= unit.Temperature(row.celsius)*unit.DegreeCelsius {
			percent = row.percent[column]
			return percent, inEdition(code, "Table 310.15(B)(2)(a)"), percent > 0
		}
	}
	return 0, Source{}, false
}

// AmpacityTrigger returns the power of a source over which the ampacity of bundled
// communications cable is ruled, 60 W. ok is false where the code is no edition of the NEC.
func AmpacityTrigger(code FireCode) (over unit.Power, src Source, ok bool) {
	if !code.NEC() {
		return 0, Source{}, false
	}
	return 60 * unit.Watt, inEdition(code, "840.160 and 725.144"), true
}

// LimitedPowerAmpacity returns the current that a conductor of a limited-power cable may
// carry in a bundle of any size. ok is false for a listing without the suffix and for a code
// that is no edition of the NEC. The table may allow the same cable more in a small bundle.
func LimitedPowerAmpacity(code FireCode, l Listing) (i unit.Current, src Source, ok bool) {
	i, ok = l.Ampacity()
	if !ok || !code.NEC() {
		return 0, Source{}, false
	}
	return i, inEdition(code, "725.144(B)"), true
}

// BundleGuideline returns the most cables in one bundle that ANSI/TIA advises, 24. It is a
// guideline and not a requirement; ISO/IEC advises no such number. ok is false for another
// family.
func BundleGuideline(r Regime) (cables int, src Source, ok bool) {
	if r != TIA {
		return 0, Source{}, false
	}
	return 24, Source{Body: "TIA", Edition: "TSB-184-A", Clause: "bundle size", Confidence: Confirmed, Note: "a guideline, not a requirement"}, true
}

// PoweredCurrent returns the most current of a conductor that the guidance of a family on
// remote powering reaches to, for four powered pairs: 500 mA in both. ok is false for no
// family.
func PoweredCurrent(r Regime) (conductor unit.Current, src Source, ok bool) {
	switch r {
	case TIA:
		return unit.Ampere / 2, Source{Body: "TIA", Edition: "TSB-184-A", Clause: "1 A in each of four pairs", Confidence: Confirmed}, true
	case ISO:
		return unit.Ampere / 2, Source{Body: "ISO/IEC", Edition: "TS 29125:2017", Clause: "four powered pairs", Confidence: Confirmed}, true
	default:
		return 0, Source{}, false
	}
}

// ModularCurrent returns the current that the contact of a modular eight-way plug and jack is
// typically rated for, 1.3 A; the code tells it for information.
func ModularCurrent() (i unit.Current, src Source) {
	return 13 * unit.Ampere / 10, inEdition(NEC2017, "725.144, informational note").noted("for information")
}
