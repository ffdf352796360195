package standard

import "homerun/schema/unit"

// PowerType is a type of power over Ethernet, IEEE 802.3. The zero value is none.
type PowerType uint8

// The types.
const (
	PowerType1 PowerType = iota + 1
	PowerType2
	PowerType3
	PowerType4
)

// powerTypes are the words for the types.
var powerTypes = []string{PowerType1: "type-1", PowerType2: "type-2", PowerType3: "type-3", PowerType4: "type-4"}

// ParsePowerType reads "type-3". The error is a *unit.Error.
func ParsePowerType(s string) (PowerType, error) {
	i, err := indexOf(powerTypes, "type of power over Ethernet", s)
	return PowerType(i), err
}

// String returns the word for the type, as in a record; empty for none.
func (t PowerType) String() string { return wordOf(powerTypes, int(t)) }

// PowerTypeFigures are the figures of a type.
type PowerTypeFigures struct {
	Power          unit.Power   // the least that the source has to give at its port
	DevicePower    unit.Power   // what the device may take at its own port
	Volts          float64      // the least at the source
	DeviceVolts    float64      // the least at the device
	PairsetCurrent unit.Current // the most in one pairset, two pairs
	LeastPairs     int          // pairs powered
	MostPairs      int
	HighestClass   int     // the highest class that the source may grant
	Ohms           float64 // resistance of the whole path that the standard counts with
	Source         Source
	OhmsSource     Source
}

var (
	oldPower     = Source{Body: "IEEE", Edition: "802.3-2018", Clause: "clause 33", Confidence: Confirmed}
	newPower     = Source{Body: "IEEE", Edition: "802.3-2018", Clause: "clause 145", Confidence: Confirmed}
	powerFigures = []PowerTypeFigures{
		PowerType1: {
			Power: 154 * unit.Watt / 10, DevicePower: 1295 * unit.Watt / 100, Volts: 44, DeviceVolts: 37,
			PairsetCurrent: 350 * unit.Ampere / 1000, LeastPairs: 2, MostPairs: 2, HighestClass: 3,
			Ohms: 20, Source: oldPower, OhmsSource: oldPower,
		},
		PowerType2: {
			Power: 30 * unit.Watt, DevicePower: 255 * unit.Watt / 10, Volts: 50, DeviceVolts: 42.5,
			PairsetCurrent: 600 * unit.Ampere / 1000, LeastPairs: 2, MostPairs: 2, HighestClass: 4,
			Ohms: 12.5, Source: oldPower, OhmsSource: oldPower,
		},
		PowerType3: {
			Power: 60 * unit.Watt, DevicePower: 51 * unit.Watt, Volts: 50, DeviceVolts: 42.5,
			PairsetCurrent: 600 * unit.Ampere / 1000, LeastPairs: 2, MostPairs: 4, HighestClass: 6,
			Ohms: 6.25, Source: newPower, OhmsSource: newPower.unsure(),
		},
		PowerType4: {
			Power: 90 * unit.Watt, DevicePower: 713 * unit.Watt / 10, Volts: 52, DeviceVolts: 41.1,
			PairsetCurrent: 960 * unit.Ampere / 1000, LeastPairs: 4, MostPairs: 4, HighestClass: 8,
			Ohms: 6.25, Source: newPower, OhmsSource: newPower.unsure(),
		},
	}
)

// known reports whether t is a type at all.
func (t PowerType) known() bool { return t >= PowerType1 && t <= PowerType4 }

// Figures returns the figures of the type; ok is false for none. For types 3 and 4 they are
// those of the highest class, over four pairs.
func (t PowerType) Figures() (f PowerTypeFigures, ok bool) {
	if !t.known() {
		return PowerTypeFigures{}, false
	}
	return powerFigures[t], true
}

// ConductorCurrent returns the most current in one conductor: half of that of a pairset,
// whose conductors are two in parallel. ok is false for no type.
func (t PowerType) ConductorCurrent() (i unit.Current, src Source, ok bool) {
	f, ok := t.Figures()
	if !ok {
		return 0, Source{}, false
	}
	return f.PairsetCurrent / 2, f.Source, true
}

// PowerCeiling returns the most power that a source of any type may put into a port, 99.9 W,
// and the most current, 1.92 A.
func PowerCeiling() (p unit.Power, i unit.Current, src Source) {
	src = Source{Body: "IEEE", Edition: "802.3-2022", Clause: "Tables 145-1 and 145-16", Confidence: Confirmed}
	return 999 * unit.Watt / 10, 192 * unit.Ampere / 100, src
}
