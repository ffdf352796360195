package weave

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"homerun/schema/block"
)

// UnfitError says that a text can not be cut into records, so that it has to be
// merged by lines.
type UnfitError struct {
	// Text says which one, Line where in it, counted from 1; Line is 0 where
	// no place can be named.
	Text string
	Line int
	// Message is why.
	Message string
}

// Error is the sentence.
func (e *UnfitError) Error() string {
	if e.Line == 0 {
		return e.Text + ": " + e.Message
	}
	return fmt.Sprintf("%s, line %d: %s", e.Text, e.Line, e.Message)
}

// A body is the items of a file or of a record, and what stands after the last.
type body struct {
	items []item
	// blanks are the blank lines after the last item; foot what stands before
	// the closing brace on its line.
	blanks, foot string
}

// readFile cuts a whole file into items. Its lines end with LF, the last too.
func readFile(name, text string) (body, error) {
	chunks, problems := block.Split(text)
	if len(problems) > 0 {
		return body{}, unfit(name, text, problems[0].At.Start, problems[0].Message)
	}
	elements := make([]element, 0, len(chunks))
	for _, c := range chunks {
		e := topElement(c)
		if e.sort == opaque && !endsItself(text[e.start:e.end]) {
			return body{}, unfit(name, text, e.start, "this record has no end, so what follows could be part of it")
		}
		elements = append(elements, e)
	}
	b, at := cut(text, 0, len(text), elements)
	if at >= 0 {
		return b, unfit(name, text, at, "something stands beside a record")
	}
	return b, nil
}

func unfit(name, text string, at int, message string) error {
	down, _ := block.Position(text, at)
	return &UnfitError{Text: name, Line: down + 1, Message: message}
}

// An element is a field or block in its place.
type element struct {
	start, end int
	field      *block.Field
	block      *block.Block
	sort       sort
}

// topElement reads a chunk. One that can not be read without mistakes is taken
// as it is written.
func topElement(c block.Chunk) element {
	b, problems := block.Parse(c.Text)
	if len(problems) > 0 || b == nil || b.Bad {
		blank := len(c.Text) - len(strings.TrimLeft(c.Text, " \t"))
		if b == nil {
			b = &block.Block{}
		}
		return element{start: c.Offset + blank, end: c.Offset + len(c.Text), block: b, sort: opaque}
	}
	return element{start: c.Offset + b.At.Start, end: c.Offset + b.At.End, block: b, sort: record}
}

// endsItself says whether a record that can not be read is at least cut off at
// the same place whatever stands below it.
func endsItself(core string) bool {
	chunks, problems := block.Split(core + "\n  space \"1A\" {\n}\n")
	return len(problems) == 0 && len(chunks) == 2 && chunks[0].Text == core
}

// cut divides the text between two offsets into items. Where something stands
// beside an element on its line, the offset of that is returned, otherwise -1.
func cut(text string, from, to int, elements []element) (b body, at int) {
	for _, e := range elements {
		if e.start < from {
			return b, e.start
		}
		g, ok := newGap(text[from:e.start], beforeElement)
		end, _, plain := blankOrComment(text[:to], e.end)
		if !ok || !plain || text[end-1] != '\n' {
			return b, e.start
		}
		b.items = append(b.items, g.notes...)
		it := item{sort: e.sort, blanks: g.blanks, lead: g.lead, indent: g.indent, core: text[e.start:e.end], trail: text[e.end : end-1]}
		it.know(e)
		b.items = append(b.items, it)
		from = end
	}
	g, ok := newGap(text[from:to], atEnd)
	if !ok {
		return b, from
	}
	b.items = append(b.items, g.notes...)
	b.blanks, b.foot = g.blanks, g.indent
	return b, -1
}

// know sets what the element of an item states.
func (it *item) know(e element) {
	if e.field != nil {
		it.name, it.key, it.value = e.field.Name.Text, "="+e.field.Name.Text, &e.field.Value
		it.pre = it.core[:e.field.Value.At.Start-e.field.Name.At.Start]
		return
	}
	it.block, it.key = e.block, keyOf(e.block)
	if it.sort == opaque && len(e.block.Labels) == 0 {
		it.key = "?" + it.core
	}
}

// valueText is a field's value as it is written.
func (it *item) valueText() string { return it.core[len(it.pre):] }

// An opened record is a block with its body cut into items.
type opened struct {
	block *block.Block
	// head is the text through the opening brace, after the rest of its line.
	head, after string
	body
}

// open cuts a record's block. One that is written on a single line is laid out
// over several first. It is not ok where the text can not be cut.
func open(it *item) (opened, bool) {
	core := it.core
	b, problems := block.Parse(core)
	if b == nil || len(problems) > 0 {
		return opened{}, false
	}
	o := opened{block: b}
	brace := openingBrace(core, b)
	if brace < 0 {
		return o, false
	}
	end, _, ok := blankOrComment(core[:b.At.End-1], brace+1)
	if !ok || core[end-1] != '\n' {
		wide := *it
		wide.core = unfold(core, brace, it.indent)
		if wide.core == core {
			return o, false
		}
		return open(&wide)
	}
	o.head, o.after = core[:brace+1], core[brace+1:end-1]
	var at int
	o.body, at = cut(core, end, b.At.End-1, elementsOf(b))
	return o, at < 0
}

// openingBrace finds the brace behind the head of a block.
func openingBrace(core string, b *block.Block) int {
	at := b.Head.End
	for at < len(core) {
		end, _, ok := blankOrComment(core, at)
		if !ok {
			at = end
			break
		}
		if end == at {
			return -1
		}
		at = end
	}
	if at >= len(core) || core[at] != '{' {
		return -1
	}
	return at
}

// unfold lays a block out that is written on one line.
func unfold(core string, brace int, indent string) string {
	indent = indent[:len(indent)-len(strings.TrimLeft(indent, " \t"))]
	within := strings.TrimSpace(core[brace+1 : len(core)-1])
	if strings.Contains(within, "\n") {
		return core
	}
	if within != "" {
		within = indent + "  " + within + "\n"
	}
	return core[:brace+1] + "\n" + within + indent + "}"
}

func elementsOf(b *block.Block) []element {
	all := make([]element, 0, len(b.Fields)+len(b.Blocks))
	for i := range b.Fields {
		f := &b.Fields[i]
		all = append(all, element{start: f.Name.At.Start, end: f.Value.At.End, field: f, sort: field})
	}
	for _, in := range b.Blocks {
		all = append(all, element{start: in.At.Start, end: in.At.End, block: in, sort: record})
	}
	slices.SortFunc(all, func(x, y element) int { return cmp.Compare(x.start, y.start) })
	return all
}
