package standard_test

import (
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// lightFigures names the figures of fibre and coaxial cable.
func lightFigures() map[string]func(asked) answer {
	return map[string]func(asked) answer{
		"fibre-core":           fibreCore,
		"fibre-grandfathered":  grandfathered,
		"fibre-join":           fibreJoin,
		"fibre-bandwidth":      bandwidth,
		"fibre-attenuation":    attenuation,
		"fibre-connection":     func(a asked) answer { return decibels(standard.ConnectionAttenuation(a.regime())) },
		"fibre-splice":         func(a asked) answer { return decibels(standard.SpliceAttenuation(a.regime())) },
		"fibre-link":           fibreLink,
		"fibre-carries-loss":   carriesLoss,
		"fibre-reach":          opticalReach,
		"fibre-reach-possible": opticalPossible,
		"fibre-reach-loss":     opticalLoss,
		"fibre-verdict":        opticalVerdict,
		"fibre-strands":        strands,
		"array-position":       arrayPosition,
		"array-keys":           arrayKeys,
		"array-cords":          arrayCords,
		"coax-loss":            func(a asked) answer { return figure(standard.CoaxLoss(a.series(), a.frequency())) },
		"coax-over": func(a asked) answer {
			return figure(standard.CoaxLossOver(a.series(), a.length("length"), a.frequency()))
		},
		"coax-impedance": coaxImpedance,
		"coax-patch":     coaxPatch,
	}
}

func (a asked) series() standard.Series { return read(a, "series", standard.ParseSeries) }

func (a asked) optical() standard.OpticalApplication {
	return read(a, "application", standard.ParseOpticalApplication)
}

func decibels(l unit.Loss, src standard.Source, ok bool) answer {
	return answer{number: l.Decibels(), source: &src, ok: ok}
}

func fibreCore(a asked) answer {
	l, src, ok := a.fibre("fibre").Core()
	return figure(l.Millimetres()*1000, src, ok)
}

func grandfathered(a asked) answer {
	old, src, ok := standard.Grandfathered(a.regime(), a.fibre("fibre"))
	return words(yes(old), src, ok)
}

func fibreJoin(a asked) answer {
	j, src, ok := standard.Join(a.fibre("a"), a.fibre("b"))
	return words(j.String(), src, ok)
}

func bandwidth(a asked) answer {
	b, ok := standard.BandwidthOf(a.fibre("fibre"))
	v := map[string]int{
		"overfilled-850": b.Overfilled850, "overfilled-1300": b.Overfilled1300, "effective-850": b.Effective850, "effective-953": b.Effective953,
	}[a.given["of"]]
	return figure(float64(v), b.Source, ok)
}

func attenuation(a asked) answer {
	return decibels(standard.Attenuation(a.regime(), a.fibre("fibre"), standard.Wavelength(a.number("nm"))))
}

func (a asked) link() (standard.FibreLoss, bool) {
	return standard.LossOfFibre(standard.FibreLink{
		Regime: a.regime(), Wavelength: standard.Wavelength(a.number("nm")),
		Parts:  []standard.FibrePart{{Name: "run", Fibre: a.fibre("fibre"), Length: a.length("length")}},
		Joints: []standard.FibreJoints{standard.Connections(a.regime(), a.number("connections"))},
	})
}

func fibreLink(a asked) answer {
	sum, ok := a.link()
	return figure(sum.Total, standard.Source{Confidence: sum.Confidence}, ok)
}

func carriesLoss(a asked) answer {
	sum, ok := a.link()
	reach, known := standard.OpticalReachOf(a.optical(), a.fibre("fibre"))
	v, src, judged := reach.JudgeLoss(sum.AsLoss())
	src.Confidence = max(src.Confidence, sum.Confidence)
	return words(v.String(), src, ok && known && judged)
}

func opticalReach(a asked) answer {
	r, ok := standard.OpticalReachOf(a.optical(), a.fibre("fibre"))
	return metres(r.Sure, r.Source, ok)
}

func opticalPossible(a asked) answer {
	r, ok := standard.OpticalReachOf(a.optical(), a.fibre("fibre"))
	return metres(r.Possible, r.Source, ok)
}

func opticalLoss(a asked) answer {
	r, ok := standard.OpticalReachOf(a.optical(), a.fibre("fibre"))
	return decibels(r.Loss, r.LossSource, ok)
}

func opticalVerdict(a asked) answer {
	r, ok := standard.OpticalReachOf(a.optical(), a.fibre("fibre"))
	v, src := r.JudgeLength(a.length("channel"))
	return words(v.String(), src, ok)
}

func strands(a asked) answer {
	n, src, ok := a.optical().Strands()
	return figure(float64(n), src, ok)
}

func (a asked) polarity() standard.Polarity { return read(a, "polarity", standard.ParsePolarity) }

func arrayPosition(a asked) answer {
	far, src, ok := a.polarity().FarPosition(a.number("position"), a.number("of"))
	return figure(float64(far), src, ok)
}

func arrayKeys(a asked) answer {
	alike, src, ok := a.polarity().KeysAlike()
	if alike {
		return words("alike", src, ok)
	}
	return words("opposite", src, ok)
}

func arrayCords(a asked) answer {
	n, src, ok := a.polarity().CordsAToA()
	return figure(float64(n), src, ok)
}

func coaxImpedance(a asked) answer {
	ohm, src, ok := standard.CoaxImpedance(a.series())
	return figure(float64(ohm), src, ok)
}

func coaxPatch(a asked) answer {
	only, src, ok := standard.ForPatchesOnly(a.series())
	return words(yes(only), src, ok)
}
