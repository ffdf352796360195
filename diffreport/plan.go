package diffreport

import (
	"cmp"
	"slices"

	"homerun/schema/plant"
)

// PlanOptions are what an order states besides the two plants.
type PlanOptions struct {
	// Base and Head name the revisions: commits, "index" or "worktree"; an
	// empty Base is the empty plant.
	Base, Head string
	Commits    []Commit
	// Introduced and Cleared are findings that the caller joined.
	Introduced, Cleared []FindingLine
	// Judge says what the linter has against a plant as it stands in the middle
	// of the work; nil where nobody asks.
	Judge func(*plant.Plant) []Objection
	// Follow makes what is asked about the states that the site goes through; nil
	// where nobody asks. Each plan that is tried has its own.
	Follow func() Follower
}

// An Objection is one finding of the linter about a plant in the middle of the
// work.
type Objection struct {
	// Rule and Record say which rule and which record, and Key what else tells
	// it from others of the same rule.
	Rule, Record string
	Key          []string
	// Excess is how far beyond the limit it is, in a measure of the rule's own.
	Excess float64
	Text   string
}

// Plan turns the changes between two plants, as Compare found them, into an
// order. A nil base is the empty plant.
//
// The first plan is the one that keeps service up longest. Where the linter
// objects to old and new cables together in a pathway, the second takes the old
// ones out of it before it pulls. Where a state in between breaks what neither
// plant breaks, the rooms are visited the other way round, and then everything is
// taken out before anything is put up; if nothing helps, there is no order.
func Plan(base, head *plant.Plant, changes []Change, o PlanOptions) Order {
	p, steps := draft(base, head, changes, mode{})
	judged := p.judge(o.Judge)
	if len(p.full) > 0 {
		p, steps = draft(base, head, changes, mode{full: p.full})
	}
	passed := p.followed(steps, o.Follow)
	for _, m := range []mode{{full: p.mode.full, back: true}, {outFirst: true}, {outFirst: true, back: true}} {
		if len(passed.breaks) == 0 {
			break
		}
		other, otherSteps := draft(base, head, changes, m)
		if then := other.followed(otherSteps, o.Follow); len(then.breaks) == 0 {
			p, steps, passed = other, otherSteps, then
		}
	}
	order := Order{
		Plant: p.name(), Base: o.Base, Head: o.Head, Number: OrderNumber(o.Base, o.Head), Units: p.head.Units,
		Changes: changes, Counts: Count(changes), Steps: steps,
		Materials: p.materials(), Tests: p.tests, Duties: p.duties(),
		Commits: o.Commits, Introduced: o.Introduced, Cleared: o.Cleared,
	}
	order.Labels, order.Strips, order.Firestops = p.everyLabel()
	slices.SortStableFunc(order.Tests, func(a, b Test) int { return cmp.Or(cmp.Compare(a.Record, b.Record), cmp.Compare(a.Limit, b.Limit)) })
	order.Outages = p.outages(steps)
	order.tell()
	order.BackOut = backOut(steps)
	order.Clashes = slices.Concat(p.claimedTwice(), p.replay(steps), passed.clashes())
	order.Executable = len(order.Clashes) == 0
	order.Proven = proven(&order, judged, &passed)
	return order
}

// draft makes the tasks and puts them in order.
func draft(base, head *plant.Plant, changes []Change, m mode) (*planner, []Step) {
	for {
		p := newPlanner(base, head, changes, m)
		p.hardware()
		p.relabelled()
		p.cables()
		p.placing()
		p.restores()
		p.connectedBy()
		p.handOvers()
		p.prefer()
		p.apart()
		p.arrange()
		p.unring()
		p.swaps()
		if order, ok := p.route(); ok {
			return p, number(order)
		}
		if m.single {
			panic("diffreport: tasks without a ring have no order")
		}
		m.single = true // a pair that is told in one step may close a ring
	}
}

// A mode is how carefully a plan goes about it.
type mode struct {
	// full are the pathways that do not hold old and new cables together.
	full []string
	// outFirst takes everything out before anything is put up.
	outFirst bool
	// back visits the rooms in the reverse of their order.
	back bool
	// single tells every cord by itself.
	single bool
}

