package standard

import (
	"strconv"

	"homerun/schema/unit"
)

// Wavelength is a nominal wavelength of light in fibre, in nanometres.
type Wavelength int

// The windows that attenuation is stated for.
const (
	Nm850  Wavelength = 850
	Nm953  Wavelength = 953
	Nm1300 Wavelength = 1300 // multimode
	Nm1310 Wavelength = 1310 // single-mode
	Nm1383 Wavelength = 1383
	Nm1550 Wavelength = 1550
)

// String returns the wavelength with its unit, "850 nm".
func (w Wavelength) String() string { return strconv.Itoa(int(w)) + " nm" }

// fibreRow is the most that a cabled fibre may attenuate at a wavelength, in tenths of a
// decibel a kilometre, by family and how sure it is.
type fibreRow struct {
	fibre            Fibre
	at               Wavelength
	tia, iso         int64
	tiaSure, isoSure Confidence
}

// fibreRows are ANSI/TIA-568.3-D and ISO/IEC 11801-1. The families differ for OM3 and OM4 at
// 850 nm. OM5 and the single-mode classes were read for ISO/IEC alone.
var fibreRows = []fibreRow{
	{OM1, Nm850, 35, 35, Confirmed, FromMemory},
	{OM1, Nm1300, 15, 15, Confirmed, FromMemory},
	{OM2, Nm850, 35, 35, Confirmed, FromMemory},
	{OM2, Nm1300, 15, 15, Confirmed, FromMemory},
	{OM3, Nm850, 30, 35, FromMemory, Confirmed},
	{OM3, Nm1300, 15, 15, FromMemory, Confirmed},
	{OM4, Nm850, 30, 35, FromMemory, Confirmed},
	{OM4, Nm1300, 15, 15, FromMemory, Confirmed},
	{OM5, Nm850, 30, 30, FromMemory, Confirmed},
	{OM5, Nm953, 23, 23, FromMemory, FromMemory},
	{OM5, Nm1300, 15, 15, FromMemory, FromMemory},
	{OS1, Nm1310, 10, 10, FromMemory, Confirmed},
	{OS1, Nm1550, 10, 10, FromMemory, Confirmed},
	{OS1a, Nm1310, 10, 10, FromMemory, Confirmed},
	{OS1a, Nm1383, 10, 10, FromMemory, Confirmed},
	{OS1a, Nm1550, 10, 10, FromMemory, Confirmed},
	{OS2, Nm1310, 4, 4, FromMemory, Confirmed},
	{OS2, Nm1383, 4, 4, FromMemory, Confirmed},
	{OS2, Nm1550, 4, 4, FromMemory, Confirmed},
}

// tenth is a tenth of a decibel.
const tenth = unit.Decibel / 10

// source returns where the row stands in a family.
func (r fibreRow) source(family Regime) Source {
	if family == ISO {
		return Source{Body: "ISO/IEC", Edition: "11801-1:2017", Clause: "cabled fibre attenuation", Confidence: r.isoSure}
	}
	src := Source{Body: "ANSI/TIA", Edition: "568.3-D", Clause: "cabled fibre attenuation", Confidence: r.tiaSure}
	if r.fibre == OS2 {
		src = src.noted("0.5 dB/km for indoor-outdoor cable")
	}
	return src
}

// Attenuation returns the most that a kilometre of cabled fibre may attenuate at a
// wavelength. ok is false where the family states none for that class and wavelength;
// nothing is interpolated.
func Attenuation(r Regime, f Fibre, w Wavelength) (perKilometre unit.Loss, src Source, ok bool) {
	if r != TIA && r != ISO {
		return 0, Source{}, false
	}
	for _, row := range fibreRows {
		if row.fibre != f || row.at != w {
			continue
		}
		tenths := row.tia
		if r == ISO {
			tenths = row.iso
		}
		return unit.Loss(tenths) * tenth, row.source(r), true
	}
	return 0, Source{}, false
}

// ConnectionAttenuation returns the most that one mated pair of fibre connectors may lose,
// 0.75 dB. ok is false for no family.
func ConnectionAttenuation(r Regime) (each unit.Loss, src Source, ok bool) {
	each = 3 * unit.Decibel / 4
	switch r {
	case TIA:
		return each, Source{Body: "ANSI/TIA", Edition: "568.3-D", Clause: "mated connector insertion loss", Confidence: Confirmed}, true
	case ISO:
		return each, Source{Body: "ISO/IEC", Edition: "11801-1:2017", Clause: "optical connection insertion loss", Confidence: Confirmed}, true
	default:
		return 0, Source{}, false
	}
}

// SpliceAttenuation returns the most that one splice may lose, 0.3 dB, from memory. ok is
// false for no family.
func SpliceAttenuation(r Regime) (each unit.Loss, src Source, ok bool) {
	each = 3 * tenth
	switch r {
	case TIA:
		return each, Source{Body: "ANSI/TIA", Edition: "568.3-D", Clause: "splice insertion loss", Confidence: FromMemory}, true
	case ISO:
		return each, Source{Body: "ISO/IEC", Edition: "11801-1:2017", Clause: "splice insertion loss", Confidence: FromMemory}, true
	default:
		return 0, Source{}, false
	}
}
