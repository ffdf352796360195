package standard_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"homerun/schema"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// measured are joints of a stated loss.
func measured(name string, count int, each unit.Loss) standard.FibreJoints {
	return standard.FibreJoints{Name: name, Count: count, Each: each, Source: standard.Source{Body: "record", Clause: name, Confidence: standard.Confirmed}}
}

// TestWorkedFibreLink redoes a published sum: 842 m at 3.5 dB/km, two end connections of 0.75
// dB, two of 0.45 dB and a splice of 0.2 dB come to 5.547 dB (a tester's handbook on limits by
// ANSI/TIA-568 and ISO/IEC 11801, as quoted in the literature).
func TestWorkedFibreLink(t *testing.T) {
	t.Parallel()
	sum, ok := standard.LossOfFibre(standard.FibreLink{
		Regime: standard.ISO, Wavelength: standard.Nm850,
		Parts: []standard.FibrePart{{Name: "backbone", Fibre: standard.OM3, Length: 842 * unit.Metre}},
		Joints: []standard.FibreJoints{
			standard.Connections(standard.ISO, 2), measured("patches", 2, 4500), measured("splice", 1, 2000),
		},
	})
	if !ok || math.Abs(sum.Total-5.547) > 1e-12 || sum.AsLimit() != 55_470 || sum.AsLoss() != 55_470 || sum.Confidence != standard.Confirmed {
		t.Errorf("%+v, %t: published 5.547 dB", sum, ok)
	}
	for i, want := range []float64{2.947, 1.5, 0.9, 0.2} {
		if math.Abs(sum.Terms[i].Loss-want) > 1e-12 {
			t.Errorf("%s: %v dB, by hand %v dB", sum.Terms[i].Name, sum.Terms[i].Loss, want)
		}
	}
}

// TestFibreVerdictHangsOnNoRounding puts a link on its limit and 10 nm of fibre over it: 314.286
// m of OM3 and two connections lose 2.6 dB at 3.5 dB/km, the limit of 10GBASE-SR (IEEE 802.3,
// as quoted in the literature).
func TestFibreVerdictHangsOnNoRounding(t *testing.T) {
	t.Parallel()
	reach, _ := standard.OpticalReachOf(standard.Base10GSR, standard.OM3)
	at := unit.Length(1_100_000_000_000 / 35 * 10) // 1.1 dB of fibre, truncated to 10 nm
	for i, want := range []standard.Verdict{standard.Carries, standard.NotCarried} {
		l := at + 10*unit.Length(i)
		sum, ok := standard.LossOfFibre(standard.FibreLink{
			Regime: standard.ISO, Wavelength: standard.Nm850,
			Parts:  []standard.FibrePart{{Name: "run", Fibre: standard.OM3, Length: l}},
			Joints: []standard.FibreJoints{standard.Connections(standard.ISO, 2)},
		})
		v, _, judged := reach.JudgeLoss(sum.AsLoss())
		if !ok || !judged || v != want {
			t.Errorf("%d nm: %s, %v dB", l, v, sum.Total)
		}
	}
	if left, ok := reach.Left(10_500); !ok || left != 15_500 {
		t.Errorf("300 m leave %s of 2.6 dB", left)
	}
}

// TestFibreFamiliesDiffer: OM4 at 850 nm is 3.0 dB/km by ANSI/TIA, from memory, and 3.5 dB/km
// by ISO/IEC (as quoted in the literature).
func TestFibreFamiliesDiffer(t *testing.T) {
	t.Parallel()
	tia, src1, _ := standard.Attenuation(standard.TIA, standard.OM4, standard.Nm850)
	iso, src2, _ := standard.Attenuation(standard.ISO, standard.OM4, standard.Nm850)
	if tia != 3*unit.Decibel || iso != 35*unit.Decibel/10 || src1.Body != "ANSI/TIA" || src2.Body != "ISO/IEC" || src1.Sure() || !src2.Sure() {
		t.Errorf("%s (%s), %s (%s)", tia, src1, iso, src2)
	}
}

