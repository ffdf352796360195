package render

import (
	"fmt"
	"strings"
	"time"

	"homerun/diffreport/audit"
)

// A chart is a drawing of figures that stand in a table beside it. All places
// are in the chart's own units, from the upper left.
type chart struct {
	Title, Note   string
	Width, Height int
	// Across and Up are the marks of the two axes.
	Across, Up []mark
	Lines      []curve
	Bars       []bar
	Left, Base int
	Right      int
}

type mark struct {
	At   int
	Text string
}

// A curve is a line of steps, with its name at its end.
type curve struct {
	Class, Path, Name string
	X, Y              int
}

type bar struct {
	Class, Text         string
	X, Y, Width, Height int
	TextX               int
}

// The plot of a chart over time, in the chart's units.
const (
	chartWidth, chartHeight = 720, 250
	plotLeft, plotRight     = 52, 590
	plotTop, plotBase       = 14, 216
)

// trendChart draws nonconformities over time, a step at each commit of the line;
// nil where there are fewer than two commits.
func trendChart(r *audit.Report) *chart {
	if len(r.Samples) < 2 {
		return nil
	}
	most := 1
	for _, s := range r.Samples {
		most = max(most, s.Nonconformities, s.Waived)
	}
	c := &chart{
		Title: "Conformity over time", Note: "Nonconformities after each commit of the line of first parents, by the committers' clocks.",
		Width: chartWidth, Height: chartHeight, Left: plotLeft, Right: plotRight, Base: plotBase,
	}
	step := niceStep(most)
	top := (most + step - 1) / step * step
	up := func(n int) int { return plotBase - n*(plotBase-plotTop)/top }
	for n := 0; n <= top; n += step {
		c.Up = append(c.Up, mark{up(n), fmt.Sprint(n)})
	}
	scale := newTimeScale(r.Samples)
	c.Across = scale.marks()
	open := steps(r.Samples, scale, func(s audit.Sample) int { return up(s.Nonconformities) })
	waived := steps(r.Samples, scale, func(s audit.Sample) int { return up(s.Waived) })
	last := r.Samples[len(r.Samples)-1]
	c.Lines = []curve{
		{"open", open, fmt.Sprintf("%d open", last.Nonconformities), plotRight + 8, up(last.Nonconformities)},
		{"waived", waived, fmt.Sprintf("%d waived", last.Waived), plotRight + 8, up(last.Waived)},
	}
	if gap := c.Lines[0].Y - c.Lines[1].Y; gap > -14 && gap < 14 {
		c.Lines[0].Y, c.Lines[1].Y = min(c.Lines[0].Y, c.Lines[1].Y)-2, max(c.Lines[0].Y, c.Lines[1].Y)+12
		if last.Waived > last.Nonconformities {
			c.Lines[0].Y, c.Lines[1].Y = c.Lines[1].Y, c.Lines[0].Y
		}
	}
	return c
}

// niceStep is a step of 1, 2 or 5 times a power of ten that gives at most six marks.
func niceStep(most int) int {
	for step := 1; ; step *= 10 {
		for _, times := range []int{1, 2, 5} {
			if most <= 5*step*times {
				return step * times
			}
		}
	}
}

// steps draws a line that stays level from one commit to the next. Commits that
// fall on one place are drawn by their last.
func steps(samples []audit.Sample, scale timeScale, y func(audit.Sample) int) string {
	var b strings.Builder
	at, level := scale.at(samples[0].Time), y(samples[0])
	fmt.Fprintf(&b, "M%d %d", at, level)
	for i, s := range samples {
		x := max(scale.at(s.Time), at)
		if i+1 < len(samples) && scale.at(samples[i+1].Time) <= x {
			continue
		}
		if now := y(s); now != level {
			fmt.Fprintf(&b, "H%dV%d", x, now)
			level = now
		}
		at = x
	}
	fmt.Fprintf(&b, "H%d", plotRight)
	return b.String()
}

// timeScale places times on the axis.
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

// marks are the beginnings of years, of months where there are few years, or of
// days where there are few months; at most eight, evenly chosen.
func (s timeScale) marks() []mark {
	first, last := time.Unix(s.first, 0).UTC(), time.Unix(s.last, 0).UTC()
	days := int(last.Sub(first).Hours() / 24)
	var all []mark
	add := func(t time.Time, layout string) { all = append(all, mark{s.at(t), t.Format(layout)}) }
	switch {
	case days > 3*365:
		for y := first.Year() + 1; y <= last.Year(); y++ {
			add(time.Date(y, 1, 1, 0, 0, 0, 0, time.UTC), "2006")
		}
	case days > 90:
		for t := time.Date(first.Year(), first.Month()+1, 1, 0, 0, 0, 0, time.UTC); !t.After(last); t = t.AddDate(0, 1, 0) {
			add(t, "2006-01")
		}
	default:
		for t := time.Date(first.Year(), first.Month(), first.Day()+1, 0, 0, 0, 0, time.UTC); !t.After(last); t = t.AddDate(0, 0, 1) {
			add(t, "01-02")
		}
	}
	const most = 8
	every := (len(all) + most - 1) / most
	var kept []mark
	for i, m := range all {
		if i%max(every, 1) == 0 {
			kept = append(kept, m)
		}
	}
	return kept
}

// ageChart draws how long findings have stood, and how long those cleared had;
// nil where there is none.
func ageChart(r *audit.Report) *chart {
	if len(r.Standing) == 0 {
		return nil
	}
	const row, left, widest = 40, 150, 480
	ages := r.Ages()
	most := 1
	for _, a := range ages {
		most = max(most, a.Standing, a.Closed)
	}
	c := &chart{Title: "Age of findings", Note: "How long nonconformities that stand have stood, and those that were cleared had.", Width: chartWidth, Height: row*len(ages) + 8, Left: left, Base: row * len(ages)}
	for i, a := range ages {
		y := i * row
		c.Up = append(c.Up, mark{y + row/2, a.Name})
		for j, b := range []struct {
			class, word string
			n           int
		}{{"stands", "stand", a.Standing}, {"closed", "cleared", a.Closed}} {
			width := b.n * widest / most
			if b.n > 0 {
				width = max(width, 1)
			}
			c.Bars = append(c.Bars, bar{b.class, fmt.Sprintf("%d %s", b.n, b.word), left, y + 4 + 15*j, width, 13, left + width + 6})
		}
	}
	return c
}
