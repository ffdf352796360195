package render

import (
	"fmt"
	"strings"

	"homerun/diffreport/audit"
)

// A chart is a drawing of figures that stand in a table beside it. All places
// are in the chart's own units, from the upper left. It reads without colour:
// lines differ by their dashes, bars by being filled or empty.
type chart struct {
	Title         string
	Width, Height int
	Strokes       []stroke
	Curves        []curve
	Bars          []bar
	Words         []chartWord
}

// A stroke is a straight line of the axes.
type stroke struct {
	Class          string
	X1, Y1, X2, Y2 int
}

// A curve is a line of steps.
type curve struct{ Class, Path string }

type bar struct {
	Class               string
	X, Y, Width, Height int
}

// A chartWord is a text at a place; its class says which end of it is there.
type chartWord struct {
	Class string
	X, Y  int
	Text  string
}

func (c *chart) say(class string, x, y int, text string) {
	c.Words = append(c.Words, chartWord{class, x, y, text})
}

func (c *chart) draw(class string, x1, y1, x2, y2 int) {
	c.Strokes = append(c.Strokes, stroke{class, x1, y1, x2, y2})
}

// The plot of a chart over time, in the chart's units.
const (
	chartWidth          = 720
	plotLeft, plotRight = 52, 590
	plotTop, plotBase   = 26, 226
)

// trendChart draws nonconformities over time, a step at each commit of the line;
// nil where there are fewer than two commits.
func trendChart(r *audit.Report) *chart {
	if len(r.Samples) < 2 {
		return nil
	}
	c := &chart{Title: "Open nonconformities and waived findings after each commit of the line of first parents", Width: chartWidth, Height: plotBase + 44}
	most := 1
	for _, s := range r.Samples {
		most = max(most, s.Nonconformities, s.Waived)
	}
	step := niceStep(most)
	top := (most + step - 1) / step * step
	up := func(n int) int { return plotBase - n*(plotBase-plotTop)/top }
	for n := 0; n <= top; n += step {
		c.draw("grid", plotLeft, up(n), plotRight, up(n))
		c.say("end", plotLeft-8, up(n)+4, fmt.Sprint(n))
	}
	c.say("begin", 0, 12, "number of findings")
	scale := newTimeScale(r.Samples)
	scale.axis(c)
	last := r.Samples[len(r.Samples)-1]
	c.Curves = []curve{
		{"waived", steps(r.Samples, scale, func(s audit.Sample) int { return up(s.Waived) })},
		{"open", steps(r.Samples, scale, func(s audit.Sample) int { return up(s.Nonconformities) })},
	}
	open, waived := up(last.Nonconformities), up(last.Waived)
	if last.Waived > last.Nonconformities {
		waived, open = apart(waived, open)
	} else {
		open, waived = apart(open, waived)
	}
	c.say("open", plotRight+8, open+4, fmt.Sprintf("%d open", last.Nonconformities))
	c.say("waived", plotRight+8, waived+4, fmt.Sprintf("%d waived", last.Waived))
	return c
}

// apart moves the names of two lines that end close to each other.
func apart(upper, lower int) (newUpper, newLower int) {
	const least = 14
	if lower-upper >= least {
		return upper, lower
	}
	return upper - 2, upper + least - 2
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
