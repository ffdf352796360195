package plant

import (
	"strconv"

	"homerun/schema"
	"homerun/schema/unit"
)

// A Holder is anything that has ports: a panel, outlet, consolidation point,
// splice closure or piece of equipment.
type Holder struct {
	item
	Space *Space
	Rack  *Rack
	Bond  *Busbar
	// Ports are its ports; port 1 is Ports[0].
	Ports []Port
}

// mostPorts bounds what one record can make us hold in memory.
const mostPorts = 4096

// A Port is one port of a holder. A side that nothing uses is nil.
type Port struct {
	Holder *Holder
	Number int
	// Rear is the run behind a panel or outlet, or the run that arrives at a
	// consolidation point or closure.
	Rear *Run
	// Onward is the run that leaves a consolidation point or closure, or one
	// that ends in a plug in equipment.
	Onward *Run
	// Front is the cord in front.
	Front *Cord
}

// A Row is neighbouring ports of one holder.
type Row []Port

// First is the first port of the row, nil when it is empty.
func (r Row) First() *Port {
	if len(r) == 0 {
		return nil
	}
	return &r[0]
}

// Holds says whether a port is one of the row's.
func (r Row) Holds(port *Port) bool {
	if port == nil || len(r) == 0 || r[0].Holder != port.Holder {
		return false
	}
	n := port.Number - r[0].Number
	return n >= 0 && n < len(r)
}

// place is where in the row a port stands, -1 where it does not.
func (r Row) place(p *Port) int {
	for i := range r {
		if &r[i] == p {
			return i
		}
	}
	return -1
}

// at is the port at a place, or the last one before it.
func (r Row) at(i int) *Port {
	if len(r) == 0 || i < 0 {
		return nil
	}
	return &r[min(i, len(r)-1)]
}

// opposite is the port at the other end of a cable, of whose rows one holds p.
func opposite(from, to Row, p *Port) *Port {
	if i := from.place(p); i >= 0 {
		return to.at(i)
	}
	return from.at(to.place(p))
}

// Space is where the row's holder is, nil when that is not known.
func (r Row) Space() *Space {
	if len(r) == 0 {
		return nil
	}
	return r[0].Holder.Space
}

// String names the row as references write it.
func (r Row) String() string {
	switch len(r) {
	case 0:
		return "not recorded"
	case 1:
		return r[0].String()
	}
	return r[0].String() + "-" + strconv.Itoa(r[len(r)-1].Number)
}

// String names the port as references write it, with as many digits as the
// holder's highest port.
func (p *Port) String() string {
	digits := strconv.Itoa(p.Number)
	for len(digits) < len(strconv.Itoa(len(p.Holder.Ports))) {
		digits = "0" + digits
	}
	return p.Holder.Label + ":" + digits
}

// Used says whether anything is on the port.
func (p *Port) Used() bool { return p.Rear != nil || p.Onward != nil || p.Front != nil }

// Port returns one port by its number.
func (h *Holder) Port(n int) (*Port, bool) {
	if n < 1 || n > len(h.Ports) {
		return nil, false
	}
	return &h.Ports[n-1], true
}

// Joins says whether the holder joins two runs end to end instead of giving
// a front to plug into.
func (h *Holder) Joins() bool {
	return h.Kind.Name == schema.KindConsolidation || h.Kind.Name == schema.KindClosure
}

// IsEquipment says whether the holder is what the cabling serves.
func (h *Holder) IsEquipment() bool { return h.Kind.Name == schema.KindEquipment }

// Category is the category of the holder's twisted-pair jacks.
func (h *Holder) Category() (string, bool) { return heldWord(h, "category") }

// Screen says whether the holder's jacks carry a screen through: "screened" or
// "unscreened".
func (h *Holder) Screen() (string, bool) { return heldWord(h, "screen") }

// Medium is what the holder's jacks or adapters are made for.
func (h *Holder) Medium() Medium { return mediumOf(h.Record()) }

func heldWord(h *Holder, field string) (string, bool) {
	v := h.Own(field)
	if v == nil || v.Bad {
		return "", false
	}
	return v.Text, true
}

// A Clash is one side of a port that two cables claim.
type Clash struct {
	Port *Port
	// Side is "rear" or "front".
	Side          string
	First, Second Item
	// Field is the field of Second that makes the claim.
	Field *schema.Field
}

// attach puts a run on its port, or records the clash. At a point that joins
// two runs the one that ends there arrives at the rear and the one that starts
// there leaves by the front.
func (p *builder) attach(port *Port, run *Run, field *schema.Field) {
	side, slot := "rear", &port.Rear
	starts := field == schema.RunFrom.Field
	if port.Holder.Joins() && starts || port.Holder.IsEquipment() {
		side, slot = "front", &port.Onward
	}
	switch {
	case *slot != nil && *slot != run:
		p.Clashes = append(p.Clashes, Clash{Port: port, Side: side, First: *slot, Second: run, Field: field})
	case side == "front" && port.Front != nil:
		p.Clashes = append(p.Clashes, Clash{Port: port, Side: side, First: port.Front, Second: run, Field: field})
	default:
		*slot = run
	}
}

func (p *builder) plug(port *Port, cord *Cord, field *schema.Field) {
	var first Item
	switch {
	case port.Front != nil:
		first = port.Front
	case port.Onward != nil:
		first = port.Onward
	default:
		port.Front = cord
		return
	}
	p.Clashes = append(p.Clashes, Clash{Port: port, Side: "front", First: first, Second: cord, Field: field})
}

// CordLength is the declared length of a cord.
func (c *Cord) CordLength() (unit.Length, bool) { return c.length, c.hasLength }
