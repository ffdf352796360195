package rules

import (
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// A lightTest is a measured loss of a run, or of the link that it is part of.
type lightTest struct {
	test *plant.Test
	loss unit.Loss
	// window is the wavelength that the limit of the test names; 0 where it
	// names none.
	window standard.Wavelength
}

// lastLoss is the last measurement of a run that states a loss.
func lastLoss(r *plant.Run) (last lightTest, ok bool) {
	var day unit.Date
	for _, t := range r.Tests {
		loss, known := schema.TestLoss.In(t.Record())
		date, dated := schema.TestDate.In(t.Record())
		if !known || !dated || ok && date.Before(day) {
			continue
		}
		last, day, ok = lightTest{test: t, loss: loss, window: windowOf(t)}, date, true
	}
	return last, ok
}

// windows are the wavelengths at which fibre is tested.
var windows = [...]standard.Wavelength{standard.Nm850, standard.Nm953, standard.Nm1300, standard.Nm1310, standard.Nm1383, standard.Nm1550}

// windowOf finds the wavelength in the words of a test's limit; 0 where there is
// none, or more than one.
func windowOf(t *plant.Test) (w standard.Wavelength) {
	text, _ := schema.TestLimit.In(t.Record())
	for _, candidate := range windows {
		if !strings.Contains(text, candidate.String()) {
			continue
		}
		if w != 0 {
			return 0
		}
		w = candidate
	}
	return w
}

// at says whether the test may have been made at a wavelength.
func (t lightTest) at(w standard.Wavelength) bool { return t.window == 0 || t.window == w }

// lightTests are what is known of the loss of a channel from tests: each test is of
// a run or of the whole link, so a link loses at least the greatest and at most
// the sum of what its runs show.
type lightTests struct {
	least, most unit.Loss
	// whole is set where every run of the channel was measured.
	whole bool
	tests []*plant.Test
}

func measuredLinks(links []*plant.Link, w standard.Wavelength) lightTests {
	m := lightTests{whole: true}
	for _, l := range links {
		var greatest unit.Loss
		for _, r := range l.Runs {
			t, ok := lastLoss(r)
			if !ok || !t.at(w) {
				m.whole = false
				continue
			}
			m.tests = append(m.tests, t.test)
			if t.window == w || w == standard.Nm850 || w == standard.Nm1310 {
				greatest = max(greatest, t.loss) // elsewhere fibre loses more than at w
			}
			m.most = addLoss(m.most, max(0, t.loss))
		}
		m.least = addLoss(m.least, greatest)
	}
	return m
}

// addLoss adds two losses that are not negative, up to more than any limit:
// records may state what does not fit.
func addLoss(a, b unit.Loss) unit.Loss {
	const absurd = 1_000_000 * unit.Decibel
	return min(absurd, a) + min(absurd, b)
}
