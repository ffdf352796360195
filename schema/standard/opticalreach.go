package standard

import "homerun/schema/unit"

// OpticalReach is how far a class of fibre carries an application, and what its channel may
// lose: up to Sure in any case, from there to Possible on a condition, beyond that not at
// all. Both lengths are 0 where the fibre does not carry it at all.
type OpticalReach struct {
	Sure, Possible unit.Length
	Condition      string     // on what the lengths between Sure and Possible depend
	Wavelength     Wavelength // 0 where it is not carried
	Loss           unit.Loss  // the most that the channel may lose; 0 where no figure was found
	Source         Source     // of Sure, and of the refusal beyond Possible
	Doubt          Source     // of the condition; zero where there is none
	LossSource     Source     // zero where no figure was found
}

// JudgeLength returns the answer for a channel of that length, and the source it rests on.
func (r OpticalReach) JudgeLength(channel unit.Length) (Verdict, Source) {
	switch {
	case channel <= r.Sure && r.Sure > 0:
		return Carries, r.Source
	case channel <= r.Possible && r.Possible > 0:
		return Conditional, r.Doubt
	default:
		return NotCarried, r.Source
	}
}

// JudgeLoss returns the answer for a channel of that loss. A loss that was added up from the
// most that each part may lose is an upper bound: over the limit the channel may still
// carry where its parts are better, which a measurement shows. ok is false where no limit
// was found.
func (r OpticalReach) JudgeLoss(channel unit.Loss) (v Verdict, src Source, ok bool) {
	switch {
	case r.Loss == 0:
		return 0, Source{}, false
	case channel <= r.Loss:
		return Carries, r.LossSource, true
	default:
		return NotCarried, r.LossSource, true
	}
}

// Left returns what the application leaves for connections and splices once the fibre has
// had its loss, never below 0; ok as for JudgeLoss.
func (r OpticalReach) Left(fibre unit.Loss) (left unit.Loss, ok bool) {
	return max(0, r.Loss-max(0, fibre)), r.Loss != 0
}

// OpticalReachOf returns how far a class of fibre carries an application. ok is false for no
// application, no class, and for OM5 with the applications that are older than it and for
// which no figure was found.
func OpticalReachOf(a OpticalApplication, f Fibre) (r OpticalReach, ok bool) {
	if !a.known() || !f.known() {
		return OpticalReach{}, false
	}
	w, made := a.Wavelength(f)
	if !made {
		src := ethernet(a.String() + ", fibre")
		return OpticalReach{Source: src.noted("it is not made for this kind of fibre")}, true
	}
	if f == OM5 && (a == Base1000SX || a == Base1000LX || a == Base10GLRM) {
		return OpticalReach{}, false
	}
	for _, row := range opticalRows {
		if row.application == a && row.covers(f) {
			return row.reach(w), true
		}
	}
	src := ethernet(a.String() + ", fibre")
	if a != Base40GSR4 && a != Base100GSR10 {
		src = src.unsure()
	}
	return OpticalReach{Source: src.noted("it is made for OM3 and better")}, true
}
