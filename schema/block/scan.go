package block

import (
	"strings"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// This file is one of two readers of a block. The parser (syntax.go) reads 3.5
// MB of records in about a second; this scanner reads them in milliseconds,
// because records hold literals only. It reads what it recognises to the byte:
// the same block that the parser would return, with the same ranges. Everything
// else, valid or not, it declines, and the parser alone decides what is valid
// and what is said about it. Tests hold the two equal.

// scanner reads one literal block.
type scanner struct {
	// src ends where the text to be read ends.
	src string
	pos int
	// The parts of all blocks stand in a few rows, since a plant has a hundred
	// thousand of them. Blocks never moves: its capacity is the number of braces.
	fields []Field
	tokens []Token
	blocks []Block
	inner  []*Block
}

// scan reads the block that stands alone in src from the given offset on. It
// returns nil when it declines.
func scan(src string, from int) *Block {
	if len(src)-from > MaxBlock {
		return nil
	}
	body := src[from:]
	// No record is so dense; the bounds keep the rows in proportion to the text.
	const perBlock, perPart = 16, 8
	braces := strings.Count(body, "{")
	if braces > 1+len(body)/perBlock {
		return nil
	}
	most := 1 + len(body)/perPart
	s := scanner{
		src: src, pos: from,
		fields: make([]Field, 0, min(most, strings.Count(body, "="))),
		tokens: make([]Token, 0, min(most, braces+strings.Count(body, "[")+strings.Count(body, ","))),
		blocks: make([]Block, 0, braces),
	}
	if braces > 1 {
		s.inner = make([]*Block, 0, braces-1)
	}
	s.spaces()
	b := s.block(1)
	if b == nil || !s.rest() {
		return nil
	}
	return b
}

// rest reports whether only white space and comments are left.
func (s *scanner) rest() bool {
	for s.pos < len(s.src) {
		if !s.line() {
			return false
		}
	}
	return true
}

// line passes over spaces and the end of the line, with a comment before it or
// not. It fails when anything else stands there.
func (s *scanner) line() bool {
	s.spaces()
	if s.pos == len(s.src) {
		return true
	}
	switch s.src[s.pos] {
	case '\n':
		s.pos++
		return true
	case '\r':
		if strings.HasPrefix(s.src[s.pos:], "\r\n") {
			s.pos += 2
			return true
		}
	case '#':
		return s.comment()
	case '/':
		return strings.HasPrefix(s.src[s.pos:], "//") && s.comment()
	}
	return false
}

// comment passes over a comment with the end of its line. It stays before one
// that it declines, so that a caller who looks no further than at the byte at
// hand declines too.
func (s *scanner) comment() bool {
	end := lineEnd(s.src, s.pos)
	if !plain(s.src[s.pos:end]) {
		return false
	}
	s.pos = end
	return true
}

// plain reports whether the bytes are UTF-8 text without control characters.
func plain(text string) bool {
	for i := range len(text) {
		c := text[i]
		if c >= 0x7f || c < 0x20 && c != '\t' && c != '\n' && c != '\r' {
			var f foreign
			f.look(text, Range{0, len(text)})
			return f.badCount == 0 && f.controlCount == 0
		}
	}
	return true
}

func (s *scanner) spaces() {
	for s.pos < len(s.src) && (s.src[s.pos] == ' ' || s.src[s.pos] == '\t') {
		s.pos++
	}
}

// peek is the byte at hand, or zero at the end.
func (s *scanner) peek() byte {
	if s.pos < len(s.src) {
		return s.src[s.pos]
	}
	return 0
}

// name reads a name in ASCII letters; it returns the empty Token when there is
// none.
func (s *scanner) name() Token {
	start := s.pos
	for s.pos < len(s.src) && (classes[s.src[s.pos]] == wordByte || s.src[s.pos] == '-') && s.src[s.pos] < utf8.RuneSelf {
		s.pos++
	}
	if start == s.pos || s.src[start] <= '9' {
		s.pos = start
		return Token{}
	}
	return Token{Text: s.src[start:s.pos], At: Range{start, s.pos}}
}

// quoted reads a text without escapes and templates.
func (s *scanner) quoted() (Token, bool) {
	start := s.pos
	wide, signs := false, 0
	for i := start + 1; i < len(s.src); i++ {
		switch c := s.src[i]; {
		case c == '"':
			s.pos = i + 1
			t := Token{Text: s.src[start+1 : i], At: Range{start, s.pos}}
			return t, s.pos-start <= MaxText && signs <= MaxSigns && (!wide || isPlainWide(t.Text))
		case c == '\\', c < 0x20 && c != '\t', c == 0x7f:
			return Token{}, false
		case c >= utf8.RuneSelf:
			wide = true
		case c == '$' || c == '%':
			signs++
			if i+1 < len(s.src) && (s.src[i+1] == '{' || s.src[i+1] == c) {
				return Token{}, false
			}
		}
	}
	return Token{}, false
}

// isPlainWide reports whether a text with characters outside ASCII is its own
// value.
func isPlainWide(text string) bool {
	return plain(text) && norm.NFC.IsNormalString(text)
}
