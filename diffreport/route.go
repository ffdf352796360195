package diffreport

import (
	"cmp"
	"container/heap"
	"slices"

	"homerun/schema"
	"homerun/schema/plant"
)

// Walking least is the problem of the shortest order of work on several
// machines, which nobody solves exactly. This is the usual good answer: in a
// room everything is done that can be done there, then the crew goes where the
// longest chain of further rooms begins, floor by floor.

// route puts the tasks in an order that works and walks little. It is false
// where tasks wait for each other.
func (p *planner) route() ([]*task, bool) {
	r := p.router()
	order := make([]*task, 0, len(r.tasks))
	for r.rooms.Len() > 0 {
		room := heap.Pop(&r.rooms).(call) //nolint:errcheck,forcetypeassert // the heap holds nothing else
		if best, waiting := r.best[room.space]; !waiting || best != room.chain {
			continue // the room was called again since, or is done
		}
		order = r.stay(room.space, order)
	}
	return order, len(order) == len(r.tasks)
}

// router is the state of the walk.
type router struct {
	tasks     []*task
	followers [][]*task
	open      []int
	// chain is the number of further rooms that wait for a task.
	chain []int
	// ready are the tasks that can be done, by room; best is the longest chain
	// among them.
	ready map[string]*urgent
	best  map[string]int
	rooms calls
	// here is set while the crew is in the room.
	here bool
	room string
	area map[string][2]string
	// anywhere are tasks that can be done in any room.
	anywhere []*task
}

func (p *planner) router() *router {
	r := &router{open: make([]int, len(p.tasks)), followers: make([][]*task, len(p.tasks)), chain: make([]int, len(p.tasks)), ready: make(map[string]*urgent), best: make(map[string]int), area: make(map[string][2]string)}
	for _, t := range p.tasks {
		if t.into == nil {
			r.tasks = append(r.tasks, t)
		}
	}
	for _, t := range r.tasks {
		if _, known := r.area[t.Space]; !known {
			r.area[t.Space] = p.areaOf(t.Space)
		}
		t.waiting = t.waits()
		for _, o := range t.waiting {
			r.open[t.place]++
			r.followers[o.place] = append(r.followers[o.place], t)
		}
	}
	r.chains()
	for _, t := range r.tasks {
		if r.open[t.place] == 0 {
			r.offer(t)
		}
	}
	if len(r.rooms) == 0 && len(r.anywhere) > 0 {
		r.call(call{space: r.anywhere[0].Space})
	}
	return r
}

// areaOf is the building and floor of a room.
func (p *planner) areaOf(label string) (area [2]string) {
	for _, in := range []*plant.Plant{p.head, p.base} {
		it, _ := in.Find(label)
		if s, ok := it.(*plant.Space); ok {
			area[0], _ = schema.SpaceBuilding.In(s.Record())
			area[1], _ = schema.SpaceFloor.In(s.Record())
			return area
		}
	}
	return area
}

// chains counts from the end how many changes of room follow each task.
func (r *router) chains() {
	open := append([]int(nil), r.open...)
	var stack, done []*task
	for _, t := range r.tasks {
		if open[t.place] == 0 {
			stack = append(stack, t)
		}
	}
	for len(stack) > 0 {
		t := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		done = append(done, t)
		for _, f := range r.followers[t.place] {
			if open[f.place]--; open[f.place] == 0 {
				stack = append(stack, f)
			}
		}
	}
	for _, t := range slices.Backward(done) {
		for _, f := range r.followers[t.place] {
			n := r.chain[f.place]
			if f.Space != t.Space && !f.floats && !t.floats {
				n++
			}
			r.chain[t.place] = max(r.chain[t.place], n)
		}
	}
}

// offer makes a task one that can be done.
func (r *router) offer(t *task) {
	if t.floats {
		r.anywhere = append(r.anywhere, t)
		return
	}
	q := r.ready[t.Space]
	if q == nil {
		q = &urgent{}
		r.ready[t.Space] = q
	}
	heap.Push(q, t)
	if r.here && t.Space == r.room {
		return
	}
	if best, waiting := r.best[t.Space]; !waiting || r.chain[t.place] > best {
		r.call(call{t.Space, r.area[t.Space], r.chain[t.place]})
	}
}

func (r *router) call(c call) {
	r.best[c.space] = c.chain
	heap.Push(&r.rooms, c)
}

// stay does in a room what can be done there.
func (r *router) stay(space string, order []*task) []*task {
	r.here = true
	r.room = space
	delete(r.best, space)
	for {
		var t *task
		q := r.ready[space]
		switch {
		case q != nil && q.Len() > 0:
			t = heap.Pop(q).(*task) //nolint:errcheck,forcetypeassert // the heap holds nothing else
		case len(r.anywhere) > 0:
			t = r.anywhere[0]
			r.anywhere = r.anywhere[1:]
			t.Space = space
		default:
			r.here = false
			return order
		}
		order = append(order, t)
		for _, f := range r.followers[t.place] {
			if r.open[f.place]--; r.open[f.place] == 0 {
				r.offer(f)
			}
		}
	}
}

// A call is a room that waits for the crew.
type call struct {
	space string
	area  [2]string
	chain int
}

// calls are the rooms that wait, the one where the longest chain begins first,
// then in the order of buildings, floors and labels.
type calls []call

func (c *calls) Len() int      { return len(*c) }
func (c *calls) Swap(i, j int) { (*c)[i], (*c)[j] = (*c)[j], (*c)[i] }
func (c *calls) Less(i, j int) bool {
	a, b := (*c)[i], (*c)[j]
	return cmp.Or(cmp.Compare(b.chain, a.chain), slices.Compare(a.area[:], b.area[:]), cmp.Compare(a.space, b.space)) < 0
}

// Push and Pop are for the heap.
func (c *calls) Push(x any) { *c = append(*c, x.(call)) } //nolint:errcheck,forcetypeassert // only calls are pushed

func (c *calls) Pop() any {
	last := (*c)[len(*c)-1]
	*c = (*c)[:len(*c)-1]
	return last
}

// urgent are the tasks that can be done in one room, the most urgent first.
type urgent []*task

func (u *urgent) Len() int      { return len(*u) }
func (u *urgent) Swap(i, j int) { (*u)[i], (*u)[j] = (*u)[j], (*u)[i] }
func (u *urgent) Less(i, j int) bool {
	a, b := (*u)[i], (*u)[j]
	return cmp.Or(cmp.Compare(a.urge, b.urge), cmp.Compare(a.place, b.place)) < 0
}

// Push and Pop are for the heap.
func (u *urgent) Push(x any) { *u = append(*u, x.(*task)) } //nolint:errcheck,forcetypeassert // only tasks are pushed

func (u *urgent) Pop() any {
	last := (*u)[len(*u)-1]
	*u = (*u)[:len(*u)-1]
	return last
}