// TestNoFibreSumWithAPartLeftOut: a wavelength that the class has no figure for, absurd input
// and joints without a source have no answer.
func TestNoFibreSumWithAPartLeftOut(t *testing.T) {
	t.Parallel()
	part := func(f standard.Fibre, l unit.Length) []standard.FibrePart {
		return []standard.FibrePart{{Name: "run", Fibre: f, Length: l}}
	}
	for name, l := range map[string]standard.FibreLink{
		"single-mode at 850 nm": {Regime: standard.ISO, Wavelength: standard.Nm850, Parts: part(standard.OS2, unit.Metre)},
		"no class":              {Regime: standard.ISO, Wavelength: standard.Nm850, Parts: part(0, unit.Metre)},
		"no family":             {Wavelength: standard.Nm850, Parts: part(standard.OM3, unit.Metre)},
		"negative length":       {Regime: standard.ISO, Wavelength: standard.Nm850, Parts: part(standard.OM3, -1)},
		"absurd length":         {Regime: standard.ISO, Wavelength: standard.Nm850, Parts: part(standard.OM3, math.MaxInt64)},
		"absurd count":          {Regime: standard.ISO, Joints: []standard.FibreJoints{measured("x", math.MaxInt, 1)}},
		"negative loss":         {Regime: standard.ISO, Joints: []standard.FibreJoints{measured("x", 1, -1)}},
		"absurd loss":           {Regime: standard.ISO, Joints: []standard.FibreJoints{measured("x", 1, math.MaxInt64)}},
		"joints of no family":   {Regime: standard.ISO, Joints: []standard.FibreJoints{standard.Connections(0, 2)}},
	} {
		if sum, ok := standard.LossOfFibre(l); ok {
			t.Errorf("%s: %+v", name, sum)
		}
	}
}

// TestFibreLossGrows: more fibre, a further connection or a further splice never lower the
// loss, and the two roundings close the exact sum in.
func TestFibreLossGrows(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		r := drawRegime(t)
		f := rapid.SampledFrom(standard.Fibres()).Draw(t, "fibre")
		w := standard.Nm1310
		if f.Multimode() {
			w = standard.Nm850
		}
		length := unit.Length(rapid.Int64Range(0, int64(40*unit.Kilometre)).Draw(t, "length"))
		joints, splices := rapid.IntRange(0, 20).Draw(t, "connections"), rapid.IntRange(0, 20).Draw(t, "splices")
		loss := func(l unit.Length, n, s int) standard.FibreLoss {
			sum, ok := standard.LossOfFibre(standard.FibreLink{
				Regime: r, Wavelength: w, Parts: []standard.FibrePart{{Fibre: f, Length: l}},
				Joints: []standard.FibreJoints{standard.Connections(r, n), standard.Splices(r, s)},
			})
			if !ok {
				t.Fatalf("%s at %s: no sum", f, w)
			}
			return sum
		}
		base := loss(length, joints, splices)
		for _, more := range []standard.FibreLoss{loss(length+unit.Length(rapid.Int64Range(1, 1e12).Draw(t, "further")), joints, splices), loss(length, joints+1, splices), loss(length, joints, splices+1)} {
			if more.Total <= base.Total || more.AsLoss() < base.AsLoss() || more.AsLimit() < base.AsLimit() {
				t.Fatalf("%v dB, with more %v dB", base.Total, more.Total)
			}
		}
		if d := base.AsLoss() - base.AsLimit(); d < 0 || d > 1 || base.AsLimit().Decibels() > base.Total+1e-9 || base.AsLoss().Decibels() < base.Total-1e-9 {
			t.Fatalf("%v dB between %s and %s", base.Total, base.AsLimit(), base.AsLoss())
		}
	})
}

// TestBetterFibreReachesAsFar: of the multimode classes, a better one never carries an
// application less far, and no condition stands without a source.
func TestBetterFibreReachesAsFar(t *testing.T) {
	t.Parallel()
	for _, a := range standard.OpticalApplications() {
		before := standard.OpticalReach{}
		for _, f := range standard.Fibres() {
			r, ok := standard.OpticalReachOf(a, f)
			_, made := a.Wavelength(f)
			if !ok || f == standard.OS1 {
				before = standard.OpticalReach{}
			}
			if ok && (r.Sure < before.Sure || r.Possible < before.Possible || r.Sure > r.Possible || (r.Condition != "") != (r.Sure < r.Possible)) {
				t.Errorf("%s over %s: %+v after %+v", a, f, r, before)
			}
			if ok && ((r.Condition != "" && r.Doubt.Confidence == 0) || (r.Loss != 0) != (r.LossSource.Confidence != 0) || r.Source.Confidence == 0 || (!made && r.Possible > 0)) {
				t.Errorf("%s over %s: %+v", a, f, r)
			}
			if ok {
				before = r
			}
		}
	}
}

