package block

import (
	"fmt"
	"slices"
)

// node is where one block stands in the text of a chunk.
type node struct {
	// start is the first byte of the kind, open the opening brace, end the
	// offset after the closing brace or, when there is none, the end of the text.
	start, open, end int
	children         []*node
	// deep is set when brackets inside the block stand deeper than MaxDepth.
	deep bool
}

// outline is the text of a chunk made ready for the parser: what the parser
// would take badly is replaced, byte for byte, by something harmless. Wherever
// masked differs from src, something was wrong and a problem says what.
type outline struct {
	src       string
	masked    []byte
	found     []ranked
	roots     []*node
	conflicts []Range
	// deep is set when brackets outside any block stand deeper than MaxDepth.
	deep bool
}

// outliner builds an outline in one walk.
type outliner struct {
	lexer
	outline
	brackets brackets
	// blocks are the nodes of the braces among the open brackets that are
	// bodies of blocks; deepest is their depth among the brackets.
	blocks  []*node
	depths  []int
	line    lineState
	head    int
	settled *node
}

// lineState is how far the current line of a body may still be the head of a
// block.
type lineState uint8

const (
	lineStart lineState = iota // nothing but white space yet
	lineHead                   // a name, and texts or names after it
	lineOther                  // anything else
)

func newOutline(src string) *outline {
	o := outliner{lexer: lexer{src: src}}
	o.outline.src = src
	o.masked = []byte(src)
	o.foreign()
	for o.take(o.next()) {
	}
	o.finish()
	return &o.outline
}

func (o *outliner) report(code Code, at Range, message, next string) {
	o.found = append(o.found, ranked{Problem: Problem{Code: code, At: at, Message: message, Next: next}})
}

// take takes one token, and reports whether there is more to come.
func (o *outliner) take(k kind) bool {
	at := Range{o.lexer.start, o.pos}
	switch k {
	case atEnd:
		return false
	case newline, comment:
		o.endLine(k, at)
		return true
	case remark:
		return true
	case opening:
		o.open(at.Start)
		return true
	case closing:
		o.close(at)
		return true
	case openRemark, word, text, template, openText, heredoc, openHeredoc, conflict, equals, operator, other:
	}
	o.mask(k, at)
	o.drop()
	switch {
	case k == word && o.line == lineStart:
		o.line, o.head = lineHead, at.Start
	case o.line == lineHead && (k == word || k == text || k == template || k == openText):
	case k != openRemark && k != conflict:
		o.line = lineOther
	}
	return true
}

// inBody reports whether the innermost open bracket is the body of a block, or
// none is open.
func (o *outliner) inBody() bool {
	if len(o.depths) == 0 {
		return o.brackets.depth() == 0
	}
	return o.depths[len(o.depths)-1] == o.brackets.depth()
}

func (o *outliner) endLine(k kind, at Range) {
	o.settle()
	if !o.inBody() {
		return
	}
	if o.line == lineHead && k == newline {
		if brace := braceBelow(o.lexer.src, o.pos); brace >= 0 {
			o.report(Unreadable, Range{brace, brace + 1}, "the opening brace stands on a line of its own", "put it at the end of the line above")
			for i := at.Start; i < brace; i++ {
				o.masked[i] = ' '
			}
			o.pos = brace
			return
		}
	}
	o.line = lineStart
}

// settle makes the block that was closed on this line a child of the one around
// it, now that nothing else has followed it.
func (o *outliner) settle() {
	if o.settled == nil {
		return
	}
	if len(o.blocks) == 0 {
		o.roots = append(o.roots, o.settled)
	} else {
		around := o.blocks[len(o.blocks)-1]
		around.children = append(around.children, o.settled)
	}
	o.settled = nil
}

// drop gives up making a child of the block that was closed on this line: since
// something follows it, the parser has to see both.
func (o *outliner) drop() {
	if o.settled == nil {
		return
	}
	if o.settled.hasDeep() {
		o.tooDeep()
	}
	o.settled = nil
}

func (n *node) hasDeep() bool {
	return n.deep || slices.ContainsFunc(n.children, (*node).hasDeep)
}

// tooDeep marks the innermost open block, or the text outside blocks, as
// something that the parser must not see.
func (o *outliner) tooDeep() {
	if n := len(o.blocks); n > 0 {
		o.blocks[n-1].deep = true
	} else {
		o.outline.deep = true
	}
}

func (o *outliner) open(at int) {
	c := o.lexer.src[at]
	isBlock := c == '{' && o.line == lineHead && o.inBody()
	o.drop()
	o.brackets.push(c)
	if o.brackets.depth() > MaxDepth {
		o.reportDeep(at)
		return
	}
	if !isBlock {
		o.line = lineOther
		return
	}
	o.blocks = append(o.blocks, &node{start: o.head, open: at})
	o.depths = append(o.depths, o.brackets.depth())
	// What follows the brace on its line is the single field of a one-line
	// block, in which no block can stand.
	o.line = lineOther
}

// reportDeep tells once in each block that brackets stand too deep in it.
func (o *outliner) reportDeep(at int) {
	known := o.outline.deep
	if n := len(o.blocks); n > 0 {
		known = o.blocks[n-1].deep
	}
	if !known {
		o.report(TooDeep, Range{at, at + 1}, fmt.Sprintf("brackets stand more than %d deep", MaxDepth), "take the inner brackets out")
		o.tooDeep()
	}
}

func (o *outliner) close(at Range) {
	o.drop()
	if o.brackets.pop(o.lexer.src[at.Start]) == 0 {
		o.line = lineOther
		return
	}
	for n := len(o.depths); n > 0 && o.depths[n-1] > o.brackets.depth(); n-- {
		closed := o.blocks[n-1]
		o.blocks, o.depths = o.blocks[:n-1], o.depths[:n-1]
		closed.end = at.End
		o.settled = closed
	}
	o.line = lineOther
}

// finish ends the blocks that have no closing brace with the text.
func (o *outliner) finish() {
	o.settle()
	for n, open := range slices.Backward(o.blocks) {
		open.end = len(o.lexer.src)
		o.blocks = o.blocks[:n]
		o.settled = open
		o.settle()
	}
}

// conflicted reports whether part of a merge conflict stands in the range.
func (o *outline) conflicted(at Range) bool {
	i, _ := slices.BinarySearchFunc(o.conflicts, at, func(c, at Range) int {
		if c.End <= at.Start {
			return -1
		}
		return 1
	})
	return i < len(o.conflicts) && o.conflicts[i].overlaps(at)
}

// changed reports whether the mask touched the range.
func (o *outline) changed(at Range) bool {
	return o.src[at.Start:at.End] != string(o.masked[at.Start:at.End])
}
