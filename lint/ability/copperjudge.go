package ability

import (
	"fmt"

	"homerun/schema"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// judge says whether the channel carries an application: by the category of
// its lowest part, by its length, and by what it loses as it is built.
func (k *copper) judge(application standard.Application) Answer {
	a := Answer{Application: application.String(), Working: []Term{{"category, by its lowest part", k.categoryWords()}}}
	reach, ok := standard.ReachOf(application, k.low, k.shield)
	if !ok {
		return unanswered(a.Application, Gap{k.lead(), "category " + k.low.String() + " has no figure for it"})
	}
	a.Source = reach.Source.String()
	switch {
	case reach.Possible == 0:
		a.Verdict = standard.NotCarried
		a.Because = fmt.Sprintf("category %s, it needs category %s", k.categoryWords(), reach.Least)
		a.Mend = fmt.Sprintf("another cable of category %s or better", reach.Least)
		if !k.cables.Weaker(reach.Least) {
			a.Mend = fmt.Sprintf("exchange %s for category %s", schema.Printable(k.weakest.Name()), reach.Least)
		}
		return a
	case !k.known:
		return unanswered(a.Application, k.missing)
	}
	a.Working = append(a.Working, k.lengthTerms()...)
	k.byLength(&a, reach)
	if a.Verdict == standard.Carries {
		k.byLoss(&a, application, reach)
	}
	return a
}

// byLength holds the channel against the reach. What only the assumed cords
// make too long depends on the cords.
func (k *copper) byLength(a *Answer, reach standard.Reach) {
	in := k.plant.Units
	total := k.total()
	verdict, src := reach.Judge(total)
	a.Verdict, a.Source = verdict, src.String()
	a.Working = append(a.Working, Term{"carries in any case to", reach.Sure.Text(in)})
	if reach.Possible > reach.Sure {
		a.Working = append(a.Working, Term{"carries on a condition to", reach.Possible.Text(in)})
	}
	switch {
	case verdict == standard.Carries:
		shown, limit := total.Beside(reach.Sure, in)
		a.Because = fmt.Sprintf("channel %s, it reaches %s", shown, limit)
	case verdict == standard.NotCarried && k.recorded() <= reach.Possible:
		a.Verdict = standard.Conditional
		a.Because = fmt.Sprintf("carries if the cords that are not recorded are no longer than %s together", (reach.Possible - k.recorded()).Text(in))
		a.Mend = "record the cords"
		if k.recorded() > reach.Sure {
			a.Because += ", and if " + reach.Condition
			a.Mend += ", and measure what it depends on"
		}
	case verdict == standard.NotCarried:
		shown, limit := k.recorded().Beside(reach.Possible, in)
		a.Because = fmt.Sprintf("channel %s, it reaches %s", shown, limit)
		a.Short = (k.recorded() - reach.Possible).Text(in)
		a.Mend = "shorten the channel by " + a.Short + k.orBetter()
	default:
		k.onCondition(a, reach, total)
	}
}

// onCondition words what nobody can tell from a record.
func (k *copper) onCondition(a *Answer, reach standard.Reach, total unit.Length) {
	in := k.plant.Units
	a.Because = "carries if " + reach.Condition
	a.Mend = "measure what it depends on"
	if reach.Sure == 0 {
		return
	}
	shown, limit := total.Beside(reach.Sure, in)
	a.Because = fmt.Sprintf("channel %s, beyond %s it carries if %s", shown, limit, reach.Condition)
	a.Short = (total - reach.Sure).Text(in)
	a.Mend = fmt.Sprintf("measure what it depends on, or shorten the channel by %s%s", a.Short, k.orBetter())
	if k.recorded() < reach.Sure {
		a.Because += fmt.Sprintf("; in any case with cords of no more than %s that are not recorded", (reach.Sure - k.recorded()).Text(in))
		a.Mend = "record the cords" + k.orBetter()
	}
}

// orBetter is what else mends a channel that is too long for its category.
func (k *copper) orBetter() string {
	if k.low.Weaker(standard.Cat6A) {
		return ", or take category 6A"
	}
	return ""
}

// byLoss holds the loss of the channel, as it is built and at the heat of its
// way, against the limit of the category that the application asks for. The
// sum counts every part at the most that it may lose: over the limit the
// channel may still carry, which a measurement shows.
func (k *copper) byLoss(a *Answer, application standard.Application, reach standard.Reach) {
	category := reach.Least
	if application == standard.Base10GT && !k.low.Weaker(standard.Cat6A) {
		category = standard.Cat6A
	}
	loss, ok := k.loss(category)
	if !ok || loss.total <= loss.limit+lossGrain {
		return
	}
	shown, limit := decibels(loss.total, loss.limit)
	a.Verdict = standard.Conditional
	a.Because = fmt.Sprintf("may lose %s at %s, limit %s: carries if a test shows that it loses no more", shown, category.Top(), limit)
	a.Short = fmt.Sprintf("%.2f dB", loss.total-loss.limit)
	a.Mend = "test it when it is warm, shorten it, or lead it past the hot space"
	a.Source = loss.source()
	a.Working = append(a.Working, loss.terms(k)...)
}

// categoryWords is the category with the part that it is that of, where a
// cable is better.
func (k *copper) categoryWords() string {
	if k.low == k.cables {
		return k.low.String()
	}
	return fmt.Sprintf("%s (%s)", k.low, schema.Printable(k.weakest.Name()))
}

// lead is the label by which the channel is known.
func (k *copper) lead() string {
	if len(k.Links) == 0 {
		return schema.Printable(k.Cords[0].Label)
	}
	return schema.Printable(k.Links[0].Lead().Label)
}
