package schema

// A Problem is a mistake in the records, at an exact place, in a plain
// sentence, with what to do next. It is a value, not an error: reading goes on.
type Problem struct {
	Code Code
	// Kind and Label name the record, where one could be told.
	Kind, Label string
	At          Location
	// Message says what is wrong, Next what to do about it.
	Message, Next string
	// Also is another place that belongs to the problem.
	Also []Note
}

// A Note is a second place of a problem or finding, with what is there.
type Note struct {
	Kind, Label string
	At          Location
	Message     string
}

// A Code says what sort of problem it is; the linter has a rule for each.
type Code string

// The codes.
const (
	Unreadable       Code = "unreadable"
	UnknownBlock     Code = "unknown-block"
	UnknownField     Code = "unknown-field"
	MissingField     Code = "missing-field"
	BadValue         Code = "value"
	BadLabel         Code = "label"
	DuplicateLabel   Code = "duplicate-label"
	UnknownReference Code = "unknown-reference"
)
