package ability

import (
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// fibre fills in what can be said about a channel of fibre.
func (c *Channel) fibre() {
	l, gap := lightOf(c.Plant, c.Channel)
	if gap.What != "" {
		c.Gaps = append(c.Gaps, gap)
		return
	}
	for _, a := range standard.OpticalApplications() {
		c.Answers = append(c.Answers, l.judge(a))
	}
	if !l.known {
		return
	}
	for _, at := range windows(l) {
		c.lightMargin(l, at)
	}
}

// windows are the wavelengths at which the channel's fibre is measured.
func windows(l *light) []standard.Wavelength {
	if l.classes[0].Multimode() {
		return []standard.Wavelength{standard.Nm850, standard.Nm1300}
	}
	return []standard.Wavelength{standard.Nm1310, standard.Nm1550}
}

// lightMargin is the most that the channel may lose at a wavelength, which is
// the limit of a test of it, beside the loss of the last test where one states
// it.
func (c *Channel) lightMargin(l *light, at standard.Wavelength) {
	sum, ok := l.loss(at)
	if !ok {
		c.Gaps = append(c.Gaps, Gap{l.classWords(), "no figure for its attenuation at " + at.String()})
		return
	}
	m := Margin{What: "loss at " + at.String(), Value: "not measured", Limit: sum.AsLimit().String(), Working: lightTerms(&sum)}
	_, source, _ := standard.Attenuation(l.plant.Regime, l.classes[0], at)
	if source.Confidence = sum.Confidence; source.Confidence != 0 {
		m.Source = source.String()
	}
	if t, measured := l.measured(at); measured {
		shown, limit := t.Loss.Beside(sum.AsLimit(), unit.Metric)
		m.Value, m.Limit = shown, limit
		m.Left, m.Over = (sum.AsLimit() - t.Loss).String(), t.Loss > sum.AsLimit()
		m.Working = append(m.Working, Term{"measured", t.Loss.String() + ", " + schema.Printable(t.Test.Label) + ", " + measuredAt(t)})
	}
	c.Margins = append(c.Margins, m)
}

func measuredAt(t plant.Measured) string {
	if t.At == 0 {
		return "at a wavelength that the record does not state"
	}
	return "at " + t.At.String()
}

// measured is the last measurement of the channel at a wavelength. Only a
// channel of one link is measured by the test of it: then the greatest of what
// its runs show.
func (l *light) measured(at standard.Wavelength) (worst plant.Measured, ok bool) {
	if len(l.Links) != 1 {
		return worst, false
	}
	for _, r := range l.Links[0].Runs {
		if t, found := r.MeasuredAt(at); found && (!ok || t.Loss > worst.Loss) {
			worst, ok = t, true
		}
	}
	return worst, ok
}
