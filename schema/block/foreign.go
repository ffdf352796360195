package block

import (
	"fmt"
	"unicode/utf8"
)

// foreign remembers the bytes that are no text: the first of each sort, and how
// many there are.
type foreign struct {
	bad, control           Range
	badCount, controlCount int
	badByte                byte
	controlRune            rune
}

// look looks through a part of the text.
func (f *foreign) look(src string, at Range) {
	for i := at.Start; i < at.End; {
		c := src[i]
		if c >= 0x20 && c < 0x7f || c == '\n' || c == '\t' || c == '\r' {
			i++
			continue
		}
		r, size := utf8.DecodeRuneInString(src[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			if f.badCount == 0 {
				f.bad, f.badByte = Range{i, i + 1}, c
			}
			f.badCount++
		case isControl(r):
			if f.controlCount == 0 {
				f.control, f.controlRune = Range{i, i + size}, r
			}
			f.controlCount++
		}
		i += size
	}
}

// isControl reports whether a character is one of the invisible ones of ASCII
// or ISO/IEC 6429 that no record needs and a terminal might obey.
func isControl(r rune) bool {
	return r < 0x20 && r != '\n' && r != '\t' && r != '\r' || r >= 0x7f && r < 0xa0
}

// tell reports what was found.
func (f *foreign) tell(found *[]ranked) {
	if f.badCount > 0 {
		*found = append(*found, ranked{Problem: Problem{
			Code: NotUTF8, At: f.bad,
			Message: fmt.Sprintf("byte 0x%02X is not UTF-8 text%s", f.badByte, more(f.badCount)),
			Next:    "save the file as UTF-8; it was probably saved in an older code page",
		}})
	}
	if f.controlCount > 0 {
		*found = append(*found, ranked{Problem: Problem{
			Code: ControlCharacter, At: f.control,
			Message: fmt.Sprintf("control character U+%04X stands in the text%s", f.controlRune, more(f.controlCount)),
			Next:    "take it out",
		}})
	}
}

func more(count int) string {
	if count == 1 {
		return ""
	}
	return fmt.Sprintf(", and %d more such", count-1)
}
