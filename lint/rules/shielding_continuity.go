package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// ShieldingContinuity checks that a screen goes on from end to end: through the
// hardware at both ends of a run, through consolidation points and cords.
var ShieldingContinuity = &lint.Rule{
	Name: "shielding-continuity", Title: "Checks that the screen of a screened run goes on through panel, outlet, consolidation point and cord",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: shieldingContinuity,
}

var continuitySource = standard.Source{
	Body: "ISO/IEC", Edition: "11801-1:2017", Clause: "Annex E, screened cable and its connecting hardware", Confidence: standard.Confirmed,
	Note: "as quoted in the literature from the second edition of ISO/IEC 11801",
}

func shieldingContinuity(p *lint.Pass) {
	c := &continuityCheck{Pass: p, screens: screenings(p.Plant), told: make(map[*schema.Record]bool)}
	if !c.anyScreen() {
		return
	}
	for _, r := range p.Plant.Runs {
		if c.screens.at(r.Cable) == screenedPairs && r.Live() {
			c.end(r, schema.RunFrom.Field, r.From)
			c.end(r, schema.RunTo.Field, r.To)
		}
	}
	for _, l := range p.Plant.Links {
		for i := range l.Joints {
			c.joint(l, l.Runs[i], l.Runs[i+1])
		}
	}
	for _, cord := range p.Plant.Cords {
		c.cord(cord)
	}
}

// A continuityCheck is what one check of a plant remembers.
type continuityCheck struct {
	*lint.Pass
	screens byCable[screening]
	told    map[*schema.Record]bool
}

func (c *continuityCheck) anyScreen() bool {
	for s := range c.screens.all() {
		if s == screenedPairs {
			return true
		}
	}
	return false
}

// end checks the hardware at one end of a screened run.
func (c *continuityCheck) end(r *plant.Run, field *schema.Field, row plant.Row) {
	port := row.First()
	if port == nil || !carriesScreens(port.Holder) {
		return
	}
	h := port.Holder
	word, ok := h.Screen()
	switch {
	case ok && word == "unscreened":
		c.broken(r, field, port)
	case !ok && !c.told[h.Record()]:
		c.told[h.Record()] = true
		c.unstated(r, h)
	}
}

func (c *continuityCheck) broken(r *plant.Run, field *schema.Field, port *plant.Port) {
	h := port.Holder
	f := lint.AboutField(r.Entry, field)
	f.Message = fmt.Sprintf("%s: screened run on %s %s, which is unscreened, must be screened", schema.Printable(r.Label), h.Kind.Name, schema.Printable(h.Label))
	f.Working = []lint.Term{
		term("cable", codeOfCable(r.Cable)),
		term("port", fmt.Sprintf("%s of %s %s", schema.Printable(port.String()), h.Kind.Name, schema.Printable(h.Label))),
		term("jacks", "unscreened: the screen ends here"),
	}
	f.Result, f.Limit, f.Source = "unscreened", "screened", continuitySource.String()
	f.Next = fmt.Sprintf("exchange the jacks of %s for screened ones, or correct its screen field", schema.Printable(h.Label))
	f.Key = []string{field.Name, h.Label}
	f.Related = []schema.Note{c.screenOf(h)}
	c.Report(f)
}

func (c *continuityCheck) screenOf(h *plant.Holder) schema.Note {
	n := note(h.Entry, "unscreened jacks")
	if field, ok := h.Kind.Field("screen"); ok {
		n.At = h.Where(field)
	}
	return n
}

// unstated names hardware that does not say whether it carries a screen, once.
func (c *continuityCheck) unstated(r *plant.Run, h *plant.Holder) {
	field, ok := h.Kind.Field("screen")
	if !ok || lost(h.Entry, field) {
		return
	}
	f := lint.AboutField(h.Entry, field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: screen not stated; screened run %s ends here and needs screened jacks", schema.Printable(h.Label), schema.Printable(r.Label))
	f.Next = `state screen = "screened" or "unscreened"`
	f.Key = []string{field.Name}
	f.Source = continuitySource.String()
	f.Related = []schema.Note{note(r.Entry, "screened run, "+codeOfCable(r.Cable))}
	c.Report(f)
}

// joint checks two runs that a consolidation point joins.
func (c *continuityCheck) joint(l *plant.Link, a, b *plant.Run) {
	first, second := c.screens.at(a.Cable), c.screens.at(b.Cable)
	if first == screenUnknown || second == screenUnknown || first == second || !l.Live() {
		return
	}
	screened, plain := a, b
	if first == unscreenedPairs {
		screened, plain = b, a
	}
	f := lint.About(plain.Entry)
	f.Message = fmt.Sprintf("%s: unscreened run joined to screened run %s, must be screened", schema.Printable(plain.Label), schema.Printable(screened.Label))
	f.Working = []lint.Term{term("run "+schema.Printable(screened.Label), codeOfCable(screened.Cable)), term("run "+schema.Printable(plain.Label), codeOfCable(plain.Cable))}
	f.Result, f.Limit, f.Source = "unscreened", "screened", continuitySource.String()
	f.Next = "pull screened cable on both sides of the joint"
	f.Key = []string{screened.Label}
	f.Related = []schema.Note{note(screened.Entry, "screened run of the same link")}
	c.Report(f)
}

// cord checks an unscreened cord in front of a screened run.
func (c *continuityCheck) cord(cord *plant.Cord) {
	if c.screens.at(cord.Cable) != unscreenedPairs {
		return
	}
	for _, port := range []*plant.Port{cord.From, cord.To} {
		if port == nil || port.Rear == nil || port.Front != cord {
			continue
		}
		r := port.Rear
		if c.screens.at(r.Cable) != screenedPairs || !r.Live() {
			continue
		}
		f := lint.AboutField(cord.Entry, schema.CordCable.Field)
		f.Message = fmt.Sprintf("%s: unscreened cord on screened run %s, must be screened", schema.Printable(cord.Label), schema.Printable(r.Label))
		f.Working = []lint.Term{term("run "+schema.Printable(r.Label), codeOfCable(r.Cable)), term("cord", codeOfCable(cord.Cable)), term("port", schema.Printable(port.String()))}
		f.Result, f.Limit, f.Source = "unscreened", "screened", continuitySource.String()
		f.Next = "patch with a screened cord"
		f.Key = []string{r.Label}
		f.Related = []schema.Note{note(r.Entry, "screened run, "+codeOfCable(r.Cable))}
		c.Report(f)
		return
	}
}
