package standard_test

import (
	"testing"

	"pgregory.net/rapid"

	"homerun/schema/standard"
	"homerun/schema/unit"
)

func drawRegime(t *rapid.T) standard.Regime {
	return rapid.SampledFrom([]standard.Regime{standard.TIA, standard.ISO}).Draw(t, "family")
}

func drawCategory(t *rapid.T) standard.Category {
	return rapid.SampledFrom(standard.Categories()).Draw(t, "category")
}

func drawShield(t *rapid.T) standard.Shield {
	return rapid.SampledFrom([]standard.Shield{standard.Unscreened, standard.Screened}).Draw(t, "shield")
}

// TestLossGrows: more length, more heat, a higher frequency, a thinner cord or one more
// connection never lower the loss of a channel.
func TestLossGrows(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		r, c := drawRegime(t), drawCategory(t)
		base := standard.ChannelParts{
			Regime: r, Frequency: unit.Frequency(rapid.Int64Range(1e6, 2e9).Draw(t, "hertz")),
			Cables: []standard.CablePart{{
				Name: "run", Category: c, Length: unit.Length(rapid.Int64Range(0, 200e9).Draw(t, "nanometres")),
				Derating:    rapid.IntRange(0, 100).Draw(t, "derating"),
				Temperature: unit.Temperature(rapid.Int64Range(-20*9000, 80*9000).Draw(t, "temperature")), Shield: drawShield(t),
			}},
			Connections: []standard.Category{c, c},
		}
		loss, ok := standard.LossOfChannel(base)
		if !ok {
			return
		}
		more := base
		more.Cables = append([]standard.CablePart(nil), base.Cables...)
		switch rapid.IntRange(0, 4).Draw(t, "what") {
		case 0:
			more.Cables[0].Length += unit.Length(rapid.Int64Range(1e6, 1e10).Draw(t, "further"))
		case 1:
			more.Cables[0].Temperature += unit.Temperature(rapid.Int64Range(1, 50*9000).Draw(t, "hotter"))
		case 2:
			more.Frequency += unit.Frequency(rapid.Int64Range(1e6, 1e9).Draw(t, "higher"))
		case 3:
			more.Cables[0].Derating += rapid.IntRange(1, 50).Draw(t, "thinner")
		default:
			more.Connections = append([]standard.Category{c}, base.Connections...)
		}
		greater, ok := standard.LossOfChannel(more)
		if !ok || greater.Total < loss.Total-1e-12 {
			t.Fatalf("%+v loses %v dB, %+v only %v dB", base, loss.Total, more, greater.Total)
		}
	})
}

// TestSumIsTheSumOfItsTerms redoes each line of the working from the figures it shows.
func TestSumIsTheSumOfItsTerms(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.SampledFrom([]standard.Category{standard.Cat5e, standard.Cat6, standard.Cat6A}).Draw(t, "category")
		sum, ok := standard.LossOfChannel(standard.ChannelParts{
			Regime: standard.TIA, Frequency: c.Top(),
			Cables: []standard.CablePart{
				{Name: "run", Category: c, Length: unit.Length(rapid.Int64Range(0, 100e9).Draw(t, "run")), Temperature: unit.Temperature(rapid.Int64Range(0, 60*9000).Draw(t, "at"))},
				{Name: "cord", Category: c, Length: unit.Length(rapid.Int64Range(0, 10e9).Draw(t, "cord")), Derating: 50},
			},
			Connections: []standard.Category{c, standard.Cat5e, c},
		})
		if !ok {
			t.Fatal("no sum")
		}
		total := 0.0
		for _, term := range sum.Terms {
			line := float64(term.Count) * term.PerHundred
			if term.Count == 0 {
				line = term.Length.Metres() / 100 * term.PerHundred * term.Derating * term.Heat
			}
			if line != term.Loss {
				t.Fatalf("line %+v comes to %v", term, line)
			}
			total += line
		}
		if total != sum.Total {
			t.Fatalf("lines add up to %v, total says %v", total, sum.Total)
		}
	})
}

