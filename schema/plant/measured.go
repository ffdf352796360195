package plant

import (
	"slices"
	"strings"

	"homerun/schema"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// windows are the wavelengths at which fibre is measured.
var windows = [...]standard.Wavelength{standard.Nm850, standard.Nm953, standard.Nm1300, standard.Nm1310, standard.Nm1383, standard.Nm1550}

// Wavelength is that at which the test was made: the one that it states, or else
// the one that the words of its limit name. It is not known where there is none,
// or more than one.
func (t *Test) Wavelength() (w standard.Wavelength, known bool) {
	text, stated := schema.TestWindow.In(t.Record())
	if t.Own(schema.TestWindow.Name) != nil && !stated {
		return 0, false
	}
	if !stated {
		text, _ = schema.TestLimit.In(t.Record())
	}
	for _, candidate := range windows {
		if !strings.Contains(text, candidate.String()) {
			continue
		}
		if w != 0 {
			return 0, false
		}
		w = candidate
	}
	return w, w != 0
}

// A Measured is a measured loss of a run, or of the link that it is part of.
type Measured struct {
	Test *Test
	Loss unit.Loss
	Day  unit.Date
	// At is the wavelength; 0 where the test does not tell it.
	At standard.Wavelength
}

// replaces says whether a later measurement stands in the place of an earlier
// one: of the same wavelength, or where one of them does not tell its own.
func (m Measured) replaces(earlier Measured) bool {
	return (m.At == earlier.At || m.At == 0 || earlier.At == 0) && !m.Day.Before(earlier.Day)
}

// Latest is the latest measurement of a run, nil where there is none; of two on
// one day it is the one recorded later. Sure is false where one states no day or no
// result that could be read: it may be the latest, and no other is given.
func (r *Run) Latest() (last *Test, sure bool) {
	var day unit.Date
	for _, t := range r.Tests {
		when, dated := schema.TestDate.In(t.Record())
		_, stated := schema.TestResult.In(t.Record())
		if !dated || !stated || t.Damaged {
			return nil, false
		}
		if last == nil || !when.Before(day) {
			last, day = t, when
		}
	}
	return last, true
}

// Measured are the losses measured of a run: of each wavelength the last one. Of
// two on one day, the one that the records have last counts, and one that tells
// its wavelength before one that does not.
func (r *Run) Measured() []Measured {
	var last []Measured
	for _, t := range r.Tests {
		m := Measured{Test: t}
		var known, dated bool
		m.Loss, known = schema.TestLoss.In(t.Record())
		m.Day, dated = schema.TestDate.In(t.Record())
		m.At, _ = t.Wavelength()
		outdated := func(other Measured) bool {
			return other.replaces(m) && (other.Day != m.Day || other.At != 0 && m.At == 0)
		}
		if !known || !dated || slices.ContainsFunc(last, outdated) {
			continue
		}
		last = append(slices.DeleteFunc(last, m.replaces), m)
	}
	return last
}

// MeasuredAt is the last loss measured of a run at a wavelength, or that of a
// test that does not tell its wavelength.
func (r *Run) MeasuredAt(w standard.Wavelength) (m Measured, ok bool) {
	for _, found := range r.Measured() {
		if found.At == w || found.At == 0 {
			return found, true
		}
	}
	return m, false
}

// A LinkLoss is what is known from tests of the loss of some links. Each test is
// of a run or of the whole link, so a link loses at least the greatest and at
// most the sum of what its runs show.
type LinkLoss struct {
	Least, Most unit.Loss
	// Whole is set where every run was measured.
	Whole bool
	Tests []*Test
}

// MeasuredLinks adds up what the tests of links show at a wavelength.
func MeasuredLinks(links []*Link, w standard.Wavelength) LinkLoss {
	m := LinkLoss{Whole: true}
	for _, l := range links {
		var greatest unit.Loss
		for _, r := range l.Runs {
			t, ok := r.MeasuredAt(w)
			if !ok {
				m.Whole = false
				continue
			}
			m.Tests = append(m.Tests, t.Test)
			if t.At == w || w == standard.Nm850 || w == standard.Nm1310 {
				greatest = max(greatest, t.Loss) // elsewhere fibre loses more than at w
			}
			m.Most = addLoss(m.Most, max(0, t.Loss))
		}
		m.Least = addLoss(m.Least, greatest)
	}
	return m
}

// addLoss adds two losses that are not negative, up to more than any limit:
// records may state what does not fit.
func addLoss(a, b unit.Loss) unit.Loss {
	const absurd = 1_000_000 * unit.Decibel
	return min(absurd, a) + min(absurd, b)
}
