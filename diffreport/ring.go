package diffreport

import (
	"cmp"
	"slices"
)

// unring gives up preferences until no task waits for itself. What has to be
// done before never makes a ring, so each ring has a preference in it; a cable
// that others wait for comes off for a moment, and the step says for which.
func (p *planner) unring() {
	r := &rings{open: make([]int, len(p.tasks)), done: make([]bool, len(p.tasks)), next: make([]int, len(p.tasks)), followers: make([][]*task, len(p.tasks))}
	for _, t := range p.tasks {
		for _, o := range t.waits() {
			r.open[t.place]++
			r.followers[o.place] = append(r.followers[o.place], t)
		}
		if r.open[t.place] == 0 {
			r.ready = append(r.ready, t)
		}
	}
	r.drain()
	for _, t := range p.tasks {
		for !r.done[t.place] {
			ring := r.find(t)
			p.forAMoment(r.giveUp(ring), ring)
			r.drain()
		}
	}
}

// rings is the search for tasks that wait for each other.
type rings struct {
	// open counts what a task still waits for, next is the first of its waits
	// that may not be done; by the place of the task.
	open, next []int
	done       []bool
	followers  [][]*task
	ready      []*task
}

func (r *rings) drain() {
	for len(r.ready) > 0 {
		t := r.ready[len(r.ready)-1]
		r.ready = r.ready[:len(r.ready)-1]
		r.done[t.place] = true
		for _, f := range r.followers[t.place] {
			if r.open[f.place]--; r.open[f.place] == 0 {
				r.ready = append(r.ready, f)
			}
		}
	}
}

// find follows what a task waits for until it meets itself again, and returns
// the ring: each waits for the next, the last for the first.
func (r *rings) find(t *task) []*task {
	at := make(map[*task]int)
	var way []*task
	for {
		if from, met := at[t]; met {
			return way[from:]
		}
		at[t] = len(way)
		way = append(way, t)
		waits := t.waits()
		i := slices.IndexFunc(waits, func(o *task) bool { return !r.done[o.place] })
		t = waits[i]
	}
}

// giveUp takes one preference out of a ring: that of a cable which nobody
// misses before one in service. It returns the task that does not wait now.
func (r *rings) giveUp(ring []*task) *task {
	best := -1
	for i, t := range ring {
		next := ring[(i+1)%len(ring)]
		if slices.Contains(t.after, next) || best >= 0 && !sooner(t, ring[best]) {
			continue
		}
		best = i
	}
	if best < 0 {
		panic("diffreport: tasks of later phases were waited for")
	}
	t, next := ring[best], ring[(best+1)%len(ring)]
	t.prefer = slices.DeleteFunc(t.prefer, func(o *task) bool { return o == next })
	if r.open[t.place]--; r.open[t.place] == 0 {
		r.ready = append(r.ready, t)
	}
	r.followers[next.place] = slices.DeleteFunc(r.followers[next.place], func(f *task) bool { return f == t })
	return t
}

// sooner says whether a task should rather be done too early than another.
func sooner(a, b *task) bool {
	rank := func(t *task) int {
		if t.work == nil {
			return 1 // a preference about power goes with that about the cable
		}
		return 0
	}
	return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(len(a.Outage), len(b.Outage)), cmp.Compare(a.place, b.place)) < 0
}

// forAMoment says for which cable of the ring a cord or run comes off before
// its own place is ready.
func (p *planner) forAMoment(t *task, ring []*task) {
	if t.RoomFor != "" || t.work == nil || len(t.work.on) == 0 {
		return
	}
	for _, f := range t.frees {
		for _, next := range p.taken[f.side] {
			w := next.work
			if w == t.work || !slices.ContainsFunc(ring, func(o *task) bool { return o.work == w || slices.Contains(w.supplied, o) }) {
				continue
			}
			t.RoomFor = w.label
			t.Text += " for a moment: it makes room for " + w.name()
			return
		}
	}
}
