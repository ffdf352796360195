package diffreport

import (
	"cmp"
	"slices"
	"strings"
)

// A task is a step before it has its number.
type task struct {
	Step
	phase phase
	// place is where the task stands among all, put in an order that does not
	// depend on how the records are laid out.
	place int
	// after has to be done before; prefer should be, so that service is not cut
	// before what replaces it is ready. Where tasks would wait for each other
	// in a ring, a preference is given up.
	after, prefer []*task
	// waiting is what waits gave when the order was found.
	waiting []*task
	// work is the cable that the task takes off or puts on, holder the label of
	// the hardware that it puts in place.
	work   *cableWork
	holder string
	// group names the tasks with which this one is one step when they are
	// neighbours; items are what it is done to, and tail ends the text.
	group string
	// ports are those that a cable leaves or goes to, as they are called then.
	ports string
	items []string
	tail  string
	undo  []undo
	urge  urge
	// floats is set where the task can be done in whatever room the crew is in.
	floats bool
	// into is the task that this one became part of.
	into *task
}

// An undo is how a task is taken back: words before and after its items.
type undo struct {
	before string
	items  []string
	after  string
}

// An urge says which of the tasks that can be done in one room come first.
type urge uint8

const (
	mending   urge = iota // service is down until it is done
	cutting               // the power is off already
	building              // nobody notices
	severing              // service is cut
	reporting             // once in a visit is enough
)

// phase orders the tasks that are alike. A task has to wait only for tasks of
// earlier phases, so that there is always an order.
type phase uint8

const (
	toRelabel phase = iota
	toIsolate
	toDisconnect
	toRemoveCable
	toRemoveHolder
	toRemoveRack
	toRemovePathway
	toTag
	toClear
	toInstallPathway
	toInstallRack
	toInstallHolder
	toRelabelAgain
	toPull
	toBond
	toTerminate
	toLabel
	toMeasure
	toPatch
	toRestore
	toHandOver
)

// add adds a task.
func (p *planner) add(t *task) *task {
	p.tasks = append(p.tasks, t)
	return t
}

// wait makes a task wait for others. A task of the same phase or a later one is
// never waited for.
func (t *task) wait(others ...*task) {
	for _, o := range others {
		if o != nil && o.phase < t.phase {
			t.after = append(t.after, o)
		}
	}
}

// final is the task that this one became part of, or itself.
func (t *task) final() *task {
	for t.into != nil {
		t = t.into
	}
	return t
}

// waits lists what a task waits for, each once and in order.
func (t *task) waits() []*task {
	all := make([]*task, 0, len(t.after)+len(t.prefer))
	for _, list := range [][]*task{t.after, t.prefer} {
		for _, o := range list {
			if o = o.final(); o != t {
				all = append(all, o)
			}
		}
	}
	slices.SortFunc(all, func(a, b *task) int { return cmp.Compare(a.place, b.place) })
	return slices.Compact(all)
}

// arrange puts the tasks in an order that depends on nothing but what they say.
func (p *planner) arrange() {
	keys := make([]string, len(p.tasks))
	for i, t := range p.tasks {
		t.Records, t.Outage, t.Cautions = tidy(t.Records), tidy(slices.Clone(t.Outage)), tidy(t.Cautions)
		keys[i], t.place = t.key(), i
	}
	slices.SortFunc(p.tasks, func(a, b *task) int {
		if c := strings.Compare(keys[a.place], keys[b.place]); c != 0 {
			return c
		}
		return a.place - b.place
	})
	for i, t := range p.tasks {
		t.place = i
	}
}

// key is a text that sorts tasks by phase, room, class and what they are about.
func (t *task) key() string {
	parts := make([]string, 0, 5+len(t.Records)+len(t.items))
	parts = append(parts, string([]byte{byte(t.phase)}), t.Space, string([]byte{byte(t.Class)}))
	parts = append(append(parts, t.Records...), t.Text)
	return strings.Join(append(append(parts, t.items...), t.tail), gone)
}

// join makes a neighbour part of a task.
func (t *task) join(u *task) {
	u.into = t
	t.Records = append(t.Records, u.Records...)
	t.Outage = append(t.Outage, u.Outage...)
	t.Cautions = append(t.Cautions, u.Cautions...)
	t.after, t.prefer = append(t.after, u.after...), append(t.prefer, u.prefer...)
	t.waiting = append(t.waiting, u.waiting...)
	t.takes, t.frees = append(t.takes, u.takes...), append(t.frees, u.frees...)
	t.deeds = append(t.deeds, u.deeds...)
	t.items = append(t.items, u.items...)
	for _, back := range u.undo {
		t.takenBack(back)
	}
}

// takenBack adds a way back, together with one in the same words.
func (t *task) takenBack(back undo) {
	for i := range t.undo {
		if known := &t.undo[i]; known.before == back.before && known.after == back.after {
			known.items = append(known.items, back.items...)
			return
		}
	}
	t.undo = append(t.undo, back)
}

// words completes the text of a task and of its way back.
func (t *task) words() {
	if len(t.items) > 0 {
		t.Text += " " + strings.Join(tidy(t.items), ", ") + t.tail
	}
	ways := make([]string, len(t.undo))
	for i, back := range t.undo {
		ways[i] = back.before + strings.Join(tidy(back.items), ", ") + back.after
	}
	t.Undo = strings.Join(ways, "; ")
}

// back is a way back about one thing.
func back(before, item, after string) []undo {
	return []undo{{before, []string{item}, after}}
}

// tidy sorts a list and takes out what stands in it twice.
func tidy[T cmp.Ordered](list []T) []T {
	slices.Sort(list)
	return slices.Compact(list)
}
