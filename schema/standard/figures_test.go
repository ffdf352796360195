package standard_test

import (
	"strconv"
	"strings"
	"testing"

	"homerun/schema/standard"
	"homerun/schema/unit"
)

// asked is the case of a row: what is given, read by the parsers that records use.
type asked struct {
	t     *testing.T
	given map[string]string
}

func read[T any](a asked, key string, parse func(string) (T, error)) T {
	a.t.Helper()
	var zero T
	text, stated := a.given[key]
	if !stated {
		return zero
	}
	v, err := parse(text)
	if err != nil {
		a.t.Fatalf("%s=%s: %v", key, text, err)
	}
	return v
}

func (a asked) regime() standard.Regime {
	return read(a, "standard", standard.ParseRegime)
}

func (a asked) category() standard.Category {
	return read(a, "category", standard.ParseCategory)
}

func (a asked) length(key string) unit.Length { return read(a, key, unit.ParseLength) }

func (a asked) frequency() unit.Frequency { return read(a, "f", unit.ParseFrequency) }

func (a asked) at() unit.Temperature { return read(a, "at", unit.ParseTemperature) }

func (a asked) number(key string) int { return read(a, key, strconv.Atoi) }

func (a asked) shield() standard.Shield {
	c := read(a, "screen", standard.ParseConstruction)
	return c.Shield()
}

func (a asked) listing() standard.Listing { return read(a, "listing", standard.ParseListing) }

func (a asked) euroclass(key string) standard.Euroclass {
	return read(a, key, func(s string) (standard.Euroclass, error) {
		return standard.ParseEuroclass(strings.ReplaceAll(s, ";", ","))
	})
}

// metres, millimetres, figure and words shape answers.
func metres(l unit.Length, src standard.Source, ok bool) answer {
	return answer{number: l.Metres(), source: &src, ok: ok}
}

func millimetres(l unit.Length, src standard.Source, ok bool) answer {
	return answer{number: l.Millimetres(), source: &src, ok: ok}
}

func figure(v float64, src standard.Source, ok bool) answer {
	return answer{number: v, source: &src, ok: ok}
}

func words(s string, src standard.Source, ok bool) answer {
	return answer{words: s, source: &src, ok: ok}
}

// figures names the figure that each row of the vectors asks for.
func figures() map[string]func(asked) answer {
	return map[string]func(asked) answer{
		"category-top":      func(a asked) answer { return answer{number: a.category().Top().Megahertz(), ok: true} },
		"category-class":    func(a asked) answer { return answer{words: a.category().Class(), ok: true} },
		"category-status":   categoryStatus,
		"length":            lengthOf,
		"length-multi-user": multiUser,
		"length-patch-cord": func(a asked) answer { return metres(standard.PatchCordCap(a.regime())) },
		"length-tested":     testedLength,
		"open-office":       openOffice,
		"iso-fixed":         isoFixed,
		"hot-length":        hotLength,
		"hot-certain":       hotCertain,
		"hot-factor":        hotFactor,
		"loss-cable":        loss(standard.CableLoss),
		"loss-connection":   loss(standard.ConnectionLoss),
		"loss-channel":      loss(standard.ChannelLossLimit),
		"loss-link":         loss(standard.LinkLossLimit),
		"cord-derating":     cordDerating,
		"delay-cable":       func(a asked) answer { return figure(standard.CableDelay(a.frequency())) },
		"delay-channel":     func(a asked) answer { return figure(standard.ChannelDelayLimit(a.category(), a.frequency())) },
		"delay-link":        func(a asked) answer { return figure(standard.LinkDelayLimit(a.category())) },
		"skew-channel":      func(a asked) answer { return figure(standard.ChannelSkewLimit(a.category())) },
		"skew-link":         func(a asked) answer { return figure(standard.LinkSkewLimit(a.category())) },
		"loop-limit":        loopLimit,
		"wire-diameter":     wireDiameter,
		"wire-area":         func(a asked) answer { return answer{number: standard.WireArea(a.number("gauge")), ok: true} },
		"wire-resistance":   wireResistance,
		"wire-loop":         wireLoop,
		"application":       application,
		"nec-permit":        permit,
		"nec-substitutes":   substitutes,
		"euroclass":         euroclass,
		"segregation-s":     segregationS,
		"segregation-p":     segregationP,
		"segregation":       segregation,
		"segregation-of":    segregationOf,
		"power-floor":       powerFloor,
		"quoted-separation": quotedSeparation,
		"disturber":         disturber,
		"construction":      construction,
		"length-consolidation": func(a asked) answer {
			l, src := standard.ConsolidationMinimum(a.regime())
			return metres(l, src, true)
		},
		"skew-cable": func(asked) answer {
			ns, src := standard.CableSkew()
			return figure(ns, src, true)
		},
	}
}

