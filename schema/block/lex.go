package block

import "strings"

// kind is the sort of one token of the text.
type kind uint8

// The tokens that matter to the structure of a file. Texts never reach beyond
// their line: one that is not closed there ends there, so that a forgotten
// quote damages a line and not the rest of the file.
const (
	atEnd       kind = iota
	newline          // LF or CR LF
	comment          // # or // with the end of its line
	remark           // /* ... */
	openRemark       // /* without its end; the token is the rest of the line
	word             // a name, a number, or letters that are neither
	text             // a quoted text without templates
	template         // a quoted text that holds ${ or %{
	openText         // a quote without its end on the line
	heredoc          // <<NAME to the line that ends it
	openHeredoc      // <<NAME without the line that ends it
	conflict         // a merge conflict, markers and both sides
	opening          // ( [ {
	closing          // ) ] }
	equals           // a single =
	operator         // ? ! * or a - that is not part of a word
	other            // any other byte
)

// lexer walks the tokens of a text. It never looks back, and what it has to
// look for further down is remembered, so a walk is linear in the text.
type lexer struct {
	src string
	// start and pos bound the token that next returned.
	start, pos int
	// closers remembers where the things end that are looked for ahead.
	closers closers
	// endless is set where a merge conflict was met, or something that has no end in
	// the text and might have one in a longer text.
	endless bool
}

// class sorts the bytes by what token they start.
type class uint8

const (
	otherByte class = iota
	spaceByte
	newlineByte
	returnByte
	wordByte
	quoteByte
	hashByte
	slashByte
	openByte
	closeByte
	markByte // < > | =
	operatorByte
)

// classes is the class of every byte. Bytes of characters outside ASCII may be
// part of a name.
var classes = classify()

func classify() (table [256]class) {
	for c := range 256 {
		switch {
		case c >= 0x80, c == '_', c >= '0' && c <= '9', c >= 'A' && c <= 'Z', c >= 'a' && c <= 'z':
			table[c] = wordByte
		}
	}
	for _, sort := range []struct {
		class class
		bytes string
	}{
		{spaceByte, " \t"},
		{newlineByte, "\n"},
		{returnByte, "\r"},
		{quoteByte, `"`},
		{hashByte, "#"},
		{slashByte, "/"},
		{openByte, "([{"},
		{closeByte, ")]}"},
		{markByte, "<>|="},
		{operatorByte, "?!*-"},
	} {
		for _, c := range []byte(sort.bytes) {
			table[c] = sort.class
		}
	}
	return table
}

// dull are the bytes that change nothing about the structure of a text, as long
// as none of them starts a merge marker.
var dull = func() (table [256]bool) {
	for c := range table {
		switch classes[c] {
		case spaceByte, wordByte, operatorByte:
			table[c] = true
		case otherByte, newlineByte, returnByte, quoteByte, hashByte, slashByte, openByte, closeByte, markByte:
			table[c] = c == '=' || c == ',' || c == ':'
		}
	}
	return table
}()

// skipDull moves over dull bytes, for callers that follow brackets alone.
func (l *lexer) skipDull() {
	src, i := l.src, l.pos
	if i < len(src) && src[i] == '=' && (i == 0 || src[i-1] == '\n') {
		return
	}
	for i < len(src) && dull[src[i]] {
		i++
	}
	l.pos = i
}

// next moves to the next token and returns its sort. Spaces and tabs are no
// tokens.
func (l *lexer) next() kind {
	for l.pos < len(l.src) && classes[l.src[l.pos]] == spaceByte {
		l.pos++
	}
	l.start = l.pos
	if l.pos == len(l.src) {
		return atEnd
	}
	switch classes[l.src[l.pos]] {
	case wordByte:
		return l.word()
	case quoteByte:
		return l.text()
	case newlineByte:
		l.pos++
		return newline
	case returnByte:
		return l.carriageReturn()
	case hashByte:
		return l.comment()
	case slashByte:
		return l.slash()
	case openByte:
		l.pos++
		return opening
	case closeByte:
		l.pos++
		return closing
	case markByte:
		return l.mark()
	case operatorByte:
		l.pos++
		return operator
	case otherByte, spaceByte:
	}
	l.pos++
	return other
}

// word reads a name or number. A minus or dot inside belongs to it.
func (l *lexer) word() kind {
	l.pos++
	for l.pos < len(l.src) {
		if c := l.src[l.pos]; classes[c] != wordByte && c != '-' && c != '.' {
			break
		}
		l.pos++
	}
	return word
}

func (l *lexer) carriageReturn() kind {
	l.pos++
	if l.pos < len(l.src) && l.src[l.pos] == '\n' {
		l.pos++
		return newline
	}
	return other
}

func (l *lexer) comment() kind {
	l.pos = lineEnd(l.src, l.pos)
	return comment
}

// lineEnd is the offset after the line that holds the given offset.
func lineEnd(src string, from int) int {
	if n := strings.IndexByte(src[from:], '\n'); n >= 0 {
		return from + n + 1
	}
	return len(src)
}

// lineStop is the offset of the end of line, LF or CR LF, after the given
// offset.
func lineStop(src string, from int) int {
	end := lineEnd(src, from)
	if end > from && src[end-1] == '\n' {
		end--
		if end > from && src[end-1] == '\r' {
			end--
		}
	}
	return end
}

func (l *lexer) slash() kind {
	rest := l.src[l.pos:]
	switch {
	case strings.HasPrefix(rest, "//"):
		return l.comment()
	case strings.HasPrefix(rest, "/*"):
		if end := l.closers.remark(l.src, l.pos+2); end >= 0 {
			l.pos = end
			return remark
		}
		l.pos, l.endless = lineStop(l.src, l.pos), true
		return openRemark
	}
	l.pos++
	return other
}

// mark reads what starts with one of < > | =: a merge conflict, a heredoc, the
// sign between a name and its value, or an operator.
func (l *lexer) mark() kind {
	rest := l.src[l.pos:]
	if (l.pos == 0 || l.src[l.pos-1] == '\n') && isMarker(rest) {
		l.pos, l.endless = l.closers.conflict(l.src, l.pos), true
		return conflict
	}
	if rest[0] == '=' && !strings.HasPrefix(rest, "==") && !strings.HasPrefix(rest, "=>") {
		l.pos++
		return equals
	}
	if name := heredocName(rest); name != "" {
		if end := l.closers.heredoc(l.src, lineEnd(l.src, l.pos), name); end >= 0 {
			l.pos = end
			return heredoc
		}
		l.pos, l.endless = lineStop(l.src, l.pos), true
		return openHeredoc
	}
	if strings.HasPrefix(rest, "==") || strings.HasPrefix(rest, "=>") {
		l.pos++
	}
	l.pos++
	return other
}
