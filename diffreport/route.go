package diffreport

import (
	"container/heap"
	"slices"

	"homerun/schema"
	"homerun/schema/plant"
)

// Walking least is the problem of the shortest order of work on several
// machines, which nobody solves exactly. These are the usual good answers: in a
// room everything is done that can be done there, then the crew goes where the
// longest chain of further rooms begins, or to the next room of the floor. Then
// either walk is shortened, and the better one taken: fewer visits, then fewer
// stairs.

// route puts the tasks in an order that works and walks little. It is false
// where tasks wait for each other.
func (p *planner) route() ([]*task, bool) {
	var best walk
	for _, by := range []preference{chainFirst, floorFirst} {
		r := p.router(by)
		w := r.walk()
		if len(w.stops) < len(r.tasks) {
			return nil, false
		}
		w = r.shorten(w)
		if by == chainFirst || slices.Compare([]int{w.visits, w.stairs}, []int{best.visits, best.stairs}) < 0 {
			best = w
		}
	}
	order := make([]*task, len(best.stops))
	for i, s := range best.stops {
		order[i], s.task.Space = s.task, s.space
	}
	return order, true
}

// A preference says where the crew goes next.
type preference uint8

const (
	chainFirst preference = iota
	floorFirst
)

// A walk is the tasks in one order, with what it costs to walk: how many visits
// it is, and how often the crew changes the floor or the building.
type walk struct {
	stops          []stop
	visits, stairs int
}

// A stop is a task and where it is done.
type stop struct {
	task  *task
	space string
}

func (r *router) walk() walk {
	w := walk{stops: make([]stop, 0, len(r.tasks))}
	for r.rooms.Len() > 0 {
		room := heap.Pop(&r.rooms).(call) //nolint:errcheck,forcetypeassert // the heap holds nothing else
		if best, waiting := r.best[room.space]; !waiting || best != room.chain {
			continue // the room was called again since, or is done
		}
		if n := len(w.stops); n == 0 || w.stops[n-1].space != room.space {
			w.visits++
			if n > 0 && r.area[w.stops[n-1].space] != r.area[room.space] {
				w.stairs++
			}
		}
		r.stay(room.space, &w)
	}
	return w
}

// router is the state of the walk.
type router struct {
	by        preference
	back      bool
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

func (p *planner) router(by preference) *router {
	r := &router{by: by, back: p.mode.back, open: make([]int, len(p.tasks)), followers: make([][]*task, len(p.tasks)), chain: make([]int, len(p.tasks)), ready: make(map[string]*urgent), best: make(map[string]int), area: make(map[string][2]string)}
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

// areaOf is the building and floor of a room. Outdoors is a floor of its own: the
// crew puts its boots on once.
func (p *planner) areaOf(label string) (area [2]string) {
	for _, in := range []*plant.Plant{p.head, p.base} {
		it, _ := in.Find(label)
		if s, ok := it.(*plant.Space); ok {
			area[0], _ = schema.SpaceBuilding.In(s.Record())
			area[1], _ = schema.SpaceFloor.In(s.Record())
			if kind, _ := schema.SpaceKind.In(s.Record()); kind == "outdoor" {
				area[1] = "outdoors"
			}
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
		r.call(call{space: t.Space, area: r.area[t.Space], chain: r.chain[t.place], by: r.by, back: r.back})
	}
}

func (r *router) call(c call) {
	r.best[c.space] = c.chain
	heap.Push(&r.rooms, c)
}

// stay does in a room what can be done there.
func (r *router) stay(space string, w *walk) {
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
		default:
			r.here = false
			return
		}
		w.stops = append(w.stops, stop{t, space})
		for _, f := range r.followers[t.place] {
			if r.open[f.place]--; r.open[f.place] == 0 {
				r.offer(f)
			}
		}
	}
}
