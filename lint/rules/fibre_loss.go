package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// CategoryFibreLoss holds the loss of fibre against two limits: what was
// measured of a link against the sum of its parts, and what a channel loses
// against what its application allows.
var CategoryFibreLoss = &lint.Rule{
	Name: "category-fibre-loss", Title: "Checks that no fibre link was measured to lose more than its parts may, and no channel loses more than its application allows",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: categoryFibreLoss,
}

func categoryFibreLoss(p *lint.Pass) {
	g := newLight(p)
	g.Each(func(l *plant.Link, channels []*plant.Channel) {
		var found worst
		for _, r := range l.Runs {
			for _, m := range r.Measured() {
				if f, ok := g.tierOne(l, r, m); ok {
					found = found.with(f)
				}
			}
		}
		for _, c := range channels {
			for _, use := range g.uses(c) {
				if f, ok := g.budget(&use); ok {
					found = found.with(f)
				}
			}
		}
		found.report(p)
	})
}

// tierOne compares the measured loss of a run with the sum of the parts of its
// link. Where the test does not say at which wavelength it was made, the one at
// which fibre may lose most is taken.
func (g *light) tierOne(l *plant.Link, r *plant.Run, t plant.Measured) (f lint.Finding, ok bool) {
	w, sum, ok := g.tierLimit(l, t.At)
	if !ok || t.Loss <= sum.AsLimit() {
		return f, false
	}
	shown, limit := t.Loss.Beside(sum.AsLimit(), g.pass.Units())
	f = lint.About(r.Entry)
	f.Message = fmt.Sprintf("%s: measured loss %s, the parts of the link may lose %s at %s", schema.Printable(r.Label), shown, limit, w)
	wavelength := w.String() + ", as the test says"
	if t.At == 0 {
		wavelength = w.String() + " assumed, where fibre may lose most"
	}
	f.Working = append([]lint.Term{term("measured, test "+schema.Printable(t.Test.Label), shown), term("wavelength", wavelength)}, fibreTerms(&sum, g.pass)...)
	f.Result, f.Limit, f.Source = shown, limit, sumSource(&sum)
	if sum.Confidence != standard.Confirmed {
		f.Severity = lint.Observation
	}
	f.Next = "clean and inspect the connectors, look for tight bends and bad splices, then measure again"
	f.Excess = (t.Loss - sum.AsLimit()).Decibels()
	f.Key = []string{"measured"}
	f.Related = []schema.Note{note(t.Test.Entry, "the measurement")}
	return f, true
}

// tierLimit is the sum of the parts of a link at the wavelength of a test.
func (g *light) tierLimit(l *plant.Link, at standard.Wavelength) (w standard.Wavelength, sum standard.FibreLoss, ok bool) {
	if at != 0 {
		sum, ok = g.linkSum(l, at)
		return at, sum, ok
	}
	for _, candidate := range [...]standard.Wavelength{standard.Nm850, standard.Nm1300, standard.Nm1310, standard.Nm1550} {
		if at, known := g.linkSum(l, candidate); known && (!ok || at.Total > sum.Total) {
			w, sum, ok = candidate, at, true
		}
	}
	return w, sum, ok
}

// sumSource names every figure of a sum once, and what is unsure about it.
func sumSource(sum *standard.FibreLoss) string {
	text := ""
	var last standard.Source
	for i := range sum.Terms {
		if src := sum.Terms[i].Source; src != last {
			if text != "" {
				text += "; "
			}
			text += src.String()
			last = src
		}
	}
	return text
}

