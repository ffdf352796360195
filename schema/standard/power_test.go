package standard_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"homerun/schema/standard"
	"homerun/schema/unit"
)

func drawPower(t *rapid.T, label string) unit.Power {
	return unit.Power(rapid.Int64Range(1_000_000, 99_900_000).Draw(t, label))
}

// TestFlowBalances: what a source gives is what the device has and what the cable loses, by
// Ohm's law, and what Draw draws the device gets.
func TestFlowBalances(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		p := drawPower(t, "power")
		volts, ohms := rapid.Float64Range(44, 57).Draw(t, "volts"), rapid.Float64Range(0, 20).Draw(t, "ohms")
		given, ok := standard.Deliver(p, volts, ohms)
		if drop := p.Watts() / volts * ohms; drop > volts {
			if ok {
				t.Fatalf("the path eats up %v of %v V: %+v", drop, volts, given)
			}
			return
		}
		if !ok || math.Abs(given.Watts-p.Watts()) > 1e-9 || math.Abs(given.DeviceWatts+given.Lost-p.Watts()) > 1e-9 ||
			math.Abs(given.DeviceVolts*given.Amperes-given.DeviceWatts) > 1e-9 {
			t.Fatalf("%+v", given)
		}
		drawn, ok := standard.Draw(p, volts, ohms)
		if root := volts*volts - 4*ohms*p.Watts(); ok != (root >= 0) {
			t.Fatalf("%s over %v ohm at %v V: %t", p, ohms, volts, ok)
		}
		if ok && (math.Abs(drawn.DeviceWatts-p.Watts()) > 1e-6 || drawn.Watts < p.Watts()-1e-9) {
			t.Fatalf("%+v does not bring %s", drawn, p)
		}
	})
}

// TestWattsFallWithLength: a longer cable, a thinner or a hotter one never brings a device
// more.
func TestWattsFallWithLength(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		class := rapid.IntRange(0, 8).Draw(t, "class")
		c, _ := standard.PowerClassOf(class)
		length := unit.Length(rapid.Int64Range(0, 100e9).Draw(t, "length"))
		gauge := rapid.IntRange(22, 26).Draw(t, "gauge")
		heat := unit.Temperature(rapid.Int64Range(20*9000, 60*9000).Draw(t, "temperature"))
		watts := func(l unit.Length, g int, at unit.Temperature) float64 {
			loop, _ := standard.LoopResistance(g, l, at)
			ohms, ok1 := standard.PathOhms(loop, c.Pairs)
			f, ok2 := standard.Deliver(c.Power, c.Volts, ohms)
			if !ok1 || !ok2 {
				t.Fatalf("class %d over %v ohm: no answer", class, ohms)
			}
			return f.DeviceWatts
		}
		base := watts(length, gauge, heat)
		for _, less := range []float64{watts(length+unit.Length(rapid.Int64Range(0, 50e9).Draw(t, "further")), gauge, heat), watts(length, gauge+1, heat), watts(length, gauge, heat+9000)} {
			if less > base+1e-9 {
				t.Fatalf("%v W, then %v W", base, less)
			}
		}
	})
}

// TestMostOhms puts the greatest resistance back: over it the device has just what it needs.
// Over 12.5 ohm a type 2 source still gives 25.5 W (IEEE 802.3-2018 clause 33, as quoted in
// the literature).
func TestMostOhms(t *testing.T) {
	t.Parallel()
	ohms, ok := standard.MostOhms(30*unit.Watt, 255*unit.Watt/10, 50)
	if !ok || math.Abs(ohms-12.5) > 1e-9 {
		t.Errorf("25.5 W of 30 W at 50 V: %v ohm", ohms)
	}
	rapid.Check(t, func(t *rapid.T) {
		p := drawPower(t, "power")
		needs := unit.Power(rapid.Int64Range(int64(p)/2, int64(p)).Draw(t, "needs"))
		ohms, ok := standard.MostOhms(p, needs, 50)
		f, ok2 := standard.Deliver(p, 50, ohms)
		if !ok || !ok2 || math.Abs(f.DeviceWatts-needs.Watts()) > 1e-9 {
			t.Fatalf("%s of %s: %v ohm brings %v W", needs, p, ohms, f.DeviceWatts)
		}
	})
}

