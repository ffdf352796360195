package rules

import (
	"slices"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// A coaxTree follows a signal over coaxial cable from what puts it out, through
// splitters, to what wants it. Every port is passed once.
type coaxTree struct {
	series byCable[standard.Series]
	// taken are the equipment ports at which a signal has arrived.
	taken map[*plant.Port]bool
	done  map[*plant.Holder]bool
	queue []*coaxHop
	// arrived are the hops that end at equipment which states what it wants.
	arrived []*coaxHop
	// noLoss are splitters that a signal can not be followed through, as their
	// loss is not stated; noLevel is what puts out a level that is not.
	noLoss, noLevel []*plant.Holder
	// astray are hops that end at another port of a splitter or amplifier than
	// its input.
	astray []*coaxHop
}

// A coaxHop is one cable or one splitter on the way, and the port behind it.
type coaxHop struct {
	before *coaxHop
	source *plant.Holder
	port   *plant.Port
	// cable is the run or cord, or the splitter.
	cable  schema.Entry
	series standard.Series // none for a splitter, and a cord that states none
	length unit.Length
	loss   unit.Loss // of a splitter
}

// coaxOf are the coaxial cable types of a plant.
func coaxOf(p *lint.Pass) (of byCable[standard.Series]) {
	for _, c := range p.Plant.Cables {
		word, stated := schema.CableSeries.In(c.Record())
		if !stated || c.Medium() != plant.Coax {
			continue
		}
		if series, err := standard.ParseSeries(word); err == nil {
			of.set(p.Plant, c, series)
		}
	}
	return of
}

// grow follows every signal of a plant. What comes first on the way of a signal
// is followed first, so that an amplifier knows at which port it is fed.
func grow(p *plant.Plant, series byCable[standard.Series]) *coaxTree {
	t := &coaxTree{series: series, taken: make(map[*plant.Port]bool), done: make(map[*plant.Holder]bool)}
	for _, kind := range [...]string{"antenna", "head-end", "amplifier", ""} {
		for _, h := range p.Holders {
			if is, _ := schema.EquipmentKind.In(h.Record()); h.IsEquipment() && (is == kind || kind == "") {
				t.emit(h)
				t.drain()
			}
		}
	}
	return t
}

// emit lets a source's level out of every port at which none came in.
func (t *coaxTree) emit(h *plant.Holder) {
	if t.done[h] {
		return
	}
	_, stated := schema.EquipmentLevel.In(h.Record())
	if !stated && !regenerates(h) {
		return
	}
	t.done[h] = true
	for i := range h.Ports {
		port := &h.Ports[i]
		if t.taken[port] || isInput(port) || !t.attached(port) {
			continue
		}
		if !stated {
			t.noLevel = append(t.noLevel, h)
			return
		}
		t.leave(&coaxHop{source: h, port: port})
	}
}

// inputOf is the port at which a piece of equipment says that its signal comes
// in; it is not known where it says nothing, or names a port it does not have.
func inputOf(h *plant.Holder) (port *plant.Port, known bool) {
	n, stated := schema.EquipmentInput.In(h.Record())
	if !stated {
		return nil, false
	}
	return h.Port(n)
}

func isInput(port *plant.Port) bool {
	input, known := inputOf(port.Holder)
	return known && input == port
}

// regenerates says whether a piece of equipment puts out a level of its own.
func regenerates(h *plant.Holder) bool {
	kind, _ := schema.EquipmentKind.In(h.Record())
	return kind == "head-end" || kind == "amplifier"
}

// attached says whether coaxial cable is at an equipment port.
func (t *coaxTree) attached(port *plant.Port) bool {
	if port.Onward != nil {
		return t.series.at(port.Onward.Cable) != 0
	}
	return port.Front != nil && t.coaxCord(port.Front)
}

// coaxCord says whether a cord may be coaxial: one that states no type may.
func (t *coaxTree) coaxCord(c *plant.Cord) bool {
	return c.Cable == nil || t.series.at(c.Cable) != 0
}

// leave goes out of an equipment port by what is plugged in there.
func (t *coaxTree) leave(h *coaxHop) {
	switch {
	case h.port.Onward != nil:
		t.along(h, h.port.Onward)
	case h.port.Front != nil:
		t.over(h, h.port.Front)
	}
}

// along follows a run to its other end.
func (t *coaxTree) along(h *coaxHop, r *plant.Run) {
	series, end := t.series.at(r.Cable), r.To
	length, stated := r.Length()
	if series == 0 || !stated || !r.Live() {
		return
	}
	if r.To.Holds(h.port) {
		end = r.From
	}
	if far := end.First(); far != nil {
		t.queue = append(t.queue, &coaxHop{before: h, source: h.source, port: far, cable: r.Entry, series: series, length: length})
	}
}

// over follows a cord to its other end. One that states no length or no type
// counts as without loss.
func (t *coaxTree) over(h *coaxHop, c *plant.Cord) {
	far := c.Other(h.port)
	if far == nil || !t.coaxCord(c) {
		return
	}
	length, _ := c.CordLength()
	t.queue = append(t.queue, &coaxHop{before: h, source: h.source, port: far, cable: c.Entry, series: t.series.at(c.Cable), length: length})
}

// drain goes on from every port reached until there is none left.
func (t *coaxTree) drain() {
	for len(t.queue) > 0 {
		h := t.queue[0]
		t.queue = t.queue[1:]
		if t.taken[h.port] {
			continue
		}
		t.taken[h.port] = true
		if h.port.Holder.IsEquipment() {
			t.arrive(h)
			continue
		}
		t.pass(h)
	}
}

// pass goes through a jack or a joint: in by one side, out by the other.
func (t *coaxTree) pass(h *coaxHop) {
	port := h.port
	byRear := port.Rear != nil && port.Rear.Entry.Record == h.cable.Record
	switch {
	case byRear && port.Onward != nil:
		t.along(h, port.Onward)
	case byRear && port.Front != nil:
		t.over(h, port.Front)
	case !byRear && port.Rear != nil:
		t.along(h, port.Rear)
	}
}

// arrive ends at equipment, or goes on through a splitter.
func (t *coaxTree) arrive(h *coaxHop) {
	at := h.port.Holder
	if _, wants := schema.EquipmentWants.In(at.Record()); wants {
		t.arrived = append(t.arrived, h)
	}
	kind, _ := schema.EquipmentKind.In(at.Record())
	if _, known := inputOf(at); known && !isInput(h.port) && (kind == "splitter" || kind == "amplifier") {
		t.astray = append(t.astray, h)
		return
	}
	if _, own := schema.EquipmentLevel.In(at.Record()); own || regenerates(at) {
		t.emit(at)
		return
	}
	if kind != "splitter" {
		return
	}
	loss, stated := schema.EquipmentLoss.In(at.Record())
	if !stated {
		t.noLoss = append(t.noLoss, at)
		return
	}
	for i := range at.Ports {
		out := &at.Ports[i]
		if !t.taken[out] && t.attached(out) {
			t.taken[out] = true
			t.leave(&coaxHop{before: h, source: h.source, port: out, cable: at.Entry, loss: loss})
		}
	}
}

// way lists the hops from the source to here, without the source itself.
func (h *coaxHop) way() []*coaxHop {
	var hops []*coaxHop
	for at := h; at != nil; at = at.before {
		if at.cable.Record != nil {
			hops = append(hops, at)
		}
	}
	slices.Reverse(hops)
	return hops
}
