package render

import (
	"time"

	"homerun/diffreport/audit"
)

// timeScale places times on the axis of a chart, in seconds since 1970.
type timeScale struct{ first, last int64 }

func newTimeScale(samples []audit.Sample) timeScale {
	s := timeScale{samples[0].Time.Unix(), samples[0].Time.Unix()}
	for _, p := range samples {
		s.first, s.last = min(s.first, p.Time.Unix()), max(s.last, p.Time.Unix())
	}
	s.last = max(s.last, s.first+1)
	return s
}

func (s timeScale) at(t time.Time) int {
	return plotLeft + int(float64(t.Unix()-s.first)/float64(s.last-s.first)*float64(plotRight-plotLeft))
}

// axis draws the axis with its marks, and says which days it goes from and to.
func (s timeScale) axis(c *chart) {
	for _, m := range s.marks() {
		c.draw("grid", m.at, plotTop, m.at, plotBase)
		c.say("middle", m.at, plotBase+17, m.text)
	}
	c.draw("axis", plotLeft, plotBase, plotRight, plotBase)
	c.say("begin", plotLeft, plotBase+36, time.Unix(s.first, 0).UTC().Format(time.DateOnly))
	c.say("middle", (plotLeft+plotRight)/2, plotBase+36, "day of the commit")
	c.say("end", plotRight, plotBase+36, time.Unix(s.last, 0).UTC().Format(time.DateOnly))
}

type timeMark struct {
	at   int
	text string
}

// marks are the beginnings of years, of months where there are few years, or of
// days where there are few months; at most eight, evenly chosen.
func (s timeScale) marks() []timeMark {
	first, last := time.Unix(s.first, 0).UTC(), time.Unix(s.last, 0).UTC()
	days := int(last.Sub(first).Hours() / 24)
	var all []timeMark
	from := func(t time.Time, years, months, days int, layout string) {
		for ; !t.After(last); t = t.AddDate(years, months, days) {
			all = append(all, timeMark{s.at(t), t.Format(layout)})
		}
	}
	switch {
	case days > 3*365:
		from(time.Date(first.Year()+1, 1, 1, 0, 0, 0, 0, time.UTC), 1, 0, 0, "2006")
	case days > 90:
		from(time.Date(first.Year(), first.Month()+1, 1, 0, 0, 0, 0, time.UTC), 0, 1, 0, "2006-01")
	default:
		from(time.Date(first.Year(), first.Month(), first.Day()+1, 0, 0, 0, 0, time.UTC), 0, 0, 1, "01-02")
	}
	const most = 8
	every := max(1, (len(all)+most-1)/most)
	var kept []timeMark
	for i, m := range all {
		if i%every == 0 {
			kept = append(kept, m)
		}
	}
	return kept
}
