package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// TestsLimit finds runs that were measured against another limit than their
// own: a pass then does not say what the record claims.
var TestsLimit = &lint.Rule{
	Name: "tests-limit", Title: "Checks that a run was measured against the limit of its own category, fibre or series",
	Severity: lint.Observation, Reach: lint.Along, Check: testsLimit,
}

func testsLimit(p *lint.Pass) {
	if len(p.Plant.Tests) == 0 {
		return
	}
	k := newCopper(p)
	read := make(map[string]*testLimit) // a plant has a few limits and many measurements
	for _, r := range p.Plant.Runs {
		if len(r.Tests) == 0 || !inService(r) {
			continue
		}
		last, sure := latest(r)
		if !sure || !last.passed() {
			continue // what failed is named as such
		}
		text, stated := schema.TestLimit.In(last.test.Record())
		limit, known := read[text]
		if !known {
			fresh := readLimit(text)
			limit = &fresh
			read[text] = limit
		}
		if !stated {
			continue
		}
		if wrong, ok := mismatch(p.Plant.Regime, k, r, *limit); ok {
			p.Report(limitFinding(r, last, &wrong))
		}
	}
}

// A mistaken limit is what a run is, and what the tester took it for.
type mistaken struct {
	is, taken string
	// why says what is the matter, source where the difference stands.
	why, source string
	// steps is how many categories the limit is too low.
	steps int
}

// mismatch holds a run against the limit that the tester applied.
func mismatch(regime standard.Regime, k *copper, r *plant.Run, limit testLimit) (mistaken, bool) {
	medium := r.Cable.Medium()
	if medium == plant.Unstated {
		return mistaken{}, false
	}
	if limit.medium != plant.Unstated && limit.medium != medium {
		return mistaken{is: describe(r.Cable), taken: limit.shown(), why: "that is the limit of another kind of cable", source: "common practice: each kind of cable has limits of its own"}, true
	}
	switch medium {
	case plant.TwistedPair:
		return copperMismatch(regime, k, r, limit)
	case plant.Fibre:
		word, _ := schema.CableFibre.In(r.Cable.Record())
		fibre, err := standard.ParseFibre(word)
		if err == nil && (fibre.Multimode() && limit.singleMode || fibre.SingleMode() && limit.multimode) {
			return mistaken{is: describe(r.Cable), taken: limit.shown(), why: "the two differ in wavelength and attenuation", source: "ANSI/TIA-568.3-D, attenuation by class of fibre"}, true
		}
	case plant.Coax:
		series, _ := schema.CableSeries.In(r.Cable.Record())
		if series != "" && limit.series != "" && series != limit.series {
			return mistaken{is: describe(r.Cable), taken: limit.shown(), why: "each series has its own loss", source: "common practice: the loss of a series at its frequency"}, true
		}
	case plant.Unstated:
	}
	return mistaken{}, false
}

// copperMismatch holds the lowest category of a run's link, its jacks with it,
// against that of the limit.
func copperMismatch(regime standard.Regime, k *copper, r *plant.Run, limit testLimit) (mistaken, bool) {
	lowest, known := lowestOf(k, r.Link)
	if !known {
		return mistaken{}, false
	}
	switch {
	case limit.medium == plant.Unstated:
		return mistaken{is: categoryWord(lowest), taken: limit.shown(), why: "it names no category and no class", source: "common practice: a limit belongs to a category"}, true
	case limit.category.Weaker(lowest):
		return mistaken{
			is: categoryWord(lowest), taken: limit.shown(), why: "a pass proves no more than that category", steps: lowest.Rank() - limit.category.Rank(),
			source: "ANSI/TIA-1152-A and IEC 61935-1, limits by category; unconfirmed: check the printed standard",
		}, true
	case regime != 0 && limit.regime != 0 && regime != limit.regime:
		return mistaken{
			is: "in a plant by " + regime.String(), taken: "a limit of " + limit.regime.String(), why: "their limits differ",
			source: "ANSI/TIA-568.2-D and ISO/IEC 11801-1, channel limits: 21.3 dB and 21.7 dB for category 6 and class E at 100 MHz",
		}, true
	}
	return mistaken{}, false
}

// lowestOf is the lowest category of a link's cables and of its jacks.
func lowestOf(k *copper, l *plant.Link) (lowest standard.Category, known bool) {
	view, ok := k.link(l)
	if !ok {
		return 0, false
	}
	lowest = view.low
	see := func(port *plant.Port) {
		if port == nil {
			return
		}
		word, _ := port.Holder.Category()
		if own, err := standard.ParseCategory(word); err == nil && own.Weaker(lowest) {
			lowest = own
		}
	}
	see(l.From)
	see(l.To)
	for _, joint := range l.Joints {
		see(joint)
	}
	return lowest, true
}

func categoryWord(c standard.Category) string { return "category " + c.String() }

// describe says what a cable type is.
func describe(c *plant.Cable) string {
	if word, ok := schema.CableFibre.In(c.Record()); ok {
		return "fibre " + word
	}
	if word, ok := schema.CableSeries.In(c.Record()); ok {
		return "coaxial series " + word
	}
	if word, ok := c.Category(); ok {
		return "category " + word
	}
	return "a cable of no stated kind"
}

func limitFinding(r *plant.Run, last proof, wrong *mistaken) lint.Finding {
	f := lint.About(r.Entry)
	limit, _ := schema.TestLimit.In(last.test.Record())
	f.Message = fmt.Sprintf("%s: measured against %s, the run is %s", schema.Printable(r.Label), wrong.taken, wrong.is)
	f.Working = []lint.Term{
		term("tester's limit", schema.Printable(limit)+" ("+schema.Printable(last.test.Label)+", "+last.when.String()+")"),
		term("read as", wrong.taken), term("the run", wrong.is), term("so", wrong.why),
	}
	f.Result, f.Limit, f.Source = wrong.taken, wrong.is, wrong.source
	f.Next = "measure again with the tester set to the limit of the run, or correct the limit in the test record"
	f.Excess = float64(wrong.steps)
	f.Related = []schema.Note{note(last.test.Entry, "the measurement")}
	return f
}
