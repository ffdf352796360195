package rules

import (
	"fmt"
	"strings"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// LengthPermanentLink holds the fixed cable between two fronts against the
// length that its category allows.
var LengthPermanentLink = &lint.Rule{
	Name: "length-permanent-link", Title: "Checks that no permanent link of twisted pair is longer than its category allows",
	Severity: lint.Nonconformity, Reach: lint.Along, Limit: lint.GreatestLength, Check: lengthPermanentLink,
}

func lengthPermanentLink(p *lint.Pass) {
	k := newCopper(p)
	for _, l := range p.Plant.Links {
		link, ok := k.link(l)
		length, known := l.Length()
		if !ok || !known {
			continue
		}
		limits, ok := k.limitsOf(link.low)
		if !ok {
			continue
		}
		if most, own := p.Most(limits.PermanentLink); length > most {
			p.Report(linkTooLong(p, &link, length, most, lawOf(limits.Source, own)))
		}
	}
}

func linkTooLong(p *lint.Pass, l *copperLink, length, most unit.Length, law law) lint.Finding {
	shown, limit := length.Beside(most, p.Units())
	f := lint.AboutField(l.Lead().Entry, schema.RunLength.Field)
	f.Severity = law.severity
	f.Message = fmt.Sprintf("%s: permanent link %s, limit %s", schema.Printable(l.Lead().Label), shown, limit)
	f.Working = append(linkTerms(p, l.Link), term("category", l.low.String()))
	f.Result, f.Limit, f.Source = shown, limit, law.source
	f.Next = "shorten the cable, serve the outlet from a nearer room, or use another medium"
	f.Excess = (length - most).Metres()
	for _, r := range l.Runs[1:] {
		f.Related = append(f.Related, note(r.Entry, "is part of the link"))
	}
	return f
}

// linkTerms are the runs that make up a link, and their sum.
func linkTerms(p *lint.Pass, l *plant.Link) []lint.Term {
	terms := make([]lint.Term, 0, len(l.Runs)+3)
	sum := make([]string, 0, len(l.Runs))
	for _, r := range l.Runs {
		length, _ := r.Length()
		sum = append(sum, length.Text(p.Units()))
		terms = append(terms, term("run "+schema.Printable(r.Label), sum[len(sum)-1]))
	}
	if len(l.Runs) > 1 {
		total, _ := l.Length()
		terms = append(terms, term("permanent link", strings.Join(sum, " + ")+" = "+total.Text(p.Units())))
	}
	return terms
}

// LengthChannel holds link and cords together against the length that the
// category allows.
var LengthChannel = &lint.Rule{
	Name: "length-channel", Title: "Checks that no channel of twisted pair, cords included, is longer than its category allows",
	Severity: lint.Nonconformity, Reach: lint.Along, Limit: lint.GreatestLength, Check: lengthChannel,
}

func lengthChannel(p *lint.Pass) {
	k := newCopper(p)
	for _, c := range p.Plant.Channels {
		channel, ok := k.channel(c)
		if !ok {
			continue
		}
		most, own := p.Most(channel.limits.Channel)
		if channel.total() <= most || onlyLinkTooLong(&channel) {
			continue
		}
		p.Report(channelTooLong(p, &channel, most, lawOf(channel.limits.Source, own)))
	}
}

// onlyLinkTooLong says whether a permanent link over its own limit and the
// assumed cords make the channel too long: that is one fault, and the rule for
// the link names it.
func onlyLinkTooLong(c *copperChannel) bool {
	return len(c.Links) == 1 && c.assumed > 0 && c.links > c.limits.PermanentLink
}

func channelTooLong(p *lint.Pass, c *copperChannel, most unit.Length, law law) lint.Finding {
	shown, limit := c.total().Beside(most, p.Units())
	f := lint.About(c.lead().Entry)
	f.Severity = law.severity
	f.Message = fmt.Sprintf("%s: channel %s, limit %s", schema.Printable(c.lead().Label), shown, limit)
	if c.assumed > 0 {
		f.Message += ", cords not recorded are assumed"
	}
	f.Working = append(c.terms(p.Units()), term("category", c.low.String()))
	f.Result, f.Limit, f.Source = shown, limit, law.source
	f.Next = "shorten the cords or the link"
	f.Excess = (c.total() - most).Metres()
	f.Related = partNotes(c)
	return f
}

// partNotes points at the other cables of a channel.
func partNotes(c *copperChannel) []schema.Note {
	var notes []schema.Note
	for _, l := range c.Links {
		for _, r := range l.Runs {
			if r != c.lead() {
				notes = append(notes, note(r.Entry, "is part of the channel"))
			}
		}
	}
	for _, cord := range c.Cords {
		notes = append(notes, note(cord.Entry, "is part of the channel"))
	}
	return notes
}
