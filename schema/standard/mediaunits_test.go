package standard_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"homerun/schema/standard"
	"homerun/schema/unit"
)

// near fails where two values differ by more than a share of the second.
func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if math.Abs(got-want) > share*math.Abs(want) {
		t.Errorf("%s: %v, GNU units says %v", what, got, want)
	}
}

// TestConduitsAgainstGNUUnits converts the printed areas and recomputes those of tubing from
// its printed inside diameter, which the code does not do for us: the two columns of NFPA
// 70-2017, Chapter 9, Table 4 agree to 0.1 %.
func TestConduitsAgainstGNUUnits(t *testing.T) {
	t.Parallel()
	for i, printed := range []string{"0.304", "0.533", "0.864", "1.496", "2.036", "3.356", "5.858", "8.846", "11.545", "14.753"} {
		trade := standard.TradeSizes()[i]
		s, _, ok := standard.ConduitSection(standard.NEC2017, standard.EMT, trade)
		d, _, ok2 := standard.TubingDiameter(standard.NEC2017, trade)
		round, ok3 := standard.RoundSection(d)
		if !ok || !ok2 || !ok3 {
			t.Fatalf("%s in: no answer", trade)
		}
		near(t, trade, s.Area().SquareMillimetres(), gnuUnits(t, printed+" in^2", "mm^2"), 1e-9)
		circle := gnuUnits(t, fmt.Sprintf("pi (%.3f in)^2 / 4", inches(d)), "mm^2")
		near(t, trade+" by diameter", round.Area().SquareMillimetres(), circle, 1e-8)
		near(t, trade+" by both columns", s.Area().SquareMillimetres(), circle, 0.001)
	}
}

// TestCablesAgainstGNUUnits recomputes what the cables of a tray cover.
func TestCablesAgainstGNUUnits(t *testing.T) {
	t.Parallel()
	tray, _ := standard.BoxSection(300*unit.Millimetre, 50*unit.Millimetre)
	f, ok := standard.FillOf(tray, []unit.Length{6100 * unit.Micrometre, unit.Inch / 4})
	if !ok {
		t.Fatal("no fill")
	}
	near(t, "used", f.Used.SquareMillimetres(), gnuUnits(t, "pi ((6.1 mm)^2 + (0.25 in)^2) / 4", "mm^2"), 1e-8)
	near(t, "percent", f.Percent, gnuUnits(t, "100 pi ((6.1 mm)^2 + (0.25 in)^2) / (4 * 300 mm * 50 mm)", "1"), 1e-9)
}

// TestPathsAgainstGNUUnits recomputes the resistance of powered paths and what reaches a
// device from the wire gauge and the resistivity of copper.
func TestPathsAgainstGNUUnits(t *testing.T) {
	t.Parallel()
	for pairs, class := range map[int]int{2: 4, 4: 8} {
		c, _ := standard.PowerClassOf(class)
		loop, _ := standard.LoopResistance(24, 90*unit.Metre, 20*unit.DegreeCelsius)
		ohms, ok := standard.PathOhms(loop, pairs)
		f, ok2 := standard.Deliver(c.Power, c.Volts, ohms)
		if !ok || !ok2 || c.Pairs != pairs {
			t.Fatalf("class %d: no answer", class)
		}
		path := fmt.Sprintf("(2 * 1.724e-8 ohm m * 90 m / (pi wiregauge(24)^2 / 4) / %d)", pairs)
		near(t, "path", ohms, gnuUnits(t, path, "ohm"), 1e-6)
		current := fmt.Sprintf("(%g W / %g V)", c.Power.Watts(), c.Volts)
		near(t, "lost", f.Lost, gnuUnits(t, current+"^2 "+path, "W"), 1e-6)
		near(t, "delivered", f.DeviceWatts, gnuUnits(t, fmt.Sprintf("%g W - %s^2 %s", c.Power.Watts(), current, path), "W"), 1e-6)
	}
}

