package drawing

import (
	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
)

// A Face is the ports of one panel, outlet or other holder in one visit.
type Face struct {
	Label, Kind string
	// Gone is set where only the earlier plant has the holder.
	Gone bool
	// OneSided is set where the ports have a front only.
	OneSided bool
	Banks    []Bank
	// Undrawn counts the ports in banks that are left out because the visit
	// touches none of them.
	Undrawn int
	// Work says port by port what comes off and goes on, in the order of the
	// ports, the rear first.
	Work []Work
}

// A Bank is a few neighbouring ports, as they are counted on a panel.
type Bank struct{ Jacks []Jack }

// A Jack is one port with a mark for each side.
type Jack struct {
	Number      string
	Rear, Front Mark
}

// Work is one cable that comes off a port side, or goes on it.
type Work struct {
	Port, Side, Cable string
	On                bool
	Step              int
}

// A Mark is what a visit does to one side of a port.
type Mark uint8

// The marks.
const (
	Free    Mark = iota // nothing is on it, before and after
	Stays               // a cable is on it and stays
	Off                 // a cable comes off
	On                  // a cable goes on
	Instead             // a cable comes off and another one, or the same again, goes on
)

// The sizes of faces.
const (
	// MostInBank is how many ports a bank has at most.
	MostInBank = 6
	// mostWhole is how many ports a face has at most of which every bank is
	// drawn: what a reader still takes in at once.
	mostWhole = 96
)

// Faces returns for each visit of an order the faces of what it touches, in the
// order in which it does. A plant that is nil has nothing on any port.
func Faces(o *diffreport.Order, base, head *plant.Plant) [][]Face {
	b := newBoard(o, base, head)
	touches := o.Touches()
	var all [][]Face
	for _, v := range o.Visits() {
		last := v.Steps[len(v.Steps)-1].Number
		n := 0
		for n < len(touches) && touches[n].Step <= last {
			n++
		}
		all = append(all, b.visit(touches[:n]))
		touches = touches[n:]
	}
	return all
}

// visit draws what the touches of one visit do, and does it.
func (b *board) visit(touches []diffreport.Touch) []Face {
	var order []*seat
	byHolder := make(map[*seat][]diffreport.Touch)
	for _, t := range touches {
		s := b.seat(t.Holder, holderLife(t.Gone))
		if s == nil {
			continue
		}
		if byHolder[s] == nil {
			order = append(order, s)
		}
		byHolder[s] = append(byHolder[s], t)
	}
	faces := make([]Face, 0, len(order))
	for _, s := range order {
		faces = append(faces, s.face(byHolder[s]))
		s.carryOut(byHolder[s])
	}
	return faces
}

// face draws a holder as the visit finds it, with what the visit does.
func (s *seat) face(touches []diffreport.Touch) Face {
	f := Face{Label: clip(s.label, longestName), Kind: s.holder.Kind.Name, Gone: s.life == goneLife, OneSided: s.holder.IsEquipment()}
	does := make(map[place][]diffreport.Touch)
	for _, t := range touches {
		at := place{t.Port, t.Front}
		does[at] = append(does[at], t)
	}
	for first := 1; first <= s.ports; first += MostInBank {
		touched := false
		var jacks []Jack
		for n := first; n < first+MostInBank && n <= s.ports; n++ {
			rear, front := place{n, false}, place{n, true}
			touched = touched || does[rear] != nil || does[front] != nil
			jacks = append(jacks, Jack{Number: s.number(n), Rear: s.mark(rear, does[rear]), Front: s.mark(front, does[front])})
			f.Work = append(f.Work, s.work(n, "rear", does[rear])...)
			f.Work = append(f.Work, s.work(n, "front", does[front])...)
		}
		if touched || s.ports <= mostWhole {
			f.Banks = append(f.Banks, Bank{jacks})
		} else {
			f.Undrawn += len(jacks)
		}
	}
	return f
}

func (s *seat) mark(at place, touches []diffreport.Touch) Mark {
	var off, on bool
	for _, t := range touches {
		off, on = off || !t.On, on || t.On
	}
	switch {
	case off && on:
		return Instead
	case off:
		return Off
	case on:
		return On
	case len(s.on[at]) > 0:
		return Stays
	}
	return Free
}

func (s *seat) work(n int, side string, touches []diffreport.Touch) []Work {
	var all []Work
	for _, t := range touches {
		all = append(all, Work{Port: s.number(n), Side: side, Cable: schema.Printable(t.Cable), On: t.On, Step: t.Step})
	}
	return all
}
