package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// CategoryWeakest finds jacks, cords and cables of a lower category than the
// cable that they are joined to: a link is of the category of its lowest part.
var CategoryWeakest = &lint.Rule{
	Name: "category-weakest", Title: "Checks that no jack, cord or cable makes a link less than its cable, and than what it serves",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: categoryWeakest,
}

// weakPart is a part of a lower category, with the links that it lowers.
type weakPart struct {
	part     schema.Entry
	what     string
	category standard.Category
	cable    standard.Category
	first    *plant.Run
	links    int
}

func categoryWeakest(p *lint.Pass) {
	check := weakCheck{pass: p, copper: newCopper(p), of: make(map[*schema.Record]*weakPart)}
	for _, l := range p.Plant.Links {
		if link, ok := check.copper.link(l); ok {
			check.link(&link)
		}
	}
	for _, w := range check.weak {
		p.Report(w.finding())
	}
}

type weakCheck struct {
	pass   *lint.Pass
	copper *copper
	weak   []*weakPart
	of     map[*schema.Record]*weakPart
}

// link looks at every part of a link and at the cords in front of it.
func (c *weakCheck) link(l *copperLink) {
	c.jack(l, l.From)
	c.jack(l, l.To)
	for _, joint := range l.Joints {
		c.jack(l, joint)
	}
	if l.low.Weaker(l.high) {
		for _, r := range l.Runs {
			if own := c.copper.of.at(r.Cable).category; own.Weaker(l.high) {
				c.add(l, r.Entry, "cable", own)
			}
		}
	}
	for _, end := range [...]*plant.Port{l.From, l.To} {
		if end == nil || end.Front == nil || end.Holder.IsEquipment() {
			continue
		}
		if own, known := c.copper.of.get(end.Front.Cable); known && own.category.Weaker(l.high) {
			c.add(l, end.Front.Entry, "cord", own.category)
		}
	}
}

func (c *weakCheck) jack(l *copperLink, port *plant.Port) {
	if port == nil {
		return
	}
	word, stated := port.Holder.Category()
	if !stated {
		return
	}
	own, err := standard.ParseCategory(word)
	if err == nil && own.Weaker(l.high) {
		c.add(l, port.Holder.Entry, port.Holder.Kind.Name, own)
	}
}

// add counts a weak part, or reports the link at once where the part keeps it
// from carrying what it serves.
func (c *weakCheck) add(l *copperLink, part schema.Entry, what string, own standard.Category) {
	if what != "cable" { // of the cables, category-application speaks
		if x, ok := c.fails(l, own); ok {
			c.pass.Report(x.finding(c.pass, l, part, what, own))
			return
		}
	}
	w := c.of[part.Record]
	if w == nil {
		w = &weakPart{part: part, what: what, category: own, cable: l.high, first: l.Lead()}
		c.of[part.Record] = w
		c.weak = append(c.weak, w)
	}
	w.links++
}

// failure is what a weak part keeps a link from.
type failure struct {
	run         *plant.Run
	application standard.Application
	with        standard.Reach
	// channel is the length that the part can not carry; zero where it
	// carries the application at no length.
	channel unit.Length
}

// fails says whether the link serves an application that its cables carry and
// the weak part does not. Only recorded lengths count.
func (c *weakCheck) fails(l *copperLink, own standard.Category) (failure, bool) {
	for _, r := range l.Runs {
		serves, stated := schema.RunServes.In(r.Record())
		application, err := standard.ParseApplication(serves)
		if !stated || err != nil {
			continue
		}
		by, ok := standard.ReachOf(application, l.low, l.shield)
		with, known := standard.ReachOf(application, own, l.shield)
		if !ok || !known || by.Possible == 0 {
			continue
		}
		if with.Possible == 0 {
			return failure{run: r, application: application, with: with}, true
		}
		channel, stated := c.copper.channel(l.Channel)
		length := channel.links.Plus(channel.cords)
		if stated && length > with.Possible && length <= by.Possible {
			return failure{run: r, application: application, with: with, channel: length}, true
		}
	}
	return failure{}, false
}

// lowestPart is where it stands that a link is of the category of its lowest
// part.
var lowestPart = standard.Source{Body: "ANSI/TIA", Edition: "568.2-D", Clause: "compatibility of categories: the lowest component classes the link", Confidence: standard.FromMemory}

func (x *failure) finding(p *lint.Pass, l *copperLink, part schema.Entry, what string, own standard.Category) lint.Finding {
	f := lint.About(x.run.Entry)
	f.Severity = degree(x.with.Source)
	name := schema.Printable(part.Name())
	f.Working = []lint.Term{
		term("cable", "category "+l.low.String()),
		term(what+" "+name, "category "+own.String()),
		term("link, by its lowest part", "category "+own.String()),
		term("serves", x.application.String()),
	}
	f.Source = x.with.Source.String()
	f.Key = []string{part.Name()}
	f.Related = []schema.Note{note(part, "the lowest part")}
	f.Next = fmt.Sprintf("exchange the %s for one of category %s", what, l.low)
	if x.channel == 0 {
		f.Message = fmt.Sprintf("%s: the %s %s is category %s, %s needs category %s", schema.Printable(x.run.Label), what, name, own, x.application, x.with.Least)
		f.Working = append(f.Working, term("needs", "category "+x.with.Least.String()))
		f.Result, f.Limit = "category "+own.String(), "category "+x.with.Least.String()
		f.Excess = float64(x.with.Least.Rank() - own.Rank())
		return f
	}
	shown, limit := x.channel.Beside(x.with.Possible, p.Units())
	f.Message = fmt.Sprintf("%s: the %s %s is category %s, over which %s reaches %s, the channel is %s", schema.Printable(x.run.Label), what, name, own, x.application, limit, shown)
	f.Working = append(f.Working, term("channel, as far as it is recorded", shown), term("carries at most to", limit))
	f.Result, f.Limit = shown, limit
	f.Excess = (x.channel - x.with.Possible).Metres()
	return f
}

func (w *weakPart) finding() lint.Finding {
	f := lint.About(w.part)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: this %s is category %s on category %s cable, so %s", schema.Printable(w.part.Name()), w.what, w.category, w.cable,
		counted(w.links, "link is category ", "links are category ")+w.category.String())
	f.Working = []lint.Term{
		term("cable", "category "+w.cable.String()),
		term(w.what, "category "+w.category.String()),
		term("links", fmt.Sprintf("%d, the first is %s", w.links, schema.Printable(w.first.Label))),
	}
	f.Result, f.Limit, f.Source = "category "+w.category.String(), "category "+w.cable.String(), lowestPart.String()
	f.Next = fmt.Sprintf("exchange it for category %s, or count the links as category %s", w.cable, w.category)
	f.Key = []string{w.cable.String()}
	f.Excess = float64(w.links)
	if w.first.Record() != w.part.Record {
		f.Related = []schema.Note{note(w.first.Entry, "the first of the links")}
	}
	return f
}
