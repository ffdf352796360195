package standard

import "homerun/schema/unit"

// Shield says whether a cable has any screen: the effect of heat on loss differs.
type Shield uint8

// The two cases. The zero value is unscreened, the stricter one.
const (
	Unscreened Shield = iota
	Screened
)

// HotLength is the longest fixed cable in a warm space.
type HotLength struct {
	Most        unit.Length // by the standard's own rule: table row or percentage
	Source      Source
	Certain     unit.Length // what is certainly too long, whatever the unconfirmed rows say
	CertainRow  unit.Temperature
	CertainFrom Source
}

// hotRow is a row of the table, lengths in decimetres.
type hotRow struct{ celsius, unscreened, screened int64 }

// tiaHot is the table of ANSI/TIA-568 for a horizontal cable with 10 m of cords at 20 C.
var tiaHot = []hotRow{
	{20, 900, 900},
	{25, 890, 895},
	{30, 870, 885},
	{35, 855, 877},
	{40, 840, 870},
	{45, 817, 865},
	{50, 795, 855},
	{55, 772, 847},
	{60, 750, 830},
}

var (
	tiaHotSource  = Source{Body: "ANSI/TIA", Edition: "568-C.2", Clause: "maximum horizontal cable length at temperature", Confidence: Confirmed}
	isoHotSource  = Source{Body: "ISO/IEC", Edition: "11801-2:2017", Clause: "length reduction at temperature", Confidence: FromMemory}
	lossHotSource = Source{Body: "ANSI/TIA", Edition: "568-C.2", Clause: "6.4.7", Confidence: Confirmed}
)

// HotLengthOf returns the longest fixed cable at a temperature, for the 90 m categories: by
// the table of ANSI/TIA, between its rows in a straight line, or by the percentages of
// ISO/IEC. At 20 C and below it is 90 m. ok is false above 60 C, where neither goes, for no
// family, and for the short categories.
func HotLengthOf(r Regime, c Category, t unit.Temperature, s Shield) (h HotLength, ok bool) {
	limits, ok := Lengths(r, c)
	if !ok || c.eight() || t > 60*unit.DegreeCelsius {
		return HotLength{}, false
	}
	h = HotLength{Certain: limits.PermanentLink, CertainRow: 20 * unit.DegreeCelsius, CertainFrom: limits.Source}
	if r == ISO {
		h.Most, h.Source = isoHotLength(t, s), isoHotSource
		if t <= 20*unit.DegreeCelsius {
			h.Source = limits.Source
		}
		return h, true
	}
	h.Most, h.Source = tiaHotLength(t, s)
	if s == Unscreened {
		h.certain(t)
	}
	return h, true
}

// certain lowers the certain bound to the last confirmed row at or below t: a hotter cable
// is never allowed more.
func (h *HotLength) certain(t unit.Temperature) {
	for _, row := range tiaHot {
		at := unit.Temperature(row.celsius) * unit.DegreeCelsius
		if at <= t && confirmedRow(row.celsius) {
			h.Certain, h.CertainRow, h.CertainFrom = decimetres(row.unscreened), at, tiaHotSource
		}
	}
}

// confirmedRow tells the rows for unscreened cable that were read in print.
func confirmedRow(celsius int64) bool { return celsius == 20 || celsius == 40 || celsius == 50 }

// decimetres is the unit of the table.
func decimetres(n int64) unit.Length { return unit.Length(n) * 100 * unit.Millimetre }

// tiaHotLength reads the table, in a straight line between rows, truncated.
func tiaHotLength(t unit.Temperature, s Shield) (unit.Length, Source) {
	low := tiaHot[0]
	if t <= unit.Temperature(low.celsius)*unit.DegreeCelsius {
		return decimetres(low.unscreened), tiaHotSource
	}
	for _, high := range tiaHot[1:] {
		top := unit.Temperature(high.celsius) * unit.DegreeCelsius
		if t < top {
			above := int64(t) - low.celsius*int64(unit.DegreeCelsius)
			fall := int64(decimetres(low.length(s) - high.length(s)))
			step := int64(top) - low.celsius*int64(unit.DegreeCelsius)
			return decimetres(low.length(s)) - unit.Length((fall*above+step-1)/step), tiaHotSource.unsure()
		}
		low = high
		if t == top {
			break
		}
	}
	src := tiaHotSource.unsure()
	if s == Unscreened && confirmedRow(low.celsius) {
		src = tiaHotSource
	}
	return decimetres(low.length(s)), src
}

// length returns the column of the row.
func (r hotRow) length(s Shield) int64 {
	if s == Screened {
		return r.screened
	}
	return r.unscreened
}

// isoHotLength takes the percentages off 90 m, truncated.
func isoHotLength(t unit.Temperature, s Shield) unit.Length {
	const full = 90 * unit.Metre
	const whole = 1000 * int64(unit.DegreeCelsius)
	return full - unit.Length((int64(full)*heatParts(t, s)+whole-1)/whole)
}

// heatParts returns the change of loss between 20 C and t: per mille times the steps of a
// degree that a temperature counts. Unscreened 4 per mille a degree up to 40 C and 6 above
// it, screened 2 throughout.
func heatParts(t unit.Temperature, s Shield) int64 {
	const cool, warm, absurd = 20 * unit.DegreeCelsius, 40 * unit.DegreeCelsius, 5000 * unit.DegreeCelsius
	t = min(t, absurd)
	if t <= cool {
		return 0
	}
	if s == Screened {
		return 2 * int64(t-cool)
	}
	return 4*int64(min(t, warm)-cool) + 6*int64(max(0, t-warm))
}

// HeatFactor returns by how much the insertion loss of a cable grows at a temperature:
// k(T), 1 at 20 C and below. It was read for 20 to 60 C; above that it goes on in the same
// line and says that it is unconfirmed, as it does for ISO/IEC.
func HeatFactor(r Regime, t unit.Temperature, s Shield) (k float64, src Source) {
	src = lossHotSource
	if r == ISO {
		src = isoHotSource
	}
	if t > 60*unit.DegreeCelsius {
		src = src.unsure()
	}
	return 1 + float64(heatParts(t, s))/(1000*float64(unit.DegreeCelsius)), src
}
