package standard

import (
	"math"

	"homerun/schema/unit"
)

// copperOhmMetre is the resistivity of annealed copper at 20 C.
const copperOhmMetre = 1.724e-8

// copperPerKelvin is by how much the resistance of copper grows with a degree, at 20 C.
const copperPerKelvin = 0.00393

var (
	gaugeSource  = Source{Body: "ASTM", Edition: "B258", Clause: "diameter of the American wire gauge", Confidence: Confirmed}
	copperSource = Source{Body: "IEC", Edition: "60028", Clause: "resistivity of annealed copper at 20 C", Confidence: Confirmed}
	warmSource   = Source{Body: "IEC", Edition: "60028", Clause: "temperature coefficient of annealed copper", Confidence: FromMemory}
	loopSource   = Source{Body: "ISO/IEC", Edition: "11801-1:2017", Clause: "direct current loop resistance", Confidence: FromMemory}
)

// WireDiameter returns the diameter of a solid wire in millimetres:
// 0.127*92^((36-n)/39).
func WireDiameter(gauge int) (mm float64, src Source) {
	return 0.127 * math.Pow(92, float64(36-gauge)/39), gaugeSource
}

// WireArea returns the cross-section of a solid wire in square millimetres.
func WireArea(gauge int) float64 {
	d, _ := WireDiameter(gauge)
	return math.Pi / 4 * d * d
}

// WireResistance returns the resistance of a solid copper wire in ohm for a kilometre, at a
// temperature. At 20 C it is confirmed. Stranded wire of the same gauge has a little more.
func WireResistance(gauge int, t unit.Temperature) (ohm float64, src Source) {
	ohm = copperOhmMetre * 1e9 / WireArea(gauge)
	if t == 20*unit.DegreeCelsius {
		return ohm, copperSource
	}
	return ohm * (1 + copperPerKelvin*(t.Celsius()-20)), warmSource
}

// LoopResistance returns the resistance of a pair in ohm, there and back, at a temperature.
func LoopResistance(gauge int, l unit.Length, t unit.Temperature) (ohm float64, src Source) {
	per, src := WireResistance(gauge, t)
	return 2 * per * l.Metres() / 1000, src
}

// LoopLimits are the most that the loop of a pair may resist, in ohm.
type LoopLimits struct {
	Channel, PermanentLink float64
	Source                 Source
}

// LoopResistanceLimits returns the limits: 25 ohm for a channel and 21 ohm for a permanent
// link of class D and above, 40 ohm for a channel of class C. ok is false for category 8,
// whose limit is not known, and for category 4, which has no class.
func LoopResistanceLimits(c Category) (l LoopLimits, ok bool) {
	switch {
	case !c.known() || c.eight() || c == Cat4:
		return LoopLimits{}, false
	case c == Cat3:
		return LoopLimits{Channel: 40, PermanentLink: 40, Source: loopSource}, true
	default:
		return LoopLimits{Channel: 25, PermanentLink: 21, Source: loopSource}, true
	}
}
