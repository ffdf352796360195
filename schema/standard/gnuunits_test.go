package standard_test

import (
	"fmt"
	"math"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"homerun/schema/standard"
	"homerun/schema/unit"
)

// gnuUnits asks GNU units, which holds the wire gauge and the properties of copper
// independently.
func gnuUnits(t *testing.T, have, want string) float64 {
	t.Helper()
	path, err := exec.LookPath("units")
	if err != nil {
		t.Skip("GNU units is not installed (Debian package units): wire gauges are not checked against it")
	}
	out, err := exec.CommandContext(t.Context(), path, "-1", "-t", "-o", "%.12g", have, want).Output()
	if err != nil {
		t.Fatalf("units %q %q: %v: %s", have, want, err, out)
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
	if err != nil {
		t.Fatalf("units %q %q said %q", have, want, out)
	}
	return v
}

// TestWiresAgainstGNUUnits recomputes diameter, area and resistance.
func TestWiresAgainstGNUUnits(t *testing.T) {
	t.Parallel()
	for gauge := 10; gauge <= 30; gauge++ {
		wire := fmt.Sprintf("wiregauge(%d)", gauge)
		area := fmt.Sprintf("pi %s^2 / 4", wire)
		d, _ := standard.WireDiameter(gauge)
		ohm, _ := standard.WireResistance(gauge, 20*unit.DegreeCelsius)
		for what, pair := range map[string][2]float64{
			"diameter":   {d, gnuUnits(t, wire, "mm")},
			"area":       {standard.WireArea(gauge), gnuUnits(t, area, "mm^2")},
			"resistance": {ohm, gnuUnits(t, "1.724e-8 ohm m km / ("+area+")", "ohm")},
		} {
			if math.Abs(pair[0]/pair[1]-1) > 1e-6 {
				t.Errorf("%d AWG: %s %v, GNU units says %v", gauge, what, pair[0], pair[1])
			}
		}
	}
}

// TestBoundsAgainstGNUUnits checks that the two ways in which a bound is printed agree to
// the rounding that the code uses: 4 ft, 10 ft, 0.25 in, 2 in.
func TestBoundsAgainstGNUUnits(t *testing.T) {
	t.Parallel()
	duct, _ := standard.Permit(standard.NEC2017, listing(t, "CMP"), standard.DuctSpace, standard.Bare)
	view, _ := standard.Permit(standard.NEC2017, listing(t, "CMX"), standard.GeneralSpace, standard.Bare)
	thin, _ := standard.Permit(standard.NEC2017, listing(t, "CMX"), standard.Dwelling, standard.Bare)
	floor, _, _, _ := standard.PowerFloor(standard.NEC2017, standard.FloorCase{})
	for us, l := range map[string]unit.Length{"4 ft": duct.Bound.Most, "10 ft": view.Bound.Most, "0.25 in": thin.Bound.Most, "2 in": floor} {
		if want := gnuUnits(t, us, "mm"); math.Abs(l.Millimetres()/want-1) > 0.06 {
			t.Errorf("%s = %v mm, the bound is %s", us, want, l)
		}
	}
}

func listing(t *testing.T, s string) standard.Listing {
	t.Helper()
	l, err := standard.ParseListing(s)
	if err != nil {
		t.Fatal(err)
	}
	return l
}
