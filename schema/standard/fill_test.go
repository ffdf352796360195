package standard_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"homerun/schema/standard"
	"homerun/schema/unit"
)

func drawSection(t *rapid.T) standard.Section {
	side := func(label string) unit.Length {
		return unit.Length(rapid.Int64Range(1e6, int64(600*unit.Millimetre)).Draw(t, label))
	}
	if rapid.Bool().Draw(t, "round") {
		s, _ := standard.RoundSection(side("inside"))
		return s
	}
	s, _ := standard.BoxSection(side("width"), side("depth"))
	return s
}

func drawDiameter(t *rapid.T, label string) unit.Length {
	return unit.Length(rapid.Int64Range(1e6, int64(20*unit.Millimetre)).Draw(t, label))
}

// TestFillNeverFalls: one more cable never lowers the fill, and what is over a limit stays
// over it; a wider limit never lets in less.
func TestFillNeverFalls(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		s := drawSection(t)
		var have []unit.Length
		for range rapid.IntRange(0, 20).Draw(t, "cables") {
			have = append(have, drawDiameter(t, "cable"))
		}
		a, ok := standard.FillOf(s, have)
		b, ok2 := standard.FillOf(s, append(have, drawDiameter(t, "added")))
		percent := rapid.IntRange(0, 100).Draw(t, "limit")
		if !ok || !ok2 || b.Percent <= a.Percent || b.Used < a.Used {
			t.Fatalf("%v %%, then %v %%", a.Percent, b.Percent)
		}
		if a.Judge(percent, standard.Unrounded) == standard.OverLimit && b.Judge(percent, standard.Unrounded) != standard.OverLimit {
			t.Fatalf("over %d %% with %v %%, not with %v %%", percent, a.Percent, b.Percent)
		}
		if a.Judge(percent, standard.Unrounded) == standard.WithinLimit && a.Judge(percent+1, standard.Unrounded) != standard.WithinLimit {
			t.Fatalf("%v %% is within %d %% and not within one more", a.Percent, percent)
		}
	})
}

// TestFillAgainstFloats recomputes the fill by floating-point areas: pi/4 of the squares over
// the area of the section.
func TestFillAgainstFloats(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		w := unit.Length(rapid.Int64Range(1e6, 6e8).Draw(t, "width"))
		d := unit.Length(rapid.Int64Range(1e6, 6e8).Draw(t, "depth"))
		od := drawDiameter(t, "cable")
		n := rapid.IntRange(1, 100).Draw(t, "count")
		circle := math.Pi / 4 * od.Millimetres() * od.Millimetres() * float64(n)
		box, _ := standard.BoxSection(w, d)
		round, _ := standard.RoundSection(w)
		for area, s := range map[float64]standard.Section{
			w.Millimetres() * d.Millimetres():               box,
			math.Pi / 4 * w.Millimetres() * w.Millimetres(): round,
		} {
			f, ok := standard.FillOf(s, slices.Repeat([]unit.Length{od}, n))
			if !ok || math.Abs(f.Percent/(100*circle/area)-1) > 1e-9 || math.Abs(f.Used.SquareMillimetres()-circle) > 1e-5 || math.Abs(f.Total.SquareMillimetres()-area) > 1e-5 {
				t.Fatalf("%d of %s: %v %%, by floats %v %%", n, od, f.Percent, 100*circle/area)
			}
		}
	})
}

// TestCountAndVerdictAgree: the count that a limit lets in is within it and one more is not;
// the rounded count is within it by note 7, and what is left is the difference to what is
// there.
func TestCountAndVerdictAgree(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		s, od := drawSection(t), unit.Length(rapid.Int64Range(3e6, 2e7).Draw(t, "cable"))
		percent := rapid.IntRange(1, 100).Draw(t, "limit")
		n, ok := standard.MostCables(s, od, percent)
		if n.Plain > 3000 {
			return
		}
		judge := func(count int, r standard.Rounding) standard.FillVerdict {
			f, _ := standard.FillOf(s, slices.Repeat([]unit.Length{od}, count))
			return f.Judge(percent, r)
		}
		if !ok || judge(n.Plain, standard.Unrounded) != standard.WithinLimit || judge(n.Plain+1, standard.Unrounded) != standard.OverLimit {
			t.Fatalf("%d of %s", n.Plain, od)
		}
		if judge(n.Rounded, standard.NoteSeven) == standard.OverLimit || judge(n.Rounded+1, standard.NoteSeven) != standard.OverLimit || n.Rounded-n.Plain > 1 {
			t.Fatalf("%+v of %s", n, od)
		}
		used := rapid.IntRange(0, n.Plain).Draw(t, "used")
		f, _ := standard.FillOf(s, slices.Repeat([]unit.Length{od}, used))
		if left, ok := f.Left(percent, od); !ok || left != n.Plain-used {
			t.Fatalf("%d of %d used, %d left", used, n.Plain, left)
		}
	})
}