func categoryStatus(a asked) answer {
	s, src, ok := standard.StatusOf(a.regime(), a.category())
	return words(s.String(), src, ok)
}

func lengthOf(a asked) answer {
	l, ok := standard.Lengths(a.regime(), a.category())
	switch a.given["of"] {
	case "permanent-link":
		return metres(l.PermanentLink, l.Source, ok)
	case "channel":
		return metres(l.Channel, l.Source, ok)
	case "cords":
		return metres(l.Cords, l.Source, ok)
	default:
		return figure(float64(l.Connections), l.Source, ok)
	}
}

func multiUser(a asked) answer {
	return metres(standard.MultiUserCordCap(a.regime(), a.number("gauge")))
}

func testedLength(a asked) answer {
	l, src := standard.TestedTolerance(a.length("limit"))
	return metres(l, src, true)
}

func openOffice(a asked) answer {
	o, ok := standard.OpenOfficeCords(a.length("fixed"), a.number("gauge"))
	if a.given["of"] == "work-area" {
		return metres(o.WorkArea, o.Source, ok)
	}
	return metres(o.Cords, o.Source, ok)
}

func isoFixed(a asked) answer {
	model := map[string]standard.Model{
		"interconnect": standard.Interconnect, "cross-connect": standard.CrossConnect,
		"interconnect-cp": standard.InterconnectCP, "cross-connect-cp": standard.CrossConnectCP,
	}[a.given["model"]]
	f, ok := standard.ISOFixedLength(standard.ISOLink{
		Model: model, Category: a.category(), Cords: a.length("cords"), CordLoss: a.number("x"), CP: a.length("cp"), CPLoss: a.number("y"),
	})
	switch a.given["of"] {
	case "base":
		return metres(f.Base, f.Source, ok)
	case "most":
		return metres(f.Most, f.Source, ok)
	default:
		return metres(f.Computed, f.Source, ok)
	}
}

func hotLength(a asked) answer {
	h, ok := standard.HotLengthOf(a.regime(), a.category(), a.at(), a.shield())
	return metres(h.Most, h.Source, ok)
}

func hotCertain(a asked) answer {
	h, ok := standard.HotLengthOf(a.regime(), a.category(), a.at(), a.shield())
	return metres(h.Certain, h.CertainFrom, ok)
}

func hotFactor(a asked) answer {
	k, src := standard.HeatFactor(a.regime(), a.at(), a.shield())
	return figure(k, src, true)
}

type lossFunc func(standard.Regime, standard.Category, unit.Frequency) (float64, standard.Source, bool)

func loss(f lossFunc) func(asked) answer {
	return func(a asked) answer { return figure(f(a.regime(), a.category(), a.frequency())) }
}

func cordDerating(a asked) answer {
	gauge, _ := strconv.Atoi(strings.TrimSuffix(a.given["conductors"], "stranded"))
	percent, src, ok := standard.CordDerating(a.category(), unit.Conductor{Gauge: gauge, Stranded: true})
	return figure(float64(percent), src, ok)
}

func loopLimit(a asked) answer {
	l, ok := standard.LoopResistanceLimits(a.category())
	if a.given["of"] == "channel" {
		return figure(l.Channel, l.Source, ok)
	}
	return figure(l.PermanentLink, l.Source, ok)
}

func wireDiameter(a asked) answer {
	mm, src := standard.WireDiameter(a.number("gauge"))
	return figure(mm, src, true)
}

func wireResistance(a asked) answer {
	ohm, src := standard.WireResistance(a.number("gauge"), 20*unit.DegreeCelsius)
	return figure(ohm, src, true)
}

func wireLoop(a asked) answer {
	ohm, src := standard.LoopResistance(a.number("gauge"), a.length("length"), 20*unit.DegreeCelsius)
	return figure(ohm, src, true)
}

func application(a asked) answer {
	reach, ok := standard.ReachOf(read(a, "application", standard.ParseApplication), a.category(), a.shield())
	v, src := reach.Judge(a.length("channel"))
	return words(v.String(), src, ok)
}

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