// TestHotterIsShorter: a warmer space never allows more cable, the certain bound is never
// tighter than the rule, and a screen never makes it worse.
func TestHotterIsShorter(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		r, s := drawRegime(t), drawShield(t)
		c := rapid.SampledFrom([]standard.Category{standard.Cat5e, standard.Cat6, standard.Cat6A}).Draw(t, "category")
		cool := unit.Temperature(rapid.Int64Range(-40*9000, 60*9000).Draw(t, "cool"))
		hot := cool + unit.Temperature(rapid.Int64Range(0, int64(60*unit.DegreeCelsius-cool)).Draw(t, "rise"))
		a, ok1 := standard.HotLengthOf(r, c, cool, s)
		b, ok2 := standard.HotLengthOf(r, c, hot, s)
		screened, _ := standard.HotLengthOf(r, c, hot, standard.Screened)
		if !ok1 || !ok2 || b.Most > a.Most || b.Certain > a.Certain || b.Certain < b.Most || screened.Most < b.Most {
			t.Fatalf("%s %s: %s allows %s, %s allows %s (certain %s)", r, c, cool, a.Most, hot, b.Most, b.Certain)
		}
		if _, ok := standard.HotLengthOf(r, c, 60*unit.DegreeCelsius+1, s); ok {
			t.Fatal("the table goes no further than 60 C")
		}
	})
}

// TestUnitOfInputChangesNoVerdict reads one length in millimetres and in inches, exactly
// equal, and one temperature in C and F: every verdict is the same.
func TestUnitOfInputChangesNoVerdict(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64Range(0, 5000).Draw(t, "inches")
		metric := unit.Length(n) * 254 * unit.Millimetre / 10
		us := unit.Length(n) * unit.Inch
		deg := rapid.Int64Range(0, 12).Draw(t, "fives")
		c := unit.Temperature(5*deg) * unit.DegreeCelsius
		f := unit.Temperature(9*deg) * unit.DegreeFahrenheit
		cat, sh := drawCategory(t), drawShield(t)
		h1, _ := standard.HotLengthOf(standard.TIA, cat, c, sh)
		h2, _ := standard.HotLengthOf(standard.TIA, cat, f, sh)
		o1, _ := standard.OpenOfficeCords(metric, 24)
		o2, _ := standard.OpenOfficeCords(us, 24)
		for _, a := range standard.Applications() {
			reach, _ := standard.ReachOf(a, cat, sh)
			v1, _ := reach.Judge(metric)
			v2, _ := reach.Judge(us)
			if v1 != v2 {
				t.Fatalf("%s over %s at %d in: %s and %s", a, cat, n, v1, v2)
			}
		}
		if h1 != h2 || o1 != o2 {
			t.Fatalf("%v and %v, %v and %v", h1, h2, o1, o2)
		}
	})
}

// TestReachFalls: an answer never gets better with length, and a stronger category below
// the short ones never carries less.
func TestReachFalls(t *testing.T) {
	t.Parallel()
	for _, a := range standard.Applications() {
		for _, s := range []standard.Shield{standard.Unscreened, standard.Screened} {
			for _, c := range standard.Categories() {
				reach, ok := standard.ReachOf(a, c, s)
				if !ok || reach.Sure > reach.Possible || (reach.Condition != "") != (reach.Sure < reach.Possible) {
					t.Errorf("%s over %s: %+v", a, c, reach)
				}
				if reach.Sure < reach.Possible && reach.Doubt.Confidence == 0 {
					t.Errorf("%s over %s: condition without a source", a, c)
				}
				better, _ := standard.ReachOf(a, c+1, s)
				if c < standard.Cat7A && (better.Sure < reach.Sure || better.Possible < reach.Possible) {
					t.Errorf("%s: %s reaches %v, %s only %v", a, c, reach, c+1, better)
				}
			}
		}
	}
}

