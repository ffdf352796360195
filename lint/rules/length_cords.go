package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// LengthCords holds the cords of a channel against what the fixed cable leaves
// them: by the open office formula of ANSI/TIA-568, or by the length equations
// of ISO/IEC 11801.
var LengthCords = &lint.Rule{
	Name: "length-cords", Title: "Checks that cords are no longer than the fixed cable leaves them",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: lengthCords,
}

func lengthCords(p *lint.Pass) {
	k := newCopper(p)
	for _, c := range p.Plant.Channels {
		if len(c.Cords) == 0 || len(c.Links) != 1 {
			continue // the formulas are those of one horizontal link
		}
		if p.Plant.Regime == standard.TIA && shortCords(c) {
			continue
		}
		channel, ok := k.channel(c)
		if !ok || channel.tooLong() {
			continue
		}
		check := cordCheck{pass: p, copper: k, channel: &channel}
		if p.Plant.Regime == standard.ISO {
			check.patch()
			check.workArea(24) // the cap of ISO/IEC holds for every gauge
			check.equations()
			continue
		}
		gauge, how := check.gauge()
		if gauge == 0 {
			continue
		}
		if !check.workArea(gauge) {
			check.office(gauge, how)
		}
	}
}

// shortCords says whether the cords are too short for any limit of ANSI/TIA:
// beside 90 m, 26 AWG, all cords may have 8 m and a work-area cord 4 m.
func shortCords(c *plant.Channel) bool {
	sum, known := c.CordLength()
	if !known || sum > 8*unit.Metre {
		return false
	}
	cord, _ := multiUserCord(c)
	return cord == nil || sum <= 4*unit.Metre
}

// cordCheck holds the cords of one channel against the formulas.
type cordCheck struct {
	pass    *lint.Pass
	copper  *copper
	channel *copperChannel
}

// The gauges that the open office formula knows.
const (
	thickCord = 24
	thinCord  = 26
)

// officeChannel is the channel that the formula divides: the short channel of
// category 8 has no open office.
const officeChannel = 100 * unit.Metre

// gauge is the row of the formula that the cords take: that of the thinnest.
// Zero is a gauge for which there is no row.
func (c *cordCheck) gauge() (gauge int, how string) {
	gauge, how = thickCord, ""
	for _, cord := range c.channel.Cords {
		t := c.copper.of.at(cord.Cable)
		switch {
		case !t.wireKnown:
			how = "not stated for " + schema.Printable(cord.Label) + ", taken as 24 AWG"
		case t.wire.Gauge > thinCord:
			return 0, ""
		case t.wire.Gauge > thickCord:
			return thinCord, t.wire.String() + ", " + schema.Printable(cord.Label)
		case how == "":
			how = t.wire.String() + ", " + schema.Printable(cord.Label)
		}
	}
	return gauge, how
}

// office checks all cords together. Lengths that are not recorded are not
// counted: what is certain is too long.
func (c *cordCheck) office(gauge int, how string) {
	o, ok := standard.OpenOfficeCords(c.channel.links, gauge)
	if !ok || c.channel.limits.Channel < officeChannel || c.channel.cords <= o.Cords {
		return
	}
	shown, limit := c.channel.cords.Beside(o.Cords, c.pass.Units())
	f := c.finding(shown, limit)
	f.Severity = degree(o.Source)
	f.Message = fmt.Sprintf("%s: cords %s together, limit %s beside %s of fixed cable", schema.Printable(c.channel.lead().Label), shown, limit,
		c.channel.links.Text(c.pass.Units()))
	f.Working = append(f.Working, c.officeTerms(&o, how)...)
	f.Source = o.Source.String()
	f.Excess = (c.channel.cords - o.Cords).Metres()
	c.pass.Report(f)
}

