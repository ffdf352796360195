package block

// Range is a half-open span of byte offsets, [Start, End). In a Block, and in a
// Problem from Parse, the offsets count from the first byte of the text given
// to Parse; in a Problem from Split, from the first byte of the file.
type Range struct{ Start, End int }

// overlaps reports whether the two spans share a byte.
func (r Range) overlaps(other Range) bool {
	return r.Start < other.End && other.Start < r.End
}

// Token is one word of the text: a kind, a label, a field name or an item of a
// list.
type Token struct {
	// Text is what the word means: without quotes, escapes resolved, in Unicode
	// normalization form C.
	Text string
	// At covers the word as it is written, quotes included.
	At Range
}

// Shape is the form in which a value is written.
type Shape uint8

// The shapes of a literal. The zero Shape belongs to a value that could not be
// read.
const (
	// Text is a quoted string.
	Text Shape = iota + 1
	// Number is a decimal number, possibly with a minus sign.
	Number
	// Bool is the word true or false.
	Bool
	// List is a list of quoted strings in square brackets, possibly empty.
	List
)

// Value is what a field states.
type Value struct {
	Shape Shape
	// Text is the value of a Text in Unicode normalization form C, and the
	// characters of a Number or Bool as they are written, such as "-1.5" or
	// "true". It is empty for a List.
	Text string
	// Items are the texts of a List, in order.
	Items []Token
	// At covers the value as it is written.
	At Range
}

// Field is one line name = value of a block.
type Field struct {
	Name  Token
	Value Value
	// Bad is set when no literal could be read after the name; a Problem says
	// why. Of Value only At is then meaningful.
	Bad bool
}

// Block is one record as it is written: kind "label" { ... }.
type Block struct {
	Kind   Token
	Labels []Token
	// Fields and Blocks are in the order of the text. A field that is written
	// twice appears once, as it was written first; a Problem names both places.
	Fields []Field
	Blocks []*Block
	// At covers the whole block up to its closing brace, Head the kind through
	// the last label.
	At, Head Range
	// Bad is set when part of the body could not be read, so that a field that
	// is not among Fields may nevertheless be written; a Problem says why.
	Bad bool
}
