package standard_test

import "homerun/schema/standard"

// codeFigures names the figures of bending, pulling and what the code asks inside a building.
func codeFigures() map[string]func(asked) answer {
	return map[string]func(asked) answer{
		"pull-bends":      pullBends,
		"pull-length":     pullLength,
		"code-bends":      codeBends,
		"bend-radius":     bendRadius,
		"conduit-radius":  conduitRadius,
		"support-spacing": func(a asked) answer { return metres(standard.SupportSpacing(a.regime())) },
		"pull-tension":    pullTension,
		"untwist":         func(a asked) answer { return millimetres(standard.Untwist(a.regime(), a.category())) },
		"jacket-rating":   jacketRating,
		"outside-plant":   outsidePlant,
		"abandoned":       abandoned,
		"pin-pair":        pinPair,
	}
}

func pullBends(a asked) answer {
	l, ok := standard.PullLimitsOf(a.regime())
	return figure(l.Bends.Degrees(), l.Source, ok)
}

func pinPair(a asked) answer {
	pair, src, ok := read(a, "pinout", standard.ParsePinout).Pair(a.number("pin"))
	return figure(float64(pair), src, ok)
}

func pullLength(a asked) answer {
	l, ok := standard.PullLimitsOf(a.regime())
	return metres(l.Length, l.LengthSource, ok)
}

func codeBends(a asked) answer {
	angle, src, ok := standard.CodeBends(a.code())
	return figure(angle.Degrees(), src, ok)
}

func (a asked) medium() standard.Medium {
	return map[string]standard.Medium{
		"four-pair": standard.FourPair, "multipair": standard.Multipair, "fibre": standard.FibreCable, "cord": standard.CopperCord, "fibre-cord": standard.FibreCord,
	}[a.given["medium"]]
}

func bendRadius(a asked) answer {
	strain := map[string]standard.Strain{"rest": standard.AtRest, "pulling": standard.Pulling}[a.given["strain"]]
	rule, known := standard.BendRuleOf(a.regime(), a.medium(), strain)
	l, ok := rule.Least(a.length("od"))
	return millimetres(l, rule.Source, known && ok)
}

func conduitRadius(a asked) answer {
	l, src, ok := standard.ConduitRadius(a.regime(), a.length("inside"))
	return figure(inches(l), src, ok)
}

func pullTension(a asked) answer {
	n, src, ok := standard.PullTension(a.regime(), a.medium(), a.number("strands"))
	return figure(float64(n), src, ok)
}

func jacketRating(a asked) answer {
	t, src, ok := standard.JacketRating(a.code())
	return figure(t.Celsius(), src, ok)
}

func outsidePlant(a asked) answer {
	o, ok := standard.OutsidePlantLimit(a.code(), a.listing().Family())
	return metres(o.Most, o.Source, ok && o.Bars(standard.PlenumSpace) && !o.Bars(standard.GeneralSpace))
}

func abandoned(a asked) answer {
	endings := map[string]standard.Ending{"nothing": standard.NotTerminated, "jack": standard.AtConnector, "equipment": standard.AtEquipment}
	got, src, ok := standard.AbandonmentOf(a.code(), a.listing().Family(), endings[a.given["near"]], endings[a.given["far"]])
	return words(got.String(), src, ok)
}
