package diffreport

import (
	"container/heap"
	"slices"
)

// A stay is what is done in one room before the crew goes on.
type stay struct {
	space string
	tasks []*task
}

// shorten makes a walk shorter where the tasks allow it: a stay whose work can
// wait for the next one in the same room, or be done in the one before, is none
// of its own, and stays that do not wait for each other are made floor by floor.
func (r *router) shorten(w walk) walk {
	s := &stays{router: r, at: make([]int, len(r.open))}
	for _, stop := range w.stops {
		if n := len(s.all); n == 0 || s.all[n-1].space != stop.space {
			s.all = append(s.all, stay{space: stop.space})
		}
		n := len(s.all) - 1
		s.all[n].tasks, s.at[stop.task.place] = append(s.all[n].tasks, stop.task), n
	}
	s.gather()
	ordered := s.walk(s.byFloor())
	if plain := s.walk(s.kept()); plain.visits < ordered.visits || plain.visits == ordered.visits && plain.stairs <= ordered.stairs {
		return plain
	}
	return ordered
}

// stays are the stays of a walk, with the one that each task is done in.
type stays struct {
	*router
	all []stay
	at  []int
}

// gather joins stays in one room. A second pass finds what the first made room
// for; more have found nothing on any plant tried.
func (s *stays) gather() {
	for range 2 {
		last := make(map[string]int)
		for i := range s.all {
			if len(s.all[i].tasks) == 0 {
				continue
			}
			space := s.all[i].space
			before, again := last[space]
			switch {
			case again && s.canWait(before, i):
				s.all[i].tasks = append(s.all[before].tasks, s.all[i].tasks...)
				s.move(before, i)
			case again && s.canHurry(i, before):
				s.all[before].tasks = append(s.all[before].tasks, s.all[i].tasks...)
				s.move(i, before)
				continue
			}
			last[space] = i
		}
	}
}

// move notes that the tasks of one stay are done in another.
func (s *stays) move(from, to int) {
	for _, t := range s.all[from].tasks {
		s.at[t.place] = to
	}
	s.all[from].tasks = nil
}

// canWait says whether everything done in one stay can wait for a later one:
// nothing in between needs it, and no service is down for longer.
func (s *stays) canWait(from, to int) bool {
	return !slices.ContainsFunc(s.all[from].tasks, func(t *task) bool {
		return t.urge == mending || slices.ContainsFunc(s.followers[t.place], func(f *task) bool { return s.at[f.place] < to && s.at[f.place] != from })
	})
}

// canHurry says whether everything done in one stay can be done in an earlier
// one already.
func (s *stays) canHurry(from, to int) bool {
	return !slices.ContainsFunc(s.all[from].tasks, func(t *task) bool {
		return t.urge == cutting || t.urge == severing || slices.ContainsFunc(t.waiting, func(o *task) bool { return s.at[o.place] > to && s.at[o.place] != from })
	})
}

// kept are the stays in the order in which they are.
func (s *stays) kept() []int {
	var order []int
	for i := range s.all {
		if len(s.all[i].tasks) > 0 {
			order = append(order, i)
		}
	}
	return order
}

// byFloor orders the stays so that the crew leaves a floor when nothing more can
// be done there.
func (s *stays) byFloor() []int {
	open, followers := s.waits()
	ready := make(map[[2]string]*places)
	var floors [][2]string
	offer := func(i int) {
		floor := s.area[s.all[i].space]
		if ready[floor] == nil {
			ready[floor] = &places{}
			floors = append(floors, floor)
		}
		heap.Push(ready[floor], i)
	}
	kept := s.kept()
	for _, i := range kept {
		if open[i] == 0 {
			offer(i)
		}
	}
	order := make([]int, 0, len(kept))
	var floor [2]string
	for len(order) < len(kept) {
		if here := ready[floor]; here == nil || here.Len() == 0 {
			floor = firstFloor(floors, ready)
		}
		i := heap.Pop(ready[floor]).(int) //nolint:errcheck,forcetypeassert // the heap holds nothing else
		order = append(order, i)
		for _, f := range followers[i] {
			if open[f]--; open[f] == 0 {
				offer(f)
			}
		}
	}
	return order
}

// firstFloor is the floor on which the first of the stays is that can be made.
func firstFloor(floors [][2]string, ready map[[2]string]*places) [2]string {
	best := [2]string{}
	first := -1
	for _, f := range floors {
		if p := *ready[f]; len(p) > 0 && (first < 0 || p[0] < first) {
			best, first = f, p[0]
		}
	}
	return best
}

// waits says for each stay how many others it waits for, and which wait for it.
func (s *stays) waits() (open []int, followers [][]int) {
	open, followers = make([]int, len(s.all)), make([][]int, len(s.all))
	met := make(map[[2]int]bool)
	for i := range s.all {
		for _, t := range s.all[i].tasks {
			for _, o := range t.waiting {
				pair := [2]int{s.at[o.place], i}
				if pair[0] != i && !met[pair] {
					met[pair] = true
					open[i]++
					followers[pair[0]] = append(followers[pair[0]], i)
				}
			}
		}
	}
	return open, followers
}

// walk makes stops of stays, with what they cost.
func (s *stays) walk(order []int) walk {
	w := walk{stops: make([]stop, 0, len(s.tasks))}
	for n, i := range order {
		here := s.all[i]
		if n == 0 || s.all[order[n-1]].space != here.space {
			w.visits++
			if n > 0 && s.area[s.all[order[n-1]].space] != s.area[here.space] {
				w.stairs++
			}
		}
		for _, t := range here.tasks {
			w.stops = append(w.stops, stop{t, here.space})
		}
	}
	return w
}

// places are stays by their place in the walk, the earliest first.
type places []int

func (p *places) Len() int           { return len(*p) }
func (p *places) Swap(i, j int)      { (*p)[i], (*p)[j] = (*p)[j], (*p)[i] }
func (p *places) Less(i, j int) bool { return (*p)[i] < (*p)[j] }

// Push and Pop are for the heap.
func (p *places) Push(x any) { *p = append(*p, x.(int)) } //nolint:errcheck,forcetypeassert // only places are pushed

func (p *places) Pop() any {
	last := (*p)[len(*p)-1]
	*p = (*p)[:len(*p)-1]
	return last
}
