package table

import (
	"fmt"
	"strings"
	"unicode"
)

// A Fill says what goes into one column: parts of text, and headings of other
// columns in braces, as in from={Panel}:{Port}.
type Fill struct {
	// Column is the heading that is filled.
	Column string
	parts  []fillPart
}

// A fillPart is a text, or the heading of a column whose cell stands there.
type fillPart struct {
	text, heading string
}

// ParseFill reads COLUMN=TEMPLATE. Two braces are one. The error says what is wrong
// in words.
func ParseFill(text string) (Fill, error) {
	column, template, found := strings.Cut(text, "=")
	f := Fill{Column: strings.TrimSpace(column)}
	if !found || f.Column == "" {
		return f, fmt.Errorf("%q does not say which field is filled with what", text)
	}
	var plain strings.Builder
	flush := func() {
		if plain.Len() > 0 {
			f.parts = append(f.parts, fillPart{text: plain.String()})
			plain.Reset()
		}
	}
	for rest := template; rest != ""; {
		switch {
		case strings.HasPrefix(rest, "{{") || strings.HasPrefix(rest, "}}"):
			plain.WriteByte(rest[0])
			rest = rest[2:]
		case rest[0] == '{':
			end := strings.IndexByte(rest, '}')
			if end < 0 || strings.TrimSpace(rest[1:end]) == "" {
				return f, fmt.Errorf("%q has a brace that names no column", text)
			}
			flush()
			f.parts = append(f.parts, fillPart{heading: strings.TrimSpace(rest[1:end])})
			rest = rest[end+1:]
		case rest[0] == '}':
			return f, fmt.Errorf("%q closes a brace that is not open", text)
		default:
			plain.WriteByte(rest[0])
			rest = rest[1:]
		}
	}
	flush()
	return f, nil
}

// plainHeading is a heading as headings are compared: without regard to case, and to
// spaces, hyphens and underscores.
func plainHeading(text string) string {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return unicode.IsSpace(r) || r == '_' || r == '-' })
	return strings.Join(words, " ")
}
