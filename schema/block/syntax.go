package block

import (
	"bytes"
	"cmp"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"
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
	file, diags := hclsyntax.ParseConfig(text, "", hcl.Pos{Line: 1, Column: 1, Byte: offset})
	c := conversion{reading: r}
	c.damage(diags)
	syntax, ok := file.Body.(*hclsyntax.Body)
	if !ok {
		panic("block: the parser returned a body of another syntax")
	}
	found := c.body(syntax)
	c.diagnose(diags, found)
	return found
}

// bounded reports whether the parser's recursion on the text is bounded. The
// outline has made sure of that as far as it understands the text; where there
// are so many brackets or operators that a misunderstanding could overflow the
// stack, which ends the program, the parser's own tokens are counted too.
func bounded(text []byte) bool {
	const few = 5000
	count := 0
	for _, c := range text {
		switch c {
		case '(', '[', '{', '?', '!', '*':
			count++
		}
	}
	if count < few && bytes.Count(text, []byte{'-'}) < 4*few {
		return true
	}
	return boundedTokens(text)
}

func boundedTokens(text []byte) bool {
	const most = 1000
	tokens, _ := hclsyntax.LexConfig(text, "", hcl.Pos{Line: 1, Column: 1})
	depth, operators, minuses := 0, 0, 0
	for _, t := range tokens {
		switch t.Type { //nolint:exhaustive // the other tokens neither nest nor recurse
		case hclsyntax.TokenOBrace, hclsyntax.TokenOBrack, hclsyntax.TokenOParen, hclsyntax.TokenTemplateInterp:
			depth++
		case hclsyntax.TokenCBrace, hclsyntax.TokenCBrack, hclsyntax.TokenCParen, hclsyntax.TokenTemplateSeqEnd:
			depth = max(0, depth-1)
		case hclsyntax.TokenStar, hclsyntax.TokenQuestion, hclsyntax.TokenBang, hclsyntax.TokenTemplateControl:
			operators++
		case hclsyntax.TokenMinus:
			minuses++
			if minuses > most {
				return false
			}
			continue
		case hclsyntax.TokenComment, hclsyntax.TokenNewline:
			continue
		}
		minuses = 0
		if depth > most || operators > most {
			return false
		}
	}
	return true
}

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
	for _, in := range syntax.Blocks {
		b.blocks = append(b.blocks, c.block(in))
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
		inner := c.body(syntax.Body)
		b.Fields, b.Blocks = inner.fields, inner.blocks
	}
	b.Bad = c.lost || c.conflicted(b.At)
	return b
}

// label reads a label; one that was masked is shown as it is written.
func (c *conversion) label(value string, at Range) Token {
	if c.changed(at) {
		value = strings.ToValidUTF8(strings.Trim(c.src[at.Start:at.End], `"`), "\ufffd")
	} else if c.src[at.Start] != '"' {
		c.report(byValue, UnquotedLabel, at, "the label "+shown(value)+" is not in quotes", `write "`+shown(value)+`"`)
	}
	c.controls(value, at)
	return Token{norm.NFC.String(value), at}
}

// controls reports the control characters that escapes have put into a text.
func (c *conversion) controls(value string, at Range) bool {
	if !strings.Contains(c.src[at.Start:at.End], `\u`) && !strings.Contains(c.src[at.Start:at.End], `\U`) {
		return true
	}
	var f foreign
	f.look(value, Range{0, len(value)})
	if f.controlCount == 0 {
		return true
	}
	f.control = at
	var found []ranked
	f.badCount = 0
	f.tell(&found)
	for i := range found {
		found[i].rank = byValue
	}
	c.found = append(c.found, found...)
	return false
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

// literal reads a value by its shape.
func (c *conversion) literal(expr hclsyntax.Expression, v *Value) bool {
	v.At = span(expr.Range())
	switch e := expr.(type) {
	case *hclsyntax.TemplateExpr:
		return c.text(e, v)
	case *hclsyntax.LiteralValueExpr:
		written := c.src[v.At.Start:v.At.End]
		switch {
		case written == "true" || written == "false":
			v.Shape, v.Text = Bool, written
			return true
		case isNumber(e) && written != "" && written[0] >= '0' && written[0] <= '9':
			v.Shape, v.Text = Number, written
			return true
		}
	case *hclsyntax.UnaryOpExpr:
		if operand, ok := e.Val.(*hclsyntax.LiteralValueExpr); ok && e.Op == hclsyntax.OpNegate && c.literal(operand, v) && v.Shape == Number {
			v.Text, v.At = "-"+v.Text, span(e.SrcRange)
			return true
		}
		v.At = span(expr.Range())
	case *hclsyntax.TupleConsExpr:
		return c.list(e, v)
	}
	c.notLiteral(expr, v.At)
	return false
}

// isNumber reports whether a literal is a number; its value is looked at, never
// converted.
func isNumber(e *hclsyntax.LiteralValueExpr) bool {
	return e.Val.IsKnown() && !e.Val.IsNull() && e.Val.Type() == cty.Number
}

func (c *conversion) text(e *hclsyntax.TemplateExpr, v *Value) bool {
	if !e.IsStringLiteral() {
		c.notLiteral(e, v.At)
		return false
	}
	literal, ok := e.Parts[0].(*hclsyntax.LiteralValueExpr)
	if !ok || literal.Val.Type() != cty.String {
		panic("block: a string literal of the parser holds something else")
	}
	v.Shape, v.Text = Text, norm.NFC.String(literal.Val.AsString())
	return c.controls(v.Text, v.At)
}

func (c *conversion) list(e *hclsyntax.TupleConsExpr, v *Value) bool {
	v.Shape = List
	for _, item := range e.Exprs {
		var one Value
		if !c.literal(item, &one) {
			return false
		}
		if one.Shape != Text {
			c.report(byValue, NotLiteral, one.At, "an item of the list is not a text", "write every item in quotes")
			return false
		}
		v.Items = append(v.Items, Token{one.Text, one.At})
	}
	return true
}

// span drops the lines and columns of a parser's range.
func span(r hcl.Range) Range {
	return Range{r.Start.Byte, max(r.Start.Byte, r.End.Byte)}
}
