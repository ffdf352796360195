package standard

import "homerun/schema/unit"

// OpenOffice is the sum for the cords of a link with a multi-user outlet or a
// consolidation point, ANSI/TIA-568: C = (102 - H)/(1 + D) and W = C - T.
type OpenOffice struct {
	Fixed     unit.Length // H: fixed cable
	Derating  int         // D in percent: 20 (24 AWG), 50 (26 AWG)
	Room      unit.Length // T: cords in the telecommunications room, 5 m or 4 m
	Computed  unit.Length // C by the formula, truncated
	Cords     unit.Length // C: all cords, after the cap on W
	Cap       unit.Length // the most that W may be
	WorkArea  unit.Length // W: the work-area cord
	Source    Source      // of the formula
	CapSource Source
}

// officeCord is what the formula takes from the gauge of the cords.
type officeCord struct {
	derating  int
	room, cap unit.Length
	capSource Source
}

// openOfficeCord returns the row for a gauge; ok is false but for 24 and 26 AWG.
func openOfficeCord(gauge int) (c officeCord, ok bool) {
	src := Source{Body: "ANSI/TIA", Edition: "568.1-D", Clause: "open office cabling, work-area cord", Confidence: Confirmed}
	switch gauge {
	case 24:
		return officeCord{derating: 20, room: 5 * unit.Metre, cap: 22 * unit.Metre, capSource: src}, true
	case 26:
		// The cap for 26 AWG is quoted less widely than the one for 24 AWG.
		return officeCord{derating: 50, room: 4 * unit.Metre, cap: 17 * unit.Metre, capSource: src.unsure()}, true
	default:
		return officeCord{}, false
	}
}

// OpenOfficeCords computes the cords that a fixed cable leaves room for. Lengths are
// truncated to a nanometre and never rounded up; what the cable leaves nothing for is 0.
// The published table rounds to whole metres and is up to half a metre more generous. ok is
// false where the gauge is neither 24 nor 26 AWG.
func OpenOfficeCords(fixed unit.Length, gauge int) (o OpenOffice, ok bool) {
	cord, ok := openOfficeCord(gauge)
	if !ok {
		return OpenOffice{}, false
	}
	const reach = 102 * unit.Metre
	computed := max(0, reach-max(0, min(fixed, reach))) * 100 / unit.Length(100+cord.derating)
	total := min(computed, cord.cap+cord.room)
	return OpenOffice{
		Fixed: fixed, Derating: cord.derating, Room: cord.room, Computed: computed, Cords: total, Cap: cord.cap,
		WorkArea: max(0, total-cord.room), CapSource: cord.capSource,
		Source: Source{
			Body: "ANSI/TIA", Edition: "568.1-D", Clause: "open office cabling, maximum cord length", Confidence: FromMemory,
			Note: "the slope agrees with TSB-75",
		},
	}, true
}
