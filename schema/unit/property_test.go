package unit_test

import (
	"math"
	"math/big"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"homerun/schema/unit"
)

// TestParseEqualsRationalArithmetic reads random decimals and compares with the same
// sum in math/big rationals: equal where it comes out whole and fits, refused where not.
func TestParseEqualsRationalArithmetic(t *testing.T) {
	t.Parallel()
	for _, q := range quantities() {
		words := sorted(q.units)
		rapid.Check(t, func(t *rapid.T) {
			num := rapid.StringMatching(`[+-]?[0-9]{1,14}(\.[0-9]{1,12})?`).Draw(t, "number")
			word := rapid.SampledFrom(words).Draw(t, "unit")
			text := num + rapid.SampledFrom([]string{"", " "}).Draw(t, "space") + word
			want, whole := rational(num, q.units[word])
			got, err := q.parse(text)
			if err != nil {
				if whole && digitCount(num) <= 18 && !q.nothing(want) {
					t.Fatalf("%s %q refused: %v; it is exactly %d", q.name, text, err, want)
				}
				return
			}
			if !whole || got != want {
				t.Fatalf("%s %q = %d, rational arithmetic says %d (whole: %t)", q.name, text, got, want, whole)
			}
		})
	}
}

// rational computes num*f exactly; whole is false where the result is no int64.
func rational(num string, f factor) (v int64, whole bool) {
	r, ok := new(big.Rat).SetString(num)
	if !ok {
		return 0, false
	}
	r.Mul(r, big.NewRat(f.num, f.den))
	r.Add(r, big.NewRat(f.add, 1))
	if !r.IsInt() || !r.Num().IsInt64() {
		return 0, false
	}
	return r.Num().Int64(), true
}

func digitCount(num string) int {
	return len(strings.NewReplacer(".", "", "+", "", "-", "").Replace(num))
}

func sorted(units map[string]factor) []string {
	words := make([]string, 0, len(units))
	for w := range units {
		words = append(words, w)
	}
	slices.Sort(words)
	return words
}

// TestTextReadsBack prints what has at most three decimals in the unit printed and
// reads it again.
func TestTextReadsBack(t *testing.T) {
	t.Parallel()
	for _, q := range quantities() {
		for _, word := range sorted(q.units) {
			f := q.units[word]
			rapid.Check(t, func(t *rapid.T) {
				n := rapid.Int64Range(-2_000_000, 2_000_000).Draw(t, "whole")
				v := n*f.num/f.den + f.add
				sys := rapid.SampledFrom([]unit.System{unit.Metric, unit.US}).Draw(t, "system")
				text := q.text(v, sys)
				got, err := q.parse(text)
				if q.nothing(v) {
					return
				}
				if err == nil && exactIn(q, text, v) && got != v {
					t.Fatalf("%s %d printed as %q, read as %d", q.name, v, text, got)
				}
				if exactIn(q, text, v) && err != nil {
					t.Fatalf("%s %d printed as %q, refused: %v", q.name, v, text, err)
				}
			})
		}
	}
}

// exactIn reports whether the printed number is the value itself, by rationals.
func exactIn(q quantity, text string, v int64) bool {
	num, word, _ := strings.Cut(text, " ")
	want, whole := rational(num, q.units[word])
	return whole && want == v
}

// TestMetricTextOfMillimetresIsExact pins that a length of whole micrometres below a
// metre, and of whole millimetres from it on, prints exactly.
func TestMetricTextOfMillimetresIsExact(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Int64Range(-1_000_000, 1_000_000).Draw(t, "millimetres") * int64(unit.Millimetre)
		got, err := unit.ParseLength(unit.Length(v).Text(unit.Metric))
		if err != nil || int64(got) != v {
			t.Fatalf("%d nm printed as %q, read as %d, %v", v, unit.Length(v), got, err)
		}
	})
}

// TestSameLengthInBothSystems: 1 in = 25.4 mm, international yard and pound agreement,
// 1959; and feet with inches are the inches in all.
func TestSameLengthInBothSystems(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64Range(0, 10_000_000).Draw(t, "ten-thousandths of an inch")
		in := read(t, fixed(n, 4)+" in")
		mm := read(t, fixed(n*254, 5)+" mm")
		if in != mm {
			t.Fatalf("%s in = %d nm, %s mm = %d nm", fixed(n, 4), in, fixed(n*254, 5), mm)
		}
		whole := rapid.Int64Range(0, 9999).Draw(t, "inches")
		split := strconv.FormatInt(whole/12, 10) + " ft " + strconv.FormatInt(whole%12, 10) + " in"
		if read(t, split) != read(t, strconv.FormatInt(whole, 10)+" in") {
			t.Fatalf("%q is not %d in", split, whole)
		}
	})
}

// TestSameTemperatureInBothSystems: F = 32 + 9/5 C.
func TestSameTemperatureInBothSystems(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.Int64Range(-40, 200).Draw(t, "fifths of a degree") * 5
		cel, err1 := unit.ParseTemperature(strconv.FormatInt(c, 10) + " C")
		fah, err2 := unit.ParseTemperature(strconv.FormatInt(c*9/5+32, 10) + " F")
		if err1 != nil || err2 != nil || cel != fah {
			t.Fatalf("%d C = %d, in F %d (%v, %v)", c, cel, fah, err1, err2)
		}
	})
}

func read(t *rapid.T, s string) unit.Length {
	l, err := unit.ParseLength(s)
	if err != nil {
		t.Fatalf("%q refused: %v", s, err)
	}
	return l
}

// fixed writes n with the point before its last places digits.
func fixed(n int64, places int) string {
	s := strconv.FormatInt(n, 10)
	for len(s) <= places {
		s = "0" + s
	}
	return s[:len(s)-places] + "." + s[len(s)-places:]
}

// TestBesideKeepsOrder prints values near each other, near the points where the unit
// changes and at the ends of int64: the texts stand in the true order, in one unit.
func TestBesideKeepsOrder(t *testing.T) {
	t.Parallel()
	near := rapid.SampledFrom([]int64{
		0, 1, 1000, 5000, 9000, 1e6, 25_400_000, 304_800_000, 1e9, 90e9, math.MaxInt64 - 40, math.MinInt64 + 40,
	})
	for _, q := range quantities() {
		rapid.Check(t, func(t *rapid.T) {
			base := near.Draw(t, "base")
			v := base + rapid.Int64Range(-40, 40).Draw(t, "value")
			limit := base + rapid.Int64Range(-40, 40).Draw(t, "limit")
			sys := rapid.SampledFrom([]unit.System{unit.Metric, unit.US}).Draw(t, "system")
			vt, lt := q.both(v, limit, sys)
			vn, vu, _ := strings.Cut(vt, " ")
			ln, lu, _ := strings.Cut(lt, " ")
			if vu != lu {
				t.Fatalf("%s: %q and %q are not in one unit", q.name, vt, lt)
			}
			x, ok1 := new(big.Rat).SetString(vn)
			y, ok2 := new(big.Rat).SetString(ln)
			if !ok1 || !ok2 || x.Cmp(y) != cmpInt(v, limit) {
				t.Fatalf("%s: %d beside %d printed as %q and %q", q.name, v, limit, vt, lt)
			}
		})
	}
}

func cmpInt(a, b int64) int { return big.NewInt(a).Cmp(big.NewInt(b)) }
