package rules

import (
	"fmt"
	"slices"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// PowerAmpacity holds the current in the conductors of a bundle against what the
// electrical code lets them carry in the warmth of their way.
var PowerAmpacity = &lint.Rule{
	Name: "power-ampacity", Title: "Checks that the conductors of a bundle carry no more current than the electrical code allows in its size and warmth",
	Severity: lint.Nonconformity, Reach: lint.Along, Safety: true, Gathers: carriesPower, Check: powerAmpacity,
}

func powerAmpacity(p *lint.Pass) {
	over, src, ok := standard.AmpacityTrigger(p.Plant.Fire)
	if !ok {
		return
	}
	check := ampacityCheck{pass: p, heats: newHeats(), told: make(map[*plant.Cable]bool)}
	for _, b := range p.Plant.Bundles {
		word, stated := schema.BundlePower.In(b.Record())
		carries, err := standard.ParsePowerType(word)
		if !stated || err != nil {
			continue
		}
		if figures, _ := carries.Figures(); figures.Power > over {
			check.bundle(b, carries)
		}
	}
	if check.lacking > 0 {
		p.Report(check.noTable(src))
	}
}

type ampacityCheck struct {
	pass  *lint.Pass
	heats *heats
	told  map[*plant.Cable]bool
	// lacking counts the bundles for which the plant's edition has no table
	// here; first is the first of them.
	lacking int
	first   *plant.Bundle
}

// bundle judges one bundle, by each cable type in it.
func (c *ampacityCheck) bundle(b *plant.Bundle, carries standard.PowerType) {
	n, hot := 0, heat{}
	var cables []*plant.Cable
	for _, r := range b.Runs {
		if !mayCarry(r) {
			continue
		}
		n++
		if on := c.heats.along(r); on.where != nil && (hot.where == nil || on.high > hot.high) {
			hot = on
		}
		if !slices.Contains(cables, r.Cable) {
			cables = append(cables, r.Cable)
		}
	}
	for _, cable := range cables {
		w := warmBundle{pass: c.pass, bundle: b, carries: carries, cable: cable, cables: n, hot: hot}
		if w.limited() {
			continue
		}
		wire, stated := schema.CableConductors.In(cable.Record())
		if !stated && c.pass.Plant.Fire == standard.NEC2017 {
			c.unstated(&w)
			continue
		}
		w.wire = wire
		if !c.judge(&w) {
			return
		}
	}
}

// A warmBundle is a bundle with one of its cable types.
type warmBundle struct {
	pass    *lint.Pass
	bundle  *plant.Bundle
	carries standard.PowerType
	cable   *plant.Cable
	cables  int
	hot     heat
	wire    unit.Conductor
	current unit.Current
	src     standard.Source // of the current
}

// limited says whether the cable is listed for the current in a bundle of any
// size.
func (w *warmBundle) limited() bool {
	w.current, w.src, _ = w.carries.ConductorCurrent()
	text, stated := w.cable.Listing()
	listing, err := standard.ParseListing(text)
	if !stated || err != nil {
		return false
	}
	most, _, ok := standard.LimitedPowerAmpacity(w.pass.Plant.Fire, listing)
	return ok && w.current <= most
}

// judge compares the current with the table; it returns false where the plant's
// edition has none.
func (c *ampacityCheck) judge(w *warmBundle) bool {
	rated, _ := schema.CableRated.In(w.cable.Record())
	if lost(w.cable.Entry, schema.CableRated.Field) {
		return true
	}
	in := standard.BundleCase{Code: c.pass.Plant.Fire, Gauge: w.wire.Gauge, Cables: w.cables, Rated: rated, Ambient: tableAmbient}
	if w.hot.where != nil {
		in.Ambient = w.hot.high
	}
	a, ok := standard.BundleAmpacityOf(in)
	switch {
	case !ok && c.pass.Plant.Fire != standard.NEC2017:
		if c.first == nil {
			c.first = w.bundle
		}
		c.lacking++
		return false
	case !ok:
		c.pass.Report(w.noValue("the table has no row or column for it", tableSource(c.pass.Plant.Fire)))
	case a.Supervision != "":
		c.pass.Report(w.noValue(a.Supervision, a.Source))
	case w.current > a.Most:
		c.pass.Report(w.over(a, in.Ambient))
	}
	return true
}

// tableAmbient is the temperature around the bundle that the table is for.
const tableAmbient = 30 * unit.DegreeCelsius

// upward is the most, in percent, by which the code corrects an ampacity upwards
// in a space of coolEnough or less, from memory. That correction is not counted,
// so a bundle that it might save is an observation.
const (
	upward     = 129
	coolEnough = 20 * unit.DegreeCelsius
)

// unstated names a cable type whose gauge would allow the check, once.
func (c *ampacityCheck) unstated(w *warmBundle) {
	if c.told[w.cable] || lost(w.cable.Entry, schema.CableConductors.Field) {
		return
	}
	c.told[w.cable] = true
	f := lint.AboutField(w.cable.Entry, schema.CableConductors.Field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: conductors not stated, so the current in bundle %s is not judged", schema.Printable(w.cable.Label), schema.Printable(w.bundle.Label))
	f.Next = fmt.Sprintf("state conductors: %s", schema.CableConductors.Doc)
	f.Source = tableSource(c.pass.Plant.Fire).String()
	f.Key = []string{schema.CableConductors.Name}
	f.Related = []schema.Note{note(w.bundle.Entry, "the first bundle")}
	c.pass.Report(f)
}

// tableSource is where the table stands, for what it has no answer to.
func tableSource(code standard.FireCode) standard.Source {
	a, _ := standard.BundleAmpacityOf(standard.BundleCase{Code: code, Gauge: assumedCord, Cables: 1, Ambient: tableAmbient})
	return a.Source
}

// noTable says once that the edition of the plant has no table here.
func (c *ampacityCheck) noTable(trigger standard.Source) lint.Finding {
	a, _ := standard.BundleAmpacityOf(standard.BundleCase{Code: c.pass.Plant.Fire})
	f := lint.AboutField(c.pass.Plant.Entry, schema.PlantFireCode.Field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: %s over 60 W, the ampacity table of this edition was not found: the printed one decides", schema.Printable(c.pass.Plant.Label),
		counted(c.lacking, "bundle carries", "bundles carry"))
	f.Working = []lint.Term{term("bundles", fmt.Sprintf("%d, the first is %s", c.lacking, schema.Printable(c.first.Label))), term("ruled from", trigger.String())}
	f.Result, f.Limit, f.Source = "no table", "the printed table", a.Source.String()
	f.Next = "hold each bundle against the printed table"
	f.Excess = float64(c.lacking)
	f.Key = []string{"table"}
	f.Related = []schema.Note{note(c.first.Entry, "the first bundle")}
	return f
}
