package standard

import "homerun/schema/unit"

// Series is a series of 75 ohm coaxial cable. The zero value is none.
type Series uint8

// The series.
const (
	Series6  Series = iota + 1
	Series11        // thicker, loses least
	Series59        // thinner, loses most
)

// seriesWords are the words for the series.
var seriesWords = []string{Series6: "6", Series11: "11", Series59: "59"}

// ParseSeries reads "6", "11" or "59". The error is a *unit.Error.
func ParseSeries(s string) (Series, error) {
	i, err := indexOf(seriesWords, "series of coaxial cable", s)
	return Series(i), err
}

// String returns the word for the series, as in a record; empty for none.
func (s Series) String() string { return wordOf(seriesWords, int(s)) }

var coaxLoss = Source{
	Body: "common practice", Clause: "greatest loss of drop cable at 20 C", Confidence: FromMemory,
	Note: "the row of series 6 agrees within 6 % with one published list of typical values",
}

// coaxPoint is a row of the table: the most that 100 ft may lose, in hundredths of a decibel.
type coaxPoint struct {
	megahertz          int64
	six, eleven, fifty int64
}

// coaxPoints is the table, by frequency.
var coaxPoints = []coaxPoint{
	{5, 58, 38, 86},
	{55, 160, 96, 205},
	{211, 305, 190, 380},
	{250, 330, 205, 410},
	{300, 355, 225, 445},
	{400, 415, 260, 510},
	{450, 440, 275, 540},
	{550, 490, 304, 595},
	{750, 565, 365, 697},
	{1000, 655, 435, 812},
}

// loss returns the column of the row; 0 for no series.
func (p coaxPoint) loss(s Series) int64 {
	switch s {
	case Series6:
		return p.six
	case Series11:
		return p.eleven
	case Series59:
		return p.fifty
	default:
		return 0
	}
}

// CoaxLoss returns the loss of 100 ft of cable in dB: the table, in a straight line between
// its rows. ok is false for no series and outside 5 MHz to 1000 MHz, where the table ends.
func CoaxLoss(s Series, f unit.Frequency) (db float64, src Source, ok bool) {
	low := coaxPoints[0]
	if low.loss(s) == 0 || f < unit.Frequency(low.megahertz)*unit.Megahertz {
		return 0, Source{}, false
	}
	for _, high := range coaxPoints {
		if f <= unit.Frequency(high.megahertz)*unit.Megahertz {
			step := max(1, high.megahertz-low.megahertz)
			above := f.Megahertz() - float64(low.megahertz)
			rise := float64(high.loss(s)-low.loss(s)) * above / float64(step)
			return (float64(low.loss(s)) + rise) / 100, coaxLoss, true
		}
		low = high
	}
	return 0, Source{}, false
}

// CoaxLossOver returns the loss of a length of cable in dB; it grows evenly with length. ok
// is false as for CoaxLoss, and for a negative length.
func CoaxLossOver(s Series, l unit.Length, f unit.Frequency) (db float64, src Source, ok bool) {
	per, src, ok := CoaxLoss(s, f)
	if !ok || l < 0 {
		return 0, Source{}, false
	}
	return per * float64(l) / float64(100*unit.Foot), src, true
}

// CoaxImpedance returns the impedance of the cable of the three series in ohm, 75. ok is
// false for no series. That of series 11 and 59 is common practice.
func CoaxImpedance(s Series) (ohm int, src Source, ok bool) {
	src = Source{Body: "common practice", Clause: "characteristic impedance", Confidence: Confirmed, Note: "as quoted in the literature"}
	switch s {
	case Series6:
		return 75, src, true
	case Series11, Series59:
		return 75, src.unsure(), true
	default:
		return 0, Source{}, false
	}
}

// ForPatchesOnly reports whether the series is for short patches alone: series 59, for its
// loss. It is common practice, not a rule of a standard. ok is false for no series.
func ForPatchesOnly(s Series) (only bool, src Source, ok bool) {
	if s < Series6 || s > Series59 {
		return false, Source{}, false
	}
	return s == Series59, Source{Body: "common practice", Clause: "series 59 is used for short patches", Confidence: FromMemory}, true
}