// TestOpenOfficeIsNeverTooLong puts the cords that are allowed back into the formula of
// ANSI/TIA-568.1-D in exact whole numbers: H + C*(1 + D) never passes 102 m, and one
// nanometre more than the computed C does.
func TestOpenOfficeIsNeverTooLong(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		h := unit.Length(rapid.Int64Range(0, 102e9).Draw(t, "fixed"))
		gauge := rapid.SampledFrom([]int{24, 26}).Draw(t, "gauge")
		o, ok := standard.OpenOfficeCords(h, gauge)
		weight := unit.Length(100 + o.Derating)
		const reach = 102 * unit.Metre * 100
		if !ok || h*100+o.Computed*weight > reach || h*100+(o.Computed+1)*weight <= reach {
			t.Fatalf("H = %s: C = %d nm", h, o.Computed)
		}
		if o.Cords > o.Computed || o.WorkArea > o.Cap || o.WorkArea < 0 {
			t.Fatalf("H = %s: %+v", h, o)
		}
	})
}

// TestISOEquationHolds puts the fixed length back: length + F*X + C*Y never passes the
// number that the equation starts from.
func TestISOEquationHolds(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		in := standard.ISOLink{
			Model:    standard.Model(rapid.IntRange(1, 4).Draw(t, "model")),
			Category: rapid.SampledFrom([]standard.Category{standard.Cat5e, standard.Cat6, standard.Cat7}).Draw(t, "category"),
			Cords:    unit.Length(rapid.Int64Range(0, 30e9).Draw(t, "cords")), CordLoss: rapid.IntRange(100, 200).Draw(t, "x"),
			CP: unit.Length(rapid.Int64Range(0, 20e9).Draw(t, "cp")), CPLoss: rapid.IntRange(100, 200).Draw(t, "y"),
		}
		f, ok := standard.ISOFixedLength(in)
		used := f.Computed*100 + in.Cords*unit.Length(in.CordLoss)
		if in.Model.HasConsolidation() {
			used += in.CP * unit.Length(in.CPLoss)
		}
		if !ok || f.Most > 90*unit.Metre || (f.Computed > 0 && used > f.Base*100) {
			t.Fatalf("%+v: %+v", in, f)
		}
	})
}

// TestSeparationGrowsWithLoad: more circuits, more current or a third phase never shorten
// the distance, a better barrier never lengthens it.
func TestSeparationGrowsWithLoad(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		class := standard.Segregation(rapid.IntRange(1, 4).Draw(t, "class"))
		barrier := standard.Barrier(rapid.IntRange(1, 4).Draw(t, "barrier"))
		load := standard.PowerLoad{Circuits: rapid.IntRange(0, 100).Draw(t, "circuits"), Phases: 1, Current: unit.Current(rapid.Int64Range(0, 200e6).Draw(t, "current"))}
		a, ok := standard.Segregate(class, barrier, load)
		more := load
		switch rapid.IntRange(0, 2).Draw(t, "what") {
		case 0:
			more.Circuits += rapid.IntRange(0, 20).Draw(t, "added")
		case 1:
			more.Current += unit.Current(rapid.Int64Range(0, 100e6).Draw(t, "stronger"))
		default:
			more.Phases = 3
		}
		b, ok2 := standard.Segregate(class, barrier, more)
		if !ok || !ok2 || b.A < a.A || a.A*10 != a.S*unit.Length(a.FactorTenth) {
			t.Fatalf("%+v asks for %s, %+v for %s", load, a.A, more, b.A)
		}
		if barrier < standard.SolidMetal {
			if c, _ := standard.Segregate(class, barrier+1, load); c.A > a.A {
				t.Fatalf("barrier %s asks for more than %s", barrier+1, barrier)
			}
		}
	})
}
