package schema

import (
	"cmp"
	"strings"
)

// Natural compares identifiers as people read them: 1A-A9 stands before 1A-A10.
// Texts that differ only in leading zeros are compared as they are written.
func Natural(a, b string) int {
	x, y := a, b
	for x != "" && y != "" {
		n, m := digits(x), digits(y)
		if n == 0 || m == 0 {
			if x[0] != y[0] {
				return cmp.Compare(x[0], y[0])
			}
			x, y = x[1:], y[1:]
			continue
		}
		p, q := strings.TrimLeft(x[:n], "0"), strings.TrimLeft(y[:m], "0")
		if c := cmp.Or(cmp.Compare(len(p), len(q)), cmp.Compare(p, q)); c != 0 {
			return c
		}
		x, y = x[n:], y[m:]
	}
	return cmp.Or(cmp.Compare(len(x), len(y)), cmp.Compare(a, b))
}

func digits(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}
