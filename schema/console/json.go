package console

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"unicode/utf16"
	"unicode/utf8"

	"homerun/schema"
)

// JSON writes a value as an indented JSON document, ended by a new line. A
// document states what the records state, to the character; but what a terminal
// or a browser could take for something else, such as a directional override or
// a tag, is written as JSON's own escape.
func JSON(w io.Writer, value any) error {
	text, err := json.MarshalIndent(value, "", "  ")
	if err != nil {
		return fmt.Errorf("writing the report: %w", err)
	}
	if _, err := w.Write(append(escaped(text), '\n')); err != nil {
		return fmt.Errorf("writing the report: %w", err)
	}
	return nil
}

// escaped replaces what can not be printed by its escape. Such a character
// stands only inside a string there: everything else in JSON is ASCII.
func escaped(text []byte) []byte {
	if !bytes.ContainsFunc(text, hidden) {
		return text
	}
	out := make([]byte, 0, len(text)+len(text)/8)
	for len(text) > 0 {
		r, n := utf8.DecodeRune(text)
		switch {
		case !hidden(r):
			out = append(out, text[:n]...)
		case r > 0xffff:
			high, low := utf16.EncodeRune(r)
			out = fmt.Appendf(out, `\u%04x\u%04x`, high, low)
		default:
			out = fmt.Appendf(out, `\u%04x`, r)
		}
		text = text[n:]
	}
	return out
}

func hidden(r rune) bool {
	if r < utf8.RuneSelf {
		return r == 0x7f // the encoder has escaped the others
	}
	one := string(r)
	return schema.Printable(one) != one
}
