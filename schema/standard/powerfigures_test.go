package standard_test

import (
	"strconv"

	"homerun/schema/standard"
	"homerun/schema/unit"
)

// powerFigures names the figures of power over Ethernet and of bundles that carry it.
func powerFigures() map[string]func(asked) answer {
	return map[string]func(asked) answer{
		"power-type":           powerType,
		"power-class":          powerClass,
		"power-least":          powerLeast,
		"power-delivered":      func(a asked) answer { return delivered(a, func(f standard.PowerFlow) float64 { return f.DeviceWatts }) },
		"power-lost":           func(a asked) answer { return delivered(a, func(f standard.PowerFlow) float64 { return f.Lost }) },
		"power-current":        func(a asked) answer { return delivered(a, func(f standard.PowerFlow) float64 { return f.Amperes }) },
		"power-drawn":          powerDrawn,
		"power-ceiling":        powerCeiling,
		"path-ohms":            pathOhms,
		"conductor-current":    conductorCurrent,
		"ampacity":             ampacity,
		"ampacity-supervision": supervision,
		"ambient":              ambient,
		"ampacity-trigger":     trigger,
		"bundle-guideline":     guideline,
		"powered-current":      func(a asked) answer { return amperes(standard.PoweredCurrent(a.regime())) },
		"limited-power":        func(a asked) answer { return amperes(standard.LimitedPowerAmpacity(a.code(), a.listing())) },
		"modular-current": func(asked) answer {
			i, src := standard.ModularCurrent()
			return amperes(i, src, true)
		},
	}
}

func amperes(i unit.Current, src standard.Source, ok bool) answer {
	return answer{number: i.Amperes(), source: &src, ok: ok}
}

func (a asked) float(key string) float64 {
	return read(a, key, func(s string) (float64, error) { return strconv.ParseFloat(s, 64) })
}

func powerType(a asked) answer {
	f, ok := read(a, "type", standard.ParsePowerType).Figures()
	v := map[string]float64{
		"power": f.Power.Watts(), "device": f.DevicePower.Watts(), "volts": f.Volts, "device-volts": f.DeviceVolts,
		"pairset": f.PairsetCurrent.Amperes(), "least-pairs": float64(f.LeastPairs), "most-pairs": float64(f.MostPairs), "ohms": f.Ohms,
	}[a.given["of"]]
	if a.given["of"] == "ohms" {
		return figure(v, f.OhmsSource, ok)
	}
	return figure(v, f.Source, ok)
}

func powerClass(a asked) answer {
	c, ok := standard.PowerClassOf(a.number("class"))
	v := map[string]float64{"power": c.Power.Watts(), "device": c.DevicePower.Watts(), "volts": c.Volts}[a.given["of"]]
	return figure(v, c.Source, ok)
}

func powerLeast(a asked) answer {
	c, ok := standard.PowerClassOf(a.number("class"))
	return words(c.Least.String(), c.Source, ok)
}

func delivered(a asked, of func(standard.PowerFlow) float64) answer {
	c, known := standard.PowerClassOf(a.number("class"))
	f, ok := standard.Deliver(c.Power, c.Volts, c.Ohms)
	return figure(of(f), c.OhmsSource, known && ok)
}

func powerDrawn(a asked) answer {
	f, ok := standard.Draw(read(a, "needs", unit.ParsePower), a.float("volts"), a.float("ohms"))
	return figure(f.Watts, standard.Source{Confidence: standard.FromMemory}, ok)
}

func powerCeiling(a asked) answer {
	p, i, src := standard.PowerCeiling()
	if a.given["of"] == "current" {
		return amperes(i, src, true)
	}
	return figure(p.Watts(), src, true)
}

func pathOhms(a asked) answer {
	ohms, ok := standard.PathOhms(a.float("loop"), a.number("pairs"))
	return answer{number: ohms, ok: ok}
}

func conductorCurrent(a asked) answer {
	return amperes(read(a, "type", standard.ParsePowerType).ConductorCurrent())
}

func (a asked) bundle() (standard.BundleAmpacity, bool) {
	c := standard.BundleCase{
		Code: a.code(), Gauge: a.number("gauge"), Cables: a.number("cables"), Rated: read(a, "rated", unit.ParseTemperature), Ambient: a.at(),
	}
	if a.given["loaded"] == "half" {
		c.Loaded = standard.HalfConductors
	}
	return standard.BundleAmpacityOf(c)
}

func ampacity(a asked) answer {
	b, ok := a.bundle()
	return amperes(b.Most, b.Source, ok && b.Supervision == "")
}

func supervision(a asked) answer {
	b, ok := a.bundle()
	return words(b.Supervision, b.Source, ok && b.Most == 0)
}

func ambient(a asked) answer {
	percent, src, ok := standard.AmbientCorrection(a.code(), a.at(), read(a, "rated", unit.ParseTemperature))
	return figure(float64(percent)/100, src, ok)
}

func trigger(a asked) answer {
	p, src, ok := standard.AmpacityTrigger(a.code())
	return figure(p.Watts(), src, ok)
}

func guideline(a asked) answer {
	n, src, ok := standard.BundleGuideline(a.regime())
	return figure(float64(n), src, ok)
}
