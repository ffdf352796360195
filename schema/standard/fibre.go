package standard

import "homerun/schema/unit"

// Fibre is a class of optical fibre, ISO/IEC 11801-1. The zero value is none.
type Fibre uint8

// The classes: OM are multimode, OS single-mode.
const (
	OM1 Fibre = iota + 1
	OM2
	OM3
	OM4
	OM5
	OS1
	OS1a
	OS2
)

// fibres are the words for the classes.
var fibres = []string{OM1: "OM1", OM2: "OM2", OM3: "OM3", OM4: "OM4", OM5: "OM5", OS1: "OS1", OS1a: "OS1a", OS2: "OS2"}

var fibreClasses = Source{Body: "ISO/IEC", Edition: "11801-1:2017", Clause: "classes of optical fibre", Confidence: Confirmed}

// ParseFibre reads "OM4" or "OS2". The error is a *unit.Error.
func ParseFibre(s string) (Fibre, error) {
	i, err := indexOf(fibres, "class of fibre", s)
	return Fibre(i), err
}

// Fibres returns all classes in order.
func Fibres() []Fibre {
	out := make([]Fibre, 0, len(fibres))
	for f := OM1; int(f) < len(fibres); f++ {
		out = append(out, f)
	}
	return out
}

// String returns the word for the class, as in a record; empty for none.
func (f Fibre) String() string { return wordOf(fibres, int(f)) }

// known reports whether f is a class at all.
func (f Fibre) known() bool { return f >= OM1 && f <= OS2 }

// Multimode reports whether the class is multimode.
func (f Fibre) Multimode() bool { return f >= OM1 && f <= OM5 }

// SingleMode reports whether the class is single-mode.
func (f Fibre) SingleMode() bool { return f >= OS1 && f <= OS2 }

// Core returns the diameter of the core: 62.5 um for OM1, 50 um for the other multimode
// classes. That of single-mode fibre is about 9 um, from memory, and has no limit of its
// own. ok is false for no class.
func (f Fibre) Core() (l unit.Length, src Source, ok bool) {
	switch {
	case f == OM1:
		return 62_500 * unit.Nanometre, fibreClasses, true
	case f.Multimode():
		return 50 * unit.Micrometre, fibreClasses, true
	case f.SingleMode():
		return 9 * unit.Micrometre, fibreClasses.unsure().noted("8 um to 10 um"), true
	default:
		return 0, Source{}, false
	}
}

// Joint is how two fibres meet. The zero value is none.
type Joint uint8

// The three ways.
const (
	SameCore      Joint = iota + 1
	DifferentCore       // 62.5 um on 50 um: light is lost from the larger into the smaller
	DifferentMode       // multimode on single-mode
)

// joints are the words for the ways.
var joints = []string{SameCore: "the same core", DifferentCore: "cores of different size", DifferentMode: "multimode and single-mode"}

// String returns the way in words.
func (j Joint) String() string { return wordOf(joints, int(j)) }

// Join returns how two classes of fibre meet in one channel. ok is false for no class.
func Join(a, b Fibre) (j Joint, src Source, ok bool) {
	switch {
	case !a.known() || !b.known():
		return 0, Source{}, false
	case a.Multimode() != b.Multimode():
		return DifferentMode, fibreClasses, true
	case a.Multimode() && (a == OM1) != (b == OM1):
		return DifferentCore, fibreClasses, true
	default:
		return SameCore, fibreClasses, true
	}
}

// Grandfathered reports whether the class is kept for existing cabling only, and is not for
// new work: OM1, OM2 and OS1 by ISO/IEC. ok is false for ANSI/TIA, where no figure was
// found, and for no class.
func Grandfathered(r Regime, f Fibre) (old bool, src Source, ok bool) {
	if r != ISO || !f.known() {
		return false, Source{}, false
	}
	return f == OM1 || f == OM2 || f == OS1, fibreClasses.noted("OM1, OM2 and OS1 are for existing cabling"), true
}

// ModalBandwidth is the least modal bandwidth of a multimode class in MHz km; 0 where none
// is stated.
type ModalBandwidth struct {
	Overfilled850, Overfilled1300 int // with every mode lit
	Effective850, Effective953    int // with the spot of a laser
	Source                        Source
}

// bandwidths are the rows.
var bandwidths = []ModalBandwidth{
	OM1: {Overfilled850: 200, Overfilled1300: 500},
	OM2: {Overfilled850: 500, Overfilled1300: 500},
	OM3: {Overfilled850: 1500, Overfilled1300: 500, Effective850: 2000},
	OM4: {Overfilled850: 3500, Overfilled1300: 500, Effective850: 4700},
	OM5: {Overfilled850: 3500, Overfilled1300: 500, Effective850: 4700, Effective953: 2470},
}

// BandwidthOf returns the least modal bandwidth of a class. ok is false for single-mode
// fibre, which has none.
func BandwidthOf(f Fibre) (b ModalBandwidth, ok bool) {
	if !f.Multimode() {
		return ModalBandwidth{}, false
	}
	b = bandwidths[f]
	b.Source = fibreClasses
	b.Source.Clause = "modal bandwidth"
	return b, true
}
