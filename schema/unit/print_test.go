package unit_test

import (
	"testing"

	"homerun/schema/unit"
)

// TestText pins the form in which quantities are printed; the US figures are the
// metric ones divided by 0.3048 m and 25.4 mm, by hand.
func TestText(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		text, metric, us string
		parse            func(string) (int64, error)
		print            func(int64, unit.System) string
	}{
		{"41.5 m", "41.5 m", "136.155 ft", parses(unit.ParseLength), texts[unit.Length]},
		{"136 ft", "41.453 m", "136 ft", parses(unit.ParseLength), texts[unit.Length]},
		{"12 ft 6 in", "3.81 m", "12.5 ft", parses(unit.ParseLength), texts[unit.Length]},
		{"300 mm", "300 mm", "11.811 in", parses(unit.ParseLength), texts[unit.Length]},
		{"8 in", "203.2 mm", "8 in", parses(unit.ParseLength), texts[unit.Length]},
		{"2 km", "2000 m", "6561.68 ft", parses(unit.ParseLength), texts[unit.Length]},
		{"-0.0001 mm", "0 mm", "0 in", parses(unit.ParseLength), texts[unit.Length]},
		{"26 C", "26 C", "78.8 F", parses(unit.ParseTemperature), texts[unit.Temperature]},
		{"-40 F", "-40 C", "-40 F", parses(unit.ParseTemperature), texts[unit.Temperature]},
		{"75 F", "23.889 C", "75 F", parses(unit.ParseTemperature), texts[unit.Temperature]},
		{"12950 mW", "12.95 W", "12.95 W", parses(unit.ParsePower), texts[unit.Power]},
		{"0.6 A", "600 mA", "600 mA", parses(unit.ParseCurrent), texts[unit.Current]},
		{"2 GHz", "2000 MHz", "2000 MHz", parses(unit.ParseFrequency), texts[unit.Frequency]},
		{"90 min", "90 min", "90 min", parses(unit.ParsePeriod), texts[unit.Period]},
		{"1.5 h", "90 min", "90 min", parses(unit.ParsePeriod), texts[unit.Period]},
		{"120 min", "2 h", "2 h", parses(unit.ParsePeriod), texts[unit.Period]},
		{"2.60 dB", "2.6 dB", "2.6 dB", parses(unit.ParseLoss), texts[unit.Loss]},
		{"-3 dBmV", "-3 dBmV", "-3 dBmV", parses(unit.ParseLevel), texts[unit.Level]},
		{"90 deg", "90 deg", "90 deg", parses(unit.ParseAngle), texts[unit.Angle]},
	} {
		v, err := c.parse(c.text)
		if err != nil {
			t.Fatal(err)
		}
		if got := c.print(v, unit.Metric); got != c.metric {
			t.Errorf("%s in metric: %q, want %q", c.text, got, c.metric)
		}
		if got := c.print(v, unit.US); got != c.us {
			t.Errorf("%s in US: %q, want %q", c.text, got, c.us)
		}
	}
}

// TestBeside pins that a length over its limit by less than a printed digit shows more
// digits, and that both stand in one unit across 1 m.
func TestBeside(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		value, limit unit.Length
		sys          unit.System
		v, l         string
	}{
		{92 * unit.Metre, 90 * unit.Metre, unit.Metric, "92 m", "90 m"},
		{90*unit.Metre + 1, 90 * unit.Metre, unit.Metric, "90.000000001 m", "90 m"},
		{90 * unit.Metre, 90 * unit.Metre, unit.US, "295.276 ft", "295.276 ft"},
		{90*unit.Metre + unit.Micrometre, 90 * unit.Metre, unit.US, "295.275594 ft", "295.275591 ft"},
		{unit.Metre - 1, unit.Metre, unit.Metric, "0.999999999 m", "1 m"},
	} {
		if v, l := c.value.Beside(c.limit, c.sys); v != c.v || l != c.l {
			t.Errorf("%d beside %d: %q, %q, want %q, %q", c.value, c.limit, v, l, c.v, c.l)
		}
	}
}
