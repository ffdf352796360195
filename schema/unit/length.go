package unit

import (
	"math"
	"strings"
)

// Length is a length in nanometres, so that a ten-thousandth of an inch and of a foot
// are whole numbers. It reaches over nine million kilometres.
type Length int64

// Lengths to build others from: 90*Metre. The inch is 25.4 mm by definition
// (international yard and pound agreement, 1959).
const (
	Nanometre  Length = 1
	Micrometre        = 1000 * Nanometre
	Millimetre        = 1000 * Micrometre
	Centimetre        = 10 * Millimetre
	Metre             = 1000 * Millimetre
	Kilometre         = 1000 * Metre
	Inch              = 25_400_000 * Nanometre
	Foot              = 12 * Inch
	Yard              = 3 * Foot
	Mile              = 1760 * Yard
)

var (
	metres      = scale{word: "m", per: int64(Metre)}
	millimetres = scale{word: "mm", per: int64(Millimetre)}
	feet        = scale{word: "ft", per: int64(Foot)}
	inches      = scale{word: "in", per: int64(Inch)}
)

var lengths = kind{
	noun: "length",
	scales: []scale{
		metres, feet, millimetres, inches,
		{word: "cm", per: int64(Centimetre)},
		{word: "km", per: int64(Kilometre)},
		{word: "um", per: int64(Micrometre)},
		{word: "nm", per: int64(Nanometre)},
		{word: "yd", per: int64(Yard)},
		{word: "mi", per: int64(Mile)},
	},
	names: map[string]string{
		"meter": "m", "meters": "m", "metre": "m", "metres": "m", "mtr": "m", "mtrs": "m", "mt": "m", "mts": "m",
		"foot": "ft", "feet": "ft", "fts": "ft", "'": "ft", "\u2032": "ft", "\u2019": "ft", "lf": "ft",
		"inch": "in", "inches": "in", "ins": "in", "\"": "in", "\u2033": "in", "\u201d": "in", "''": "in",
		"millimeter": "mm", "millimeters": "mm", "millimetre": "mm", "millimetres": "mm",
		"centimeter": "cm", "centimeters": "cm", "centimetre": "cm", "centimetres": "cm",
		"kilometer": "km", "kilometers": "km", "kilometre": "km", "kilometres": "km", "kms": "km",
		"micron": "um", "microns": "um", "micrometer": "um", "micrometre": "um", "\u00b5m": "um", "\u03bcm": "um",
		"yard": "yd", "yards": "yd", "yds": "yd", "mile": "mi", "miles": "mi",
	},
	example:  "41.5 m",
	smallest: "a nanometre",
}

// ParseLength reads "41.5 m", "300 mm", "136 ft" or "12 ft 6 in". Units: nm, um, mm, cm,
// m, km, in, ft, yd, mi. The error is an *Error.
func ParseLength(s string) (Length, error) {
	if head, tail, ok := strings.Cut(s, " ft "); ok && len(s) <= maxText {
		return feetAndInches(s, head, tail)
	}
	v, err := lengths.read(s)
	if err == nil {
		return Length(v), nil
	}
	if right, ok := looseFeetAndInches(s); ok {
		return 0, refuse(s, "length "+shown(s)+" is not in the form that is read", right)
	}
	return 0, err
}

// looseFeetAndInches finds feet and inches in another spelling, so that a refusal can
// say the right form.
func looseFeetAndInches(s string) (right string, ok bool) {
	if len(s) > maxText {
		return "", false
	}
	ft, rest, _ := scan(s)
	rest = strings.TrimLeft(rest, " ")
	if rest == "" || !strings.ContainsAny(string([]rune(rest)[:1]), "fF'\u2032\u2019") {
		return "", false
	}
	word := strings.TrimRight(rest, "0123456789. inches\"\u2033\u201d'\u2032\u2019-")
	if w, known := lengths.meant(word); known && w != "ft" {
		return "", false
	}
	in, word, ok := scan(strings.TrimLeft(strings.TrimPrefix(rest, word), " -'\u2032\u2019"))
	if w, known := lengths.meant(word); !ok || strings.Contains(ft, ".") || (known && w != "in") || (!known && word != "") {
		return "", false
	}
	right = ft + " ft " + in + " in"
	_, err := ParseLength(right)
	return right, err == nil
}

// feetAndInches reads whole feet and the inches beside them. The sign stands before
// the feet and holds for both.
func feetAndInches(s, head, tail string) (Length, error) {
	const example = "12 ft 6 in"
	if digits(strings.TrimLeft(head, "+-")) == 0 || strings.Contains(head, ".") {
		return 0, refuse(s, "length in feet and inches needs whole feet", example)
	}
	ft, err := lengths.read(head + " ft")
	if err != nil {
		return 0, &Error{Text: s, Message: err.Message, Next: err.Next}
	}
	num, rest, ok := scan(tail)
	if !ok || strings.TrimPrefix(rest, " ") != "in" || tail[0] == '-' || tail[0] == '+' {
		return 0, refuse(s, "length in feet is not followed by inches", example)
	}
	in, err := lengths.value(s, num, inches)
	if err != nil {
		return 0, err
	}
	if in >= int64(Foot) {
		return 0, refuse(s, "length has twelve inches or more beside its feet", example)
	}
	if head[0] == '-' {
		in = -in
	}
	sum, ok := add(ft, in)
	if !ok {
		return 0, refuse(s, "length "+shown(s)+" is larger than can be kept")
	}
	return Length(sum), nil
}

// lengthScale chooses the unit a length of that size is printed in: metres from 1 m
// and millimetres below it, feet from 1 ft and inches below it.
func lengthScale(size uint64, sys System) scale {
	switch {
	case sys == US && size < uint64(Foot):
		return inches
	case sys == US:
		return feet
	case size < uint64(Metre):
		return millimetres
	default:
		return metres
	}
}

// Text prints the length, as in "41.5 m", "300 mm", "136 ft" or "8 in", rounded to
// three decimals where it has more.
func (l Length) Text(sys System) string {
	return lengthScale(larger(int64(l), 0), sys).text(int64(l))
}

// Beside prints the length and a limit in one unit, with as many decimals as it takes
// to show that they differ: a length over its limit never seems to meet it.
func (l Length) Beside(limit Length, sys System) (value, bound string) {
	return lengthScale(larger(int64(l), int64(limit)), sys).beside(int64(l), int64(limit))
}

// String returns the metric text.
func (l Length) String() string { return l.Text(Metric) }

// Metres returns the length in metres, for formulas.
func (l Length) Metres() float64 { return float64(l) / float64(Metre) }

// Millimetres returns the length in millimetres, for formulas.
func (l Length) Millimetres() float64 { return float64(l) / float64(Millimetre) }

// Plus adds two lengths and stays at the greatest one instead of running over.
func (l Length) Plus(m Length) Length {
	if m > 0 && l > math.MaxInt64-m {
		return math.MaxInt64
	}
	return l + m
}
