package standard

import (
	"math"

	"homerun/schema/unit"
)

// limitForm is a limit built on a cable curve: share of 100 m of cable, connections of
// k*sqrt(f), a deviation term for the ripple between unequal impedances, and, for
// category 8, a further term in sqrt(f).
type limitForm struct {
	share       float64 // of the loss of 100 m
	connections float64
	deviation   float64 // times f^1.5
	root        float64 // times sqrt(f)
	source      Source
}

var (
	tiaChannel   = Source{Body: "ANSI/TIA", Edition: "568-C.2", Clause: "channel insertion loss", Confidence: FromMemory}
	tiaLink      = Source{Body: "ANSI/TIA", Edition: "568-C.2", Clause: "permanent link insertion loss", Confidence: FromMemory}
	isoChannel   = Source{Body: "ISO/IEC", Edition: "11801", Clause: "channel insertion loss", Confidence: Confirmed}
	isoLink      = Source{Body: "ISO/IEC", Edition: "11801", Clause: "permanent link insertion loss", Confidence: FromMemory}
	eightChannel = Source{Body: "ANSI/TIA", Edition: "568.2-D", Clause: "category 8 channel insertion loss", Confidence: FromMemory}
)

// tiaChannels and tiaLinks are the forms of ANSI/TIA-568. The published values of category
// 6 need the deviation term; those of category 6A need it in the link alone.
var (
	tiaChannels = []limitForm{
		Cat5e: {share: 1.02, connections: 4, source: tiaChannel.noted(bandEdge)},
		Cat6:  {share: 1.02, connections: 4, deviation: 0.0003, source: tiaChannel.noted(bandEdge)},
		Cat6A: {share: 1.05, connections: 4, source: tiaChannel.noted("the form of class EA")},
		Cat8:  {share: 0.32, connections: 2, root: 0.0324, source: eightChannel},
	}
	tiaLinks = []limitForm{
		Cat5e: {share: 0.9, connections: 3, source: tiaLink},
		Cat6:  {share: 0.9, connections: 3, deviation: 0.00015, source: tiaLink},
		Cat6A: {share: 0.9, connections: 3, deviation: 0.00015, source: tiaLink},
	}
)

// isoForms are the forms of ISO/IEC 11801: 1.05 is 90 m of cable and 10 m of cord that
// loses half as much again.
var (
	isoChannelForm = limitForm{share: 1.05, connections: 4, source: isoChannel}
	isoLinkForm    = limitForm{share: 0.9, connections: 3, source: isoLink}
)

// ChannelLossLimit returns the most that a channel may lose at a frequency, in dB. ok is
// false where the family gives no limit for the category, or f lies outside its band.
// ISO/IEC 11801 lets small limits rise to 4.0 dB; that matters at low frequencies only and
// is left out here.
func ChannelLossLimit(r Regime, c Category, f unit.Frequency) (db float64, src Source, ok bool) {
	if db, src, ok = legacyLimit(r, c, f); ok {
		return db, src, true
	}
	return formOf(tiaChannels, isoChannelForm, r, c).at(r, c, f)
}

// LinkLossLimit returns the most that a permanent link may lose at a frequency, in dB; ok
// as for ChannelLossLimit.
func LinkLossLimit(r Regime, c Category, f unit.Frequency) (db float64, src Source, ok bool) {
	return formOf(tiaLinks, isoLinkForm, r, c).at(r, c, f)
}

// formOf returns the form of a family; the empty form where it has none.
func formOf(tia []limitForm, iso limitForm, r Regime, c Category) limitForm {
	switch {
	case r == ISO:
		return iso
	case r == TIA && int(c) < len(tia):
		return tia[c]
	default:
		return limitForm{}
	}
}

// at evaluates the form with the curve and the connections of the category.
func (l limitForm) at(r Regime, c Category, f unit.Frequency) (db float64, src Source, ok bool) {
	cable, cableSource, ok := CableLoss(r, c, f)
	k, hardwareSource, known := hardwareRoot(r, c)
	if !ok || !known || l.share == 0 || f > c.Top() {
		return 0, Source{}, false
	}
	mhz := f.Megahertz()
	root := math.Sqrt(mhz)
	src = l.source
	if src.Confidence == Confirmed {
		src.Confidence = Weakest(cableSource, hardwareSource)
	}
	if src.Confidence != l.source.Confidence {
		src = src.noted(bandEdge)
	}
	return l.share*cable + l.connections*k*root + l.deviation*mhz*root + l.root*root, src, true
}

// legacyPoint is a limit published for single frequencies only, in tenths of a dB.
type legacyPoint struct {
	kilohertz int64
	three     int64 // category 3; 0 where it has none
	five      int64 // category 5
}

// legacyPoints are the channel limits of the categories before 5e.
var legacyPoints = []legacyPoint{
	{1000, 42, 25},
	{4000, 73, 45},
	{8000, 102, 63},
	{10000, 115, 70},
	{16000, 149, 92},
	{20000, 0, 103},
	{25000, 0, 114},
	{31250, 0, 128},
	{62500, 0, 185},
	{100000, 0, 240},
}

// legacyLimit looks up categories 3 and 5 of ANSI/TIA; there is nothing between the points.
func legacyLimit(r Regime, c Category, f unit.Frequency) (db float64, src Source, ok bool) {
	if r != TIA || (c != Cat3 && c != Cat5) {
		return 0, Source{}, false
	}
	for _, p := range legacyPoints {
		tenths := p.five
		if c == Cat3 {
			tenths = p.three
		}
		if f == unit.Frequency(p.kilohertz)*unit.Kilohertz && tenths > 0 {
			return float64(tenths) / 10, Source{Body: "ANSI/TIA/EIA", Edition: "TSB-67", Clause: "channel attenuation", Confidence: Confirmed}, true
		}
	}
	return 0, Source{}, false
}
