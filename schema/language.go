package schema

import (
	"fmt"
	"slices"
	"strings"
)

// Form says how the field's value is written, as the language page shows it.
func (f *Field) Form() string {
	switch f.Type {
	case Word:
		return "one of " + strings.Join(f.Words, ", ")
	case Reference:
		return "label of " + OneOf(f.Kinds)
	case References:
		return "list of labels of " + OneOf(f.Kinds)
	case PortReference:
		return f.Type.Example() + ", a port of " + OneOf(f.Kinds)
	case Text, Count, Length, Temperature, Power, Period, Frequency, Loss, Current, Angle, Level, Date, Conductors, Texts:
	}
	return f.Type.String() + ", " + f.Type.Example()
}

// OneOf names kinds as alternatives, each with its article.
func OneOf(kinds []string) string {
	named := make([]string, len(kinds))
	for i, k := range kinds {
		named[i] = article(k) + " " + k
	}
	return strings.Join(named, " or ")
}

func article(word string) string {
	if strings.ContainsRune("aeiou", rune(word[0])) {
		return "an"
	}
	return "a"
}

// Condition says whether the field has to be written, or where else it may
// stand.
func (f *Field) Condition() string {
	switch {
	case f.Inherited:
		return " (the bundle around it may state it)"
	case f.Required:
		return " (required)"
	}
	return ""
}

// Refuses says why a word is not a value of a word field, as the next step to
// take; empty where it is one.
func (f *Field) Refuses(word string) string {
	if slices.Contains(f.Words, word) {
		return ""
	}
	if near := nearest(word, f.Words); near != "" {
		return "did you mean " + near + "?"
	}
	return "the words are " + list(f.Words)
}

// Literal writes a text as a value of the record language.
func Literal(text string) string {
	var b strings.Builder
	b.WriteByte('"')
	for i, r := range text {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case (r == '$' || r == '%') && strings.HasPrefix(text[i+1:], "{"):
			b.WriteRune(r)
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r == '\t':
			b.WriteString(`\t`)
		case r < ' ' || r == 0x7f:
			fmt.Fprintf(&b, `\u%04x`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}
