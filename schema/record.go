package schema

import (
	"slices"

	"homerun/schema/block"
)

// A Record is one block as its kind defines it. It is immutable, and its
// ranges count from the first byte of the top-level block that it is written
// in, so equal text gives an equal record wherever it stands.
type Record struct {
	Kind *Kind
	// Label is the identifier on the wall; empty for an unlabelled inner block.
	Label string
	// Values are the fields that are written, in the order of the text.
	Values []Value
	// Inner are the blocks inside, in the order of the text.
	Inner []*Record
	// Parent is the enclosing record, nil at the top.
	Parent *Record
	// At is the whole block, Head its first words up to the last label.
	At, Head block.Range
	// LabelAt is where the label stands, with its quotes.
	LabelAt block.Range
	// Damaged is set when part of the record could not be read, so that what
	// it does not state can not be told from what was lost.
	Damaged bool

	text string
}

// Lookup finds the value of a field, in the record or, where the field is
// inherited, in the enclosing one. It is nil when nobody wrote it.
func (r *Record) Lookup(f *Field) *Value {
	for i := range r.Values {
		if r.Values[i].Field == f {
			return &r.Values[i]
		}
	}
	if f.Inherited && r.Parent != nil {
		return r.Parent.Own(f.Name)
	}
	return nil
}

// Own finds the value that the record itself states in the named field.
func (r *Record) Own(name string) *Value {
	for i := range r.Values {
		if r.Values[i].Field.Name == name {
			return &r.Values[i]
		}
	}
	return nil
}

// Blocks returns the inner records of one kind. The list must not be changed: where
// there are no others, as in most bundles, it is that of all inner records.
func (r *Record) Blocks(kind string) []*Record {
	n := 0
	for _, in := range r.Inner {
		if in.Kind.Name == kind {
			n++
		}
	}
	switch n {
	case 0:
		return nil
	case len(r.Inner):
		return slices.Clip(r.Inner)
	}
	found := make([]*Record, 0, n)
	for _, in := range r.Inner {
		if in.Kind.Name == kind {
			found = append(found, in)
		}
	}
	return found
}

// Name is how messages call the record: its label, or for an unlabelled block
// the label of the record around it and the kind.
func (r *Record) Name() string {
	if r.Kind.Unlabelled && r.Parent != nil {
		return r.Parent.Label + " " + r.Kind.Name
	}
	return r.Label
}

// Source is the text of the record's own block.
func (r *Record) Source() string { return r.text[r.At.Start:r.At.End] }

// Text is the text of the top-level block that the record is written in.
func (r *Record) Text() string { return r.text }

// An Entry is a record in its place: a file and where in it the record's
// top-level block starts. The zero Entry is no record.
type Entry struct {
	*Record
	Path string
	// Line is the line, counted from 1, on which the top-level block starts.
	Line int
}

// A Location is a place in a file that people and editors can go to. Lines and
// columns count from 1; columns count Unicode code points.
type Location struct {
	Path               string
	Line, Column       int
	EndLine, EndColumn int
}

// Within places a range of the entry's block in the file.
func (e Entry) Within(r block.Range) Location {
	return locate(e.Path, e.Line, e.text, r)
}

// Start is where the record begins: its kind and label.
func (e Entry) Start() Location { return e.Within(e.Head) }

// Where is the place of a field's value; where nobody wrote the field, the
// start of the record.
func (e Entry) Where(f *Field) Location {
	if v := e.Lookup(f); v != nil {
		return e.Within(v.At)
	}
	return e.Start()
}

// In is an inner record of the entry, in its place.
func (e Entry) In(r *Record) Entry { return Entry{Record: r, Path: e.Path, Line: e.Line} }

func locate(path string, line int, text string, r block.Range) Location {
	down, column := block.Position(text, r.Start)
	endDown, endColumn := block.Position(text, r.End)
	return Location{Path: path, Line: line + down, Column: column, EndLine: line + endDown, EndColumn: endColumn}
}
