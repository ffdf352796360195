package standard

import "homerun/schema/unit"

// Disturber is a lamp or machine that disturbs unscreened pairs. The zero value is none.
type Disturber uint8

// The disturbers.
const (
	FluorescentLamp Disturber = iota + 1
	DischargeLamp
	Motor
	Transformer
	FrequencyConverter
	ArcWelder
	InductionHeater
	RadioTransmitter
)

// disturbers are the words for the disturbers.
var disturbers = []string{
	FluorescentLamp: "fluorescent-lamp", DischargeLamp: "discharge-lamp", Motor: "motor", Transformer: "transformer",
	FrequencyConverter: "frequency-converter", ArcWelder: "arc-welder", InductionHeater: "induction-heater", RadioTransmitter: "radio-transmitter",
}

// String returns the word for the disturber, as in a record; empty for none.
func (d Disturber) String() string { return wordOf(disturbers, int(d)) }

// ParseDisturber reads "fluorescent-lamp". The error is a *unit.Error.
func ParseDisturber(s string) (Disturber, error) {
	i, err := indexOf(disturbers, "source of interference", s)
	return Disturber(i), err
}

// DisturberDistance returns the least distance from a lamp or machine in a family of
// standards: EN 50174-2 beside ISO/IEC, ANSI/TIA-569 beside ANSI/TIA. ok is false where no
// figure was found.
func DisturberDistance(r Regime, d Disturber) (l unit.Length, src Source, ok bool) {
	en := Source{Body: "EN", Edition: "50174-2:2009", Clause: "distance from sources of interference", Confidence: FromMemory}
	tia := Source{Body: "ANSI/TIA", Edition: "569", Clause: "distance from sources of interference", Confidence: Confirmed, Note: "as quoted in the literature"}
	lamp := d == FluorescentLamp || d == DischargeLamp
	switch {
	case r == ISO && lamp:
		return 130 * unit.Millimetre, en, true
	case r == ISO && d == InductionHeater:
		return unit.Metre, en, true
	case r == TIA && d == FluorescentLamp:
		tia.Confidence = Conflicting
		return 5 * unit.Inch, tia.noted("305 mm in another quotation"), true
	case r == TIA && (d == Motor || d == Transformer):
		return 40 * unit.Inch, tia, true
	default:
		return 0, Source{}, false
	}
}

// Noise is the electromagnetic class of a space in the MICE scheme of ISO/IEC 11801-1. The
// zero value is none.
type Noise uint8

// The classes.
const (
	E1 Noise = iota + 1 // offices, dwellings
	E2                  // light industry
	E3                  // industry
)

// noises are the words for the classes.
var noises = []string{E1: "E1", E2: "E2", E3: "E3"}

// String returns the word for the class, as in a record; empty for none.
func (n Noise) String() string { return wordOf(noises, int(n)) }

// ParseNoise reads "E1", "E2" or "E3". The error is a *unit.Error.
func ParseNoise(s string) (Noise, error) {
	i, err := indexOf(noises, "electromagnetic class", s)
	return Noise(i), err
}

// Place returns what kind of place the class stands for, in words.
func (n Noise) Place() string {
	return wordOf([]string{E1: "office", E2: "light industry", E3: "industry"}, int(n))
}
