package unit_test

import (
	"math"
	"math/big"
	"testing"
	"testing/quick"

	"homerun/schema/unit"
)

// TestPlus adds lengths and compares with whole numbers that have no end
// (math/big).
func TestPlus(t *testing.T) {
	t.Parallel()
	exact := func(a, b uint64) bool {
		l, m := int64(a>>1), int64(b>>1)
		sum := new(big.Int).Add(big.NewInt(l), big.NewInt(m))
		if !sum.IsInt64() {
			sum = big.NewInt(math.MaxInt64)
		}
		return int64(unit.Length(l).Plus(unit.Length(m))) == sum.Int64()
	}
	if err := quick.Check(exact, nil); err != nil {
		t.Error(err)
	}
	for _, c := range [][3]unit.Length{{3, -5, -2}, {-3, -5, -8}, {math.MaxInt64, 0, math.MaxInt64}, {math.MaxInt64, -1, math.MaxInt64 - 1}} {
		if got := c[0].Plus(c[1]); got != c[2] {
			t.Errorf("%d plus %d is %d, want %d", c[0], c[1], got, c[2])
		}
	}
}
