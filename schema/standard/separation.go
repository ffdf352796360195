package standard

import "homerun/schema/unit"

// Segregation is the segregation class of a data cable, EN 50174-2: how well it keeps out
// what power cable radiates. The zero value is none.
type Segregation uint8

// The classes, the poorest first.
const (
	SegregationA Segregation = iota + 1
	SegregationB
	SegregationC
	SegregationD
)

// segregations are the words for the classes.
var segregations = []string{SegregationA: "a", SegregationB: "b", SegregationC: "c", SegregationD: "d"}

// String returns the word for the class, as in a record; empty for none.
func (s Segregation) String() string { return wordOf(segregations, int(s)) }

// ParseSegregation reads "a" to "d". The error is a *unit.Error.
func ParseSegregation(s string) (Segregation, error) {
	i, err := indexOf(segregations, "segregation class", s)
	return Segregation(i), err
}

// Barrier is what stands between power and data cable. The zero value is none stated.
type Barrier uint8

// The barriers of EN 50174-2.
const (
	NoBarrier       Barrier = iota + 1 // nothing, or plastic
	OpenMetal                          // ladder or basket
	PerforatedMetal                    // perforated tray
	SolidMetal                         // closed metal
)

// barriers are the words for the barriers.
var barriers = []string{NoBarrier: "none", OpenMetal: "open-metal", PerforatedMetal: "perforated-metal", SolidMetal: "solid-metal"}

// String returns the word for the barrier, as in a record; empty for none stated.
func (b Barrier) String() string { return wordOf(barriers, int(b)) }

// ParseBarrier reads "open-metal", or "none". The error is a *unit.Error.
func ParseBarrier(s string) (Barrier, error) {
	i, err := indexOf(barriers, "barrier", s)
	return Barrier(i), err
}

// PowerLoad is the power cable beside a pathway.
type PowerLoad struct {
	Circuits int
	Phases   int          // 1 or 3; 0 counts as 1
	Current  unit.Current // of each circuit; up to 20 A counts once, each further 20 A once more
}

// SegregationSum is the sum for the distance between power and data cable: A = S * P.
type SegregationSum struct {
	S           unit.Length // least separation of the class and barrier
	Equivalent  int         // circuits of one phase and up to 20 A that the load counts as
	FactorTenth int         // P in tenths: 2 for 0.2, 60 for 6
	A           unit.Length // S*P exactly
	Source      Source
}

var segregationSource = Source{Body: "EN", Edition: "50174-2:2009", Clause: "separation of cabling from power, A = S x P", Confidence: Confirmed}

// separations are S in millimetres by class, with barriers in the order none, open,
// perforated, solid. Class a is from memory.
var separations = [][4]int64{
	SegregationA: {300, 225, 150, 0},
	SegregationB: {100, 75, 50, 0},
	SegregationC: {50, 38, 25, 0},
	SegregationD: {10, 8, 5, 0},
}

// powerStep is a step of the table of P: up to that many circuits.
type powerStep struct{ circuits, tenths int }

// powerSteps is the table of P; over 75 circuits it is 6.
var powerSteps = []powerStep{
	{3, 2}, {6, 4}, {9, 6}, {12, 8}, {15, 10}, {30, 20}, {45, 30}, {60, 40}, {75, 50},
}

const beyondSteps = 60

// Equivalent returns the circuits of one phase and at most 20 A that the load counts as,
// capped where more makes no difference.
func (p PowerLoad) Equivalent() int {
	const most = 1000
	n := max(0, min(p.Circuits, most))
	if p.Phases == 3 {
		n *= 3
	}
	const step = 20 * unit.Ampere
	if p.Current > step {
		n *= int(min(most, (p.Current-1)/step+1))
	}
	return n
}

// PowerFactor returns P in tenths for a number of circuits: 2 for 0.2; 0 for no circuit.
func PowerFactor(circuits int) (tenths int, src Source) {
	if circuits <= 0 {
		return 0, segregationSource
	}
	for _, s := range powerSteps {
		if circuits <= s.circuits {
			return s.tenths, segregationSource
		}
	}
	return beyondSteps, segregationSource
}

// Segregate computes the least distance between power and data cable. ok is false for no
// class, no barrier, phases other than 1 and 3, or a negative load.
func Segregate(class Segregation, between Barrier, load PowerLoad) (sum SegregationSum, ok bool) {
	if class < SegregationA || class > SegregationD || between < NoBarrier || between > SolidMetal {
		return SegregationSum{}, false
	}
	if load.Circuits < 0 || load.Current < 0 || (load.Phases != 0 && load.Phases != 1 && load.Phases != 3) {
		return SegregationSum{}, false
	}
	sum.S = unit.Length(separations[class][between-NoBarrier]) * unit.Millimetre
	sum.Equivalent = load.Equivalent()
	sum.FactorTenth, sum.Source = PowerFactor(sum.Equivalent)
	sum.A = sum.S * unit.Length(sum.FactorTenth) / 10
	if class == SegregationA {
		sum.Source = sum.Source.unsure()
	}
	return sum, true
}

// SegregationOf returns the segregation class that a category and its screen usually have.
// The class of a cable is measured: what its data sheet states goes before this. ok is
// false where no example was found.
func SegregationOf(c Category, s Shield) (class Segregation, src Source, ok bool) {
	src = segregationSource
	src.Clause = "segregation classes, examples"
	switch {
	case s == Unscreened && (c == Cat5e || c == Cat6):
		return SegregationB, src, true
	case s == Unscreened && c == Cat6A:
		return SegregationB, src.unsure(), true
	case s == Screened && (c == Cat5e || c == Cat6 || c == Cat6A):
		return SegregationC, src, true
	case s == Screened && (c == Cat7 || c == Cat7A):
		return SegregationD, src, true
	default:
		return 0, Source{}, false
	}
}
