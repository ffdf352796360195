package diffreport

import (
	"cmp"
	"slices"
)

// A call is a room that waits for the crew.
type call struct {
	space string
	area  [2]string
	chain int
	by    preference
	// back is set where the rooms come in the reverse of their order.
	back bool
}

// calls are the rooms that wait, the one where the longest chain begins first,
// then in the order of buildings, floors and labels; or the floor first.
type calls []call

func (c *calls) Len() int      { return len(*c) }
func (c *calls) Swap(i, j int) { (*c)[i], (*c)[j] = (*c)[j], (*c)[i] }
func (c *calls) Less(i, j int) bool {
	a, b := (*c)[i], (*c)[j]
	chain, area := cmp.Compare(b.chain, a.chain), slices.Compare(a.area[:], b.area[:])
	space := cmp.Compare(a.space, b.space)
	if a.back {
		area, space = -area, -space
	}
	if a.by == floorFirst {
		return cmp.Or(area, chain, space) < 0
	}
	return cmp.Or(chain, area, space) < 0
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
