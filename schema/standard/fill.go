package standard

import (
	"math/big"

	"homerun/schema/unit"
)

// Fill is how much of a section cables take up. The zero value holds no section.
type Fill struct {
	Cables  int
	Used    Area
	Total   Area
	Percent float64 // to be shown; Judge decides on the exact numbers

	section Section
	squares *big.Int    // of the diameters, in nm2
	alike   unit.Length // the diameter, where all are alike; 0 where they are not
}

// thickest is the widest cable that counts as one.
const thickest = unit.Metre

// FillOf adds up the cables in a section by their outside diameters; a cable that is not
// round counts by its larger diameter (NFPA 70-2017, Chapter 9, note 9). ok is false for no
// section and for a diameter that is not over 0 and at most 1 m: nothing is added up with a
// cable left out.
func FillOf(s Section, diameters []unit.Length) (f Fill, ok bool) {
	if s.IsZero() {
		return Fill{}, false
	}
	f = Fill{Cables: len(diameters), section: s, squares: new(big.Int), Total: s.Area()}
	for i, d := range diameters {
		if d <= 0 || d > thickest {
			return Fill{}, false
		}
		f.squares.Add(f.squares, squared(d))
		switch {
		case i == 0:
			f.alike = d
		case d != f.alike:
			f.alike = -1
		}
	}
	f.alike = max(0, f.alike)
	f.Used = circleArea(f.squares)
	f.Percent = 100 * f.share()
	return f, true
}

// squared returns the square of a diameter in nm2.
func squared(d unit.Length) *big.Int {
	x := big.NewInt(int64(d))
	return x.Mul(x, x)
}

// share returns the fill as a fraction of 1.
func (f Fill) share() float64 {
	c, k := f.section.scales()
	up := new(big.Int).Mul(f.squares, c)
	down := new(big.Int).Mul(big.NewInt(f.section.square), k)
	r, _ := new(big.Rat).SetFrac(up, down).Float64()
	return r
}

// FillVerdict is how a fill stands to a limit. The zero value is no answer.
type FillVerdict uint8

// The verdicts.
const (
	WithinLimit    FillVerdict = iota + 1
	WithinRounding             // over the limit, and permitted by the rounding of note 7
	OverLimit
)

// fillVerdicts are the words for the verdicts.
var fillVerdicts = []string{WithinLimit: "within the limit", WithinRounding: "within the limit by rounding", OverLimit: "over the limit"}

// String returns the verdict in words.
func (v FillVerdict) String() string { return wordOf(fillVerdicts, int(v)) }

// Rounding says whether a limit on fill is rounded to whole cables. The zero value is not.
type Rounding uint8

// The two ways.
const (
	Unrounded Rounding = iota
	NoteSeven          // NFPA 70, Chapter 9, note 7: alike cables, from 0.8 of a cable up to the next
)

// Judge holds the fill against a limit in percent, exactly. A fill of just the limit is
// within it.
func (f Fill) Judge(percent int, r Rounding) FillVerdict {
	switch {
	case f.squares == nil:
		return 0
	case f.section.compare(f.squares, 100, int64(percent)) <= 0:
		return WithinLimit
	case r == NoteSeven && f.alike > 0 && f.rounds(percent):
		return WithinRounding
	default:
		return OverLimit
	}
}

// rounds reports whether the limit holds at least 0.8 of the last cable: n - 0.2 cables of
// one size are within it.
func (f Fill) rounds(percent int) bool {
	n := int64(f.Cables)*10 - 2
	return f.section.compare(squared(f.alike), 100*n, 10*int64(percent)) <= 0
}

// Left returns how many more cables of a diameter the limit leaves room for, not rounded up;
// 0 where it is reached. ok is false for a diameter that FillOf refuses and for no section.
func (f Fill) Left(percent int, diameter unit.Length) (cables int, ok bool) {
	if f.squares == nil || diameter <= 0 || diameter > thickest {
		return 0, false
	}
	return f.section.quotient(squared(diameter), f.squares, 100, int64(percent)), true
}