// name is the plant's label, in the later plant unless that has gone.
func (p *planner) name() string {
	if p.head.Entry.Record == nil && p.base.Entry.Record != nil {
		return p.base.Name()
	}
	return p.head.Name()
}

// OrderNumber names an order after the revisions that it leads from and to; base
// is empty where nothing was before.
func OrderNumber(base, head string) string {
	short := func(id string) string {
		if id == "" {
			return "start"
		}
		return id[:min(7, len(id))]
	}
	return "WO-" + short(base) + "-" + short(head)
}

// planner collects the tasks of an order.
type planner struct {
	base, head *plant.Plant
	changes    []Change
	// after and before find the change of a record by its label on each side.
	after, before map[string]*Change
	mode          mode
	tasks         []*task
	works         []*cableWork
	// freed and taken are the tasks that take a cable off a port side, and put
	// one on it.
	freed, taken map[portSide][]*task
	// ready are the tasks that put hardware in place, relabel those that label
	// it anew, bonds those that bond it, tested those that measure a run, by the
	// label in the later plant; down those that take hardware out.
	ready, relabel, bonds, tested, down map[string]*task
	// up are the tasks that put hardware up; vacated are those that leave a
	// place in a rack, inRack those that empty a rack.
	up              []rise
	vacated, inRack map[string][]*task
	// outOf and through are the tasks that take cable out of a pathway, and
	// pull it in.
	outOf, through map[string][]*task
	// opened are the crossings of rated walls and floors that are worked in.
	opened []string
	// switchedOff and backOn are about the power of equipment, isolated and
	// restored about that of single ports.
	switchedOff, backOn map[string]*task
	isolated, restored  map[portSide]*task
	// connects are the tasks that connect, test or feed a cable.
	connects map[string][]*task
	// full are the pathways that the linter found too full in the middle of
	// the work.
	full []string
	// disturbed are the holders of the later plant whose cables come off.
	disturbed map[string]disturbance
	// touched are the holders whose ports are worked on.
	touched map[string]bool

	// plugs are the cords to plug in when every test is known, leaving the
	// hardware to take out when its cables have left it.
	plugs   []*cableWork
	leaving []leaving

	labels, strips []string
	tests          []Test
	used           stock
}

func newPlanner(base, head *plant.Plant, changes []Change, m mode) *planner {
	p := &planner{
		base: base, head: head, changes: changes, mode: m, used: newStock(),
		after: make(map[string]*Change), before: make(map[string]*Change),
		freed: make(map[portSide][]*task), taken: make(map[portSide][]*task),
		ready: make(map[string]*task), relabel: make(map[string]*task), bonds: make(map[string]*task), tested: make(map[string]*task), down: make(map[string]*task),
		vacated: make(map[string][]*task), inRack: make(map[string][]*task), outOf: make(map[string][]*task), through: make(map[string][]*task),
		switchedOff: make(map[string]*task), backOn: make(map[string]*task),
		isolated: make(map[portSide]*task), restored: make(map[portSide]*task), connects: make(map[string][]*task),
		disturbed: make(map[string]disturbance), touched: make(map[string]bool),
	}
	if p.base == nil {
		p.base = &plant.Plant{}
	}
	if p.head == nil {
		p.head = &plant.Plant{}
	}
	for i := range changes {
		c := &changes[i]
		if c.After.Record != nil {
			p.after[c.Label] = c
		}
		if c.Before.Record != nil {
			p.before[c.was()] = c
		}
	}
	return p
}

// was is the record's label in the earlier plant.
func (c *Change) was() string {
	if c.Former != "" {
		return c.Former
	}
	return c.Label
}

// onSite says whether the change sends somebody to site.
func (c *Change) onSite() bool { return c.Class != ClassRecordsOnly }

// same is a label by which the planner knows a thing of the earlier plant: the
// later one's label for it. What is gone keeps its own, marked, since its label
// may have been given to something else.
func (p *planner) same(label string) string {
	c := p.before[label]
	switch {
	case c == nil:
		return label
	case c.After.Record == nil:
		return label + gone
	}
	return c.Label
}

// gone marks the label of what the later plant does not have.
const gone = "\x00"
