package diffreport

// A deed is what a step does to what stands on site, beside the cables that it
// puts on ports and takes off.
type deed struct {
	what act
	// work is the cable, change the hardware that it is done to.
	work   *cableWork
	change *Change
}

// An act is what a deed does.
type act uint8

const (
	cableOut act = iota // a cable is taken out of its pathways
	cableIn             // a cable is pulled
	tagged              // a run is taken out of use and stays
	goes                // hardware is taken out
	comes               // hardware is put up, or as the later plant has it
)

// stirs says whether a step changes what stands on site.
func (s *Step) stirs() bool { return len(s.deeds)+len(s.takes)+len(s.frees) > 0 }

// cableProgress is how far the work on a cable has come.
type cableProgress struct {
	out, in, tagged bool
	off, on         [2]bool
}

// held says whether an end of the cable as it was is still on its port, and
// whether that of the cable as it will be is on its own.
func (c *cableProgress) held(w *cableWork, i int) (was, is bool) {
	was = len(w.before[i].row) > 0 && !c.off[i]
	is = len(w.after[i].row) > 0 && (c.on[i] || w.onAt[i] == nil)
	return was, is
}

// finished says whether nothing more is done to the cable.
func (c *cableProgress) finished(w *cableWork) bool {
	for i := range w.onAt {
		if w.onAt[i] != nil && !c.on[i] {
			return false
		}
	}
	return c.tagged || !w.tagging
}
