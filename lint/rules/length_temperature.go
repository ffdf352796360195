package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// LengthTemperature holds the fixed cable against the length that the hottest
// space on its way leaves it: a warm cable loses more.
var LengthTemperature = &lint.Rule{
	Name: "length-temperature", Title: "Checks that no permanent link is longer than the hottest space on its way allows",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: lengthTemperature,
}

// hottestRow is where tables and percentages end; beyond it a cable is allowed
// no more than there.
const hottestRow = 60 * unit.DegreeCelsius

// coolest is the temperature to which the lengths hold undiminished.
const coolest = 20 * unit.DegreeCelsius

// neverHot is the shortest length that any row leaves: 72 m, by the
// percentages at 60 C. Shorter links need no look at their spaces.
const neverHot = 72 * unit.Metre

func lengthTemperature(p *lint.Pass) {
	k, heats := newCopper(p), newHeats()
	for _, l := range p.Plant.Links {
		length, known := l.Length()
		if !known || length <= neverHot {
			continue
		}
		link, ok := k.link(l)
		if !ok {
			continue
		}
		limits, ok := k.limitsOf(link.low)
		hot := heats.of(l)
		if !ok || hot.where == nil || hot.high <= coolest || length > limits.PermanentLink {
			continue
		}
		allowed, ok := standard.HotLengthOf(p.Plant.Regime, link.low, min(hot.high, hottestRow), link.shield)
		if ok && length > allowed.Most {
			p.Report(tooHot(p, k, &link, length, hot, &allowed))
		}
	}
}

func tooHot(p *lint.Pass, k *copper, l *copperLink, length unit.Length, hot heat, allowed *standard.HotLength) lint.Finding {
	most, src := allowed.Most, allowed.Source
	certain := length > allowed.Certain
	if certain && !src.Sure() {
		most, src = allowed.Certain, allowed.CertainFrom
	}
	shown, limit := length.Beside(most, p.Units())
	at := hot.high.Text(p.Units())
	space := schema.Printable(hot.where.Label)
	f := lint.AboutField(l.Lead().Entry, schema.RunLength.Field)
	f.Severity = degree(src)
	f.Message = fmt.Sprintf("%s: permanent link %s, limit %s at the %s of %s", schema.Printable(l.Lead().Label), shown, limit, at, space)
	f.Working = append(linkTerms(p, l.Link), term("hottest space on its way", space+", "+at), term("cable", screenWords(l.shield)))
	if hot.high > hottestRow {
		f.Working = append(f.Working, term("the figures end at", hottestRow.Text(p.Units())))
	}
	if src == allowed.CertainFrom && allowed.CertainRow < hot.high {
		f.Working = append(f.Working, term("certain limit", fmt.Sprintf("%s, already at %s", allowed.Certain.Text(p.Units()), allowed.CertainRow.Text(p.Units()))))
	}
	f.Working = append(f.Working, hotTerm(p, l, allowed, hot))
	if !k.screensKnown(l) {
		// A screened cable is allowed more: without the construction nobody knows.
		f.Severity = lint.Observation
		f.Working = append(f.Working, term("construction", "not stated, taken as unscreened"))
	}
	f.Result, f.Limit, f.Source = shown, limit, src.String()
	f.Next = "lead the cable past the hot space, shorten it, or use screened cable, which loses less to heat"
	f.Key = []string{hot.where.Label}
	f.Excess = (length - most).Metres()
	f.Related = []schema.Note{note(hot.where.Entry, "the hottest space on its way")}
	return f
}

// hotTerm says how the allowed length comes about, so that it can be redone.
func hotTerm(p *lint.Pass, l *copperLink, allowed *standard.HotLength, hot heat) lint.Term {
	at := min(hot.high, hottestRow)
	if p.Plant.Regime == standard.TIA {
		return tableTerm(p, l, allowed, at)
	}
	in := unit.Metric // the percentages are for degrees Celsius
	shares := "0.002 x " + above(at, coolest)
	if l.shield == standard.Unscreened {
		shares = "0.004 x " + above(min(at, steeper), coolest)
		if at > steeper {
			shares += " - 0.006 x " + above(at, steeper)
		}
	}
	return term("allowed by the percentages at "+at.Text(in), fmt.Sprintf("90 m x (1 - %s) = %s", shares, allowed.Most.Text(in)))
}

// steeper is from where the percentages of unscreened cable rise faster.
const steeper = 40 * unit.DegreeCelsius

// above is by how many degrees Celsius one temperature is above another.
func above(t, from unit.Temperature) string { return decimals((t - from).Celsius(), 3) }

// tableStep is how far the rows of the table of ANSI/TIA-568 are apart.
const tableStep = 5 * unit.DegreeCelsius

func tableTerm(p *lint.Pass, l *copperLink, allowed *standard.HotLength, at unit.Temperature) lint.Term {
	in := unit.Metric
	low := at / tableStep * tableStep
	what := "allowed by the table at " + at.Text(in)
	lower, okLow := standard.HotLengthOf(p.Plant.Regime, l.low, low, l.shield)
	upper, okHigh := standard.HotLengthOf(p.Plant.Regime, l.low, low+tableStep, l.shield)
	if low == at || !okLow || !okHigh {
		return term(what, allowed.Most.Text(in))
	}
	return term(what+", between its rows", fmt.Sprintf("%s - (%s - %s) x %s/5 = %s", lower.Most.Text(in), lower.Most.Text(in), upper.Most.Text(in),
		above(at, low), allowed.Most.Text(in)))
}

func screenWords(s standard.Shield) string {
	if s == standard.Screened {
		return "screened"
	}
	return "unscreened"
}

// screensKnown says whether every cable of the link states its construction.
func (k *copper) screensKnown(l *copperLink) bool {
	for _, r := range l.Runs {
		if !k.of.at(r.Cable).screenKnown {
			return false
		}
	}
	return true
}
