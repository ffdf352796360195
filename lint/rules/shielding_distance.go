package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// ShieldingDistance checks that pathways with unscreened pairs keep away from
// lamps and machines that disturb them.
var ShieldingDistance = &lint.Rule{
	Name: "shielding-distance", Title: "Checks that unscreened pairs keep their distance from lamps, motors and other sources of interference",
	Severity: lint.Observation, Reach: lint.Within, Limit: lint.SmallestLength, Check: shieldingDistance,
}

// Distances that stand in where no standard's figure was found.
const (
	lampDistance    = 130 * unit.Millimetre
	machineDistance = unit.Metre
)

func shieldingDistance(p *lint.Pass) {
	var screens *byCable[screening]
	for _, w := range p.Plant.Pathways {
		if len(w.Near) == 0 {
			continue
		}
		if screens == nil {
			all := screenings(p.Plant)
			screens = &all
		}
		if closed, perhaps := closedMetal(w); closed || perhaps {
			continue
		}
		first, n := unscreenedIn(w, screens)
		if n == 0 {
			continue
		}
		for i := range w.Near {
			distance(p, w, &w.Near[i], first, n)
		}
	}
}

// unscreenedIn counts the live unscreened runs in a pathway.
func unscreenedIn(w *plant.Pathway, screens *byCable[screening]) (first *plant.Run, n int) {
	for _, l := range w.Loads {
		if screens.at(l.Cable) != unscreenedPairs || !l.First.Live() {
			continue
		}
		if n += l.Count; first == nil {
			first = l.First
		}
	}
	return first, n
}

func distance(p *lint.Pass, w *plant.Pathway, near *plant.Nearby, first *plant.Run, n int) {
	if near.Source == nil {
		return
	}
	word, ok := schema.InterferenceKind.In(near.Source.Record())
	gap, known := schema.NearGap.In(near.Record)
	if !ok || !known {
		return
	}
	least, source := distanceFrom(p.Plant.Regime, word)
	least, own := p.Least(least)
	if own != "" {
		source = own
	}
	if gap >= least {
		return
	}
	value, limit := gap.Beside(least, p.Units())
	f := lint.About(w.Entry)
	f.At = near.Where(schema.NearGap.Field)
	f.Message = fmt.Sprintf("%s: %s with unscreened pairs %s from %s %s, at least %s",
		schema.Printable(w.Label), counted(n, "run", "runs"), value, word, schema.Printable(near.Label), limit)
	f.Working = []lint.Term{
		term("source", schema.Printable(near.Label)+", "+word), term("gap", value+" (stated)"),
		term("unscreened", fmt.Sprintf("%s, first %s: %s", counted(n, "run", "runs"), schema.Printable(first.Label), codeOfCable(first.Cable))),
		term("limit", "at least "+limit),
	}
	f.Result, f.Limit, f.Source = value, limit, source
	f.Next = "move the pathway away, close it in metal, or use screened pairs or fibre there"
	f.Key = []string{near.Label}
	f.Excess = (least - gap).Millimetres()
	f.Related = []schema.Note{note(near.Source.Entry, word), note(first.Entry, "the first unscreened run there")}
	p.Report(f)
}

// distanceFrom is the least distance from a kind of source, and where it stands.
func distanceFrom(regime standard.Regime, word string) (unit.Length, string) {
	d, err := standard.ParseDisturber(word)
	if err != nil {
		panic("rules: the language has a source of interference that the tables lack: " + word)
	}
	if least, source, ok := standard.DisturberDistance(regime, d); ok {
		return least, source.String()
	}
	if d == standard.FluorescentLamp || d == standard.DischargeLamp {
		return lampDistance, "common practice for lamps"
	}
	return machineDistance, "common practice for machines without a published distance"
}