// TestFillOnItsLimit: four cables of half the diameter of a conduit fill it to 100 % exactly,
// and a nanometre decides; note 7 holds for alike cables only (NFPA 70-2017, Chapter 9, as
// quoted in the literature: 4.89 cables of 0.30 in count as five in 1 in tubing).
func TestFillOnItsLimit(t *testing.T) {
	t.Parallel()
	s, _ := standard.RoundSection(20 * unit.Millimetre)
	half := 10 * unit.Millimetre
	for over, want := range []standard.FillVerdict{standard.WithinLimit, standard.OverLimit} {
		f, _ := standard.FillOf(s, []unit.Length{half, half, half, half + unit.Length(over)})
		if got := f.Judge(100, standard.NoteSeven); got != want {
			t.Errorf("%d nm over: %s", over, got)
		}
	}
	tubing, _, _ := standard.ConduitSection(standard.NEC2017, standard.EMT, "1")
	five := slices.Repeat([]unit.Length{3 * unit.Inch / 10}, 5)
	f, _ := standard.FillOf(tubing, five)
	if f.Judge(40, standard.NoteSeven) != standard.WithinRounding || f.Judge(40, standard.Unrounded) != standard.OverLimit {
		t.Errorf("five cables of 0.30 in: %v %%, %s", f.Percent, f.Judge(40, standard.NoteSeven))
	}
	five[0]--
	if f, _ = standard.FillOf(tubing, five); f.Judge(40, standard.NoteSeven) != standard.OverLimit {
		t.Errorf("cables that differ are rounded: %s", f.Judge(40, standard.NoteSeven))
	}
}

// TestUnitOfDiameterChangesNoFill reads a diameter in inches and in millimetres.
func TestUnitOfDiameterChangesNoFill(t *testing.T) {
	t.Parallel()
	tubing, _, _ := standard.ConduitSection(standard.NEC2017, standard.EMT, "3/4")
	us, _ := unit.ParseLength("0.25 in")
	metric, _ := unit.ParseLength("6.35 mm")
	a, _ := standard.CablesInConduit(tubing, us)
	b, _ := standard.CablesInConduit(tubing, metric)
	if a != b || a.Plain != 4 {
		t.Errorf("%+v and %+v, published 4", a, b)
	}
}

// TestNothingIsFilledWithACableLeftOut: absurd sizes have no answer.
func TestNothingIsFilledWithACableLeftOut(t *testing.T) {
	t.Parallel()
	good, _ := standard.RoundSection(unit.Inch)
	for _, d := range []unit.Length{0, -1, math.MinInt64, math.MaxInt64, unit.Metre + 1} {
		if f, ok := standard.FillOf(good, []unit.Length{unit.Millimetre, d}); ok {
			t.Errorf("%d nm: %+v", d, f)
		}
		if n, ok := standard.MostCables(good, d, 40); ok {
			t.Errorf("%d nm: %+v", d, n)
		}
		if n, ok := standard.CablesInConduit(good, d); ok {
			t.Errorf("%d nm: %+v", d, n)
		}
	}
	for _, d := range []unit.Length{0, -1, math.MinInt64, math.MaxInt64} {
		if _, ok := standard.RoundSection(d); ok {
			t.Errorf("%d nm is a conduit", d)
		}
		if _, ok := standard.BoxSection(d, unit.Metre); ok {
			t.Errorf("%d nm is a tray", d)
		}
		if _, _, ok := standard.MayJam(d, unit.Millimetre); ok {
			t.Errorf("%d nm may jam", d)
		}
	}
	if _, ok := standard.FillOf(standard.Section{}, nil); ok {
		t.Error("no section is filled")
	}
	if v := (standard.Fill{}).Judge(40, standard.NoteSeven); v != 0 {
		t.Errorf("no fill is %s", v)
	}
	if n, ok := (standard.Fill{}).Left(40, unit.Millimetre); ok {
		t.Errorf("no fill leaves %d", n)
	}
}
