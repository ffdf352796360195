package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// CategoryApplication holds what a run is there for against what its category
// carries over the length of its channel. There are three answers: it carries
// it, it does not, or it depends on what a record can not tell.
var CategoryApplication = &lint.Rule{
	Name: "category-application", Title: "Checks that the channel of a run carries the application that the run serves",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: categoryApplication,
}

func categoryApplication(p *lint.Pass) {
	k := newCopper(p)
	for _, c := range p.Plant.Channels {
		r := servingRun(c)
		if r == nil {
			continue
		}
		serves, _ := schema.RunServes.In(r.Record())
		application, err := standard.ParseApplication(serves)
		if err != nil {
			otherMedium(p, k, r, serves)
			continue
		}
		if k.carriesAnyway(c, application) {
			continue
		}
		channel, ok := k.channel(c)
		if !ok {
			continue
		}
		check := reachCheck{pass: p, channel: &channel, run: r, application: application}
		check.judge()
	}
}

// carriesAnyway says whether the lowest cable of a channel carries the
// application over the whole length that a channel may have: then nothing is
// to be measured.
func (k *copper) carriesAnyway(c *plant.Channel, application standard.Application) bool {
	for _, l := range c.Links {
		for _, r := range l.Runs {
			reach, ok := standard.ReachOf(application, k.of.at(r.Cable).category, standard.Unscreened)
			if !ok || reach.Sure < officeChannel {
				return false
			}
		}
	}
	return true
}

// servingRun is the run of a channel that says what it is there for. Where
// several do, the fastest over twisted pair counts.
func servingRun(c *plant.Channel) *plant.Run {
	var run *plant.Run
	fastest := standard.Application(0)
	for _, l := range c.Links {
		for _, r := range l.Runs {
			serves, stated := schema.RunServes.In(r.Record())
			if !stated {
				continue
			}
			application, _ := standard.ParseApplication(serves)
			if run == nil || application > fastest {
				run, fastest = r, application
			}
		}
	}
	return run
}

// otherMedium finds applications over fibre that stand at a twisted pair.
func otherMedium(p *lint.Pass, k *copper, r *plant.Run, serves string) {
	t, known := k.of.get(r.Cable)
	if !known || !r.Live() || !overFibre(serves) {
		return
	}
	f := lint.AboutField(r.Entry, schema.RunServes.Field)
	f.Message = fmt.Sprintf("%s: %s is an application over fibre, the cable is category %s", schema.Printable(r.Label), serves, t.category)
	f.Working = []lint.Term{term("serves", serves), term("cable", schema.Printable(r.Cable.Label)+", category "+t.category.String())}
	f.Result, f.Limit, f.Source = serves, "an application over twisted pair", "IEEE 802.3, the application's own medium"
	f.Next = "correct serves, or the type of cable"
	f.Key = []string{"medium"}
	p.Report(f)
}

// overFibre says whether a word names an Ethernet application that is not
// over twisted pair, as against plain words such as "voice".
func overFibre(serves string) bool {
	switch serves {
	case "", "voice", "video", "access-control", "building-control", "other":
		return false
	}
	return true
}

// reachCheck judges one channel for one application.
type reachCheck struct {
	pass        *lint.Pass
	channel     *copperChannel
	run         *plant.Run
	application standard.Application
}

func (c *reachCheck) judge() {
	reach, ok := standard.ReachOf(c.application, c.channel.low, c.channel.shield)
	if !ok {
		return
	}
	total := c.channel.total()
	verdict, src := reach.Judge(total)
	switch {
	case verdict == standard.Carries:
	case reach.Possible == 0:
		c.refuse(reach, src)
	case total > c.channel.limits.Channel && reach.Possible >= c.channel.limits.Channel:
		// Too long for whatever it carries: length-channel names it.
	case verdict == standard.Conditional:
		c.condition(reach, src, total)
	default:
		c.beyond(reach, src, total)
	}
}

// refuse is a category that does not carry the application at any length.
func (c *reachCheck) refuse(reach standard.Reach, src standard.Source) {
	f := c.finding(src)
	f.Message = fmt.Sprintf("%s: category %s does not carry %s, which needs category %s", schema.Printable(c.run.Label), c.channel.low, c.application, reach.Least)
	f.Result, f.Limit = "category "+c.channel.low.String(), "category "+reach.Least.String()
	f.Next = fmt.Sprintf("serve it over category %s or better, or state what it really serves", reach.Least)
	f.Excess = float64(reach.Least.Rank() - c.channel.low.Rank())
	c.pass.Report(f)
}

// condition is a channel of which nobody can tell from a record.
func (c *reachCheck) condition(reach standard.Reach, src standard.Source, total unit.Length) {
	f := c.finding(src)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: %s over category %s carries if %s", schema.Printable(c.run.Label), c.application, c.channel.low, reach.Condition)
	f.Result, f.Limit = total.Text(c.pass.Units()), "no condition"
	f.Next = "measure what it depends on, or serve it over category 6A"
	if reach.Sure > 0 {
		shown, limit := total.Beside(reach.Sure, c.pass.Units())
		f.Message = fmt.Sprintf("%s: channel %s, %s over category %s carries beyond %s only if %s", schema.Printable(c.run.Label),
			shown, c.application, c.channel.low, limit, reach.Condition)
		f.Result, f.Limit = shown, limit
		f.Excess = (total - reach.Sure).Metres()
	}
	f.Working = append(c.channel.terms(c.pass.Units()), f.Working...)
	f.Working = append(f.Working, term("carries in any case to", reach.Sure.Text(c.pass.Units())), term("carries on a condition to", reach.Possible.Text(c.pass.Units())))
	c.pass.Report(f)
}

// beyond is a channel that is longer than the application reaches. Where only
// the assumed cords make it so, nothing is certain.
func (c *reachCheck) beyond(reach standard.Reach, src standard.Source, total unit.Length) {
	shown, limit := total.Beside(reach.Possible, c.pass.Units())
	f := c.finding(src)
	f.Message = fmt.Sprintf("%s: channel %s, %s over category %s reaches %s", schema.Printable(c.run.Label), shown, c.application, c.channel.low, limit)
	if total-c.channel.assumed <= reach.Possible {
		f.Severity = lint.Observation
		f.Message += ", cords not recorded are assumed"
	}
	f.Working = append(c.channel.terms(c.pass.Units()), f.Working...)
	if reach.Sure < reach.Possible {
		f.Working = append(f.Working, term("carries in any case to", reach.Sure.Text(c.pass.Units())))
	}
	f.Working = append(f.Working, term("carries at most to", limit))
	f.Result, f.Limit = shown, limit
	f.Next = "shorten the channel, or serve it over category 6A or better"
	f.Excess = (total - reach.Possible).Metres()
	c.pass.Report(f)
}

func (c *reachCheck) finding(src standard.Source) lint.Finding {
	f := lint.AboutField(c.run.Entry, schema.RunServes.Field)
	f.Severity = degree(src)
	f.Working = []lint.Term{
		term("category", c.channel.low.String()+", "+screenWords(c.channel.shield)),
		term("serves", c.application.String()),
	}
	f.Source = src.String()
	f.Key = []string{c.application.String()}
	return f
}
