package standard

import (
	"strings"

	"homerun/schema/unit"
)

// Screen is one layer of screening.
type Screen uint8

// The layers.
const (
	NoScreen Screen = iota
	Foil
	Braid
	BraidAndFoil
)

// overallCodes and elementCodes are the letters of the layers in a construction code.
var (
	overallCodes = []string{NoScreen: "U", Foil: "F", Braid: "S", BraidAndFoil: "SF"}
	elementCodes = []string{NoScreen: "U", Foil: "F"}
	screenWords  = []string{NoScreen: "no screen", Foil: "foil", Braid: "braid", BraidAndFoil: "braid and foil"}
)

// String returns the layer in words.
func (s Screen) String() string { return wordOf(screenWords, int(s)) }

// Construction is the make of a balanced cable: overall screen and screen of each element,
// ISO/IEC 11801-1 Annex E. The zero value is U/UTP.
type Construction struct {
	Overall Screen // none, foil, braid, or both
	Element Screen // none or foil
}

var constructionSource = Source{Body: "ISO/IEC", Edition: "11801-1:2017", Clause: "Annex E", Confidence: Confirmed}

// ConstructionSource returns where the codes stand.
func ConstructionSource() Source { return constructionSource }

// older are the words from before the codes, and what each may stand for.
var older = []struct {
	word  string
	means []string
}{
	{"UTP", []string{"U/UTP"}},
	{"FTP", []string{"F/UTP", "U/FTP", "F/FTP"}},
	{"STP", []string{"S/UTP", "S/FTP", "SF/UTP", "SF/FTP", "U/FTP"}},
	{"ScTP", []string{"F/UTP", "S/UTP", "SF/UTP"}},
}

// ParseConstruction reads a code, "U/UTP" to "SF/FTP". An older word such as "STP" is
// refused with the codes that it may stand for. The error is a *unit.Error.
func ParseConstruction(s string) (Construction, error) {
	for o, overall := range overallCodes {
		for e, element := range elementCodes {
			if s == overall+"/"+element+"TP" {
				return Construction{Overall: Screen(o), Element: Screen(e)}, nil
			}
		}
	}
	if means := Ambiguous(s); means != nil {
		return Construction{}, &unit.Error{
			Text: s, Message: "construction " + shown(s) + " leaves the screens open",
			Next: "write " + strings.Join(means, " or ") + ", as the jacket or data sheet states",
		}
	}
	return Construction{}, refuseWord(ConstructionCodes(), "construction", s)
}

// ConstructionCodes returns the codes in order.
func ConstructionCodes() []string {
	var out []string
	for o := range overallCodes {
		for e := range elementCodes {
			out = append(out, Construction{Overall: Screen(o), Element: Screen(e)}.String())
		}
	}
	return out
}

// Ambiguous returns the codes that an older word may stand for; nil for anything else.
func Ambiguous(s string) []string {
	for _, o := range older {
		if o.word == s {
			return append([]string(nil), o.means...)
		}
	}
	return nil
}

// ShieldOf reads a code or an older word and returns whether the cable is screened at all.
// ok is false for another text. "UTP" alone counts as unscreened, as it is commonly used.
func ShieldOf(s string) (shield Shield, ok bool) {
	if c, err := ParseConstruction(s); err == nil {
		return c.Shield(), true
	}
	if s == "UTP" {
		return Unscreened, true
	}
	if Ambiguous(s) != nil {
		return Screened, true
	}
	return Unscreened, false
}

// Shield returns whether there is any screen.
func (c Construction) Shield() Shield {
	if c == (Construction{}) {
		return Unscreened
	}
	return Screened
}

// String returns the code.
func (c Construction) String() string {
	return wordOf(overallCodes, int(c.Overall)) + "/" + wordOf(elementCodes, int(c.Element)) + "TP"
}
