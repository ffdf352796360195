package diffreport

import (
	"fmt"
	"slices"
)

// swaps tells two cords that change places in one room as a pair, in one step.
func (p *planner) swaps() {
	if p.mode.single {
		return
	}
	for _, t := range p.tasks {
		if t.RoomFor == "" || t.into != nil || t.Action != Disconnect || t.work.cord.after == nil {
			continue
		}
		w := t.work
		for _, f := range t.frees {
			for _, on := range p.taken[f.side] {
				if on.work != w && on.work.label == t.RoomFor && changePlaces(w, on.work) {
					exchange(w, on.work)
				}
			}
		}
	}
}

// changePlaces says whether two cords each leave one row of ports in the same
// room for that of the other, and nothing else has to happen in between.
func changePlaces(a, b *cableWork) bool {
	if b.cord.after == nil || a.renew || b.renew || len(a.off) != 1 || len(a.on) != 1 || len(b.off) != 1 || len(b.on) != 1 {
		return false
	}
	four := []*task{a.off[0], a.on[0], b.off[0], b.on[0]}
	for _, t := range four {
		if t.Space != four[0].Space || t.into != nil {
			return false
		}
	}
	if !sameSides(a.off[0].frees, b.on[0].takes) || !sameSides(b.off[0].frees, a.on[0].takes) {
		return false
	}
	for _, t := range []*task{a.on[0], b.on[0]} {
		for _, o := range t.after {
			if !slices.Contains(four, o) && !slices.Contains(t.work.off[0].after, o) && !slices.Contains(t.work.off[0].prefer, o) {
				return false
			}
		}
	}
	return true
}

func sameSides(a, b []hold) bool {
	return len(a) == len(b) && !slices.ContainsFunc(a, func(h hold) bool {
		return !slices.ContainsFunc(b, func(o hold) bool { return o.side == h.side })
	})
}

// exchange makes one task of the four.
func exchange(a, b *cableWork) {
	if b.label < a.label {
		a, b = b, a
	}
	t := a.off[0]
	aFrom, bFrom := t.ports, b.off[0].ports
	aTo, bTo := a.on[0].ports, b.on[0].ports
	t.Step.Action, t.phase = Swap, toPatch
	t.Text = fmt.Sprintf("change over %s and %s: %s from %s to %s, %s from %s to %s", a.name(), b.name(), a.name(), aFrom, aTo, b.name(), bFrom, bTo)
	t.undo = back("", fmt.Sprintf("change over %s and %s: %s from %s to %s, %s from %s to %s", a.name(), b.name(), a.name(), aTo, aFrom, b.name(), bTo, bFrom), "")
	t.RoomFor = ""
	for _, other := range []*task{b.off[0], a.on[0], b.on[0]} {
		other.undo = nil
		t.join(other)
	}
	for _, w := range []*cableWork{a, b} {
		w.off, w.on = []*task{t}, []*task{t}
		for _, dark := range w.supplied {
			dark.prefer = slices.DeleteFunc(dark.prefer, func(o *task) bool { return o.final() == t })
		}
	}
}
