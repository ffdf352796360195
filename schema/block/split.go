package block

import (
	"fmt"
	"strings"
)

// Chunk is one top-level block of a file, cut out but not yet read.
type Chunk struct {
	// Text is the block from its kind, or the spaces before it on its line,
	// through its closing brace. Only where a comment or another block stands
	// before it on that line does Text start in the middle of a line, so that
	// columns on its first line count from there.
	Text string
	// Offset is the byte at which Text starts in the file, Line its line there,
	// counted from 1.
	Offset, Line int
}

// patience is how many unclosed blocks of one file are followed to the end of
// the file. After so many, a block ends where the next seems to start, so that
// a file of nothing but unclosed blocks is still read in linear time.
const patience = 4

// Split cuts the text of a file into its top-level blocks. Its problems are
// those of the text between and around the blocks; what is wrong inside a block
// is told by Parse. A block that is never closed ends before the next line that
// starts, in its first column, like a block.
func Split(src string) ([]Chunk, []Problem) {
	if len(src) > MaxFile {
		return nil, []Problem{{
			Code:    TooLarge,
			Message: fmt.Sprintf("the file has %d bytes, limit %d", len(src), MaxFile),
			Next:    "divide the records among several files",
		}}
	}
	s := splitter{lexer: lexer{src: src}, line: 1}
	s.begin()
	s.run()
	return s.chunks, settle(src, s.found)
}

// Start says what stands before a part of a file.
type Start uint8

// A part starts with its file, or right behind the closing brace of a block.
const (
	AtFile Start = iota
	AtBrace
)

// SplitPart cuts a part of a file into its top-level blocks; lines and offsets
// count from the start of the part. It is firm where no problem was found and
// every block is closed, so that nothing that stands around the part can change
// what is a block in it. That holds up to the last closing brace; where more of
// the file follows than the part, the part has to end there.
func SplitPart(part string, start Start) (chunks []Chunk, firm bool) {
	if len(part) > MaxFile {
		return nil, false
	}
	s := splitter{lexer: lexer{src: part}, line: 1}
	if start == AtFile {
		s.begin()
	}
	s.run()
	return s.chunks, len(s.found) == 0 && s.unclosed == 0 && !s.endless
}

// splitter is the state of one Split.
type splitter struct {
	lexer
	chunks []Chunk
	found  []ranked
	// line is the line at offset counted.
	line, counted int
	// fresh is set when the last item has ended with its line.
	fresh bool
	// unclosed counts the blocks that had no end.
	unclosed int
	// foreign collects the bytes outside blocks that are no text.
	foreign foreign
}

// begin takes the start of a file.
func (s *splitter) begin() {
	s.fresh = true
	if strings.HasPrefix(s.src, byteOrderMark) {
		s.pos = len(byteOrderMark)
	}
}

// run takes everything that there is.
func (s *splitter) run() {
	for s.item(s.next()) {
	}
	s.foreign.tell(&s.found)
}

func (s *splitter) report(code Code, at Range, message, next string) {
	s.found = append(s.found, ranked{Problem: Problem{Code: code, At: at, Message: message, Next: next}})
}

// item takes what starts with the given token, and reports whether there is
// more to come.
func (s *splitter) item(first kind) bool {
	at := Range{s.start, s.pos}
	switch first {
	case atEnd:
		return false
	case newline:
		s.fresh = true
	case comment, remark:
		s.foreign.look(s.src, at)
		s.fresh = s.fresh || first == comment
	case openRemark:
		s.found = append(s.found, ranked{Problem: unclosedRemark(at)})
	case conflict:
		s.found = append(s.found, ranked{Problem: unresolved(at)})
		s.fresh = true
	case word:
		s.named(at.Start)
	case text, template, openText, heredoc, openHeredoc, opening, closing, equals, operator, other:
		s.stray(first)
	}
	return true
}

// named takes an item that starts with a name: a block, a stray field, or
// nothing that can be read.
func (s *splitter) named(start int) {
	if !s.fresh {
		s.report(Unreadable, Range{start, s.pos}, "a record starts on the line on which another ends", "start a new line before it")
	}
	walk := walk{splitter: s, start: start, candidate: -1}
	shape := walk.run()
	end := s.pos
	// An item that is never closed ends where the next line starts one.
	s.fresh = s.src[end-1] == '\n'
	switch shape {
	case blockItem:
		s.cut(start, end)
	case fieldItem:
		at := Range{start, trimEnd(s.src, start, min(end, lineStop(s.src, start)))}
		s.foreign.look(s.src, Range{start, end})
		s.report(StrayField, at, "a field stands outside any record", `put it between the braces of a record: space "1A" { ... }`)
	case badItem:
		at := Range{start, trimEnd(s.src, start, min(end, lineStop(s.src, start)))}
		s.foreign.look(s.src, Range{start, end})
		s.report(Unreadable, at, "this is not a record", `a record starts with its kind, its label and a brace: space "1A" {`)
	}
}

// cut makes a chunk of the block between the offsets.
func (s *splitter) cut(start, end int) {
	for start > s.counted && classes[s.src[start-1]] == spaceByte {
		start--
	}
	if start > 0 && s.src[start-1] != '\n' {
		for classes[s.src[start]] == spaceByte {
			start++
		}
	}
	s.line += strings.Count(s.src[s.counted:start], "\n")
	s.counted = start
	s.chunks = append(s.chunks, Chunk{Text: s.src[start:trimEnd(s.src, start, end)], Offset: start, Line: s.line})
}

// trimEnd moves an end back over white space.
func trimEnd(src string, start, end int) int {
	for end > start && (classes[src[end-1]] == spaceByte || src[end-1] == '\n' || src[end-1] == '\r') {
		end--
	}
	return end
}

// stray takes a line that starts with something other than a name.
func (s *splitter) stray(first kind) {
	at := Range{s.start, s.pos}
	for k := first; k != newline && k != comment && k != atEnd && k != conflict; k = s.next() {
		at.End = s.pos
		if k == heredoc {
			break
		}
	}
	s.pos = at.End
	s.foreign.look(s.src, at)
	message, next := "this is not a record", `a record starts with its kind, its label and a brace: space "1A" {`
	switch {
	case s.src[at.Start] == '}':
		message, next = "a closing brace has no opening brace", "take it out, or find the record above that is closed too early"
	case !s.fresh:
		message, next = "something stands after the closing brace of a record", "start a new line after the brace"
	case s.src[at.Start] == '\r':
		message, next = "a line ends with a bare carriage return", "save the file with LF or CR LF line ends"
	}
	s.fresh = false
	s.report(Unreadable, at, message, next)
}

func unresolved(at Range) Problem {
	return Problem{
		Code: MergeMarkers, At: at,
		Message: "unresolved merge conflict",
		Next:    "keep the lines that are right, and take out the others and the marker lines",
	}
}

func unclosedRemark(at Range) Problem {
	return Problem{Code: Unclosed, At: at, Message: "the comment is not closed", Next: "add */ where it ends, or start each line with #"}
}
