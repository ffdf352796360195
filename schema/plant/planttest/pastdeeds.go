package planttest

import (
	"fmt"
	"slices"
)

// border is the first file of the side line: the last quarter is its own, so
// that no file is written on both lines.
func (p *past) border() int { return p.files - p.files/4 }

// pick chooses a panel whose every part stands in files of the line at hand; nil
// where there is none.
func (p *past) pick() *pastPanel {
	var mine []*pastPanel
	for _, h := range p.panels {
		first, last := min(h.hardware, h.bundle, h.extra), max(h.hardware, h.bundle, h.extra)
		if p.onSide && first >= p.border() || !p.onSide && last < p.border() {
			mine = append(mine, h)
		}
	}
	if len(mine) == 0 {
		return nil
	}
	return mine[p.random.IntN(len(mine))]
}

// deed does one thing to a panel or to what hangs on it. No thing is touched
// twice in a commit, since what happened to it would be told once.
func (p *past) deed(done map[int]bool) {
	h := p.pick()
	if h == nil || done[h.thing] {
		return
	}
	done[h.thing] = true
	switch act := p.random.IntN(40); {
	case act < 12:
		p.measure(h)
	case act < 18:
		p.patch(h)
	case act < 22, p.steady && (act < 28 || act == 37):
		p.annotate(h)
	case act < 26:
		p.relabelRun(h)
	case act < 28:
		p.relabelPanel(h)
	case act < 30:
		p.pull(h)
	case act < 33:
		p.takeOut(h)
	case act < 35:
		p.install(h)
	case act < 37:
		p.moveFile(h)
	case act < 38:
		p.trade(h)
	default:
		p.layOut(h)
	}
}

// measure corrects a length; a longer one is another cable.
func (p *past) measure(h *pastPanel) {
	if len(h.runs) == 0 {
		return
	}
	r := h.runs[p.random.IntN(len(h.runs))]
	if p.random.IntN(2) == 0 {
		r.decimetres -= 1 + p.random.IntN(9)
		p.record(r.thing, "records-only", "", r.label)
	} else {
		r.decimetres += 1 + p.random.IntN(9)
		p.record(r.thing, "change", "", r.label)
	}
	p.touch(h.bundle)
}

// patch puts the far end of a cord elsewhere.
func (p *past) patch(h *pastPanel) {
	if len(h.cords) == 0 {
		return
	}
	c := h.cords[p.random.IntN(len(h.cords))]
	// The panel's own share of the switch has 24 ports, of which it uses six.
	free := slices.DeleteFunc(slices.Collect(ports(h.space*perPanel)), func(n int) bool {
		return slices.ContainsFunc(h.cords, func(o *pastCord) bool { return o.plug == n })
	})
	c.plug = free[p.random.IntN(len(free))]
	p.record(c.thing, "move", "", c.label)
	p.touch(h.extra)
}

func ports(after int) func(yield func(int) bool) {
	return func(yield func(int) bool) {
		for n := after + 1; n <= after+perPanel && yield(n); n++ {
			continue
		}
	}
}

// annotate writes a note on the panel or on one run.
func (p *past) annotate(h *pastPanel) {
	note := fmt.Sprintf("sheet %d", p.n+1)
	if len(h.runs) == 0 || p.random.IntN(2) == 0 {
		h.note = note
		p.record(h.thing, "records-only", "", h.label)
		p.touch(h.hardware)
		return
	}
	r := h.runs[p.random.IntN(len(h.runs))]
	r.note = note
	p.record(r.thing, "records-only", "", r.label)
	p.touch(h.bundle)
}

// relabelRun gives a run another label, one that was given up before or a new
// one, and says so or not.
func (p *past) relabelRun(h *pastPanel) {
	if len(h.runs) == 0 {
		return
	}
	r := h.runs[p.random.IntN(len(h.runs))]
	old := r.label
	r.label = p.freshRun(h)
	r.former = ""
	if p.random.IntN(3) > 0 {
		r.former = old
	}
	h.free = append(h.free, old)
	p.record(r.thing, "relabel", old, r.label)
	p.touch(h.bundle)
	if r.tested {
		p.touch(h.extra)
	}
}

// freshRun is a label for a run: half the time one that is free again.
func (p *past) freshRun(h *pastPanel) string {
	if len(h.free) > 0 && p.random.IntN(2) == 0 {
		label := h.free[0]
		h.free = h.free[1:]
		return label
	}
	p.things++ // a number that nothing else has
	return fmt.Sprintf("%s-N%d", h.place, p.things)
}

// relabelPanel gives a panel another label; everything that names it follows.
func (p *past) relabelPanel(h *pastPanel) {
	old := h.label
	p.things++
	h.label = fmt.Sprintf("%dA-P%d", h.floor, p.things)
	h.former = ""
	if p.random.IntN(2) == 0 {
		h.former = old
	}
	p.record(h.thing, "relabel", old, h.label)
	p.touch(h.hardware)
	p.touch(h.bundle)
	p.touch(h.extra)
}

// pull replaces the cable of a whole bundle.
func (p *past) pull(h *pastPanel) {
	if len(h.runs) == 0 {
		return
	}
	if h.cable == "c6a-cmp" {
		h.cable = "c6a-new"
	} else {
		h.cable = "c6a-cmp"
	}
	for _, r := range h.runs {
		p.record(r.thing, "change", "", r.label)
	}
	p.touch(h.bundle)
}

// takeOut takes a run or a cord away.
func (p *past) takeOut(h *pastPanel) {
	if len(h.cords) > 0 && p.random.IntN(3) == 0 {
		i := p.random.IntN(len(h.cords))
		p.record(h.cords[i].thing, "removal", h.cords[i].label, "")
		h.cords = slices.Delete(h.cords, i, i+1)
		p.touch(h.extra)
		return
	}
	if len(h.runs) == 0 {
		return
	}
	i := p.random.IntN(len(h.runs))
	r := h.runs[i]
	p.record(r.thing, "removal", r.label, "")
	h.runs = slices.Delete(h.runs, i, i+1)
	h.free = append(h.free, r.label)
	p.touch(h.bundle)
	if r.tested {
		p.touch(h.extra)
	}
}

// install puts a new run where one was taken out, often under a label that is
// free again.
func (p *past) install(h *pastPanel) {
	taken := make(map[int]bool)
	for _, r := range h.runs {
		taken[r.port] = true
	}
	for port := 1; port <= perPanel; port++ {
		if taken[port] {
			continue
		}
		r := &pastRun{label: p.freshRun(h), port: port, decimetres: 410 + p.random.IntN(440)}
		r.thing = p.born(r.label)
		h.runs = append(h.runs, r)
		p.touch(h.bundle)
		return
	}
}

// moveFile renames the file that a panel's bundle stands in.
func (p *past) moveFile(h *pastPanel) {
	f := h.bundle
	p.gone = append(p.gone, p.paths[f])
	if p.onSide {
		p.sideGone = append(p.sideGone, p.paths[f])
	}
	p.paths[f] = fmt.Sprintf("moved/part-%04d-%d.hcl", f+1, p.n+1)
	p.touch(f)
}

// trade moves the bundle to the file of another panel.
func (p *past) trade(h *pastPanel) {
	other := p.pick()
	if other.hardware == h.bundle {
		return
	}
	p.touch(h.bundle)
	h.bundle = other.hardware
	p.touch(h.bundle)
}

// layOut writes a panel's records with another indentation.
func (p *past) layOut(h *pastPanel) {
	h.indent = 1 + h.indent%8
	p.touch(h.hardware)
	p.touch(h.bundle)
	p.touch(h.extra)
}
