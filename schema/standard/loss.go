package standard

import (
	"math"

	"homerun/schema/unit"
)

// lossCurve is the insertion loss of 100 m of cable at 20 C in dB, f in MHz:
// root*sqrt(f) + linear*f + inverse/sqrt(f).
type lossCurve struct {
	root, linear, inverse float64
	source                Source
}

// at returns the loss of 100 m in dB.
func (c lossCurve) at(mhz float64) float64 {
	r := math.Sqrt(mhz)
	return c.root*r + c.linear*mhz + c.inverse/r
}

var (
	tiaCable = Source{Body: "ANSI/TIA", Edition: "568-C.2", Clause: "cable insertion loss", Confidence: Confirmed}
	isoCable = Source{Body: "ISO/IEC", Edition: "11801", Clause: "insertion loss of cabling", Confidence: Confirmed}
)

// bandEdge is what is said of a formula from memory that gives published values.
const bandEdge = "the formula gives the published value at the top frequency"

// tiaCurves are the component limits of ANSI/TIA-568, by category; empty where there is none.
var tiaCurves = []lossCurve{
	Cat3:  {2.320, 0.238, 0, tiaCable.unsure().noted(bandEdge)},
	Cat5e: {1.967, 0.023, 0.050, tiaCable},
	Cat6:  {1.808, 0.017, 0.200, tiaCable},
	Cat6A: {1.82, 0.0091, 0.25, tiaCable},
	Cat8:  {1.80, 0.005, 0.25, Source{Body: "ANSI/TIA", Edition: "568.2-D", Clause: "cable insertion loss", Confidence: FromMemory}},
}

// isoCurves are the cable terms of the class limits of ISO/IEC 11801.
var isoCurves = map[string]lossCurve{
	"D":  {1.9108, 0.0222, 0.20, isoCable},
	"E":  {1.82, 0.0169, 0.25, isoCable},
	"EA": {1.82, 0.0091, 0.25, isoCable.unsure().noted(bandEdge)},
	"F":  {1.80, 0.0100, 0.20, isoCable},
}

// curveOf returns the curve of a category in a family; ok is false where none is known.
func curveOf(r Regime, c Category) (curve lossCurve, ok bool) {
	switch r {
	case TIA:
		if int(c) < len(tiaCurves) {
			curve = tiaCurves[c]
		}
	case ISO:
		curve = isoCurves[c.Class()]
	}
	return curve, curve.root > 0
}

// CableLoss returns the insertion loss of 100 m of cable at 20 C, in dB. ok is false where
// the family gives no curve for the category, or f is below 1 MHz, where none of them
// holds.
func CableLoss(r Regime, c Category, f unit.Frequency) (db float64, src Source, ok bool) {
	curve, ok := curveOf(r, c)
	if !ok || f < unit.Megahertz {
		return 0, Source{}, false
	}
	return curve.at(f.Megahertz()), curve.source, true
}

// hardwareRoot returns k of k*sqrt(f), the loss of one mated connection; ok is false
// where none is known.
func hardwareRoot(r Regime, c Category) (k float64, src Source, ok bool) {
	src = Source{Body: "ANSI/TIA", Edition: "568-C.2", Clause: "connecting hardware insertion loss", Confidence: Confirmed}
	if r == ISO {
		src = Source{Body: "ISO/IEC", Edition: "11801", Clause: "insertion loss of connections", Confidence: Confirmed}
	}
	switch {
	case r == TIA && c == Cat5e, r == ISO && c.Class() == "D":
		return 0.04, src, true
	case r == TIA && (c == Cat6 || c == Cat6A), r == ISO && (c.Class() == "E" || c.Class() == "F"):
		return 0.02, src, true
	case r == TIA && c == Cat8, r == ISO && c.Class() == "EA":
		return 0.02, src.unsure(), true
	default:
		return 0, Source{}, false
	}
}

// ConnectionLoss returns the insertion loss of one mated connection, in dB, and no less
// than 0.1 dB, what the standard lets a connection be measured as.
func ConnectionLoss(r Regime, c Category, f unit.Frequency) (db float64, src Source, ok bool) {
	k, src, ok := hardwareRoot(r, c)
	if !ok || f < unit.Megahertz {
		return 0, Source{}, false
	}
	return max(0.1, k*math.Sqrt(f.Megahertz())), src, true
}
