package standard_test

import (
	"strconv"
	"strings"

	"homerun/schema/standard"
	"homerun/schema/unit"
)

// pairFigures names the figures of twisted pair, fire listings and separation.
func pairFigures() map[string]func(asked) answer {
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
