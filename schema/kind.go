package schema

// A Kind is one kind of record: what its block is called, what it stands for
// and which fields and inner blocks it may hold. Kinds are defined in kinds.go
// and never change after start-up.
type Kind struct {
	// Name is the word that opens the block, such as "run".
	Name string
	// Plural is the word for several, in counts and summaries.
	Plural string
	// Doc says in one sentence what on site the record stands for.
	Doc string
	// Fields in the order in which people write them.
	Fields []*Field
	// Blocks are the kinds that may stand inside this one.
	Blocks []*Kind
	// Unlabelled is set for an inner block that describes its parent and has
	// no identifier of its own, such as "power" in a pathway.
	Unlabelled bool
	// Refers holds the kinds that the block's label refers to, for an inner
	// block whose label names another record instead of introducing one.
	Refers []string
	// Paper is set for kinds that exist only in the records: tests, waivers
	// and policies, whose change never sends anybody to site.
	Paper bool
}

// Field finds a field by name.
func (k *Kind) Field(name string) (*Field, bool) {
	for _, f := range k.Fields {
		if f.Name == name {
			return f, true
		}
	}
	return nil, false
}

// Block finds an inner kind by name.
func (k *Kind) Block(name string) (*Kind, bool) {
	for _, b := range k.Blocks {
		if b.Name == name {
			return b, true
		}
	}
	return nil, false
}

// A Field is one thing that a record may state.
type Field struct {
	Name string
	Type Type
	// Words are the values that a Word or Words field accepts.
	Words []string
	// Kinds are the kinds that a reference may name.
	Kinds []string
	// Required fields must be written; where Inherited is set too, the
	// enclosing bundle may state it instead.
	Required bool
	// Inherited fields fall back to the enclosing block's field of that name.
	Inherited bool
	// Site says what a changed value asks of the crew.
	Site Meaning
	// Doc says in a few words what the value states.
	Doc string
	// form checks a text beyond being printable; next says what to write.
	form func(text string) (next string, ok bool)
}

// A Meaning is what a changed field means on site.
type Meaning uint8

// The meanings, from no work to most work. A change of several fields takes
// the greatest.
const (
	Paper       Meaning = iota // the records were corrected, nobody goes to site
	Relabelling                // only the printed identifier changes
	Retest                     // the link is measured again
	Repatch                    // a cord is moved at one or both ends
	Rebond                     // a bonding conductor or a fire-stop is worked on
	Reterminate                // a cable end is cut and terminated elsewhere
	Replace                    // hardware is exchanged where it stands
	Relocate                   // hardware moves to another place
	Reroute                    // a cable is taken out and laid along another way
	Repull                     // another cable is pulled
)

// String is the meaning in words, as work orders print it.
func (m Meaning) String() string {
	switch m {
	case Paper:
		return "records only"
	case Relabelling:
		return "relabel"
	case Retest:
		return "re-test"
	case Repatch:
		return "re-patch"
	case Rebond:
		return "re-bond or fire-stop"
	case Reterminate:
		return "re-terminate"
	case Replace:
		return "replace"
	case Relocate:
		return "relocate"
	case Reroute:
		return "re-route"
	case Repull:
		return "re-pull"
	}
	return "unknown"
}

// A Type is the form of a field's value.
type Type uint8

// The types of value. Each quantity is a text with its unit, "41.5 m".
const (
	Text Type = iota + 1
	Word
	Count
	Length
	Temperature
	Power
	Period
	Frequency
	Loss
	Current
	Angle
	Level
	Date
	Conductors
	Reference
	References
	PortReference
	Texts
)

// String is the type as the language page names it.
func (t Type) String() string {
	return typeNames[t].name
}

// Example is a value of the type as it is written.
func (t Type) Example() string {
	return typeNames[t].example
}

var typeNames = [...]struct{ name, example string }{
	Text:          {"text", `"any words"`},
	Word:          {"one of the words", ""},
	Count:         {"whole number", "48"},
	Length:        {"length", `"41.5 m" or "136 ft"`},
	Temperature:   {"temperature", `"24 C" or "75 F"`},
	Power:         {"power", `"25.5 W"`},
	Period:        {"period", `"1 h" or "90 min"`},
	Frequency:     {"frequency", `"250 MHz"`},
	Loss:          {"loss", `"2.6 dB"`},
	Current:       {"current", `"0.5 A"`},
	Angle:         {"angle", `"90 deg"`},
	Level:         {"level", `"12 dBmV"`},
	Date:          {"date", `"2026-03-31"`},
	Conductors:    {"conductors", `"23 AWG solid"`},
	Reference:     {"label", `"1A"`},
	References:    {"list of labels", `["1A", "1-CV-EAST"]`},
	PortReference: {"port", `"1A-A:07"`},
	Texts:         {"list of texts", `["1A-A07"]`},
}
