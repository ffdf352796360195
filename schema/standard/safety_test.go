package standard_test

import (
	"strconv"
	"strings"

	"homerun/schema/standard"
	"homerun/schema/unit"
)

func permit(a asked) answer {
	p, ok := standard.Permit(read(a, "code", standard.ParseFireCode), a.listing(),
		read(a, "space", standard.ParseSpace), read(a, "enclosure", standard.ParseEnclosure))
	if !p.Permitted {
		return words("no", p.Source, ok)
	}
	text := "yes"
	if p.Bound.On != 0 {
		most := " at most "
		if p.Bound.Under {
			most = " under "
		}
		text += ", " + p.Bound.On.String() + most + lengthText(p.Bound.Most)
	}
	return words(text, p.Source, ok)
}

// lengthText writes bounds as the vectors do: whole metres, otherwise millimetres.
func lengthText(l unit.Length) string {
	if l%unit.Metre == 0 {
		return strconv.FormatInt(int64(l/unit.Metre), 10) + " m"
	}
	return strconv.FormatInt(int64(l/unit.Millimetre), 10) + " mm"
}

func substitutes(a asked) answer {
	by, src := a.listing().Substitutes()
	names := make([]string, len(by))
	for i, l := range by {
		names[i] = l.String()
	}
	return words(strings.Join(names, " "), src, true)
}

func euroclass(a asked) answer {
	var parts []string
	for _, s := range a.euroclass("has").Short(a.euroclass("least")) {
		parts = append(parts, s.Part)
	}
	if parts == nil {
		parts = []string{"meets"}
	}
	return words(strings.Join(parts, ", "), standard.EuroclassSource(), true)
}

func (a asked) segregation() (standard.SegregationSum, bool) {
	return standard.Segregate(read(a, "class", standard.ParseSegregation), read(a, "barrier", standard.ParseBarrier),
		standard.PowerLoad{Circuits: a.number("circuits"), Phases: a.number("phases"), Current: read(a, "current", unit.ParseCurrent)})
}

func segregationS(a asked) answer {
	sum, ok := a.segregation()
	return millimetres(sum.S, sum.Source, ok)
}

func segregation(a asked) answer {
	sum, ok := a.segregation()
	return millimetres(sum.A, sum.Source, ok)
}

func segregationP(a asked) answer {
	tenths, src := standard.PowerFactor(a.number("circuits"))
	return figure(float64(tenths)/10, src, true)
}

func segregationOf(a asked) answer {
	class, src, ok := standard.SegregationOf(a.category(), a.shield())
	return words(class.String(), src, ok)
}

func powerFloor(a asked) answer {
	l, _, src, ok := standard.PowerFloor(read(a, "code", standard.ParseFireCode),
		standard.FloorCase{Power: read(a, "power", standard.ParsePowerRoute), DataInRaceway: a.given["data"] == "raceway"})
	return millimetres(l, src, ok)
}

func quotedSeparation(a asked) answer {
	n := map[string]standard.Neighbours{
		"open-open": standard.OpenBesideOpen, "open-conduit": standard.OpenBesideConduit, "conduit-conduit": standard.ConduitBesideConduit,
	}[a.given["case"]]
	return millimetres(standard.QuotedSeparation(n, standard.PowerBand(a.number("band"))))
}

func disturber(a asked) answer {
	return millimetres(standard.DisturberDistance(a.regime(), read(a, "kind", standard.ParseDisturber)))
}

func construction(a asked) answer {
	code := a.given["code"]
	if standard.Ambiguous(code) != nil {
		return words("ambiguous", standard.ConstructionSource(), true)
	}
	c := read(a, "code", standard.ParseConstruction)
	return words(c.Overall.String()+"; "+c.Element.String(), standard.ConstructionSource(), true)
}
