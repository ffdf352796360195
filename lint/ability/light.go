package ability

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// light is a channel of fibre as the published figures want it.
type light struct {
	*plant.Channel
	plant   *plant.Plant
	parts   []standard.FibrePart
	classes []standard.Fibre
	// strands is the least that a cable states, 0 where none does; in names
	// that cable.
	strands int
	thin    *plant.Cable
	length  unit.Length
	known   bool
	missing Gap
}

// lightOf looks at a channel; the gap says what keeps it from being judged.
func lightOf(p *plant.Plant, c *plant.Channel) (*light, Gap) {
	l := &light{Channel: c, plant: p, known: true}
	for _, link := range c.Links {
		for _, r := range link.Runs {
			if gap := l.add("run ", r.Entry, r.Cable, r.Length); gap.What != "" {
				return nil, gap
			}
			if n, stated := schema.CableStrands.In(r.Cable.Record()); stated && (l.strands == 0 || n < l.strands) {
				l.strands, l.thin = n, r.Cable
			}
		}
	}
	for _, cord := range c.Cords {
		if cord.Cable.Medium() != plant.Fibre {
			continue // a cord that states no fibre is taken to be of the fibre it is plugged to
		}
		if gap := l.add("cord ", cord.Entry, cord.Cable, cord.CordLength); gap.What != "" {
			return nil, gap
		}
	}
	return l, Gap{}
}

// add takes in one run or cord.
func (l *light) add(noun string, e schema.Entry, cable *plant.Cable, declared func() (unit.Length, bool)) Gap {
	length, stated := declared()
	word := ""
	if cable != nil {
		word, _ = schema.CableFibre.In(cable.Record())
	}
	class, err := standard.ParseFibre(word)
	if err != nil {
		return Gap{schema.Printable(e.Label), "its type of cable states no class of fibre"}
	}
	if !stated && l.known {
		l.known, l.missing = false, Gap{schema.Printable(e.Label), "states no length"}
	}
	l.parts = append(l.parts, standard.FibrePart{Name: noun + schema.Printable(e.Label), Fibre: class, Length: length})
	l.length = l.length.Plus(length)
	if !slices.Contains(l.classes, class) {
		l.classes = append(l.classes, class)
	}
	return Gap{}
}

// judge says whether the channel carries an application: by its fibres, by its
// length and by what it may lose.
func (l *light) judge(application standard.OpticalApplication) Answer {
	a := Answer{Application: application.String(), Working: []Term{{"fibre", l.classWords()}}}
	for _, other := range l.classes[1:] {
		if joint, src, ok := standard.Join(l.classes[0], other); ok && joint != standard.SameCore {
			a.Verdict, a.Source = standard.NotCarried, src.String()
			a.Because = fmt.Sprintf("%s and %s are joined: %s", l.classes[0], other, joint)
			a.Mend = "make the channel of one kind of fibre"
			return a
		}
	}
	reach, ok := l.reach(application)
	switch {
	case !ok:
		return unanswered(a.Application, Gap{l.classWords(), "no figure was found for it"})
	case reach.Possible == 0:
		a.Verdict, a.Source = standard.NotCarried, reach.Source.String()
		a.Because = "it is not made for " + l.classWords()
		a.Mend = "another class of fibre"
		return a
	case !l.known:
		return unanswered(a.Application, l.missing)
	}
	if n, src, ok := application.Strands(); ok && l.strands > 0 && l.strands < n {
		a.Verdict, a.Source = standard.NotCarried, src.String()
		a.Because = fmt.Sprintf("it needs %d fibres, %s has %d", n, schema.Printable(l.thin.Label), l.strands)
		a.Short = strconv.Itoa(n-l.strands) + " fibres"
		a.Mend = "a cable of more fibres"
		return a
	}
	l.byLength(&a, reach)
	if a.Verdict == standard.Carries {
		l.byLoss(&a, reach)
	}
	return a
}

// reach is the shortest of those of the channel's fibres.
func (l *light) reach(application standard.OpticalApplication) (least standard.OpticalReach, ok bool) {
	for i, class := range l.classes {
		reach, known := standard.OpticalReachOf(application, class)
		if !known {
			return least, false
		}
		if i == 0 || reach.Possible < least.Possible || reach.Possible == least.Possible && reach.Sure < least.Sure {
			least = reach
		}
	}
	return least, true
}

func (l *light) byLength(a *Answer, reach standard.OpticalReach) {
	in := l.plant.Units
	verdict, src := reach.JudgeLength(l.length)
	a.Verdict, a.Source = verdict, src.String()
	a.Working = append(a.Working, Term{"length recorded", l.length.Text(in)}, Term{"reaches in any case", reach.Sure.Text(in)})
	switch verdict {
	case standard.Carries:
		shown, limit := l.length.Beside(reach.Sure, in)
		a.Because = fmt.Sprintf("channel %s, it reaches %s", shown, limit)
	case standard.Conditional:
		shown, limit := l.length.Beside(reach.Sure, in)
		a.Because = fmt.Sprintf("channel %s, beyond %s it carries if %s", shown, limit, reach.Condition)
		a.Short = (l.length - reach.Sure).Text(in)
		if reach.Sure == 0 {
			a.Because, a.Short = "carries if "+reach.Condition, ""
		}
		a.Mend = "make sure of what it depends on"
		a.Working = append(a.Working, Term{"reaches on a condition", reach.Possible.Text(in)})
	case standard.NotCarried:
		shown, limit := l.length.Beside(reach.Possible, in)
		a.Because = fmt.Sprintf("channel %s, it reaches %s", shown, limit)
		a.Short = (l.length - reach.Possible).Text(in)
		a.Mend = "a class of fibre of more bandwidth, or a shorter way"
	}
}

