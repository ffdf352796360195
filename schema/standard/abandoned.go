package standard

// Ending is what an end of a cable is terminated at. The zero value is nothing.
type Ending uint8

// The endings.
const (
	NotTerminated Ending = iota
	AtConnector          // a jack or connector, as on a panel or outlet
	AtEquipment          // equipment other than a connector
)

// Abandonment is what the code makes of a cable that is not tagged for future use. The zero
// value is no answer.
type Abandonment uint8

// The answers.
const (
	InUse     Abandonment = iota + 1
	Abandoned             // its accessible portion has to be removed
	Unclear               // the definition does not say whether one end is enough
)

// abandonments are the words for the answers.
var abandonments = []string{InUse: "in use", Abandoned: "abandoned", Unclear: "unclear"}

// String returns the answer in words.
func (a Abandonment) String() string { return wordOf(abandonments, int(a)) }

// AbandonmentOf returns what the code makes of an untagged cable by its two ends; a cable
// tagged for future use is never abandoned, and the caller sees to that. The definitions
// differ: communications cable has to end at a connector or at equipment at both ends; fibre
// and coaxial cable at equipment other than a connector; class 2 and 3 at equipment. Whether
// a panel is equipment is for the authority having jurisdiction to say; here it is a
// connector. ok is false where the code is no edition of the NEC and for no family.
func AbandonmentOf(code FireCode, f Family, near, far Ending) (a Abandonment, src Source, ok bool) {
	if !code.NEC() {
		return 0, Source{}, false
	}
	switch f {
	case Communications:
		if near == NotTerminated || far == NotTerminated {
			return Abandoned, inEdition(code, "800.2 and 800.25"), true
		}
		return InUse, inEdition(code, "800.2 and 800.25"), true
	case Coaxial:
		return byEquipment(near, far), inEdition(code, "820.2 and 820.25"), true
	case Optical, OpticalConductive:
		return byEquipment(near, far), inEdition(code, "770.2 and 770.25"), true
	case Class2, Class3, PowerLimitedTray:
		return byEquipment(near, far), inEdition(code, "725.2 and 725.25"), true
	default:
		return 0, Source{}, false
	}
}

// byEquipment counts the ends at equipment.
func byEquipment(near, far Ending) Abandonment {
	switch {
	case near == AtEquipment && far == AtEquipment:
		return InUse
	case near == AtEquipment || far == AtEquipment:
		return Unclear
	default:
		return Abandoned
	}
}