func (c *cordCheck) officeTerms(o *standard.OpenOffice, how string) []lint.Term {
	in := c.pass.Units()
	derating := fmt.Sprintf("0.%d", o.Derating/10)
	terms := []lint.Term{
		term("H, fixed cable", o.Fixed.Text(in)),
		term("conductors of the cords", how),
		term("D, loss of cords beyond fixed cable", derating),
		term("C = (102 m - H)/(1 + D)", fmt.Sprintf("(102 m - %s)/(1 + %s) = %s", o.Fixed.Text(unit.Metric), derating, o.Computed.Text(in))),
	}
	if o.Cords < o.Computed {
		terms = append(terms, term("C, with the cap on the work-area cord", fmt.Sprintf("%s + %s = %s", o.Cap.Text(in), o.Room.Text(in), o.Cords.Text(in))))
	}
	return terms
}

// workArea checks the cord at an outlet that serves several work areas, and
// says whether it reported one.
func (c *cordCheck) workArea(gauge int) bool {
	cord, at := multiUserCord(c.channel.Channel)
	if cord == nil {
		return false
	}
	length, known := cord.CordLength()
	most, src, ok := standard.MultiUserCordCap(c.pass.Plant.Regime, gauge)
	if !known || !ok {
		return false
	}
	working := []lint.Term{term("cap on a work-area cord", most.Text(c.pass.Units()))}
	if c.pass.Plant.Regime == standard.TIA && length <= most {
		o, rowed := standard.OpenOfficeCords(c.channel.links, gauge)
		if !rowed {
			return false
		}
		most, src = o.WorkArea, o.Source
		_, how := c.gauge()
		working = append(c.officeTerms(&o, how), term("T, cords in the room", o.Room.Text(c.pass.Units())),
			term("W = C - T", fmt.Sprintf("%s - %s = %s", o.Cords.Text(c.pass.Units()), o.Room.Text(c.pass.Units()), o.WorkArea.Text(c.pass.Units()))))
	}
	if length <= most {
		return false
	}
	shown, limit := length.Beside(most, c.pass.Units())
	f := lint.AboutField(cord.Entry, schema.CordLength.Field)
	f.Severity = degree(src)
	f.Message = fmt.Sprintf("%s: work-area cord %s at the multi-user outlet %s, limit %s", schema.Printable(cord.Label), shown, schema.Printable(at.Label), limit)
	f.Working = append([]lint.Term{term("cord "+schema.Printable(cord.Label), shown)}, working...)
	f.Result, f.Limit, f.Source = shown, limit, src.String()
	f.Next = "use a shorter cord, or place the outlet nearer"
	f.Key = []string{at.Label}
	f.Excess = (length - most).Metres()
	f.Related = []schema.Note{note(at.Entry, "the multi-user outlet"), note(c.channel.lead().Entry, "the run behind it")}
	c.pass.Report(f)
	return true
}

// multiUserCord is the cord in front of a multi-user outlet.
func multiUserCord(c *plant.Channel) (*plant.Cord, *plant.Holder) {
	for _, cord := range c.Cords {
		for _, port := range []*plant.Port{cord.From, cord.To} {
			if port == nil || port.Holder.Kind.Name != schema.KindOutlet {
				continue
			}
			if kind, stated := schema.OutletKind.In(port.Holder.Record()); stated && kind == "multi-user" {
				return cord, port.Holder
			}
		}
	}
	return nil, nil
}

// finding starts a finding about the channel.
func (c *cordCheck) finding(shown, limit string) lint.Finding {
	lead := c.channel.lead()
	f := lint.About(lead.Entry)
	for _, cord := range c.channel.Cords {
		length, stated := cord.CordLength()
		value := length.Text(c.pass.Units())
		if !stated {
			value = "not stated, not counted"
		}
		f.Working = append(f.Working, term("cord "+schema.Printable(cord.Label), value))
	}
	f.Working = append(f.Working, term("cords together", c.channel.cords.Text(c.pass.Units())))
	f.Result, f.Limit = shown, limit
	f.Next = "use shorter cords, or cords of thicker conductors"
	f.Related = partNotes(c.channel)
	return f
}
