package diffreport

import (
	"cmp"
	"slices"
	"strings"

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
}

// Plan turns the changes between two plants, as Compare found them, into an
// order. A nil base is the empty plant.
func Plan(base, head *plant.Plant, changes []Change, o PlanOptions) Order {
	p := newPlanner(base, head, changes)
	p.hardware()
	p.cables()
	p.relabelled()
	steps := p.number()
	order := Order{
		Plant: p.name(), Base: o.Base, Head: o.Head, Number: orderNumber(o.Base, o.Head), Units: p.head.Units,
		Changes: changes, Counts: Count(changes), Steps: steps,
		Materials: p.materials(), Labels: p.labels, Tests: p.tests,
		Commits: o.Commits, Introduced: o.Introduced, Cleared: o.Cleared,
	}
	slices.Sort(order.Labels)
	slices.SortStableFunc(order.Tests, func(a, b Test) int { return cmp.Or(cmp.Compare(a.Record, b.Record), cmp.Compare(a.Limit, b.Limit)) })
	order.Outages = p.outages(steps)
	order.Cautions = everyCaution(steps)
	order.Clashes = append(p.claimedTwice(), p.replay(steps)...)
	order.Executable = len(order.Clashes) == 0
	return order
}

// name is the plant's label, in the later plant unless that has gone.
func (p *planner) name() string {
	if p.head.Entry.Record == nil && p.base.Entry.Record != nil {
		return p.base.Name()
	}
	return p.head.Name()
}

// orderNumber names an order after the revisions that it leads from and to.
func orderNumber(base, head string) string {
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
	tasks         []*task
	groups        map[string]*task
	// freed are the tasks that take a cable off a port side.
	freed map[portSide][]*task
	// ready are the tasks that put hardware in place, tested those that
	// measure a run, by the label in the later plant.
	ready, tested map[string]*task
	// disturbed are the holders of the later plant whose cables come off.
	disturbed map[string]disturbance
	// touched are the holders whose ports are worked on.
	touched map[string]bool

	// plugs are the cords to plug in when every test is known, leaving the
	// hardware to take out when its cables have left it.
	plugs   []*cableWork
	leaving []leaving

	labels []string
	tests  []Test
	used   stock
}

func newPlanner(base, head *plant.Plant, changes []Change) *planner {
	p := &planner{
		base: base, head: head, changes: changes, after: make(map[string]*Change), before: make(map[string]*Change),
		groups: make(map[string]*task), freed: make(map[portSide][]*task), ready: make(map[string]*task), tested: make(map[string]*task),
		disturbed: make(map[string]disturbance), touched: make(map[string]bool), used: newStock(),
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

// A task is a step before it has its number.
type task struct {
	Step
	phase phase
	after []*task
	// items are what a task of a group is done to; the text is made of them
	// when all are known, and tail ends it.
	items []string
	tail  string
}

// phase orders the tasks. A task depends only on tasks of earlier phases, so
// the phases alone are an order that works; the dependencies say which of it is
// needed.
type phase uint8

const (
	toIsolate phase = iota
	toDisconnect
	toRemoveCable
	toRemoveHolder
	toRemoveRack
	toRemovePathway
	toTag
	toInstallPathway
	toInstallRack
	toInstallHolder
	toBond
	toPull
	toTerminate
	toLabel
	toMeasure
	toPatch
)

// add adds a task, or joins it with the one of the same group.
func (p *planner) add(group string, t *task) *task {
	if group != "" {
		if known := p.groups[group]; known != nil {
			known.join(t)
			return known
		}
		p.groups[group] = t
	}
	p.tasks = append(p.tasks, t)
	return t
}

func (t *task) join(u *task) {
	t.Records = append(t.Records, u.Records...)
	t.after = append(t.after, u.after...)
	t.Outage = append(t.Outage, u.Outage...)
	t.Cautions = append(t.Cautions, u.Cautions...)
	t.takes = append(t.takes, u.takes...)
	t.frees = append(t.frees, u.frees...)
	t.items = append(t.items, u.items...)
}

// words completes the text of a task that is done to several things.
func (t *task) words() {
	if len(t.items) > 0 {
		t.Text += " " + strings.Join(tidy(t.items), ", ") + t.tail
	}
	t.Records, t.Outage, t.Cautions = tidy(t.Records), tidy(t.Outage), tidy(t.Cautions)
}

// number puts the tasks in order, phase by phase and within a phase room by
// room, so that the crew walks least.
func (p *planner) number() []Step {
	for _, t := range p.tasks {
		t.words()
	}
	slices.SortStableFunc(p.tasks, func(a, b *task) int {
		return cmp.Or(cmp.Compare(a.phase, b.phase), cmp.Compare(a.Space, b.Space), cmp.Compare(a.Class, b.Class),
			slices.Compare(a.Records, b.Records), cmp.Compare(a.Text, b.Text))
	})
	for i, t := range p.tasks {
		t.Number = i + 1
	}
	steps := make([]Step, len(p.tasks))
	for i, t := range p.tasks {
		for _, before := range t.after {
			t.After = append(t.After, before.Number)
		}
		t.After = tidy(t.After)
		steps[i] = t.Step
	}
	return steps
}

// tidy sorts a list and takes out what stands in it twice.
func tidy[T cmp.Ordered](list []T) []T {
	slices.Sort(list)
	return slices.Compact(list)
}
