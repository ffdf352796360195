package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// PowerType holds what a device asks for against what is supplied at the other
// end, against its own class, and against what its bundle is said to carry.
var PowerType = &lint.Rule{
	Name: "power-type", Title: "Checks that a device is powered by a type that grants the class it asks for, and its bundle says so",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: powerType,
}

func powerType(p *lint.Pass) {
	check := typeCheck{pass: p, told: make(map[*schema.Record]bool)}
	for _, h := range p.Plant.Holders {
		if h.IsEquipment() {
			check.itself(h)
		}
	}
	for _, f := range feeds(p) {
		if f.supply == 0 {
			check.unstated(&f)
			continue
		}
		check.feed(&f)
	}
}

type typeCheck struct {
	pass *lint.Pass
	told map[*schema.Record]bool
}

// itself finds a device that needs more than the class it asks for lets it take.
func (c *typeCheck) itself(h *plant.Holder) {
	a, _ := askOf(h)
	if !a.hasClass || !a.hasNeeds || a.needs <= a.class.DevicePower {
		return
	}
	shown, limit := a.needs.Beside(a.class.DevicePower, c.pass.Units())
	f := lint.AboutField(h.Entry, schema.EquipmentNeeds.Field)
	f.Message = fmt.Sprintf("%s: needs %s, class %d lets it take %s", schema.Printable(h.Label), shown, a.class.Class, limit)
	f.Working = []lint.Term{term("needs", shown), term("asks for", className(a.class))}
	f.Result, f.Limit, f.Source = shown, limit, a.class.Source.String()
	f.Next = "correct power_class or needs, as the data sheet has them"
	f.Excess = (a.needs - a.class.DevicePower).Watts()
	f.Key = []string{"class"}
	c.pass.Report(f)
}

// unstated names a source that does not say what it supplies, once.
func (c *typeCheck) unstated(x *feed) {
	kind, _ := schema.EquipmentKind.In(x.source.Record())
	if kind != "switch" && kind != "router" || c.told[x.source.Record()] || lost(x.source.Entry, schema.EquipmentSupplies.Field) {
		return
	}
	c.told[x.source.Record()] = true
	f := lint.AboutField(x.source.Entry, schema.EquipmentSupplies.Field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: supplies not stated, and %s asks it for power", schema.Printable(x.source.Label), schema.Printable(x.device.Label))
	f.Next = fmt.Sprintf("state supplies: %s", schema.EquipmentSupplies.Doc)
	f.Source = classSource(x.ask)
	f.Key = []string{schema.EquipmentSupplies.Name}
	f.Related = []schema.Note{note(x.device.Entry, "asks for power")}
	c.pass.Report(f)
}

func classSource(a ask) string {
	class, ok := a.wants()
	if !ok {
		class, _ = standard.PowerClassOf(highestClass)
	}
	return class.Source.String()
}

// highestClass is the highest class of power over Ethernet.
const highestClass = 8

// feed compares the class of a device with the type that powers it.
func (c *typeCheck) feed(x *feed) {
	class, ok := x.ask.wants()
	if !ok {
		c.tooMuch(x)
		return
	}
	granted, less, ok := x.supply.Grants(class.Class)
	switch {
	case !ok:
	case less:
		c.less(x, class, granted)
	default:
		c.bundles(x, granted)
	}
}

// tooMuch is a device that needs more than any class grants.
func (c *typeCheck) tooMuch(x *feed) {
	most, _ := standard.PowerClassOf(highestClass)
	if x.ask.needs <= most.DevicePower {
		return // it needs nothing
	}
	shown, limit := x.ask.needs.Beside(most.DevicePower, c.pass.Units())
	f := c.about(x, most.Source)
	f.Message = fmt.Sprintf("%s: needs %s, power over Ethernet gives a device %s at most", schema.Printable(x.device.Label), shown, limit)
	f.Result, f.Limit = shown, limit
	f.Working = append(f.Working, term("highest class", className(most)))
	f.Next = "power it another way"
	f.Excess = (x.ask.needs - most.DevicePower).Watts()
	c.pass.Report(f)
}

// less is a device that is granted a lower class than it asks for.
func (c *typeCheck) less(x *feed, class, granted standard.PowerClass) {
	f := c.about(x, class.Source)
	what := fmt.Sprintf("asks for class %d", class.Class)
	if !x.ask.hasClass {
		what = fmt.Sprintf("needs %s, which takes class %d", x.ask.needs, class.Class)
	}
	f.Message = fmt.Sprintf("%s: %s, %s supplies %s, class %d at most", schema.Printable(x.device.Label), what, schema.Printable(x.source.Label), x.supply, granted.Class)
	f.Working = append(f.Working, term("class "+decimals(float64(class.Class), 0)+" takes", class.Least.String()),
		term(schema.Printable(x.source.Label)+" supplies", x.supply.String()+", up to "+className(granted)))
	f.Result, f.Limit = fmt.Sprintf("class %d", class.Class), fmt.Sprintf("class %d", granted.Class)
	f.Next = fmt.Sprintf("power it from a port of %s, or use a device of a lower class", class.Least)
	f.Excess = float64(class.Class - granted.Class)
	c.pass.Report(f)
}

func (c *typeCheck) about(x *feed, src standard.Source) lint.Finding {
	f := lint.About(x.device.Entry)
	f.Severity = degree(src)
	f.Working, f.Source = x.askTerms(), src.String()
	f.Key = []string{x.source.Label}
	f.Related = x.notes()
	return f
}

// bundles finds bundles that carry more than they say: what their conductors
// bear is judged by what is written there. A bundle that says nothing is named
// from the power on at which its ampacity is ruled.
func (c *typeCheck) bundles(x *feed, granted standard.PowerClass) {
	if x.channel == nil {
		return
	}
	for _, l := range x.channel.Links {
		for _, r := range l.Runs {
			if r.Bundle == nil || c.told[r.Bundle.Record()] {
				continue
			}
			c.bundle(x, r, granted)
		}
	}
}

func (c *typeCheck) bundle(x *feed, r *plant.Run, granted standard.PowerClass) {
	b := r.Bundle
	word, stated := schema.BundlePower.In(b.Record())
	carries, _ := standard.ParsePowerType(word)
	over, _, ruled := standard.AmpacityTrigger(c.pass.Plant.Fire)
	said := "carries " + word
	switch {
	case lost(b.Entry, schema.BundlePower.Field):
		return
	case stated && carries >= granted.Least:
		return
	case !stated && (!ruled || granted.Power <= over):
		return
	case !stated:
		said = "power not stated"
	}
	c.told[b.Record()] = true
	f := lint.AboutField(b.Entry, schema.BundlePower.Field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: %s, and %s is granted class %d, %s, over run %s", schema.Printable(b.Label), said, schema.Printable(x.device.Label),
		granted.Class, granted.Least, schema.Printable(r.Label))
	f.Working = append(x.askTerms(), term("class "+decimals(float64(granted.Class), 0)+" is", granted.Least.String()+", "+granted.Power.String()+" at the source"))
	f.Result, f.Limit, f.Source = granted.Least.String(), said, granted.Source.String()
	f.Next = fmt.Sprintf("state power: %q", granted.Least.String())
	f.Excess = float64(granted.Power) / float64(unit.Watt)
	f.Key = []string{schema.BundlePower.Name}
	f.Related = []schema.Note{note(r.Entry, "the run"), note(x.device.Entry, "is powered over it")}
	c.pass.Report(f)
}
