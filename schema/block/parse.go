package block

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
)

// Parse reads one top-level block as Split cuts it. The block is nil only when
// not even a kind could be read, and then there is a problem. The result depends
// on the text alone and must not be changed by the caller: it shares memory.
func Parse(chunk string) (*Block, []Problem) {
	if b := scan(chunk, 0); b != nil {
		return b, nil
	}
	return parse(chunk)
}

// parse reads a block that the scanner declined.
func parse(chunk string) (*Block, []Problem) {
	if len(chunk) > MaxBlock {
		return parseLarge(chunk)
	}
	r := reading{outline: newOutline(chunk)}
	b := r.top()
	return b, settle(chunk, r.found)
}

// parseLarge reads the head of a block that is too large to read.
func parseLarge(chunk string) (*Block, []Problem) {
	const room = 4096
	b, _ := parse(headOnly(chunk[:room]))
	if b != nil {
		b.At.End, b.Bad = len(chunk), true
	}
	return b, []Problem{{
		Code: TooLarge, At: Range{0, lineStop(chunk, 0)},
		Message: fmt.Sprintf("the block has %d bytes, limit %d", len(chunk), MaxBlock),
		Next:    "divide its records among several blocks",
	}}
}

// headOnly is the text up to the first brace outside texts, closed at once.
func headOnly(chunk string) string {
	l := lexer{src: chunk}
	for {
		if k := l.next(); k == opening {
			return chunk[:l.pos] + "}"
		} else if k == atEnd {
			return chunk
		}
	}
}

// reading is one Parse that needs the parser. Every block is given to the
// parser by itself, with the blocks inside it blanked and read on their own, by
// the scanner where that can: so a mistake costs one record and not the records
// around it.
type reading struct {
	*outline
}

// top reads the whole text, which should hold one block.
func (r *reading) top() *Block {
	if r.deep {
		return nil
	}
	body := r.parseBody(Range{0, len(r.src)}, r.roots)
	for i := range body.fields {
		at := Range{body.fields[i].Name.At.Start, body.fields[i].Value.At.End}
		r.report(byText, StrayField, at, "a field stands outside any record", `put it between the braces of a record: space "1A" { ... }`)
	}
	all := body.blocks
	for _, n := range r.roots {
		if b := r.block(n); b != nil {
			all = append(all, b)
		}
	}
	slices.SortFunc(all, func(a, b *Block) int { return cmp.Compare(a.At.Start, b.At.Start) })
	if len(all) == 0 {
		if len(r.found) == 0 {
			r.report(byText, Unreadable, Range{0, lineStop(r.src, 0)}, "no record stands here", `a record starts with its kind, its label and a brace: space "1A" {`)
		}
		return nil
	}
	for _, b := range all[1:] {
		r.report(byText, Unreadable, b.Head, "a second record stands here", "end the first one, and start a new line")
	}
	return all[0]
}

func (r *reading) report(rank int, code Code, at Range, message, next string) {
	r.found = append(r.found, ranked{Problem: Problem{Code: code, At: at, Message: message, Next: next}, rank: rank})
}

// block reads the block at a node.
func (r *reading) block(n *node) *Block {
	if b := scan(r.src[:n.end], n.start); b != nil {
		return b
	}
	if n.deep {
		return r.head(n)
	}
	body := r.parseBody(Range{n.start, n.end}, n.children)
	if len(body.blocks) == 0 {
		return r.head(n)
	}
	b := body.blocks[0]
	for _, c := range n.children {
		if in := r.block(c); in != nil {
			b.Blocks = append(b.Blocks, in)
		}
	}
	slices.SortFunc(b.Blocks, func(a, b *Block) int { return cmp.Compare(a.At.Start, b.At.Start) })
	return b
}

// head reads nothing of a block but its kind and labels.
func (r *reading) head(n *node) *Block {
	text := append(bytes.Clone(r.masked[n.start:n.open]), "{}"...)
	body := r.convert(text, n.start)
	if len(body.blocks) == 0 {
		return nil
	}
	b := body.blocks[0]
	b.At.End, b.Bad = n.end, true
	return b
}

// parseBody gives one part of the text to the parser, without the blocks that
// are read on their own. A part that would take the parser too much memory is
// refused.
func (r *reading) parseBody(at Range, apart []*node) body {
	text := bytes.Clone(r.masked[at.Start:at.End])
	blank(text, at.Start, apart)
	size := 0
	for _, c := range text {
		if c != ' ' && c != filler {
			size++
		}
	}
	if size > MaxOdd {
		r.report(byText, TooLarge, Range{at.Start, lineStop(r.src, at.Start)}, fmt.Sprintf("the block has %d bytes of its own that are no plain record, limit %d", size, MaxOdd), "divide it, or correct what is wrong in it")
		return body{}
	}
	if len(bytes.TrimSpace(text)) == 0 {
		return body{}
	}
	return r.convert(text, at.Start)
}
