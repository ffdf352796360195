package standard_test

import (
	"slices"
	"strings"

	"homerun/schema/standard"
	"homerun/schema/unit"
)

// pathwayFigures names the figures of conduits and trays and of how full they are.
func pathwayFigures() map[string]func(asked) answer {
	return map[string]func(asked) answer{
		"conduit-area": func(a asked) answer { return conduitArea(a, func(x standard.Area) float64 { return x.SquareInches() }) },
		"conduit-area-mm2": func(a asked) answer {
			return conduitArea(a, func(x standard.Area) float64 { return x.SquareMillimetres() })
		},
		"conduit-share":         conduitShare,
		"tubing-diameter":       tubingDiameter,
		"conduit-bend":          conduitBend,
		"conduit-fill":          conduitFill,
		"design-fill":           designFill,
		"fill-applies":          fillApplies,
		"conduit-count":         func(a asked) answer { return conduitCount(a, func(n standard.CableCount) int { return n.Plain }) },
		"conduit-count-rounded": func(a asked) answer { return conduitCount(a, func(n standard.CableCount) int { return n.Rounded }) },
		"fill-percent":          fillPercent,
		"tray-count":            trayCount,
		"tray-fill":             trayFill,
		"jam":                   mayJam,
	}
}

// section reads the conduit of a row; sizes are written with a hyphen in place of the blank.
func (a asked) section() (standard.Section, standard.Source, bool) {
	kind := read(a, "conduit", standard.ParseConduit)
	return standard.ConduitSection(standard.NEC2017, kind, a.size())
}

func (a asked) size() string { return strings.ReplaceAll(a.given["size"], "-", " ") }

func conduitArea(a asked, in func(standard.Area) float64) answer {
	s, src, ok := a.section()
	return figure(in(s.Area()), src, ok)
}

func conduitShare(a asked) answer {
	s, src, ok := a.section()
	return figure(s.Area().SquareInches()*a.float("percent")/100, src, ok)
}

func tubingDiameter(a asked) answer {
	l, src, ok := standard.TubingDiameter(standard.NEC2017, a.size())
	return figure(inches(l), src, ok)
}

func inches(l unit.Length) float64 { return float64(l) / float64(unit.Inch) }

func conduitBend(a asked) answer {
	b, ok := standard.ConduitBendOf(standard.NEC2017, a.size())
	if a.given["of"] == "shoe" {
		return figure(inches(b.Shoe), b.Source, ok)
	}
	return figure(inches(b.Other), b.Source, ok)
}

func conduitFill(a asked) answer {
	percent, src, ok := standard.ConduitFill(a.code(), a.number("cables"), a.length("length"))
	return figure(float64(percent), src, ok)
}

func designFill(a asked) answer {
	percent, src, ok := standard.DesignFill(a.regime(), a.number("cables"))
	return figure(float64(percent), src, ok)
}

func fillApplies(a asked) answer {
	applies, src, ok := standard.FillApplies(a.code(), a.listing().Family())
	return words(yes(applies), src, ok)
}

func conduitCount(a asked, of func(standard.CableCount) int) answer {
	s, src, known := a.section()
	n, ok := standard.CablesInConduit(s, a.length("od"))
	return figure(float64(of(n)), src, known && ok)
}

func fillPercent(a asked) answer {
	s, src, known := a.section()
	f, ok := standard.FillOf(s, slices.Repeat([]unit.Length{a.length("od")}, a.number("cables")))
	return figure(f.Percent, src, known && ok)
}

func trayCount(a asked) answer {
	s, known := standard.BoxSection(a.length("width"), a.length("depth"))
	n, ok := standard.MostCables(s, a.length("od"), a.number("percent"))
	return answer{number: float64(n.Plain), ok: known && ok}
}

func trayFill(a asked) answer {
	l, ok := standard.TrayFill(a.regime())
	if a.given["of"] == "design" {
		return figure(float64(l.Design), l.Source, ok)
	}
	return figure(float64(l.Most), l.Source, ok)
}

func mayJam(a asked) answer {
	jams, src, ok := standard.MayJam(a.length("inside"), a.length("od"))
	return words(yes(jams), src, ok)
}
