package standard

// Regime is the family of cabling standards whose limits hold. The zero value is none.
type Regime uint8

// The families. Their limits differ on purpose and are never mixed.
const (
	TIA Regime = iota + 1 // ANSI/TIA-568
	ISO                   // ISO/IEC 11801
)

// regimes are the words for the families.
var regimes = []string{TIA: "TIA-568", ISO: "ISO-11801"}

// String returns the word for the family, as in a record; empty for none.
func (r Regime) String() string { return wordOf(regimes, int(r)) }

// ParseRegime reads "TIA-568" or "ISO-11801".
func ParseRegime(s string) (Regime, error) {
	i, err := indexOf(regimes, "family of standards", s)
	return Regime(i), err
}

// FireCode is the code whose fire rules hold. The zero value is none.
type FireCode uint8

// The codes and editions.
const (
	NEC2017 FireCode = iota + 1 // NFPA 70-2017
	NEC2020                     // NFPA 70-2020
	NEC2023                     // NFPA 70-2023
	EN50575                     // EN 50575 with the classes of EN 13501-6
)

// fireCodes are the words for the codes.
var fireCodes = []string{NEC2017: "NEC-2017", NEC2020: "NEC-2020", NEC2023: "NEC-2023", EN50575: "EN-50575"}

// String returns the word for the code, as in a record; empty for none.
func (c FireCode) String() string { return wordOf(fireCodes, int(c)) }

// NEC reports whether the code is an edition of NFPA 70.
func (c FireCode) NEC() bool { return c >= NEC2017 && c <= NEC2023 }

// ParseFireCode reads "NEC-2017", "NEC-2020", "NEC-2023" or "EN-50575".
func ParseFireCode(s string) (FireCode, error) {
	i, err := indexOf(fireCodes, "fire code", s)
	return FireCode(i), err
}

// wordOf returns the word at i, or the empty text.
func wordOf(words []string, i int) string {
	if i < len(words) {
		return words[i]
	}
	return ""
}

// indexOf finds a word exactly. The error is a *unit.Error that offers the right case,
// or all the words.
func indexOf(words []string, noun, s string) (int, error) {
	for i, w := range words {
		if w != "" && w == s {
			return i, nil
		}
	}
	return 0, refuseWord(words, noun, s)
}

// wordsOf returns the words that are not empty, in order.
func wordsOf(words []string) []string {
	out := make([]string, 0, len(words))
	for _, w := range words {
		if w != "" {
			out = append(out, w)
		}
	}
	return out
}