// byLoss holds what the channel may lose against what the application leaves
// it. The sum counts every part at the most that it may lose: a measurement may
// show less, or more.
func (l *light) byLoss(a *Answer, reach standard.OpticalReach) {
	sum, ok := l.loss(reach.Wavelength)
	if !ok || reach.Loss == 0 {
		return
	}
	m := plant.MeasuredLinks(l.Links, reach.Wavelength)
	if m.Least > reach.Loss {
		l.measuredOver(a, reach, m)
		return
	}
	verdict, src, ok := reach.JudgeLoss(sum.AsLoss())
	if !ok || verdict == standard.Carries {
		return
	}
	if cords, known := l.cordsLoss(reach.Wavelength); known && m.Whole && m.Most <= reach.Loss-cords.AsLoss() {
		a.Working = append(a.Working, measuredTerms(m)...)
		a.Working = append(a.Working, Term{"allowed at " + reach.Wavelength.String(), reach.Loss.Text(l.plant.Units)})
		return
	}
	shown, limit := sum.AsLoss().Beside(reach.Loss, l.plant.Units)
	a.Verdict, a.Source = standard.Conditional, src.String()
	if src.Sure() && sum.Confidence != standard.Confirmed {
		a.Source += "; figures of the sum unconfirmed: check the printed standard"
	}
	a.Because = fmt.Sprintf("may lose %s at %s, limit %s: carries if a test shows that it loses no more", shown, reach.Wavelength, limit)
	a.Short = (sum.AsLoss() - reach.Loss).String()
	a.Mend = "measure its loss, or take connections out"
	a.Working = append(a.Working, lightTerms(&sum)...)
}

// measuredOver is a channel whose links were measured to lose too much already.
func (l *light) measuredOver(a *Answer, reach standard.OpticalReach, m plant.LinkLoss) {
	shown, limit := m.Least.Beside(reach.Loss, l.plant.Units)
	a.Verdict, a.Source = standard.NotCarried, reach.LossSource.String()
	if !reach.LossSource.Sure() {
		a.Verdict = standard.Conditional // the limit itself is not certain
	}
	a.Because = fmt.Sprintf("measured to lose %s, limit %s", shown, limit)
	a.Short = (m.Least - reach.Loss).String()
	a.Mend = "clean the connectors and measure again, or take connections out"
	a.Working = append(a.Working, measuredTerms(m)...)
}

func measuredTerms(m plant.LinkLoss) []Term {
	terms := make([]Term, len(m.Tests))
	for i, t := range m.Tests {
		loss, _ := schema.TestLoss.In(t.Record())
		terms[i] = Term{"measured, test " + schema.Printable(t.Label), loss.String()}
	}
	return terms
}

// cordsLoss is what the cords lose without their connections, which a test of
// the links between them has measured.
func (l *light) cordsLoss(at standard.Wavelength) (standard.FibreLoss, bool) {
	var cords []standard.FibrePart
	for _, part := range l.parts {
		if strings.HasPrefix(part.Name, "cord ") {
			cords = append(cords, part)
		}
	}
	return standard.LossOfFibre(standard.FibreLink{Regime: l.plant.Regime, Wavelength: at, Parts: cords})
}

// loss adds up the most that the channel may lose. Cords that are not recorded
// are not counted; their connections are.
func (l *light) loss(at standard.Wavelength) (standard.FibreLoss, bool) {
	splices, measured := 0, []standard.FibreJoints{}
	for _, link := range l.Links {
		for _, joint := range link.Joints {
			if joint.Holder.Kind.Name != schema.KindClosure {
				continue
			}
			if loss, stated := schema.ClosureLoss.In(joint.Holder.Record()); stated {
				src := standard.Source{Body: "the record of " + schema.Printable(joint.Holder.Label), Confidence: standard.Confirmed}
				measured = append(measured, standard.FibreJoints{Name: "splice " + schema.Printable(joint.String()), Count: 1, Each: loss, Source: src})
				continue
			}
			splices++
		}
	}
	connections := l.Connections() - splices - len(measured)
	joints := slices.Concat(measured, []standard.FibreJoints{standard.Connections(l.plant.Regime, connections), standard.Splices(l.plant.Regime, splices)})
	return standard.LossOfFibre(standard.FibreLink{Regime: l.plant.Regime, Wavelength: at, Parts: l.parts, Joints: joints})
}

func lightTerms(sum *standard.FibreLoss) []Term {
	var terms []Term
	for _, t := range sum.Terms {
		if t.Count > 0 {
			terms = append(terms, Term{t.Name, fmt.Sprintf("%d x %s = %.3f dB", t.Count, t.Each, t.Loss)})
			continue
		}
		terms = append(terms, Term{t.Name, fmt.Sprintf("%s x %s/km = %.3f dB", t.Length.Text(unit.Metric), t.PerKilometre, t.Loss)})
	}
	return terms
}

func (l *light) classWords() string {
	words := make([]string, len(l.classes))
	for i, class := range l.classes {
		words[i] = class.String()
	}
	return strings.Join(words, " and ")
}
