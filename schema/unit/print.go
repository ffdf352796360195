package unit

import (
	"math/bits"
	"strconv"
	"strings"
)

// fewPlaces is how many decimals a printed quantity has at most, unless it stands
// beside a limit that it would then seem to equal.
const fewPlaces = 3

// text prints v in the unit, with at most fewPlaces decimals.
func (s scale) text(v int64) string {
	return s.places(v, fewPlaces) + " " + s.word
}

// beside prints a value and its limit in one unit with as many decimals as it takes
// to tell them apart. Rounding keeps order, so two texts that differ stand in the
// true order.
func (s scale) beside(v, limit int64) (value, bound string) {
	for n := fewPlaces; ; n++ {
		value, bound = s.places(v, n), s.places(limit, n)
		if v == limit || value != bound {
			return value + " " + s.word, bound + " " + s.word
		}
	}
}

// places prints v in the unit with at most n decimals, rounded half away from zero,
// without zeros at the end and without a minus before zero.
func (s scale) places(v int64, n int) string {
	negative, m := magnitude(v, s.offset)
	per := uint64(s.per)
	whole, rest := m/per, m%per
	by := pow10(n)
	hi, lo := bits.Mul64(rest, by)
	frac, left := bits.Div64(hi, lo, per)
	if left >= per-left {
		frac++
	}
	if frac == by {
		whole, frac = whole+1, 0
	}
	out := strconv.FormatUint(whole, 10)
	if frac > 0 {
		f := strconv.FormatUint(frac, 10)
		out += "." + strings.TrimRight(strings.Repeat("0", n-len(f))+f, "0")
	}
	if negative && (whole > 0 || frac > 0) {
		return "-" + out
	}
	return out
}

// magnitude returns the sign and size of v - offset; the size always fits uint64.
func magnitude(v, offset int64) (negative bool, size uint64) {
	if v < offset {
		return true, uint64(offset) - uint64(v)
	}
	return false, uint64(v) - uint64(offset)
}

// larger returns the larger of the two magnitudes: it chooses the unit that a value
// and its limit share.
func larger(a, b int64) uint64 {
	_, x := magnitude(a, 0)
	_, y := magnitude(b, 0)
	return max(x, y)
}
