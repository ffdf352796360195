package block

import (
	"strings"
	"unicode/utf8"
)

// byteOrderMark may start a file; some editors write it. It is no character of
// the text.
const byteOrderMark = "\ufeff"

// Position converts a byte offset into how many lines below the first line of
// the text it is, and its column. Columns count Unicode code points from 1; a
// byte that is not UTF-8 counts as one. A byte order mark at the start of the
// text is no column, the two bytes of a CR LF are one, and an offset inside a
// code point is that code point's place. Offsets outside the text are its ends.
func Position(text string, offset int) (line, column int) {
	offset = max(0, min(offset, len(text)))
	for offset > 0 && offset < len(text) && !utf8.RuneStart(text[offset]) && validBefore(text, offset) {
		offset--
	}
	if offset > 0 && offset < len(text) && text[offset] == '\n' && text[offset-1] == '\r' {
		offset--
	}
	line = strings.Count(text[:offset], "\n")
	start := strings.LastIndexByte(text[:offset], '\n') + 1
	if start == 0 && strings.HasPrefix(text, byteOrderMark) {
		start = min(len(byteOrderMark), offset)
	}
	return line, utf8.RuneCountInString(text[start:offset]) + 1
}

// validBefore reports whether the continuation byte at the offset belongs to a
// code point that starts before it.
func validBefore(text string, offset int) bool {
	for back := 1; back < utf8.UTFMax && back <= offset; back++ {
		if utf8.RuneStart(text[offset-back]) {
			_, size := utf8.DecodeRuneInString(text[offset-back:])
			return size > back
		}
	}
	return false
}