// TestCoaxAgainstGNUUnits: 100 m lose 3.2808 times what 100 ft do.
func TestCoaxAgainstGNUUnits(t *testing.T) {
	t.Parallel()
	per, _, _ := standard.CoaxLoss(standard.Series6, 550*unit.Megahertz)
	over, _, ok := standard.CoaxLossOver(standard.Series6, 100*unit.Metre, 550*unit.Megahertz)
	if !ok {
		t.Fatal("no loss")
	}
	near(t, "100 m", over/per, gnuUnits(t, "100 m", "100 ft"), 1e-9)
}

// TestBoundsOfPathwaysAgainstGNUUnits checks both ways in which a bound is printed: 24 in, 50 ft,
// 5 ft, 100 ft, 25 lbf and 50 lbf, to the rounding of their standards.
func TestBoundsOfPathwaysAgainstGNUUnits(t *testing.T) {
	t.Parallel()
	plant, _ := standard.OutsidePlantLimit(standard.NEC2017, standard.Communications)
	support, _, _ := standard.SupportSpacing(standard.TIA)
	pull, _ := standard.PullLimitsOf(standard.TIA)
	for us, l := range map[string]unit.Length{"50 ft": plant.Most, "5 ft": support, "100 ft": pull.Length} {
		near(t, us, l.Millimetres(), gnuUnits(t, us, "mm"), 0.02)
	}
	for us, strands := range map[string]int{"25 lbf": 0, "50 lbf": 2} {
		m := standard.FourPair
		if strands > 0 {
			m = standard.FibreCable
		}
		n, _, _ := standard.PullTension(standard.TIA, m, strands)
		near(t, us, float64(n), gnuUnits(t, us, "N"), 0.02)
	}
}

// TestEditionsOfRulesAreNamed: a rule read for NEC 2017 keeps its confidence in a later edition
// and says for which edition it was read; the European code has none of them.
func TestEditionsOfRulesAreNamed(t *testing.T) {
	t.Parallel()
	for code, edition := range map[standard.FireCode]string{standard.NEC2017: "70-2017", standard.NEC2020: "70-2020", standard.NEC2023: "70-2023", standard.EN50575: ""} {
		for name, ask := range codeRules(code) {
			src, ok := ask()
			if ok != code.NEC() || (ok && src.Edition != edition) {
				t.Errorf("%s, %s: %s, %t", code, name, src, ok)
			}
			if later := strings.Contains(src.Note, "for this edition from memory"); ok && later != (code != standard.NEC2017) {
				t.Errorf("%s, %s: %s", code, name, src)
			}
		}
	}
}

func codeRules(code standard.FireCode) map[string]func() (standard.Source, bool) {
	return map[string]func() (standard.Source, bool){
		"fill": func() (standard.Source, bool) { _, src, ok := standard.ConduitFill(code, 3, 0); return src, ok },
		"applies": func() (standard.Source, bool) {
			_, src, ok := standard.FillApplies(code, standard.Class2)
			return src, ok
		},
		"bends":     func() (standard.Source, bool) { _, src, ok := standard.CodeBends(code); return src, ok },
		"radius":    func() (standard.Source, bool) { b, ok := standard.ConduitBendOf(code, "1"); return b.Source, ok },
		"jacket":    func() (standard.Source, bool) { _, src, ok := standard.JacketRating(code); return src, ok },
		"fire-stop": func() (standard.Source, bool) { return standard.FirestopRule(code, standard.Communications) },
		"outside": func() (standard.Source, bool) {
			o, ok := standard.OutsidePlantLimit(code, standard.Optical)
			return o.Source, ok
		},
		"trigger": func() (standard.Source, bool) { _, src, ok := standard.AmpacityTrigger(code); return src, ok },
		"size": func() (standard.Source, bool) {
			_, src, ok := standard.ConduitSection(code, standard.EMT, "1")
			return src, ok
		},
		"abandoned": func() (standard.Source, bool) {
			_, src, ok := standard.AbandonmentOf(code, standard.Coaxial, 0, 0)
			return src, ok
		},
		"lp current": func() (standard.Source, bool) {
			l, _ := standard.ParseListing("CL2P-LP(0.5A)")
			_, src, ok := standard.LimitedPowerAmpacity(code, l)
			return src, ok
		},
	}
}
