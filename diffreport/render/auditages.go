package render

import (
	"fmt"

	"homerun/diffreport/audit"
)

// ageChart draws how long findings have stood, and how long those cleared had:
// two bars a band, filled and empty; nil where there is no finding.
func ageChart(r *audit.Report) *chart {
	if len(r.Standing) == 0 {
		return nil
	}
	const row, thick, top, left, right = 34, 12, 26, 150, 640
	ages := r.Ages()
	most := 1
	for _, a := range ages {
		most = max(most, a.Standing, a.Closed)
	}
	base := top + row*len(ages)
	c := &chart{Title: "Nonconformities by how long they stood", Width: chartWidth, Height: base + 40}
	step := niceStep(most)
	end := (most + step - 1) / step * step
	across := func(n int) int { return n * (right - left) / end }
	for n := 0; n <= end; n += step {
		c.draw("grid", left+across(n), top, left+across(n), base)
		c.say("middle", left+across(n), base+17, fmt.Sprint(n))
	}
	c.draw("axis", left, top, left, base)
	c.say("end", left-8, 12, "days on the line")
	c.say("middle", (left+right)/2, base+35, "number of nonconformities")
	c.legend(left, thick)
	for i, a := range ages {
		y := top + i*row
		c.say("end", left-8, y+row/2+4, a.Name)
		for j, b := range []struct {
			class string
			n     int
		}{{"stands", a.Standing}, {"closed", a.Closed}} {
			at := y + 4 + j*(thick+2)
			if b.n > 0 {
				c.Bars = append(c.Bars, bar{b.class, left, at, max(across(b.n), 1), thick})
			}
			c.say("begin", left+across(b.n)+6, at+thick-2, fmt.Sprint(b.n))
		}
	}
	return c
}

// legend says which bars are which, above them.
func (c *chart) legend(x, thick int) {
	for i, word := range []string{"stand", "cleared"} {
		at := x + 80*i
		c.Bars = append(c.Bars, bar{[]string{"stands", "closed"}[i], at, 2, thick, thick})
		c.say("begin", at+thick+6, 12, word)
	}
}
