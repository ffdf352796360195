package block

import "strings"

// shape is what an item at the top of a file turns out to be.
type shape uint8

const (
	badItem shape = iota
	blockItem
	fieldItem
)

// walk follows one top-level item to its end.
type walk struct {
	*splitter
	brackets brackets
	start    int
	// candidate is the first line inside the item that looks like the start of
	// another, or -1.
	candidate int
	isBlock   bool
}

// run leaves the lexer at the end of the item.
func (w *walk) run() shape {
	head, tokens := true, 0
	for {
		if w.brackets.depth() > 0 {
			w.skipDull()
		}
		k := w.next()
		if w.brackets.depth() == 0 {
			switch {
			case head && tokens == 0 && k == equals:
				w.line()
				return fieldItem
			case k == atEnd || k == comment || k == conflict || k == newline && (!head || !w.braceBelow()):
				w.pos = w.lexer.start
				return badItem
			case k == opening:
				w.isBlock = head && w.src[w.lexer.start] == '{'
			}
			head = head && (k == word || k == text || k == openText || k == template || k == remark || k == newline)
			if k != remark {
				tokens++
			}
		}
		if done, what := w.inside(k); done {
			return what
		}
	}
}

// braceBelow reports whether the first thing below the line is the brace that its
// head lacks, and if so moves to it.
func (w *walk) braceBelow() bool {
	brace := braceBelow(w.src, w.pos)
	if brace >= 0 {
		w.pos = brace
	}
	return brace >= 0
}

// inside takes a token with the brackets in mind, and reports whether the item
// ends with it.
func (w *walk) inside(k kind) (bool, shape) {
	switch {
	case k == opening:
		w.brackets.push(w.src[w.lexer.start])
	case k == openText:
		if brace := swallowedBrace(w.src, Range{w.lexer.start, w.pos}); brace >= 0 {
			w.pos = brace
		}
	case k == closing:
		w.brackets.pop(w.src[w.lexer.start])
		if w.brackets.depth() == 0 && w.isBlock {
			return true, blockItem
		}
	case k == atEnd:
		return true, w.giveUp()
	case k != newline && k != comment || w.brackets.depth() == 0:
	case w.candidate < 0 && w.looksLikeHead():
		w.candidate = w.pos
		if w.unclosed >= patience {
			return true, w.giveUp()
		}
	}
	return false, badItem
}

// line finishes a field outside any block: it ends with its line, or where the
// brackets that it opens are closed.
func (w *walk) line() {
	for {
		switch k := w.next(); {
		case k == opening:
			w.brackets.push(w.src[w.lexer.start])
		case k == closing:
			w.brackets.pop(w.src[w.lexer.start])
		case k == atEnd && w.brackets.depth() > 0:
			w.giveUp()
			return
		case (k == newline || k == comment || k == conflict || k == atEnd) && w.brackets.depth() == 0:
			w.pos = w.lexer.start
			return
		case (k == newline || k == comment) && w.looksLikeHead():
			w.candidate = w.pos
			w.giveUp()
			return
		}
	}
}

// giveUp ends an item that is never closed.
func (w *walk) giveUp() shape {
	w.unclosed++
	if w.candidate >= 0 {
		w.pos = w.candidate
	}
	if w.isBlock {
		return blockItem
	}
	return badItem
}

// braceBelow is the offset of an opening brace that is the first thing below the
// line that ends before the given offset, or -1: a block whose brace stands
// under its head.
func braceBelow(src string, from int) int {
	for i := from; i < len(src); i++ {
		switch c := src[i]; {
		case c == '{':
			return i
		case classes[c] != spaceByte && c != '\n' && c != '\r':
			return -1
		}
	}
	return -1
}

// swallowedBrace is the offset of the brace with which an unclosed text in the
// head of a block ends, or -1.
func swallowedBrace(src string, at Range) int {
	end := trimEnd(src, at.Start, at.End)
	if end-1 <= at.Start || src[end-1] != '{' || strings.ContainsAny(src[at.Start:end-1], "{}=") {
		return -1
	}
	line := strings.LastIndexByte(src[:at.Start], '\n') + 1
	if head := strings.TrimLeft(src[line:at.Start], " \t"); head == "" || classes[head[0]] != wordByte || strings.ContainsAny(head, "=[({") {
		return -1
	}
	return end - 1
}

// looksLikeHead reports whether the line that starts here starts, in its first
// column, with a name, spaces, and a quote or a brace.
func (w *walk) looksLikeHead() bool {
	src := w.src
	i := w.pos
	for i < len(src) && (classes[src[i]] == wordByte || (src[i] == '-' && i > w.pos)) {
		i++
	}
	if i == w.pos || src[w.pos] >= '0' && src[w.pos] <= '9' {
		return false
	}
	name := i
	for i < len(src) && src[i] == ' ' {
		i++
	}
	return i > name && i < len(src) && (src[i] == '"' || src[i] == '{')
}
