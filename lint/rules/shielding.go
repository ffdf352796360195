package rules

import (
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// screening is whether a cable type has a screen. The zero value is a type that
// is no twisted pair, or that does not say.
type screening uint8

const (
	screenUnknown screening = iota
	unscreenedPairs
	screenedPairs
)

// screeningOf reads the construction code of a cable type, nil for none.
func screeningOf(k *plant.Cable) screening {
	if k.Medium() != plant.TwistedPair {
		return screenUnknown
	}
	code, ok := k.Screen()
	if !ok {
		return screenUnknown
	}
	shield, ok := standard.ShieldOf(code)
	switch {
	case !ok:
		return screenUnknown
	case shield == standard.Screened:
		return screenedPairs
	}
	return unscreenedPairs
}

// screenings reads every cable type of a plant once.
func screenings(p *plant.Plant) (of byCable[screening]) {
	for _, k := range p.Cables {
		if s := screeningOf(k); s != screenUnknown {
			of.set(p, k, s)
		}
	}
	return of
}

// carriesScreens says whether a kind of holder has jacks that carry a screen
// through or break it: equipment and splice closures do not say.
func carriesScreens(h *plant.Holder) bool {
	switch h.Kind.Name {
	case schema.KindPanel, schema.KindOutlet, schema.KindConsolidation:
		return true
	}
	return false
}

// codeOfCable is the construction code as findings show it.
func codeOfCable(k *plant.Cable) string {
	code, _ := k.Screen()
	return schema.Printable(k.Label) + ", " + code
}
