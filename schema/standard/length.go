package standard

import "homerun/schema/unit"

// LengthLimits are the lengths and the number of connections that a category allows.
type LengthLimits struct {
	PermanentLink unit.Length // fixed cable from panel to outlet
	Channel       unit.Length // with all cords
	Cords         unit.Length // all cords together
	Connections   int         // mated connections in a channel
	Source        Source
}

var (
	tiaLength   = Source{Body: "ANSI/TIA", Edition: "568.2-D", Clause: "channel and permanent link length", Confidence: Confirmed}
	isoLength   = Source{Body: "ISO/IEC", Edition: "11801-2:2017", Clause: "channel and permanent link length", Confidence: Confirmed}
	eightLength = Source{Body: "ANSI/TIA", Edition: "568.2-D", Clause: "category 8 channel and permanent link length", Confidence: Confirmed}
)

// Lengths returns the limits of a category. They are the same numbers in both families;
// the source follows the family. ok is false for no family, no category, or a category
// that the family does not specify.
func Lengths(r Regime, c Category) (l LengthLimits, ok bool) {
	status, _, ok := StatusOf(r, c)
	if !ok || status == OtherBody {
		return LengthLimits{}, false
	}
	if c.eight() {
		l = LengthLimits{PermanentLink: 24 * unit.Metre, Channel: 30 * unit.Metre, Cords: 6 * unit.Metre, Connections: 2, Source: eightLength}
		if r == ISO {
			l.Source = Source{Body: "ISO/IEC", Edition: "11801-1:2017", Clause: "class " + c.Class() + " channel and permanent link length", Confidence: Confirmed}
		}
		if c == Cat82 {
			l.Source = l.Source.unsure()
		}
		return l, true
	}
	l = LengthLimits{PermanentLink: 90 * unit.Metre, Channel: 100 * unit.Metre, Cords: 10 * unit.Metre, Connections: 4, Source: tiaLength}
	if r == ISO {
		l.Source = isoLength
	}
	return l, true
}

// ConsolidationMinimum returns the shortest fixed cable from the room to a consolidation
// point: 15 m, against the resonance of two connections close to each other.
func ConsolidationMinimum(r Regime) (unit.Length, Source) {
	if r == ISO {
		return 15 * unit.Metre, Source{Body: "ISO/IEC", Edition: "11801-2:2017", Clause: "distance from distributor to consolidation point", Confidence: Confirmed}
	}
	return 15 * unit.Metre, Source{Body: "ANSI/TIA", Edition: "568.1-D", Clause: "consolidation point", Confidence: Confirmed}
}

// MultiUserCordCap returns the longest work-area cord at a multi-user outlet: 22 m (24
// AWG) or 17 m (26 AWG) by ANSI/TIA, 20 m by ISO/IEC. ok is false for another gauge.
func MultiUserCordCap(r Regime, gauge int) (l unit.Length, src Source, ok bool) {
	if r == ISO {
		return 20 * unit.Metre, Source{Body: "ISO/IEC", Edition: "11801-2:2017", Clause: "work-area cord at a multi-user outlet", Confidence: Confirmed}, true
	}
	cord, ok := openOfficeCord(gauge)
	return cord.cap, cord.capSource, ok
}

// PatchCordCap returns the longest patch cord or jumper in the room, 5 m; ANSI/TIA folds
// it into the allowance for all cords, so it has an answer for ISO/IEC only.
func PatchCordCap(r Regime) (l unit.Length, src Source, ok bool) {
	if r != ISO {
		return 0, Source{}, false
	}
	return 5 * unit.Metre, Source{Body: "ISO/IEC", Edition: "11801-2:2017", Clause: "patch cords and jumpers", Confidence: Confirmed}, true
}

// TestedTolerance returns the longest length that a field test of the shortest pair may
// show against a limit: a tenth above it, for the twist and the tester's velocity
// setting.
func TestedTolerance(limit unit.Length) (unit.Length, Source) {
	return limit + limit/10, Source{Body: "ANSI/TIA", Edition: "1152", Clause: "length", Confidence: Confirmed}
}
