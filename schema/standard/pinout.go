package standard

// Pinout is how the four pairs of a cable lie on the eight pins of a modular jack. The zero
// value is none.
type Pinout uint8

// The two pin-outs of ANSI/TIA-568. They differ in the places of pairs 2 and 3.
const (
	T568A Pinout = iota + 1
	T568B
)

// pinouts are the words for the pin-outs.
var pinouts = []string{T568A: "T568A", T568B: "T568B"}

// pinPairs are the pairs on pins 1 to 8.
var pinPairs = [...][8]int{
	T568A: {3, 3, 2, 1, 1, 2, 4, 4},
	T568B: {2, 2, 3, 1, 1, 3, 4, 4},
}

var pinoutSource = Source{Body: "ANSI/TIA", Edition: "568.2-D", Clause: "pin and pair assignments", Confidence: Confirmed, Note: "as quoted in the literature"}

// String returns the word for the pin-out, as in a record; empty for none.
func (p Pinout) String() string { return wordOf(pinouts, int(p)) }

// ParsePinout reads "T568A" or "T568B". The error is a *unit.Error.
func ParsePinout(s string) (Pinout, error) {
	i, err := indexOf(pinouts, "pin-out", s)
	return Pinout(i), err
}

// Pair returns the pair, 1 to 4, that lies on a pin, 1 to 8. ok is false for no pin-out and
// for another pin.
func (p Pinout) Pair(pin int) (pair int, src Source, ok bool) {
	if p < T568A || p > T568B || pin < 1 || pin > len(pinPairs[p]) {
		return 0, Source{}, false
	}
	return pinPairs[p][pin-1], pinoutSource, true
}
