package standard

// Polarity is how an array cable, with several fibres in one connector, leads its positions
// from end to end, ANSI/TIA-568.3. The zero value is none.
type Polarity uint8

// The types of array cable, which the three methods of polarity are named after.
const (
	PolarityA Polarity = iota + 1 // straight: position 1 to 1; keys up and down
	PolarityB                     // reversed: position 1 to the last; keys up and up
	PolarityC                     // flipped in pairs: position 1 to 2; keys up and down
)

// polarities are the words for the types.
var polarities = []string{PolarityA: "A", PolarityB: "B", PolarityC: "C"}

var polaritySource = Source{Body: "ANSI/TIA", Edition: "568.3-D", Clause: "polarity of array cable", Confidence: Confirmed, Note: "as quoted in the literature"}

// String returns the letter of the type; empty for none.
func (p Polarity) String() string { return wordOf(polarities, int(p)) }

// ParsePolarity reads "A", "B" or "C". The error is a *unit.Error.
func ParsePolarity(s string) (Polarity, error) {
	i, err := indexOf(polarities, "polarity", s)
	return Polarity(i), err
}

// FarPosition returns the position at the far end of the fibre that is at a position at the
// near end, both counted from 1. ok is false for no type, for a number of fibres that is odd
// or not between 2 and 72, and for a position that is not among them.
func (p Polarity) FarPosition(position, fibreCount int) (far int, src Source, ok bool) {
	const most = 72
	if fibreCount < 2 || fibreCount > most || fibreCount%2 != 0 || position < 1 || position > fibreCount {
		return 0, Source{}, false
	}
	switch p {
	case PolarityA:
		return position, polaritySource, true
	case PolarityB:
		return fibreCount + 1 - position, polaritySource, true
	case PolarityC:
		return (position - 1) ^ 1 + 1, polaritySource, true
	default:
		return 0, Source{}, false
	}
}

// KeysAlike reports whether the connectors at both ends of the cable have their keys the same
// way up. ok is false for no type.
func (p Polarity) KeysAlike() (alike bool, src Source, ok bool) {
	if p < PolarityA || p > PolarityC {
		return false, Source{}, false
	}
	return p == PolarityB, polaritySource, true
}

// CordsAToA returns how many of the two duplex cords at the ends of a channel of this method
// are A-to-A cords; the others are A-to-B. It is one for method A, which changes sides in a
// cord, and none for B and C, which do so in the trunk. ok is false for no type.
func (p Polarity) CordsAToA() (n int, src Source, ok bool) {
	switch p {
	case PolarityA:
		return 1, polaritySource, true
	case PolarityB, PolarityC:
		return 0, polaritySource, true
	default:
		return 0, Source{}, false
	}
}
