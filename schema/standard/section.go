package standard

import (
	"math"
	"math/big"

	"homerun/schema/unit"
)

// Area is an area in square micrometres, rounded; it is there to be shown. What is decided
// about a fill is decided on exact numbers.
type Area int64

// SquareMillimetres returns the area in square millimetres.
func (a Area) SquareMillimetres() float64 { return float64(a) / 1e6 }

// SquareInches returns the area in square inches.
func (a Area) SquareInches() float64 { return float64(a) / 645.16e6 }

// Section is the clear cross-section inside a pathway. The zero value is none.
//
// Cables are round, so their areas are compared as squares of diameters, in square
// nanometres: pi/4 falls out between a round cable and a round conduit, and the comparison
// is exact. Beside a rectangle it does not, and stands in with forty decimals.
type Section struct {
	square int64 // of the diameter, or the area of a rectangle or table entry, in nm2
	round  bool
}

// widest bounds a section, so that its square stays in an int64.
const widest = 3 * unit.Metre

// RoundSection returns the section of a conduit of an inside diameter. ok is false unless it
// is over 0 and at most 3 m.
func RoundSection(inside unit.Length) (s Section, ok bool) {
	if inside <= 0 || inside > widest {
		return Section{}, false
	}
	return Section{square: int64(inside) * int64(inside), round: true}, true
}

// BoxSection returns the section of a tray, basket, ladder or raceway; ok as for
// RoundSection, for both sides.
func BoxSection(width, depth unit.Length) (s Section, ok bool) {
	if width <= 0 || depth <= 0 || width > widest || depth > widest {
		return Section{}, false
	}
	return Section{square: int64(width) * int64(depth)}, true
}

// IsZero reports whether there is no section.
func (s Section) IsZero() bool { return s.square == 0 }

// Area returns the area of the section.
func (s Section) Area() Area {
	if s.round {
		return circleArea(big.NewInt(s.square))
	}
	return Area(s.square / 1_000_000)
}

// circleArea turns a sum of squared diameters into an area.
func circleArea(squares *big.Int) Area {
	f, _ := new(big.Float).SetInt(squares).Float64()
	return Area(math.Round(min(f*math.Pi/4/1e6, math.MaxInt64/2)))
}

// piDecimals and its scale are pi with forty decimals.
var (
	piDecimals, _ = new(big.Int).SetString("31415926535897932384626433832795028841972", 10)
	piScale       = new(big.Int).Exp(big.NewInt(10), big.NewInt(40), nil)
)

// scales returns by what squares of diameters and the square of the section are multiplied to
// stand on one scale.
func (s Section) scales() (circles, section *big.Int) {
	if s.round {
		return big.NewInt(1), big.NewInt(1)
	}
	return piDecimals, new(big.Int).Mul(big.NewInt(4), piScale)
}

// compare returns the sign of circles*times - section*share, circles being a sum of squared
// diameters.
func (s Section) compare(circles *big.Int, times int64, share int64) int {
	c, k := s.scales()
	left := new(big.Int).Mul(circles, big.NewInt(times))
	right := new(big.Int).Mul(big.NewInt(s.square), big.NewInt(share))
	return left.Mul(left, c).Cmp(right.Mul(right, k))
}

// quotient returns how many whole circles of a squared diameter fit into section*share/times
// less what is used, and never less than 0.
func (s Section) quotient(circle, used *big.Int, times, share int64) int {
	c, k := s.scales()
	room := new(big.Int).Mul(big.NewInt(s.square), big.NewInt(share))
	room.Mul(room, k)
	taken := new(big.Int).Mul(used, big.NewInt(times))
	room.Sub(room, taken.Mul(taken, c))
	each := new(big.Int).Mul(circle, big.NewInt(times))
	each.Mul(each, c)
	if room.Sign() <= 0 || each.Sign() <= 0 {
		return 0
	}
	n := room.Quo(room, each)
	return int(min(n.Int64(), math.MaxInt32))
}
