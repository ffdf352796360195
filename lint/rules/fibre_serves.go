package rules

import (
	"strings"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// A lightUse is a channel of fibre with the application that it is there for
// and the run that says so.
type lightUse struct {
	lightChannel
	run         *plant.Run
	application standard.OpticalApplication
	reach       lightReach
}

// uses are the applications of a channel. Where its runs are there for
// different ones, nobody can tell which of them the whole channel carries, and
// each link answers for its own.
func (g *light) uses(c *plant.Channel) []lightUse {
	run, application, agreed := opticalUse(c)
	if agreed {
		return g.use(nil, c, run, application)
	}
	var all []lightUse
	for _, l := range c.Links {
		alone := &plant.Channel{Parts: []plant.Part{{Link: l}}, Links: []*plant.Link{l}, Start: l.From, End: l.To}
		if own, what, ok := opticalUse(alone); ok {
			all = g.use(all, alone, own, what)
		}
	}
	return all
}

func (g *light) use(all []lightUse, c *plant.Channel, run *plant.Run, application standard.OpticalApplication) []lightUse {
	if run == nil {
		return all
	}
	view, ok := g.channel(c)
	if !ok {
		return all
	}
	reach := g.reach(application, view.low)
	if !reach.known {
		return all
	}
	return append(all, lightUse{lightChannel: view, run: run, application: application, reach: reach})
}

// opticalUse is the application over fibre that the runs of a channel serve, and
// the first that says so; agreed is false where two say different things.
func opticalUse(c *plant.Channel) (run *plant.Run, application standard.OpticalApplication, agreed bool) {
	for _, l := range c.Links {
		for _, r := range l.Runs {
			serves, stated := schema.RunServes.In(r.Record())
			a, err := standard.ParseOpticalApplication(serves)
			if !stated || err != nil {
				continue
			}
			if run != nil && a != application {
				return nil, 0, false
			}
			if run == nil {
				run, application = r, a
			}
		}
	}
	return run, application, true
}

// worst keeps one finding for each record and key: the fibres of one cable
// differ by their cords alone, and one finding about them is enough.
type worst []lint.Finding

func (w worst) with(f lint.Finding) worst {
	for i := range w {
		if w[i].Kind == f.Kind && w[i].Record == f.Record && strings.Join(w[i].Key, "\x00") == strings.Join(f.Key, "\x00") {
			if f.Excess > w[i].Excess {
				w[i] = f
			}
			return w
		}
	}
	return append(w, f)
}

func (w worst) report(p *lint.Pass) {
	for _, f := range w {
		p.Report(f)
	}
}

// class is the fibre of the channel in words.
func (c *lightChannel) class() string {
	if c.low == c.high {
		return c.low.String()
	}
	return c.low.String() + " and " + c.high.String() + ", counted as " + c.low.String()
}

// terms are the lengths that make up the channel, and their sum.
func (c *lightChannel) terms(p *lint.Pass) []lint.Term {
	in := p.Units()
	var terms []lint.Term
	var sum []string
	for _, part := range c.Parts {
		if part.Cord != nil {
			length, stated := part.Cord.CordLength()
			if !stated {
				terms = append(terms, term("cord "+schema.Printable(part.Cord.Label), "length not stated, not counted"))
				continue
			}
			terms = append(terms, term("cord "+schema.Printable(part.Cord.Label), length.Text(in)))
			sum = append(sum, length.Text(in))
			continue
		}
		for _, r := range part.Link.Runs {
			length, _ := r.Length()
			terms = append(terms, term("run "+schema.Printable(r.Label), length.Text(in)))
			sum = append(sum, length.Text(in))
		}
	}
	total := c.total.Text(in)
	if len(sum) > 1 {
		total = strings.Join(sum, " + ") + " = " + total
	}
	return append(terms, term("channel, as far as it is recorded", total))
}

// notes are the other records of the channel.
func (u *lightUse) notes() []schema.Note {
	var notes []schema.Note
	for _, part := range u.Parts {
		if part.Cord != nil {
			notes = append(notes, note(part.Cord.Entry, "is part of the channel"))
			continue
		}
		for _, r := range part.Link.Runs {
			if r != u.run {
				notes = append(notes, note(r.Entry, "is part of the channel"))
			}
		}
	}
	return notes
}
