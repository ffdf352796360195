package unit

import (
	"math"
	"math/bits"
	"strings"
)

// maxText is the longest text that is looked at: the widest exact quantity needs
// about forty bytes.
const maxText = 64

// maxDigits is how many significant digits fit an int64 whatever they are.
const maxDigits = 18

// number is a decimal as it was written: sign, digits, and how many of the digits
// stand behind the point.
type number struct {
	negative bool
	mantissa uint64
	places   int
}

// scan cuts text into its number as written and the rest. ok is false where the
// text does not begin with [sign] digits [. digits].
func scan(text string) (num, rest string, ok bool) {
	i := 0
	if i < len(text) && (text[i] == '-' || text[i] == '+') {
		i++
	}
	whole := digits(text[i:])
	if whole == 0 {
		return "", text, false
	}
	i += whole
	if i < len(text) && text[i] == '.' {
		if frac := digits(text[i+1:]); frac > 0 {
			i += 1 + frac
		}
	}
	return text[:i], text[i:], true
}

// digits counts the ASCII digits at the start of s.
func digits(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}

// decimal reads a number that scan found. Zeros that carry no value are dropped, so
// "41.500" and "0041.5" are the same number. ok is false beyond maxDigits digits.
func decimal(num string) (n number, ok bool) {
	if num[0] == '-' || num[0] == '+' {
		n.negative = num[0] == '-'
		num = num[1:]
	}
	whole, frac, _ := strings.Cut(num, ".")
	frac = strings.TrimRight(frac, "0")
	all := strings.TrimLeft(whole+frac, "0")
	if len(all) > maxDigits || len(frac) > maxDigits {
		return n, false
	}
	for i := range len(all) {
		n.mantissa = n.mantissa*10 + uint64(all[i]-'0')
	}
	n.places = len(frac)
	return n, true
}

// times multiplies the number by per, exactly. exact is false where the product is
// no whole number, fits is false where it leaves int64.
func (n number) times(per int64) (product int64, exact, fits bool) {
	hi, lo := bits.Mul64(n.mantissa, uint64(per))
	by := pow10(n.places)
	if hi >= by {
		return 0, true, false
	}
	q, r := bits.Div64(hi, lo, by)
	if r != 0 {
		return 0, false, true
	}
	if q > math.MaxInt64 {
		return 0, true, false
	}
	if n.negative {
		return -int64(q), true, true
	}
	return int64(q), true, true
}

// pow10 returns 10 to the n for n up to 19.
func pow10(n int) uint64 {
	p := uint64(1)
	for range n {
		p *= 10
	}
	return p
}

// add adds two int64; ok is false where the sum overflows.
func add(a, b int64) (sum int64, ok bool) {
	sum = a + b
	return sum, (sum > a) == (b > 0)
}