// TestGrants: a source gives the class that is asked for, or the highest of its type (IEEE
// 802.3-2018: class 3 by type 1, 4 by 2, 6 by 3, 8 by 4, as quoted in the literature).
func TestGrants(t *testing.T) {
	t.Parallel()
	for p, highest := range map[standard.PowerType]int{standard.PowerType1: 3, standard.PowerType2: 4, standard.PowerType3: 6, standard.PowerType4: 8} {
		for class := range 9 {
			c, less, ok := p.Grants(class)
			if !ok || c.Class != min(class, highest) || less != (class > highest) {
				t.Errorf("%s asked for class %d: %d, less %t", p, class, c.Class, less)
			}
			if asked, _ := standard.PowerClassOf(class); !less && asked.Least > p {
				t.Errorf("%s grants class %d, which needs %s", p, class, asked.Least)
			}
		}
		if _, _, ok := p.Grants(9); ok {
			t.Error("there is no class 9")
		}
	}
	for i, hundredths := range []int64{384, 649, 1295, 2550, 4000, 5100, 6200, 7130} {
		most := unit.Power(hundredths) * unit.Watt / 100
		at, ok := standard.ClassFor(most)
		over, more := standard.ClassFor(most + 1)
		if want := i + 1; !ok || at.Class != want || more == (want == 8) || (more && over.Class != want+1) {
			t.Errorf("%s: class %d, and %d for more; published table %d", most, at.Class, over.Class, want)
		}
	}
}

// TestAmpacityFalls: more cables, a thinner wire, a lower rating or a hotter space never let
// a conductor carry more, and an answer is a figure or engineering supervision.
func TestAmpacityFalls(t *testing.T) {
	t.Parallel()
	gauges := []int{22, 23, 24, 26}
	rapid.Check(t, func(t *rapid.T) {
		g := rapid.IntRange(0, 3).Draw(t, "gauge")
		c := standard.BundleCase{
			Code: standard.NEC2017, Gauge: gauges[g], Cables: rapid.IntRange(1, 250).Draw(t, "cables"),
			Rated:   unit.Temperature(rapid.Int64Range(60*9000, 105*9000).Draw(t, "rated")),
			Ambient: unit.Temperature(rapid.Int64Range(0, 55*9000).Draw(t, "ambient")),
			Loaded:  rapid.SampledFrom([]standard.Loading{standard.AllConductors, standard.HalfConductors}).Draw(t, "loaded"),
		}
		a, ok := standard.BundleAmpacityOf(c)
		if !ok || (a.Most > 0) == (a.Supervision != "") || (a.Most > 0 && (c.Cables < a.From || c.Cables > a.To)) {
			t.Fatalf("%+v: %+v", c, a)
		}
		worse := c
		switch rapid.IntRange(0, 3).Draw(t, "what") {
		case 0:
			worse.Cables += rapid.IntRange(1, 100).Draw(t, "added")
		case 1:
			worse.Gauge = gauges[min(3, g+1)]
		case 2:
			worse.Rated = 60 * unit.DegreeCelsius
		default:
			worse.Ambient += unit.DegreeCelsius
		}
		b, ok := standard.BundleAmpacityOf(worse)
		if ok && a.Supervision == "" && b.Most > a.Most {
			t.Fatalf("%+v carries %s, %+v carries %s", c, a.Most, worse, b.Most)
		}
	})
}

// TestLackingTableIsNamed: for an edition whose table was not read there is no figure, and the
// source says that its printed table decides; nothing is taken over from NEC 2017.
func TestLackingTableIsNamed(t *testing.T) {
	t.Parallel()
	for _, code := range []standard.FireCode{standard.NEC2020, standard.NEC2023} {
		edition := "70-" + strings.TrimPrefix(code.String(), "NEC-")
		a, ok := standard.BundleAmpacityOf(standard.BundleCase{Code: code, Gauge: 23, Cables: 7})
		if ok || a.Most != 0 || a.Source.Edition != edition || a.Source.Sure() || !strings.Contains(a.Source.String(), "its printed table decides") {
			t.Errorf("%s: %+v, %t", code, a, ok)
		}
		if percent, _, ok := standard.AmbientCorrection(code, 40*unit.DegreeCelsius, 60*unit.DegreeCelsius); ok {
			t.Errorf("%s: corrects by %d %%", code, percent)
		}
	}
	for name, c := range map[string]standard.BundleCase{
		"another code":       {Code: standard.EN50575, Gauge: 23, Cables: 7},
		"no cables":          {Code: standard.NEC2017, Gauge: 23},
		"25 AWG has no row":  {Code: standard.NEC2017, Gauge: 25, Cables: 7},
		"20 AWG has no row":  {Code: standard.NEC2017, Gauge: 20, Cables: 7},
		"rated under 60 C":   {Code: standard.NEC2017, Gauge: 23, Cables: 7, Rated: 50 * unit.DegreeCelsius},
		"space over 60 C":    {Code: standard.NEC2017, Gauge: 23, Cables: 7, Rated: 90 * unit.DegreeCelsius, Ambient: 61 * unit.DegreeCelsius},
		"no value in table":  {Code: standard.NEC2017, Gauge: 23, Cables: 7, Rated: 60 * unit.DegreeCelsius, Ambient: 58 * unit.DegreeCelsius},
		"unstated, too warm": {Code: standard.NEC2017, Gauge: 23, Cables: 7, Ambient: 58 * unit.DegreeCelsius},
	} {
		if a, ok := standard.BundleAmpacityOf(c); ok {
			t.Errorf("%s: %+v", name, a)
		}
	}
}