// TestArrayTypesUndoThemselves: each type of array cable, led there and back, comes to the
// position it started from, and leads every position to another one (ANSI/TIA-568.3-D, as
// quoted in the literature).
func TestArrayTypesUndoThemselves(t *testing.T) {
	t.Parallel()
	for _, p := range []standard.Polarity{standard.PolarityA, standard.PolarityB, standard.PolarityC} {
		for _, count := range []int{8, 12, 16, 24} {
			var reached []int
			for i := 1; i <= count; i++ {
				far, _, ok := p.FarPosition(i, count)
				back, _, _ := p.FarPosition(far, count)
				if !ok || back != i {
					t.Errorf("type %s, %d of %d: to %d and back to %d", p, i, count, far, back)
				}
				reached = append(reached, far)
			}
			slices.Sort(reached)
			if len(slices.Compact(reached)) != count || reached[0] != 1 || reached[count-1] != count {
				t.Errorf("type %s reaches %v", p, reached)
			}
		}
	}
}

// TestWordsOfRecordsAreKnown: every word that a record may hold for a fibre, a series, a power
// type or an application is read here, or is none of a standard's.
func TestWordsOfRecordsAreKnown(t *testing.T) {
	t.Parallel()
	plain := []string{"voice", "video", "access-control", "building-control", "other"}
	for _, w := range schema.Applications() {
		_, pair := standard.ParseApplication(w)
		_, light := standard.ParseOpticalApplication(w)
		if known := pair == nil || light == nil; known == slices.Contains(plain, w) || (pair == nil && light == nil) {
			t.Errorf("application %s: %v, %v", w, pair, light)
		}
	}
	for _, w := range schema.Fibres() {
		if f, err := standard.ParseFibre(w); err != nil || f.String() != w {
			t.Errorf("fibre %s: %v", w, err)
		}
	}
	for _, w := range schema.PowerTypes() {
		if p, err := standard.ParsePowerType(w); err != nil || p.String() != w {
			t.Errorf("power %s: %v", w, err)
		}
	}
	for _, w := range []string{"6", "11", "59"} {
		if s, err := standard.ParseSeries(w); err != nil || s.String() != w {
			t.Errorf("series %s: %v", w, err)
		}
	}
}

// TestCoaxLossGrows: a longer cable and a higher frequency never lose less, and of the series
// 11 loses least and 59 most, as their thickness says.
func TestCoaxLossGrows(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		low := unit.Frequency(rapid.Int64Range(5e6, 1e9).Draw(t, "low"))
		high := unit.Frequency(rapid.Int64Range(int64(low), 1e9).Draw(t, "high"))
		l := unit.Length(rapid.Int64Range(0, 1e12).Draw(t, "length"))
		further := l + unit.Length(rapid.Int64Range(0, 1e12).Draw(t, "further"))
		var at [4]float64
		for _, s := range []standard.Series{standard.Series6, standard.Series11, standard.Series59} {
			a, _, ok1 := standard.CoaxLossOver(s, l, low)
			b, _, ok2 := standard.CoaxLossOver(s, further, high)
			if !ok1 || !ok2 || b < a-1e-12 {
				t.Fatalf("series %s: %v dB, then %v dB", s, a, b)
			}
			at[s] = a
		}
		if at[standard.Series11] > at[standard.Series6] || at[standard.Series6] > at[standard.Series59] {
			t.Fatalf("%v", at)
		}
	})
	for _, f := range []unit.Frequency{0, 4_999_999, 1_000_000_001, math.MaxInt64, math.MinInt64} {
		if db, _, ok := standard.CoaxLoss(standard.Series6, f); ok {
			t.Errorf("%s: %v dB beyond the table", f, db)
		}
	}
}
