package diffreport

import "strings"

// A Touch is one cable that comes off one side of a port, or goes on it, in one
// step.
type Touch struct {
	// Step is the number of the step.
	Step int
	// Holder is the label of what has the port, in the later plant; where Gone
	// is set only the earlier plant has it, under this label.
	Holder string
	Gone   bool
	Port   int
	// Front is the side of the cords, otherwise that of the runs.
	Front bool
	// Cable is the label in the later plant, or in the earlier where it is gone.
	Cable string
	// On is set where the cable goes on the port, otherwise it comes off.
	On bool
}

// Touches lists what the steps do to port sides, step by step, what comes off
// before what goes on.
func (o *Order) Touches() []Touch {
	var all []Touch
	for i := range o.Steps {
		s := &o.Steps[i]
		for _, f := range s.frees {
			all = append(all, f.touch(s.Number))
		}
		for _, t := range s.takes {
			on := t.touch(s.Number)
			on.On = true
			all = append(all, on)
		}
	}
	return all
}

// touch is the hold as it comes off.
func (h hold) touch(step int) Touch {
	return Touch{
		Step: step, Holder: shown(h.side.holder), Gone: strings.HasSuffix(h.side.holder, gone),
		Port: h.side.port, Front: h.side.front, Cable: shown(h.cable),
	}
}
