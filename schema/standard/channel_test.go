package standard_test

import (
	"math"
	"testing"

	"homerun/schema/standard"
	"homerun/schema/unit"
)

// TestWorkedChannel redoes one sum by hand: category 6 at 250 MHz loses
// 1.808*15.8114 + 0.017*250 + 0.200/15.8114 = 32.850 dB in 100 m (ANSI/TIA-568-C.2, as
// quoted in the literature); 80 m at 40 C lose 0.80*32.850*1.08 = 28.382 dB, 5 m of 26 AWG
// cord 0.05*32.850*1.5 = 2.464 dB, two connections 2*0.02*15.8114 = 0.632 dB.
func TestWorkedChannel(t *testing.T) {
	t.Parallel()
	sum, ok := standard.LossOfChannel(standard.ChannelParts{
		Regime: standard.TIA, Frequency: 250 * unit.Megahertz,
		Cables: []standard.CablePart{
			{Name: "1A-A07", Category: standard.Cat6, Length: 80 * unit.Metre, Temperature: 40 * unit.DegreeCelsius},
			{Name: "cord", Category: standard.Cat6, Length: 5 * unit.Metre, Derating: 50},
		},
		Connections: []standard.Category{standard.Cat6, standard.Cat6},
	})
	want := []float64{28.382, 2.464, 0.632}
	if !ok || len(sum.Terms) != len(want) || sum.Confidence != standard.Confirmed {
		t.Fatalf("sum %+v, %t", sum, ok)
	}
	for i, w := range want {
		if math.Abs(sum.Terms[i].Loss-w) > 0.001 {
			t.Errorf("%s: %.4f dB, by hand %.3f", sum.Terms[i].Name, sum.Terms[i].Loss, w)
		}
	}
	if math.Abs(sum.Total-31.478) > 0.002 {
		t.Errorf("total %.4f dB, by hand 31.478", sum.Total)
	}
}

// TestFullChannelMeetsItsLimit builds the channel that the limit of a class is made of:
// 90 m of cable, 10 m of cord that loses half as much again, four connections (ISO/IEC 11801,
// as quoted in the literature). Both ways come to the same loss.
func TestFullChannelMeetsItsLimit(t *testing.T) {
	t.Parallel()
	for _, c := range []standard.Category{standard.Cat5e, standard.Cat6, standard.Cat7} {
		for _, mhz := range []int64{10, 31, 62, 100} {
			f := unit.Frequency(mhz) * unit.Megahertz
			sum := fullChannel(t, standard.ISO, c, f, 50)
			limit, src, ok := standard.ChannelLossLimit(standard.ISO, c, f)
			if !ok || !src.Sure() || math.Abs(sum-limit) > 0.1 {
				t.Errorf("category %s at %s: built %.3f dB, limit %.3f dB (%s)", c, f, sum, limit, src)
			}
		}
	}
	for _, c := range []standard.Category{standard.Cat5e, standard.Cat6} {
		sum := fullChannel(t, standard.TIA, c, c.Top(), 20)
		limit, src, ok := standard.ChannelLossLimit(standard.TIA, c, c.Top())
		if !ok || src.Sure() || sum > limit+1e-9 || sum < limit-1.2 {
			t.Errorf("category %s: built %.3f dB, limit %.3f dB: the limit adds a deviation of at most 1.2 dB", c, sum, limit)
		}
	}
}

func fullChannel(t *testing.T, r standard.Regime, c standard.Category, f unit.Frequency, derating int) float64 {
	t.Helper()
	sum, ok := standard.LossOfChannel(standard.ChannelParts{
		Regime: r, Frequency: f,
		Cables: []standard.CablePart{
			{Name: "cable", Category: c, Length: 90 * unit.Metre},
			{Name: "cords", Category: c, Length: 10 * unit.Metre, Derating: derating},
		},
		Connections: []standard.Category{c, c, c, c},
	})
	if !ok {
		t.Fatalf("no sum for category %s", c)
	}
	return sum.Total
}

// TestNoSumWithAPartLeftOut: where a part has no curve in the family, there is no answer.
func TestNoSumWithAPartLeftOut(t *testing.T) {
	t.Parallel()
	good := standard.CablePart{Name: "run", Category: standard.Cat6, Length: unit.Metre}
	for name, p := range map[string]standard.ChannelParts{
		"category 7 in ANSI/TIA":    {Regime: standard.TIA, Cables: []standard.CablePart{{Category: standard.Cat7}}},
		"category 8 in ISO/IEC":     {Regime: standard.ISO, Cables: []standard.CablePart{{Category: standard.Cat8}}},
		"connection of category 4":  {Regime: standard.TIA, Cables: []standard.CablePart{good}, Connections: []standard.Category{standard.Cat4}},
		"connection of no category": {Regime: standard.TIA, Cables: []standard.CablePart{good}, Connections: []standard.Category{0}},
		"negative length":           {Regime: standard.TIA, Cables: []standard.CablePart{{Category: standard.Cat6, Length: -1}}},
		"no family":                 {Cables: []standard.CablePart{good}},
	} {
		p.Frequency = 100 * unit.Megahertz
		if sum, ok := standard.LossOfChannel(p); ok {
			t.Errorf("%s: %+v", name, sum)
		}
	}
}

// TestLoopResistancePublished: 100 m of 24 AWG meet the 25 ohm of a channel, 100 m of 26 AWG
// do not (copper wire table, as quoted in the literature: 16.8 and 26.8 ohm); the limit is
// from memory. Copper at 60 C resists 0.00393*40 = 15.72 % more, from memory.
func TestLoopResistancePublished(t *testing.T) {
	t.Parallel()
	limits, ok := standard.LoopResistanceLimits(standard.Cat6)
	thick, _ := standard.LoopResistance(24, 100*unit.Metre, 20*unit.DegreeCelsius)
	thin, _ := standard.LoopResistance(26, 100*unit.Metre, 20*unit.DegreeCelsius)
	if !ok || math.Abs(thick-16.8) > 0.05 || math.Abs(thin-26.8) > 0.05 || thick > limits.Channel || thin <= limits.Channel {
		t.Errorf("24 AWG %.2f ohm, 26 AWG %.2f ohm, limit %.0f ohm", thick, thin, limits.Channel)
	}
	hot, src := standard.LoopResistance(24, 100*unit.Metre, 60*unit.DegreeCelsius)
	if math.Abs(hot/thick-1.1572) > 1e-9 || src.Sure() {
		t.Errorf("24 AWG at 60 C: %.3f ohm (%s)", hot, src)
	}
}
