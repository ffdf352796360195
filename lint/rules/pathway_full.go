package rules

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// fullness is what is known about an overfull pathway.
type fullness struct {
	way    *plant.Pathway
	loads  []load
	hollow hollow
	fill   standard.Fill
	limit  fillLimit
	// count is how many cables of known size lie in it.
	count int
	// rounded is set where rounding to whole cables would let it pass.
	rounded bool
}

func overfull(p *lint.Pass, x *fullness) lint.Finding {
	value, limit := percents(x.fill.Percent, x.limit.percent)
	f := lint.About(x.way.Entry)
	f.Severity = x.limit.law.severity
	f.Message = fmt.Sprintf("%s: %s %s of it, limit %s", schema.Printable(x.way.Label),
		counted(x.count, "cable fills", "cables fill"), value, limit)
	f.Working = x.terms(p.Units(), value)
	if n := plannedIn(x.loads); n > 0 {
		today, ok := standard.FillOf(x.hollow.Section, diameters(x.loads, inPlace))
		if ok {
			now, _ := percents(today.Percent, x.limit.percent)
			f.Working = append(f.Working, term("today, without the "+counted(n, "planned cable", "planned cables"),
				fmt.Sprintf("%s / %s = %s", area(today.Used, p.Units()), area(today.Total, p.Units()), now)))
			f.Message += "; today " + now
		}
	}
	f.Working = append(f.Working, x.room())
	if jam, ok := x.jam(); ok {
		f.Working = append(f.Working, jam)
	}
	f.Result, f.Limit, f.Source = value, limit, x.limit.law.source
	if x.rounded {
		f.Message += ", within it by rounding to whole cables"
	}
	f.Next = "lay the next cables another way, take out what is out of use, or lay a larger pathway"
	f.Excess = x.fill.Percent - float64(x.limit.percent)
	for i := range x.loads {
		if l := &x.loads[i]; !l.known {
			f.Message += "; not all of them counted"
			break
		}
	}
	return f
}

// percents prints a share and its limit with as many decimals as it takes to
// show which is greater.
func percents(share float64, limit lint.Share) (value, bound string) {
	for places := 1; places < 12; places++ {
		value = strconv.FormatFloat(share, 'f', places, 64)
		if back, err := strconv.ParseFloat(value, 64); err == nil && back != float64(limit) {
			break
		}
	}
	return value + " %", limit.String()
}

// terms are the areas that make up the fill.
func (x *fullness) terms(in unit.System, value string) []lint.Term {
	terms := make([]lint.Term, 0, len(x.loads)+5)
	total := area(x.fill.Total, in)
	if x.hollow.bore > 0 {
		terms = append(terms, term("inside of "+pathwayKind(x.way), fmt.Sprintf("%s, pi/4 x d^2 = %s", x.hollow.from, total)))
	} else {
		terms = append(terms, term("inside of "+pathwayKind(x.way), fmt.Sprintf("%s = %s", x.hollow.from, total)))
	}
	var parts []string
	uncounted := 0
	for i := range x.loads {
		l := &x.loads[i]
		if !l.known {
			uncounted += l.count
			continue
		}
		sum := area(circles(l.diameter, l.count), in)
		terms = append(terms, term("cable "+schema.Printable(l.cable.Label), fmt.Sprintf("%d x pi/4 x (%s)^2 = %s", l.count, l.diameter.Text(in), sum)))
		parts = append(parts, sum)
	}
	if uncounted > 0 {
		terms = append(terms, term("without a diameter", counted(uncounted, "cable, not counted", "cables, not counted")))
	}
	used := area(x.fill.Used, in)
	if len(parts) > 1 {
		used = strings.Join(parts, " + ") + " = " + used
	}
	return append(terms, term("cables", used), term("fill", fmt.Sprintf("%s / %s = %s", area(x.fill.Used, in), total, value)))
}

// room is what the limit leaves for more of the commonest cable.
func (x *fullness) room() lint.Term {
	common := -1
	for i := range x.loads {
		if x.loads[i].known && (common < 0 || x.loads[i].count > x.loads[common].count) {
			common = i
		}
	}
	l := &x.loads[common]
	alone, ok := standard.MostCables(x.hollow.Section, l.diameter, int(x.limit.percent))
	left, sure := x.fill.Left(int(x.limit.percent), l.diameter)
	if !ok || !sure {
		return term("spare capacity", "none")
	}
	return term("spare capacity", fmt.Sprintf("%d more; empty it would hold %d of %s at %s", left, alone.Plain, schema.Printable(l.cable.Label), x.limit.percent))
}

// jam warns of three cables that lock when they are pulled.
func (x *fullness) jam() (lint.Term, bool) {
	if x.hollow.bore == 0 || x.count != 3 || len(x.loads) != 1 {
		return lint.Term{}, false
	}
	jams, src, ok := standard.MayJam(x.hollow.bore, x.loads[0].diameter)
	if !ok || !jams {
		return lint.Term{}, false
	}
	return term("three alike", "they may jam when they are pulled: "+src.String()), true
}

// circles is the area of some cables of one diameter.
func circles(d unit.Length, n int) standard.Area {
	return standard.Area(math.Round(float64(n) * math.Pi / 4 * d.Millimetres() * d.Millimetres() * 1e6))
}

// area prints an area in the plant's units.
func area(a standard.Area, in unit.System) string {
	if in == unit.US {
		return decimals(a.SquareInches(), 4) + " in2"
	}
	return decimals(a.SquareMillimetres(), 1) + " mm2"
}
