package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// CategoryFibreReach holds what a fibre run is there for against how far its
// class of fibre carries that. There are three answers: it carries it, it does
// not, or it depends on what a record can not tell.
var CategoryFibreReach = &lint.Rule{
	Name: "category-fibre-reach", Title: "Checks that the fibre of a channel carries the application that it serves over its length",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: categoryFibreReach,
}

func categoryFibreReach(p *lint.Pass) {
	g := newLight(p)
	g.Each(func(l *plant.Link, channels []*plant.Channel) {
		var found worst
		for _, r := range l.Runs {
			if f, ok := overCopper(g, r); ok {
				found = found.with(f)
			}
		}
		for _, c := range channels {
			for _, use := range g.uses(c) {
				if f, ok := use.judgeReach(p); ok {
					found = found.with(f)
				}
			}
		}
		found.report(p)
	})
}

// overCopper finds applications over twisted pair that stand at a fibre cable.
func overCopper(g *light, r *plant.Run) (f lint.Finding, ok bool) {
	serves, stated := schema.RunServes.In(r.Record())
	if _, other := standard.ParseOpticalApplication(serves); !stated || other == nil {
		return f, false
	}
	application, err := standard.ParseApplication(serves)
	if err != nil {
		return f, false
	}
	f = lint.AboutField(r.Entry, schema.RunServes.Field)
	class := g.of.at(r.Cable).String()
	f.Message = fmt.Sprintf("%s: %s is an application over twisted pair, the cable is %s fibre", schema.Printable(r.Label), application, class)
	f.Working = []lint.Term{term("serves", application.String()), term("cable", schema.Printable(r.Cable.Label)+", "+class)}
	f.Result, f.Limit, f.Source = application.String(), "an application over fibre", "IEEE 802.3, the application's own medium"
	f.Next = "correct serves, or the type of cable"
	f.Key = []string{"medium"}
	return f, true
}

// judgeReach compares the length of a channel with the reach of its application;
// ok is false where it carries it.
func (u *lightUse) judgeReach(p *lint.Pass) (f lint.Finding, ok bool) {
	verdict, src := u.reach.JudgeLength(u.total)
	switch {
	case verdict == standard.Carries:
		return f, false
	case u.reach.Possible == 0:
		return u.refuse(src), true
	case verdict == standard.Conditional:
		return u.condition(p, src), true
	}
	return u.beyond(p, src), true
}

// refuse is a fibre that does not carry the application at any length.
func (u *lightUse) refuse(src standard.Source) lint.Finding {
	f := u.finding(src)
	f.Message = fmt.Sprintf("%s: %s does not carry %s", schema.Printable(u.run.Label), u.low, u.application)
	f.Result, f.Limit = u.low.String(), "a fibre that "+u.application.String()+" is made for"
	f.Next = "serve it over another class of fibre, or state what it really serves"
	f.Excess = 1
	return f
}

// condition is a channel of which nobody can tell from a record.
func (u *lightUse) condition(p *lint.Pass, src standard.Source) lint.Finding {
	f := u.finding(src)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: channel %s, %s over %s carries only if %s", schema.Printable(u.run.Label), u.total.Text(p.Units()), u.application, u.low, u.reach.Condition)
	f.Result, f.Limit = u.total.Text(p.Units()), "no condition"
	if u.reach.Sure > 0 {
		shown, limit := u.total.Beside(u.reach.Sure, p.Units())
		f.Message = fmt.Sprintf("%s: channel %s, %s over %s carries beyond %s only if %s", schema.Printable(u.run.Label), shown, u.application, u.low, limit, u.reach.Condition)
		f.Result, f.Limit = shown, limit
	}
	f.Working = append(f.Working, u.terms(p)...)
	if u.reach.Sure > 0 {
		f.Working = append(f.Working, term("carries in any case to", u.reach.Sure.Text(p.Units())))
	}
	f.Working = append(f.Working, term("carries on a condition to", u.reach.Possible.Text(p.Units())))
	f.Next = "see to that condition and write it down, or shorten the channel"
	f.Excess = (u.total - u.reach.Sure).Metres()
	f.Related = u.notes()
	return f
}

// beyond is a channel that is longer than the application reaches. Where a
// better fibre than the lowest reaches it, nothing is certain of their mix.
func (u *lightUse) beyond(p *lint.Pass, src standard.Source) lint.Finding {
	shown, limit := u.total.Beside(u.reach.Possible, p.Units())
	f := u.finding(src)
	f.Message = fmt.Sprintf("%s: channel %s, %s over %s reaches %s", schema.Printable(u.run.Label), shown, u.application, u.low, limit)
	if best, ok := standard.OpticalReachOf(u.application, u.high); u.low != u.high && (!ok || u.total <= best.Possible) {
		f.Severity = lint.Observation
		f.Message += ", the lowest class in it"
	}
	f.Working = append(f.Working, u.terms(p)...)
	f.Working = append(f.Working, term("carries at most to", limit))
	f.Result, f.Limit = shown, limit
	f.Next = "shorten the channel, lay a better class of fibre, or serve it with an application of longer reach"
	f.Excess = (u.total - u.reach.Possible).Metres()
	f.Related = u.notes()
	return f
}

func (u *lightUse) finding(src standard.Source) lint.Finding {
	f := lint.AboutField(u.run.Entry, schema.RunServes.Field)
	f.Severity = degree(src)
	f.Working = []lint.Term{term("fibre", u.class()), term("serves", u.application.String())}
	f.Source = src.String()
	f.Key = []string{u.application.String()}
	return f
}
