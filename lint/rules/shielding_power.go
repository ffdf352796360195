package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// A segregation is the class of a cable, with how it is known and whose it is.
type segregation struct {
	class  standard.Segregation
	how    string
	source standard.Source
	run    *plant.Run
}

// segregationOf is the class that the data sheet states, otherwise the one that
// cables of the category and screen usually have; zero where neither is known.
func segregationOf(k *plant.Cable) segregation {
	if word, ok := schema.CableSegregate.In(k.Record()); ok {
		class, err := standard.ParseSegregation(word)
		if err != nil {
			return segregation{}
		}
		return segregation{class: class, how: "stated", source: standard.Source{Body: "EN", Edition: "50174-2:2009", Confidence: standard.Confirmed}}
	}
	word, ok := k.Category()
	screen := screeningOf(k)
	if !ok || screen == screenUnknown || lost(k.Entry, schema.CableSegregate.Field) {
		return segregation{}
	}
	category, err := standard.ParseCategory(word)
	if err != nil {
		return segregation{}
	}
	shield, code := standard.Unscreened, "unscreened"
	if screen == screenedPairs {
		shield, code = standard.Screened, "screened"
	}
	class, source, ok := standard.SegregationOf(category, shield)
	if !ok {
		return segregation{}
	}
	return segregation{class: class, how: fmt.Sprintf("usual for category %s, %s", word, code), source: source}
}

// sum holds a gap against A = S x P. The circuits of every block that is no
// farther away count, so that a load does not shrink by being written in parts.
func (c *separationCheck) sum(w *plant.Pathway, all []circuit, at *circuit, worst *segregation) {
	n := 0
	for i := range all {
		if o := &all[i]; o == at || o.readable && o.hasGap && o.gap <= at.gap && o.barrier != standard.SolidMetal {
			n += o.load.Equivalent()
		}
	}
	sum, ok := standard.Segregate(worst.class, at.barrier, standard.PowerLoad{Circuits: n})
	if !ok || at.gap >= sum.A {
		return
	}
	value, limit := at.gap.Beside(sum.A, c.Units())
	f := c.about(w, at, value, limit)
	f.Source = sum.Source.String()
	switch {
	case !sum.Source.Sure():
		f.Severity = lint.Observation
	case !worst.source.Sure():
		f.Severity, f.Source = lint.Observation, worst.source.String()
	case c.Plant.Regime != standard.ISO:
		f.Severity = lint.Observation
		f.Source += "; the plant's own family of standards words this otherwise"
	}
	factor := decimals(float64(sum.FactorTenth)/10, 1)
	f.Working = []lint.Term{
		term("cable", fmt.Sprintf("%s, class %s (%s)", schema.Printable(worst.run.Cable.Label), worst.class, worst.how)),
		term("between", fmt.Sprintf("%s (%s)", at.barrier, at.how)),
		term("S", sum.S.Text(c.Units())),
		term("circuits", loadText(at.load)+nearer(at, n)),
		term("P", factor),
		term("A = S x P", fmt.Sprintf("%s x %s = %s", sum.S.Text(c.Units()), factor, limit)),
		term("gap", value+" (stated)"),
	}
	f.Key = []string{"EN 50174-2"}
	f.Excess = (sum.A - at.gap).Millimetres()
	f.Related = []schema.Note{note(worst.run.Entry, "the run whose cable decides")}
	c.Report(f)
}

// loadText writes how the circuits of a block count.
func loadText(load standard.PowerLoad) string {
	text := counted(load.Circuits, "circuit", "circuits")
	if load.Phases == 3 {
		text += " of 3 phases"
	}
	if load.Current > 20*unit.Ampere {
		text += " of " + load.Current.Text(unit.Metric)
	}
	if n := load.Equivalent(); n != load.Circuits {
		text += fmt.Sprintf(", count as %d of 1 phase and 20 A", n)
	}
	return text
}

func nearer(at *circuit, n int) string {
	if n == at.load.Equivalent() {
		return ""
	}
	return fmt.Sprintf("; %d with those no farther away", n)
}

// floor holds a gap against the least distance of NFPA 70.
func (c *separationCheck) floor(w *plant.Pathway, at *circuit, copper *plant.Run) {
	word, routed := schema.PowerEnclosed.In(at.Record)
	if !routed && lost(at.Entry, schema.PowerEnclosed.Field) {
		return
	}
	route := standard.PowerOpen
	if routed {
		var err error
		if route, err = standard.ParsePowerRoute(word); err != nil {
			return
		}
	}
	least, _, source, ok := standard.PowerFloor(c.Plant.Fire, standard.FloorCase{Power: route, DataInRaceway: inRaceway(w), Divided: at.barrier == standard.SolidMetal})
	if !ok || at.gap >= least {
		return
	}
	value, limit := at.gap.Beside(least, c.Units())
	if !routed {
		c.missing(w, at, schema.PowerEnclosed.Field, fmt.Sprintf("%s away, and power_in not stated; open power cable needs %s", value, limit))
		return
	}
	f := c.about(w, at, value, limit)
	f.Source = source.String()
	if !source.Sure() {
		f.Severity = lint.Observation
	}
	f.Working = []lint.Term{
		term("cable", fmt.Sprintf("run %s, %s", schema.Printable(copper.Label), schema.Printable(copper.Cable.Label))),
		term("power", "open, in no raceway and no metal sheath (stated)"),
		term("between", fmt.Sprintf("%s (%s)", at.barrier, at.how)),
		term("gap", value+" (stated)"),
		term("floor", limit),
	}
	f.Key = []string{"NFPA 70"}
	f.Excess = (least - at.gap).Millimetres()
	f.Related = []schema.Note{note(copper.Entry, "a run of copper cable there")}
	c.Report(f)
}

// inRaceway says whether the pathway may be a raceway around the data cable:
// then the floor is not asked.
func inRaceway(w *plant.Pathway) bool {
	readings := enclosuresOf(w)
	for _, e := range readings {
		switch e {
		case standard.MetalRaceway, standard.NonMetalRaceway, standard.PlenumRaceway, standard.RiserRaceway, standard.GeneralRaceway:
			return true
		case standard.Bare, standard.CableTray, standard.SolidCoveredTray, standard.CrossConnectArray:
		}
	}
	return len(readings) == 0
}

// about starts the finding of a gap that is too small.
func (c *separationCheck) about(w *plant.Pathway, at *circuit, value, limit string) lint.Finding {
	f := lint.About(w.Entry)
	f.At = at.Where(schema.PowerGap.Field)
	f.Message = fmt.Sprintf("%s: power %s away, at least %s", schema.Printable(w.Label), value, limit)
	f.Result, f.Limit = value, limit
	f.Next = "move power and data apart, put solid metal between them, or pull a cable of a better class; have a licensed person work on the power side"
	return f
}
