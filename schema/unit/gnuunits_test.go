package unit_test

import (
	"fmt"
	"math"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"homerun/schema/unit"
)

// gnuUnits asks GNU units, which holds the definitions of the units independently.
func gnuUnits(t *testing.T, have, want string) float64 {
	t.Helper()
	path, err := exec.LookPath("units")
	if err != nil {
		t.Skip("GNU units is not installed (Debian package units): unit conversion is not checked against it")
	}
	out, err := exec.CommandContext(t.Context(), path, "-1", "-t", "-o", "%.17g", have, want).Output()
	if err != nil {
		t.Fatalf("units %q %q: %v: %s", have, want, err, out)
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
	if err != nil {
		t.Fatalf("units %q %q said %q", have, want, out)
	}
	return v
}

// TestAgainstGNUUnits converts the same quantity with GNU units.
func TestAgainstGNUUnits(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ text, have, want string }{
		{"41.5 m", "41.5 m", "nm"},
		{"136 ft", "136 ft", "nm"},
		{"12 ft 6 in", "12 ft + 6 in", "nm"},
		{"0.0001 in", "0.0001 in", "nm"},
		{"3 yd", "3 yd", "nm"},
		{"1.25 mi", "1.25 mi", "nm"},
		{"4.25 cm", "4.25 cm", "nm"},
	} {
		l, err := unit.ParseLength(c.text)
		if want := gnuUnits(t, c.have, c.want); err != nil || math.Abs(float64(l)-want) > 1e-9*math.Abs(want) {
			t.Errorf("%s = %d nm, GNU units says %v (%v)", c.text, l, want, err)
		}
	}
	for _, f := range []string{"-40", "0", "32", "75", "98.6", "113", "140"} {
		temp, err := unit.ParseTemperature(f + " F")
		want := gnuUnits(t, fmt.Sprintf("tempF(%s)", f), "tempC")
		if err != nil || math.Abs(temp.Celsius()-want) > 1e-4 {
			t.Errorf("%s F = %v C, GNU units says %v (%v)", f, temp.Celsius(), want, err)
		}
	}
}
