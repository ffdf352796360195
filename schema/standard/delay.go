package standard

import (
	"math"

	"homerun/schema/unit"
)

var (
	delayFormula = Source{Body: "ANSI/TIA", Edition: "568-C.2", Clause: "propagation delay", Confidence: FromMemory}
	skewFormula  = Source{Body: "ANSI/TIA", Edition: "568-C.2", Clause: "propagation delay skew", Confidence: FromMemory}
)

// CableDelay returns the propagation delay of 100 m of cable in ns: 534 + 36/sqrt(f), f in
// MHz. ok is false below 1 MHz.
func CableDelay(f unit.Frequency) (ns float64, src Source, ok bool) {
	if f < unit.Megahertz {
		return 0, Source{}, false
	}
	return 534 + 36/math.Sqrt(f.Megahertz()), delayFormula, true
}

// ConnectionDelay returns the delay of one mated connection, 2.5 ns.
func ConnectionDelay() (ns float64, src Source) { return 2.5, delayFormula }

// ChannelDelay returns the delay of a length of cable with connections, in ns; ok as for
// CableDelay.
func ChannelDelay(l unit.Length, connections int, f unit.Frequency) (ns float64, src Source, ok bool) {
	per, src, ok := CableDelay(f)
	each, _ := ConnectionDelay()
	return l.Metres()/100*per + float64(connections)*each, src, ok
}

// quoted reports whether the limits of delay were read for the category.
func quoted(c Category) bool { return c >= Cat5e && c <= Cat6A }

// ChannelDelayLimit returns the most that a channel may delay, in ns. The limit at 10 MHz,
// 555 ns, is confirmed for categories 5e to 6A; at other frequencies it is 100 m of cable and four connections. ok is
// false below 1 MHz and for category 8, whose limit is not known.
func ChannelDelayLimit(c Category, f unit.Frequency) (ns float64, src Source, ok bool) {
	if c.eight() || !c.known() {
		return 0, Source{}, false
	}
	if f == 10*unit.Megahertz {
		src = delayFormula
		if quoted(c) {
			src.Confidence = Confirmed
		}
		return 555, src, true
	}
	return ChannelDelay(100*unit.Metre, 4, f)
}

// LinkDelayLimit returns the most that a permanent link may delay at 10 MHz, 498 ns.
func LinkDelayLimit(c Category) (ns float64, src Source, ok bool) {
	if c.eight() || !c.known() {
		return 0, Source{}, false
	}
	return 498, delayFormula, true
}

// CableSkew returns the difference of delay between the pairs of 100 m of cable that
// the standard lets a cable have, in ns: 45.
func CableSkew() (ns float64, src Source) { return 45, skewFormula }

// ChannelSkewLimit returns the most that the pairs of a channel may differ in delay, in ns:
// 50, and 30 for classes F and FA. ok is false for category 8, whose limit is not known.
func ChannelSkewLimit(c Category) (ns float64, src Source, ok bool) {
	switch {
	case c.eight() || !c.known():
		return 0, Source{}, false
	case c == Cat7 || c == Cat7A:
		return 30, Source{Body: "ISO/IEC", Edition: "11801-1:2017", Clause: "delay skew", Confidence: FromMemory}, true
	default:
		src = skewFormula
		if quoted(c) {
			src.Confidence = Confirmed
		}
		return 50, src, true
	}
}

// LinkSkewLimit returns the most that the pairs of a permanent link may differ in delay, in
// ns: 44. ok is false for the categories that have another limit or none.
func LinkSkewLimit(c Category) (ns float64, src Source, ok bool) {
	if c.eight() || !c.known() || c == Cat7 || c == Cat7A {
		return 0, Source{}, false
	}
	return 44, skewFormula, true
}
