package standard_test

import (
	"math"
	"testing"

	"homerun/schema/standard"
	"homerun/schema/unit"
)

// TestSourceText pins how a source is cited.
func TestSourceText(t *testing.T) {
	t.Parallel()
	for want, s := range map[string]standard.Source{
		"ANSI/TIA-568.2-D, channel length": {Body: "ANSI/TIA", Edition: "568.2-D", Clause: "channel length", Confidence: standard.Confirmed},
		"EN 50174-2:2009, A = S x P; unconfirmed: check the printed standard": {
			Body: "EN", Edition: "50174-2:2009", Clause: "A = S x P", Confidence: standard.FromMemory,
		},
		"NFPA 70-2017, 800.113; sources disagree: check the printed standard (a note)": {
			Body: "NFPA", Edition: "70-2017", Clause: "800.113", Confidence: standard.Conflicting, Note: "a note",
		},
	} {
		if got := s.String(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if standard.Weakest(standard.Source{Confidence: standard.Confirmed}, standard.Source{Confidence: standard.FromMemory}) != standard.FromMemory {
		t.Error("a sum is as sure as its least sure part")
	}
}

// TestEditionsAreNamed: a cell read for NEC 2017 says so in a later edition and keeps its
// severity; the article follows the edition (Article 722 for fibre and limited power, NFPA
// 70-2023, as quoted in the literature).
func TestEditionsAreNamed(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		code          standard.FireCode
		listing, want string
	}{
		{standard.NEC2017, "CMR", "NFPA 70-2017, 800.113 and Table 800.154(a)"},
		{standard.NEC2020, "CMR", "NFPA 70-2020, 800.113 and 800.154 (cell confirmed for NEC 2017, for this edition from memory)"},
		{standard.NEC2023, "OFNR", "NFPA 70-2023, Article 722 (cell confirmed for NEC 2017, for this edition from memory)"},
	} {
		p, ok := standard.Permit(c.code, listing(t, c.listing), standard.PlenumSpace, standard.Bare)
		if !ok || p.Permitted || !p.Source.Sure() || p.Source.String() != c.want {
			t.Errorf("%s %s: %+v, source %s", c.code, c.listing, p, p.Source)
		}
	}
}

// TestFamiliesAreNotMixed: category 6 at 100 MHz is 21.3 dB by ANSI/TIA and 21.7 dB by
// ISO/IEC (both as quoted in the literature), and each answer names its own body.
func TestFamiliesAreNotMixed(t *testing.T) {
	t.Parallel()
	tia, src1, _ := standard.ChannelLossLimit(standard.TIA, standard.Cat6, 100*unit.Megahertz)
	iso, src2, _ := standard.ChannelLossLimit(standard.ISO, standard.Cat6, 100*unit.Megahertz)
	if math.Abs(tia-21.3) > 0.05 || math.Abs(iso-21.7) > 0.05 || src1.Body != "ANSI/TIA" || src2.Body != "ISO/IEC" {
		t.Errorf("%.2f dB (%s), %.2f dB (%s)", tia, src1, iso, src2)
	}
	for _, c := range standard.Categories() {
		for r, body := range map[standard.Regime]string{standard.TIA: "ISO/IEC", standard.ISO: "ANSI/TIA"} {
			if l, ok := standard.Lengths(r, c); ok && l.Source.Body == body {
				t.Errorf("%s %s: limits from %s", r, c, l.Source)
			}
			if _, src, ok := standard.CableLoss(r, c, 10*unit.Megahertz); ok && src.Body == body {
				t.Errorf("%s %s: curve from %s", r, c, src)
			}
		}
	}
}

// TestAnyValueIsAnswered puts every small number in place of every word, known or not:
// nothing panics, and every answer names a body, a clause and a confidence.
func TestAnyValueIsAnswered(t *testing.T) {
	t.Parallel()
	sound := func(what string, ok bool, src standard.Source) {
		if ok && (src.Body == "" || src.Clause == "" || src.Confidence == 0) {
			t.Errorf("%s: answered without a whole source: %+v", what, src)
		}
	}
	wild := []int64{math.MinInt64, -1, 0, 1, int64(37 * unit.Metre), math.MaxInt64}
	for a := range uint8(16) {
		for b := range uint8(16) {
			r, c := standard.Regime(a%4), standard.Category(b)
			_, src, ok := standard.StatusOf(r, c)
			sound("status", ok, src)
			l, ok := standard.Lengths(r, c)
			sound("lengths", ok, l.Source)
			reach, ok := standard.ReachOf(standard.Application(a), c, standard.Unscreened)
			sound("reach", ok, reach.Source)
			_, src, ok = standard.SegregationOf(c, standard.Shield(a%2))
			sound("segregation of", ok, src)
			_, src, ok = standard.DisturberDistance(r, standard.Disturber(b))
			sound("disturber", ok, src)
			for _, w := range wild {
				anyQuantity(sound, r, c, a, b, w)
			}
			for _, l := range listings(t) {
				p, ok := standard.Permit(standard.FireCode(1+a%5), l, standard.Space(a), standard.Enclosure(b))
				sound("permit", ok, p.Source)
				standard.Remedies(standard.NEC2017, l, standard.Space(a), standard.Enclosure(b))
			}
		}
	}
}

func anyQuantity(sound func(string, bool, standard.Source), r standard.Regime, c standard.Category, a, b uint8, w int64) {
	for what, f := range map[string]lossFunc{
		"cable": standard.CableLoss, "connection": standard.ConnectionLoss, "channel": standard.ChannelLossLimit, "link": standard.LinkLossLimit,
	} {
		_, src, ok := f(r, c, unit.Frequency(w))
		sound(what, ok, src)
	}
	h, ok := standard.HotLengthOf(r, c, unit.Temperature(w), standard.Shield(a%2))
	sound("hot length", ok, h.Source)
	_, src := standard.HeatFactor(r, unit.Temperature(w), standard.Unscreened)
	sound("heat factor", true, src)
	o, ok := standard.OpenOfficeCords(unit.Length(w), int(b)+14)
	sound("open office", ok, o.Source)
	f, ok := standard.ISOFixedLength(standard.ISOLink{Model: standard.Model(a), Category: c, Cords: unit.Length(w), CordLoss: int(w), CP: unit.Length(w), CPLoss: 100})
	sound("iso", ok, f.Source)
	sum, ok := standard.Segregate(standard.Segregation(a), standard.Barrier(b), standard.PowerLoad{Circuits: int(w), Phases: int(b), Current: unit.Current(w)})
	sound("segregate", ok, sum.Source)
	standard.LossOfChannel(standard.ChannelParts{Regime: r, Frequency: unit.Frequency(w), Cables: []standard.CablePart{{Category: c, Length: unit.Length(w), Temperature: unit.Temperature(w)}}})
}
