package standard_test

import (
	"math"
	"testing"

	"homerun/schema/standard"
	"homerun/schema/unit"
)

// TestAnyMediaValueIsAnswered puts every small number in place of every word, and absurd
// quantities in place of every quantity: nothing panics, and every answer names a body, a
// clause and a confidence.
func TestAnyMediaValueIsAnswered(t *testing.T) {
	t.Parallel()
	sound := func(what string, src standard.Source, ok bool) {
		if ok && (src.Body == "" || src.Clause == "" || src.Confidence == 0) {
			t.Errorf("%s: answered without a whole source: %+v", what, src)
		}
	}
	for a := range uint8(24) {
		for b := range uint8(16) {
			anyLight(sound, standard.Regime(a%4), a, b)
			anyCode(sound, standard.FireCode(a%6), standard.Regime(b%4), a, b)
			for _, w := range []int64{math.MinInt64, -1, 0, 1, int64(37 * unit.Metre), math.MaxInt64} {
				anyMediaQuantity(sound, a, b, w)
			}
		}
	}
}

func anyLight(sound func(string, standard.Source, bool), r standard.Regime, a, b uint8) {
	f, app := standard.Fibre(b), standard.OpticalApplication(a)
	_, src, ok := f.Core()
	sound("core", src, ok)
	_, src, ok = standard.Join(f, standard.Fibre(a))
	sound("join", src, ok)
	_, src, ok = standard.Grandfathered(r, f)
	sound("grandfathered", src, ok)
	band, ok := standard.BandwidthOf(f)
	sound("bandwidth", band.Source, ok)
	_, src, ok = app.Strands()
	sound("strands", src, ok)
	reach, ok := standard.OpticalReachOf(app, f)
	sound("reach", reach.Source, ok)
	for _, w := range []standard.Wavelength{0, standard.Nm850, standard.Nm1310, standard.Nm1550} {
		_, src, ok = standard.Attenuation(r, f, w)
		sound("attenuation", src, ok)
	}
	_, src, ok = standard.Polarity(a).FarPosition(int(b), int(a))
	sound("position", src, ok)
	_, src, ok = standard.CoaxImpedance(standard.Series(a))
	sound("impedance", src, ok)
	_, src, ok = standard.PowerType(a).ConductorCurrent()
	sound("conductor", src, ok)
	c, _, ok := standard.PowerType(a).Grants(int(b))
	sound("grants", c.Source, ok)
}

func anyCode(sound func(string, standard.Source, bool), code standard.FireCode, r standard.Regime, a, b uint8) {
	f := standard.Family(b)
	_, src, ok := standard.FillApplies(code, f)
	sound("applies", src, ok)
	src, ok = standard.FirestopRule(code, f)
	sound("fire-stop", src, ok)
	o, ok := standard.OutsidePlantLimit(code, f)
	sound("outside", o.Source, ok)
	_, src, ok = standard.AbandonmentOf(code, f, standard.Ending(a), standard.Ending(b))
	sound("abandoned", src, ok)
	rule, ok := standard.BendRuleOf(r, standard.Medium(a), standard.Strain(b%4))
	sound("bend", rule.Source, ok)
	_, src, ok = standard.PullTension(r, standard.Medium(a), int(b))
	sound("tension", src, ok)
	for _, trade := range append(standard.TradeSizes(), "", "9") {
		_, src, ok = standard.ConduitSection(code, standard.Conduit(a), trade)
		sound("section", src, ok)
	}
}

func anyMediaQuantity(sound func(string, standard.Source, bool), a, b uint8, w int64) {
	code, x := standard.FireCode(a%6), float64(w)
	_, src, ok := standard.CoaxLossOver(standard.Series(b%5), unit.Length(w), unit.Frequency(w))
	sound("coax", src, ok)
	amp, ok := standard.BundleAmpacityOf(standard.BundleCase{Code: code, Gauge: 14 + int(a), Cables: int(w), Rated: unit.Temperature(w), Ambient: unit.Temperature(w)})
	sound("ampacity", amp.Source, ok)
	_, src, ok = standard.AmbientCorrection(code, unit.Temperature(w), unit.Temperature(15*int64(b))*unit.DegreeCelsius)
	sound("ambient", src, ok)
	_, src, ok = standard.ConduitFill(code, int(w), unit.Length(w))
	sound("fill", src, ok)
	_, src, ok = standard.ConduitRadius(standard.Regime(b%4), unit.Length(w))
	sound("radius", src, ok)
	l, ok := standard.BendRule{Times: int(b)}.Least(unit.Length(w))
	finite(sound, "least", l.Metres(), !ok || l > 0)
	for _, v := range []float64{x, 48, math.NaN(), math.Inf(1)} {
		drawn, _ := standard.Draw(unit.Power(w), v, x)
		given, _ := standard.Deliver(unit.Power(w), v, x)
		most, _ := standard.MostOhms(unit.Power(w), unit.Power(w), v)
		path, _ := standard.PathOhms(v, int(b))
		finite(sound, "flow", drawn.DeviceWatts+given.DeviceWatts+most+path, true)
	}
	standard.ClassFor(unit.Power(w))
	if s, round := standard.RoundSection(unit.Length(w)); round {
		standard.MostCables(s, unit.Length(b), int(w))
		f, _ := standard.FillOf(s, []unit.Length{unit.Length(w), unit.Millimetre})
		left, _ := f.Left(int(w), 1)
		finite(sound, "filled", f.Percent, f.Judge(int(w), standard.NoteSeven) != 0 && left >= 0)
	}
	reach, ok := standard.OpticalReachOf(standard.OpticalApplication(a), standard.Fibre(b))
	_, src = reach.JudgeLength(unit.Length(w))
	sound("length", src, ok)
	_, src, ok = reach.JudgeLoss(unit.Loss(w))
	sound("loss", src, ok)
	left, ok := reach.Left(unit.Loss(w))
	finite(sound, "left", left.Decibels(), !ok || (left >= 0 && left <= reach.Loss))
}

// finite reports a number that is none, or one that does not hold.
func finite(sound func(string, standard.Source, bool), what string, v float64, holds bool) {
	sound(what, standard.Source{}, math.IsNaN(v) || math.IsInf(v, 0) || !holds)
}
