package diffreport

import (
	"strings"

	"homerun/schema"
	"homerun/schema/unit"
)

// A Class is the kind of work that a change is, in the words of the trade.
type Class uint8

// The classes, in the order in which they are listed.
const (
	ClassMove        Class = iota // an end goes to another port, or hardware to another place
	ClassAdd                      // something is installed
	ClassChange                   // what is there is exchanged, re-routed, re-pulled or taken out of use
	ClassRemoval                  // something is taken out
	ClassRelabel                  // only the identifier on the wall differs
	ClassRecordsOnly              // the records are corrected and nobody goes to site
)

// Classes returns every class in the order in which they are listed.
func Classes() []Class {
	return []Class{ClassMove, ClassAdd, ClassChange, ClassRemoval, ClassRelabel, ClassRecordsOnly}
}

// String is the class as documents and programs read it.
func (c Class) String() string {
	switch c {
	case ClassMove:
		return "move"
	case ClassAdd:
		return "add"
	case ClassChange:
		return "change"
	case ClassRemoval:
		return "removal"
	case ClassRelabel:
		return "relabel"
	case ClassRecordsOnly:
		return "records-only"
	}
	return "unknown"
}

// A Change is one record that differs between two plants.
type Change struct {
	Class Class
	// Kind and Label name the record: the label of the later plant, or of the
	// earlier one where the record is gone.
	Kind, Label string
	// Former is the label in the earlier plant, where it was another.
	Former string
	// Before and After are the record on both sides; the zero Entry where one
	// side has none.
	Before, After schema.Entry
	// Fields are the values that differ, in the order of the record language.
	Fields []FieldChange
	// Meaning is what the change asks of the crew: the greatest of its fields.
	Meaning schema.Meaning
	// Why says in one sentence why the change is in its class.
	Why string

	before, after subject
}

// A FieldChange is one value that differs. Before and After are printed in the
// units of the later plant.
type FieldChange struct {
	Name, Before, After string
	Meaning             schema.Meaning

	before, after *schema.Value
	why           string
}

// In prints both values with quantities in a system of units.
func (f FieldChange) In(s unit.System) (before, after string) {
	if f.before == nil && f.after == nil {
		return f.Before, f.After
	}
	return show(f.before, s), show(f.after, s)
}

// Options say how plants are compared.
type Options struct {
	// Tolerance is how far a length that a tester measured may lie from the
	// recorded one, in per cent, and still count as the measurement of it. 0
	// is 5: common practice for lengths worked out from the delay of a pair.
	Tolerance int
}

func (o Options) tolerance() int64 {
	if o.Tolerance > 0 {
		return int64(min(o.Tolerance, 100))
	}
	return 5
}

// Former returns a function that tells what a record of the later plant was
// called in the earlier one; Latter is its counterpart. Ports ("1A-A:07") and unlabelled blocks ("1-T-04
// power") follow their record. A label that was given to something new while
// its old bearer goes on under another gives the empty text; any other text is
// returned as it is.
func Former(changes []Change) func(label string) string {
	return renaming(changes, func(c *Change) (from, to string) { return c.Label, c.Former })
}

// Latter returns a function that tells what a record of the earlier plant is
// called in the later one, by the same rules as Former.
func Latter(changes []Change) func(label string) string {
	return renaming(changes, func(c *Change) (from, to string) { return c.Former, c.Label })
}

func renaming(changes []Change, pair func(*Change) (from, to string)) func(label string) string {
	other := make(map[string]string)
	taken := make(map[string]bool)
	for i := range changes {
		if c := &changes[i]; c.Former != "" {
			from, to := pair(c)
			other[from] = to
			taken[to] = true
		}
	}
	if len(other) == 0 {
		return func(label string) string { return label }
	}
	return func(label string) string {
		if found, ok := other[label]; ok {
			return found
		}
		if taken[label] {
			return ""
		}
		for _, cut := range []int{strings.LastIndexByte(label, ':'), strings.LastIndexByte(label, ' ')} {
			if cut < 1 {
				continue
			}
			if found, ok := other[label[:cut]]; ok {
				return found + label[cut:]
			}
		}
		return label
	}
}

func show(v *schema.Value, s unit.System) string {
	if v == nil {
		return notStated
	}
	if v.Field.Type == schema.References || v.Field.Type == schema.Texts {
		if len(v.List) == 0 {
			return "an empty list"
		}
	}
	return v.Show(s)
}

// notStated stands for a value that nobody wrote.
const notStated = "not stated"