// budget compares the loss of a channel with what its application allows. The
// sum is an upper bound, for parts that are no better than they must be: over
// the limit only a measurement can tell.
func (g *light) budget(u *lightUse) (f lint.Finding, ok bool) {
	if verdict, _ := u.reach.JudgeLength(u.total); verdict == standard.NotCarried || u.reach.Loss == 0 || u.certainlyWithin() {
		return f, false
	}
	sum, ok := g.channelSum(&u.lightChannel, u.reach.Wavelength)
	if !ok {
		return f, false
	}
	m := plant.MeasuredLinks(u.Links, u.reach.Wavelength)
	if m.Least > u.reach.Loss {
		return u.measuredOver(g.pass, m), true
	}
	cords, ok := g.cordsSum(&u.lightChannel, u.reach.Wavelength)
	if !ok || sum.AsLoss() <= u.reach.Loss || m.Whole && m.Most <= u.reach.Loss-cords.AsLoss() {
		return f, false
	}
	return u.maybeOver(g.pass, &sum), true
}

// certainlyWithin says in one sum whether a channel of new connections alone,
// none of it measured, is within its budget: most are, and their working need
// not be written out.
func (u *lightUse) certainlyWithin() bool {
	connections := 0
	for _, l := range u.Links {
		for _, r := range l.Runs {
			if len(r.Tests) > 0 {
				return false
			}
		}
		if len(l.Joints) > 0 || u.reach.perKilometre == 0 {
			return false
		}
		connections += l.Connections()
	}
	most := u.total.Metres()/1000*u.reach.perKilometre.Decibels() + mostConnection*float64(connections)
	return most < u.reach.Loss.Decibels()-lossGrain
}

// mostConnection is the most that a connection may lose, in dB.
const mostConnection = 0.75

// measuredOver is a channel whose links were measured to lose too much already.
func (u *lightUse) measuredOver(p *lint.Pass, m plant.LinkLoss) lint.Finding {
	shown, limit := m.Least.Beside(u.reach.Loss, p.Units())
	f := u.finding(u.reach.LossSource)
	f.Message = fmt.Sprintf("%s: measured loss %s, %s over %s allows %s", schema.Printable(u.run.Label), shown, u.application, u.low, limit)
	for _, t := range m.Tests {
		loss, _ := schema.TestLoss.In(t.Record())
		f.Working = append(f.Working, term("measured, test "+schema.Printable(t.Label), loss.Text(p.Units())))
		f.Related = append(f.Related, note(t.Entry, "the measurement"))
	}
	f.Working = append(f.Working, term("channel, at least", shown), term("allowed", limit))
	f.Result, f.Limit = shown, limit
	f.Next = "clean the connectors and measure again, take connections out, or serve it with an application that allows more"
	f.Excess = (m.Least - u.reach.Loss).Decibels()
	return f
}

// maybeOver is a channel that may lose too much, and need not.
func (u *lightUse) maybeOver(p *lint.Pass, sum *standard.FibreLoss) lint.Finding {
	shown, limit := sum.AsLoss().Beside(u.reach.Loss, p.Units())
	f := u.finding(u.reach.LossSource)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: parts that just keep their standard lose %s, %s over %s allows %s", schema.Printable(u.run.Label), shown, u.application, u.low, limit)
	f.Working = append(f.Working, term("wavelength", u.reach.Wavelength.String()))
	f.Working = append(f.Working, fibreTerms(sum, p)...)
	left, _ := u.reach.Left(fibreOnly(sum))
	f.Working = append(f.Working, term("allowed", limit), term("left for connections and splices", left.Text(p.Units())))
	f.Result, f.Limit = shown, limit
	if sum.Confidence != standard.Confirmed && u.reach.LossSource.Sure() {
		f.Source += "; figures of the sum unconfirmed: check the printed standard"
	}
	f.Next = "measure the channel and state the loss, or use connections of lower loss, or fewer"
	f.Excess = (sum.AsLoss() - u.reach.Loss).Decibels()
	f.Related = u.notes()
	return f
}

// fibreOnly is what the fibre of a sum loses, without its joints.
func fibreOnly(sum *standard.FibreLoss) unit.Loss {
	loss := 0.0
	for i := range sum.Terms {
		if sum.Terms[i].Count == 0 {
			loss += sum.Terms[i].Loss
		}
	}
	return unit.Loss(loss * float64(unit.Decibel))
}
