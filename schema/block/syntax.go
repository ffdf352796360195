package block

import (
	"bytes"
	"cmp"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"golang.org/x/text/unicode/norm"
)

// This file is one of two readers of a block. The scanner (scan.go) reads the
// plain records, which are nearly all, several hundred times faster; the parser
// reads what the scanner declines, decides alone what is valid, and is the
// source of every message about syntax. No expression is ever evaluated, since
// a few hundred bytes can be written that take a minute or all memory: literals
// are recognised by their shape, and their characters are taken from the text.

// body is what one call of the parser found.
type body struct {
	fields []Field
	blocks []*Block
}

// conversion turns the parser's tree into fields and blocks.
type conversion struct {
	*reading
	// damaged are the lines, in order, on which the parser found a mistake: no
	// value on them is what was meant.
	damaged []Range
	// lost is set when the parser may have left out lines.
	lost bool
}

// convert parses the masked text that starts at the given offset. It reads
// wrong text as far as it can.
func (r *reading) convert(text []byte, offset int) body {
	if !bounded(text) {
		r.report(byText, TooDeep, Range{offset, lineStop(r.src, offset)}, "the block holds too many operators", "write plain values; expressions are not allowed in records")
		return body{}
	}
	if bytes.HasPrefix(text, []byte(byteOrderMark)) {
		// The parser would pass over it; it may only stand at the start of a file.
		copy(text, "???")
	}
	file, diags := hclsyntax.ParseConfig(text, "", hcl.Pos{Line: 1, Column: 1, Byte: offset})
	c := conversion{reading: r}
	c.damage(diags)
	syntax, ok := file.Body.(*hclsyntax.Body)
	if !ok {
		panic("block: the parser returned a body of another syntax")
	}
	found := c.body(syntax)
	for _, in := range syntax.Blocks {
		found.blocks = append(found.blocks, c.block(in))
	}
	c.diagnose(diags, found)
	return found
}

// body reads the fields of a body.
func (c *conversion) body(syntax *hclsyntax.Body) body {
	var b body
	attributes := make([]*hclsyntax.Attribute, 0, len(syntax.Attributes))
	for _, a := range syntax.Attributes {
		attributes = append(attributes, a)
	}
	slices.SortFunc(attributes, func(a, b *hclsyntax.Attribute) int {
		return cmp.Compare(a.NameRange.Start.Byte, b.NameRange.Start.Byte)
	})
	for _, a := range attributes {
		b.fields = append(b.fields, c.field(a))
	}
	return b
}

func (c *conversion) block(syntax *hclsyntax.Block) *Block {
	b := &Block{Kind: Token{syntax.Type, span(syntax.TypeRange)}}
	b.Kind.Text = norm.NFC.String(b.Kind.Text)
	b.Head, b.At = b.Kind.At, b.Kind.At
	for i, at := range syntax.LabelRanges {
		b.Labels = append(b.Labels, c.label(syntax.Labels[i], span(at)))
		b.Head.End = span(at).End
	}
	b.At.End = max(b.Head.End, span(syntax.CloseBraceRange).End)
	if syntax.Body != nil {
		c.inside(b, syntax.Body)
	}
	b.Bad = c.lost || c.conflicted(b.At)
	return b
}

// inside reads the body of a block. A name without a brace is no block inside
// it but a field that lacks its equals sign.
func (c *conversion) inside(b *Block, syntax *hclsyntax.Body) {
	b.Fields = c.body(syntax).fields
	for _, in := range syntax.Blocks {
		if in.OpenBraceRange != in.TypeRange {
			b.Blocks = append(b.Blocks, c.block(in))
			continue
		}
		name := Token{norm.NFC.String(in.Type), span(in.TypeRange)}
		b.Fields = append(b.Fields, Field{Name: name, Value: Value{At: c.within(Range{name.At.End, len(c.src)})}, Bad: true})
	}
	slices.SortFunc(b.Fields, func(a, b Field) int { return cmp.Compare(a.Name.At.Start, b.Name.At.Start) })
}

// label reads a label; one that was masked is shown as it is written.
func (c *conversion) label(value string, at Range) Token {
	if c.changed(at) {
		value = strings.TrimSpace(strings.ToValidUTF8(strings.Trim(c.src[at.Start:at.End], `"`), "\ufffd"))
	} else if c.src[at.Start] != '"' {
		c.report(byValue, UnquotedLabel, at, "the label "+shown(value)+" is not in quotes", `write "`+shown(value)+`"`)
	}
	c.controls(value, at)
	return Token{norm.NFC.String(value), at}
}

func (c *conversion) field(a *hclsyntax.Attribute) Field {
	name := span(a.NameRange)
	f := Field{Name: Token{norm.NFC.String(a.Name), name}}
	f.Value.At = span(a.Expr.Range())
	whole := Range{name.Start, max(name.End, f.Value.At.End)}
	switch {
	case c.isDamaged(whole) || c.changed(whole):
		f.Bad = true
	case !c.literal(a.Expr, &f.Value):
		f.Bad = true
	}
	if f.Bad {
		f.Value = Value{At: f.Value.At}
	}
	return f
}

// span drops the lines and columns of a parser's range.
func span(r hcl.Range) Range {
	return Range{r.Start.Byte, max(r.Start.Byte, r.End.Byte)}
}
