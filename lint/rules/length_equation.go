package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// The part of length-cords for plants of ISO/IEC 11801.

// patch checks the cords that join two panels.
func (c *cordCheck) patch() {
	most, src, ok := standard.PatchCordCap(c.pass.Plant.Regime)
	if !ok {
		return
	}
	for _, cord := range c.channel.Cords {
		length, stated := cord.CordLength()
		if !stated || length <= most || !joinsPanels(cord) {
			continue
		}
		shown, limit := length.Beside(most, c.pass.Units())
		f := lint.AboutField(cord.Entry, schema.CordLength.Field)
		f.Severity = degree(src)
		f.Message = fmt.Sprintf("%s: patch cord %s, limit %s", schema.Printable(cord.Label), shown, limit)
		f.Working = []lint.Term{term("cord "+schema.Printable(cord.Label), shown), term("joins", schema.Printable(cord.From.String()+" and "+cord.To.String()))}
		f.Result, f.Limit, f.Source = shown, limit, src.String()
		f.Next = "use a shorter cord"
		f.Excess = (length - most).Metres()
		c.pass.Report(f)
	}
}

func joinsPanels(cord *plant.Cord) bool {
	return cord.From != nil && cord.To != nil && cord.From.Holder.Kind.Name == schema.KindPanel && cord.To.Holder.Kind.Name == schema.KindPanel
}

// equations checks the fixed cable by the equation of the channel's model.
// Only a channel whose cords are all recorded is judged: the allowance says
// nothing of their loss.
func (c *cordCheck) equations() {
	if c.channel.OpenStart || c.channel.OpenEnd || c.channel.assumed > 0 {
		return
	}
	link, fixed := c.isoLink()
	ratio, how, sure := c.cordLoss()
	if ratio == 0 || link.Model == 0 {
		return
	}
	link.CordLoss = ratio
	most, ok := standard.ISOFixedLength(link)
	if !ok || fixed <= most.Most {
		return
	}
	in := c.pass.Units()
	shown, limit := fixed.Beside(most.Most, in)
	f := c.finding(shown, limit)
	f.Severity = degree(most.Source)
	if !sure {
		f.Severity = lint.Observation
	}
	f.Message = fmt.Sprintf("%s: fixed cable %s, limit %s beside cords of %s", schema.Printable(c.channel.lead().Label), shown, limit, c.channel.cords.Text(in))
	f.Working = append(f.Working,
		term("model", link.Model.String()), term("class", c.channel.low.Class()),
		term("F, cords together", link.Cords.Text(in)),
		term("X, loss of cord to fixed cable", percentWords(ratio)+", "+how))
	sum := fmt.Sprintf("%s - %s x %s", most.Base.Text(in), link.Cords.Text(in), percentWords(ratio))
	if link.Model.HasConsolidation() {
		f.Working = append(f.Working, term("C, cable from the consolidation point", link.CP.Text(in)), term("Y, its loss to fixed cable", percentWords(link.CPLoss)))
		sum += fmt.Sprintf(" - %s x %s", link.CP.Text(in), percentWords(link.CPLoss))
	}
	f.Working = append(f.Working, term("longest fixed cable", sum+" = "+most.Computed.Text(in)), term("fixed cable", shown))
	f.Source = most.Source.String()
	f.Next = "shorten the fixed cable or the cords"
	f.Excess = (fixed - most.Most).Metres()
	c.pass.Report(f)
}

// isoLink is what the equation is computed from, and the fixed cable; the model
// is zero for a link that none of the models describes.
func (c *cordCheck) isoLink() (standard.ISOLink, unit.Length) {
	l := c.channel.Links[0]
	out := standard.ISOLink{Category: c.channel.low, Cords: c.channel.cords, Model: standard.Interconnect}
	if c.channel.CrossConnected() {
		out.Model = standard.CrossConnect
	}
	if len(l.Joints) == 0 {
		return out, c.channel.links
	}
	_, fixed, known := firstPoint(l)
	if len(l.Joints) > 1 || !known {
		return standard.ISOLink{}, 0
	}
	out.Model += standard.InterconnectCP - standard.Interconnect
	out.CP = c.channel.links - fixed
	out.CPLoss = 100
	if t := c.copper.of.at(l.Runs[1].Cable); t.wireKnown {
		percent, _, ok := standard.CordDerating(t.category, t.wire)
		if !ok {
			return standard.ISOLink{}, 0
		}
		out.CPLoss += percent
	}
	return out, fixed
}

// cordLoss is X in percent: that of the thinnest cord. Where a cord does not
// state its conductors it is the one that the channel limit itself assumes,
// and the verdict is not sure. Zero is a gauge without a figure.
func (c *cordCheck) cordLoss() (percent int, how string, sure bool) {
	sure = true
	for _, cord := range c.channel.Cords {
		t := c.copper.of.at(cord.Cable)
		add, src, ok := standard.AssumedCordDerating(standard.ISO)
		words := "assumed, " + schema.Printable(cord.Label) + " states no conductors"
		if t.wireKnown {
			add, src, ok = standard.CordDerating(t.category, t.wire)
			words = t.wire.String()
		} else {
			sure = false
		}
		if !ok {
			return 0, "", false
		}
		sure = sure && src.Sure()
		if 100+add > percent {
			percent, how = 100+add, words
		}
	}
	return percent, how, sure
}

func percentWords(percent int) string { return decimals(float64(percent)/100, 2) }
