package block

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"
)

// filler stands inside masked texts. It is a control character, which never
// stays in a text, so a mask always differs from what it covers.
const filler = 0x01

// mask replaces one token that the parser is not to see, and tells why.
func (o *outliner) mask(k kind, at Range) {
	switch k {
	case template:
		o.report(NotLiteral, at, "the text holds an expression after ${ or %{", "write the value itself, or $${ where the characters ${ are meant")
		o.maskText(at)
	case text:
		o.maskHuge(at)
	case openText:
		o.maskOpenText(at)
	case heredoc, openHeredoc:
		o.report(NotLiteral, Range{at.Start, lineStop(o.lexer.src, at.Start)}, "a text over several lines is not a value of a record", `write the text in quotes on one line, with \n where a new line is meant`)
		o.maskText(at)
	case openRemark:
		o.found = append(o.found, ranked{Problem: unclosedRemark(at)})
		o.fill(at, ' ')
	case conflict:
		o.found = append(o.found, ranked{Problem: unresolved(at)})
		o.conflicts = append(o.conflicts, at)
		o.fill(at, ' ')
	case word:
		o.maskHugeNumber(at)
	case atEnd, newline, comment, remark, opening, closing, equals, operator, other:
	}
}

func (o *outliner) fill(at Range, with byte) {
	for i := at.Start; i < at.End; i++ {
		o.masked[i] = with
	}
}

// maskText puts a text of the same size in place of whatever stands there.
func (o *outliner) maskText(at Range) {
	if at.End-at.Start < 2 {
		o.fill(at, '0')
		return
	}
	o.fill(at, filler)
	o.masked[at.Start], o.masked[at.End-1] = '"', '"'
}

// maskHuge masks the texts that cost the parser more than their size.
func (o *outliner) maskHuge(at Range) {
	written := o.lexer.src[at.Start:at.End]
	if len(written) > MaxText {
		o.report(TooLarge, at, fmt.Sprintf("the text has %d bytes, limit %d", len(written), MaxText), "keep long documents in files of their own")
		o.maskText(at)
	} else if signs := countSigns(written); signs > MaxSigns {
		o.report(TooLarge, at, fmt.Sprintf("the text has %d signs $ and %%, limit %d", signs, MaxSigns), "shorten the text")
		o.maskText(at)
	}
}

func countSigns(written string) int {
	return strings.Count(written, "$") + strings.Count(written, "%")
}

func (o *outliner) maskHugeNumber(at Range) {
	if c := o.lexer.src[at.Start]; at.End-at.Start > MaxNumber && c >= '0' && c <= '9' {
		o.report(TooLarge, at, fmt.Sprintf("the number has %d characters, limit %d", at.End-at.Start, MaxNumber), "write it shorter, or in quotes if it is a text")
		o.masked[at.Start] = '0'
		o.fill(Range{at.Start + 1, at.End}, ' ')
	}
}

// maskOpenText closes a text that has no end on its line. In the head of a block
// it ends before the brace; after a field's name it and all else on the line is
// the field's unreadable value.
func (o *outliner) maskOpenText(at Range) {
	src := o.lexer.src
	o.report(Unclosed, at, "the text is not closed on its line", `add the quote " that is missing`)
	if brace := swallowedBrace(src, at); brace >= 0 {
		o.maskText(Range{at.Start, brace})
		o.pos = brace
		return
	}
	from := at.Start
	if o.inBody() {
		line := strings.LastIndexByte(src[:at.Start], '\n') + 1
		if sign := bytes.IndexByte(o.masked[line:at.Start], '='); sign >= 0 && !strings.Contains(src[line:at.Start], "{") {
			from = line + sign + 1
		}
	} else if line := strings.LastIndexByte(src[:at.Start], '\n') + 1; o.listLine(line, at.Start) {
		from = line + strings.IndexByte(src[line:], '=') + 1
		o.brackets.pop(']')
	}
	o.maskText(Range{from, at.End})
}

// listLine reports whether everything on the line so far is a name, a sign and
// a list that is still open.
func (o *outliner) listLine(line, to int) bool {
	sign := strings.IndexByte(o.lexer.src[line:to], '=')
	if sign < 0 || strings.ContainsAny(o.lexer.src[line:to], "{(") {
		return false
	}
	rest := strings.TrimLeft(o.lexer.src[line+sign+1:to], " \t")
	return strings.HasPrefix(rest, "[") && strings.Count(rest, "[") == 1
}

// blank overwrites the children of a block, so that the parser sees its own
// lines alone. Line ends stay, since they mean something.
func blank(masked []byte, offset int, children []*node) {
	for _, c := range children {
		for i := c.start; i < c.end; i++ {
			masked[i-offset] = ' '
		}
	}
}

// foreign replaces the bytes that are no text.
func (o *outliner) foreign() {
	src := o.outline.src
	var f foreign
	f.look(src, Range{0, len(src)})
	if f.badCount == 0 && f.controlCount == 0 {
		return
	}
	f.tell(&o.found)
	for i := 0; i < len(src); {
		r, size := utf8.DecodeRuneInString(src[i:])
		if r == utf8.RuneError && size == 1 || isControl(r) {
			for j := range size {
				o.masked[i+j] = '?'
			}
		}
		i += size
	}
}
