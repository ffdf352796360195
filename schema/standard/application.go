package standard

import "homerun/schema/unit"

// Application is a use of twisted pair that IEEE 802.3 defines. The zero value is none.
type Application uint8

// The applications, by speed.
const (
	Base10T Application = iota + 1
	Base100TX
	Base1000T
	Base2500T
	Base5000T
	Base10GT
	Base25GT
	Base40GT
)

// applications are the words for the applications.
var applications = []string{
	Base10T: "10BASE-T", Base100TX: "100BASE-TX", Base1000T: "1000BASE-T", Base2500T: "2.5GBASE-T",
	Base5000T: "5GBASE-T", Base10GT: "10GBASE-T", Base25GT: "25GBASE-T", Base40GT: "40GBASE-T",
}

// ParseApplication reads "10GBASE-T". The error is a *unit.Error: the text is no
// application over twisted pair, though it may be one over something else.
func ParseApplication(s string) (Application, error) {
	i, err := indexOf(applications, "application over twisted pair", s)
	return Application(i), err
}

// Applications returns all applications over twisted pair, by speed.
func Applications() []Application {
	out := make([]Application, 0, len(applications))
	for a := Base10T; int(a) < len(applications); a++ {
		out = append(out, a)
	}
	return out
}

// String returns the word for the application, as in a record; empty for none.
func (a Application) String() string { return wordOf(applications, int(a)) }

// Verdict is whether a channel carries an application. The zero value is no answer.
type Verdict uint8

// The three answers.
const (
	Carries     Verdict = iota + 1
	Conditional         // it depends on what a record cannot tell; the reason says on what
	NotCarried
)

// verdicts are the words for the answers.
var verdicts = []string{Carries: "carries", Conditional: "carries on a condition", NotCarried: "does not carry"}

// String returns the answer in words.
func (v Verdict) String() string { return wordOf(verdicts, int(v)) }

// Reach is how far a category carries an application: up to Sure in any case, from there
// to Possible on a condition, beyond that not at all. Both are 0 where the category does
// not carry it at all.
type Reach struct {
	Sure, Possible unit.Length
	Condition      string // on what the lengths between Sure and Possible depend
	Least          Category
	Source         Source // of Sure, and of the refusal beyond Possible
	Doubt          Source // of the condition; zero where there is none
}

// Judge returns the answer for a channel of that length, and the source it rests on.
func (r Reach) Judge(channel unit.Length) (Verdict, Source) {
	switch {
	case channel <= r.Sure:
		return Carries, r.Source
	case channel <= r.Possible:
		return Conditional, r.Doubt
	default:
		return NotCarried, r.Source
	}
}

// ethernet is the source of a minimum category.
func ethernet(clause string) Source {
	return Source{Body: "IEEE", Edition: "802.3-2018", Clause: clause, Confidence: Confirmed}
}

// leastCategory is the lowest category that carries an application, and where that stands.
type leastCategory struct {
	category Category
	source   Source
}

// least are the lowest categories, conditions included.
var least = []leastCategory{
	Base10T:   {Cat3, ethernet("10BASE-T, cabling")},
	Base100TX: {Cat5, ethernet("100BASE-TX, cabling")},
	Base1000T: {Cat5, ethernet("1000BASE-T, cabling")},
	Base2500T: {Cat5e, ethernet("2.5GBASE-T, cabling")},
	Base5000T: {Cat5e, ethernet("5GBASE-T, cabling")},
	Base10GT:  {Cat6, ethernet("10GBASE-T, cabling")},
	Base25GT:  {Cat8, ethernet("25GBASE-T, cabling")},
	Base40GT:  {Cat8, ethernet("40GBASE-T, cabling")},
}

// ReachOf returns how far a category carries an application; the shield matters to 10GBASE-T
// over category 6 alone. ok is false for no application or no category.
func ReachOf(a Application, c Category, s Shield) (r Reach, ok bool) {
	if a < Base10T || a > Base40GT || !c.known() {
		return Reach{}, false
	}
	low := least[a]
	r = Reach{Least: low.category, Source: low.source}
	switch {
	case c.Weaker(low.category):
		return r.refused(a, c), true
	case c.eight():
		return r.overEight(a), true
	case a == Base1000T && c == Cat5:
		return r.onCondition(0, full, "the link meets the further tests of TSB-95", Source{Body: "ANSI/TIA/EIA", Edition: "TSB-95", Clause: "1000BASE-T over category 5", Confidence: Confirmed}), true
	case a == Base2500T && (c == Cat5e || c == Cat6):
		return r.onCondition(0, full, alien, bundleRisk), true
	case a == Base5000T && (c == Cat5e || c == Cat6):
		doubt := bundleRisk
		doubt.Confidence = Conflicting
		return r.onCondition(0, full, alien, doubt.noted("another source carries it without a condition")), true
	case a == Base10GT && c == Cat6:
		return r.tenGigabitOverSix(s), true
	default:
		r.Sure, r.Possible = full, full
		return r, true
	}
}

const (
	full  = 100 * unit.Metre
	alien = "the alien crosstalk from neighbouring cables is low enough"
)

// bundleRisk is where the conditions of the multigigabit applications stand.
var bundleRisk = Source{Body: "TIA", Edition: "TSB-5021", Clause: "alien crosstalk", Confidence: Confirmed}

// refused marks what a category does not carry. That category 5e carries no 10GBASE-T and
// categories below 5e no multigigabit application is common knowledge, not found in
// print.
func (r Reach) refused(a Application, c Category) Reach {
	if (a == Base10GT && c == Cat5e) || a == Base2500T || a == Base5000T {
		r.Source = r.Source.unsure()
	}
	return r
}

// onCondition sets the lengths and the condition.
func (r Reach) onCondition(sure, possible unit.Length, condition string, doubt Source) Reach {
	r.Sure, r.Possible, r.Condition, r.Doubt = sure, possible, condition, doubt
	return r
}

// overEight is the reach over the short categories: 30 m, the channel that they define.
// The slower applications may go on beyond it, with nothing defined.
func (r Reach) overEight(a Application) Reach {
	const short = 30 * unit.Metre
	r.Sure, r.Possible = short, short
	if a >= Base25GT {
		return r
	}
	return r.onCondition(short, full, "the channel meets the limits of category 6A, since category 8 defines none beyond 30 m",
		Source{Body: "ANSI/TIA", Edition: "568.2-D", Clause: "category 8 channel", Confidence: FromMemory})
}

// tenGigabitOverSix is the reach of 10GBASE-T over category 6: 37 m, and 55 m where alien
// crosstalk allows. The limits were set for unscreened cable; for screened cable they are
// said not to apply, which is not confirmed.
func (r Reach) tenGigabitOverSix(s Shield) Reach {
	src := Source{Body: "TIA", Edition: "TSB-155-A", Clause: "10GBASE-T over category 6", Confidence: Confirmed}
	r.Source = src
	if s == Screened {
		src.Confidence = Conflicting
		return r.onCondition(37*unit.Metre, full, "the screen keeps the alien crosstalk low enough", src.noted("one source takes the 37 m and 55 m as not applying to screened cable"))
	}
	return r.onCondition(37*unit.Metre, 55*unit.Metre, alien, src)
}
