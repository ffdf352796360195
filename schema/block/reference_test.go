package block_test

import (
	"cmp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"golang.org/x/text/unicode/norm"

	"homerun/schema/block"
)

// The reference is the parser of the language itself, given the whole file.
// A reading of its tree that shares no code with the package tells whether the
// file is valid, whether it holds literals only, and what they are.

type reference struct {
	src string
	// literal turns false at the first thing that a record may not hold.
	literal bool
}

// referTo reads a whole file. The blocks carry file offsets.
func referTo(t *testing.T, src string) (blocks []*block.Block, valid, literal bool) {
	t.Helper()
	file, diags := hclsyntax.ParseConfig([]byte(src), "", hcl.Pos{Line: 1, Column: 1})
	if diags.HasErrors() {
		return nil, false, false
	}
	r := reference{src: src, literal: utf8.ValidString(src) && !strings.ContainsFunc(src, isControl)}
	body := file.Body.(*hclsyntax.Body)
	r.literal = r.literal && len(body.Attributes) == 0
	_, blocks = r.body(body)
	return blocks, true, r.literal
}

func isControl(r rune) bool {
	return r < ' ' && r != '\n' && r != '\r' && r != '\t' || r >= 0x7f && r <= 0x9f
}

func (r *reference) body(b *hclsyntax.Body) (fields []block.Field, blocks []*block.Block) {
	for _, a := range b.Attributes {
		fields = append(fields, block.Field{
			Name:  block.Token{Text: norm.NFC.String(a.Name), At: at(a.NameRange)},
			Value: r.value(a.Expr),
		})
	}
	slices.SortFunc(fields, func(a, b block.Field) int { return cmp.Compare(a.Name.At.Start, b.Name.At.Start) })
	for _, in := range b.Blocks {
		blocks = append(blocks, r.block(in))
	}
	return fields, blocks
}

func (r *reference) block(in *hclsyntax.Block) *block.Block {
	out := &block.Block{
		Kind: block.Token{Text: norm.NFC.String(in.Type), At: at(in.TypeRange)},
		At:   block.Range{Start: in.TypeRange.Start.Byte, End: in.CloseBraceRange.End.Byte},
		Head: at(in.TypeRange),
	}
	for i, label := range in.Labels {
		where := at(in.LabelRanges[i])
		r.text(label, where)
		out.Labels = append(out.Labels, block.Token{Text: norm.NFC.String(label), At: where})
		out.Head.End = where.End
	}
	out.Fields, out.Blocks = r.body(in.Body)
	return out
}

// text judges a text by what is written and what it means.
func (r *reference) text(value string, where block.Range) {
	written := r.src[where.Start:where.End]
	if written[0] != '"' || len(written) > block.MaxText || strings.ContainsFunc(value, isControl) && strings.ContainsAny(written, `\`) ||
		strings.Count(written, "$")+strings.Count(written, "%") > block.MaxSigns {
		r.literal = false
	}
}

func (r *reference) value(expr hclsyntax.Expression) block.Value {
	v := block.Value{At: at(expr.Range())}
	written := r.src[v.At.Start:v.At.End]
	switch e := expr.(type) {
	case *hclsyntax.TemplateExpr:
		if part, ok := e.Parts[0].(*hclsyntax.LiteralValueExpr); ok && len(e.Parts) == 1 {
			v.Shape, v.Text = block.Text, part.Val.AsString()
			r.text(v.Text, v.At)
			return v
		}
	case *hclsyntax.LiteralValueExpr:
		v.Shape, v.Text = block.Bool, written
		if written != "true" && written != "false" {
			v.Shape = block.Number
		}
		r.literal = r.literal && written != "null" && len(written) <= block.MaxNumber
		return v
	case *hclsyntax.UnaryOpExpr:
		operand := r.value(e.Val)
		if e.Op == hclsyntax.OpNegate && operand.Shape == block.Number && operand.Text[0] != '-' {
			return block.Value{Shape: block.Number, Text: "-" + operand.Text, At: v.At}
		}
	case *hclsyntax.TupleConsExpr:
		v.Shape = block.List
		for _, item := range e.Exprs {
			one := r.value(item)
			r.literal = r.literal && one.Shape == block.Text
			v.Items = append(v.Items, block.Token{Text: one.Text, At: one.At})
		}
		return v
	}
	r.literal = false
	return v
}

func at(r hcl.Range) block.Range { return block.Range{Start: r.Start.Byte, End: r.End.Byte} }

// nesting is how deep the brackets of a text stand.
func nesting(src string) (deepest int) {
	depth := 0
	tokens, _ := hclsyntax.LexConfig([]byte(src), "", hcl.Pos{Line: 1, Column: 1})
	for _, token := range tokens {
		if slices.Contains([]hclsyntax.TokenType{hclsyntax.TokenOBrace, hclsyntax.TokenOBrack, hclsyntax.TokenOParen}, token.Type) {
			depth++
		} else if slices.Contains([]hclsyntax.TokenType{hclsyntax.TokenCBrace, hclsyntax.TokenCBrack, hclsyntax.TokenCParen}, token.Type) {
			depth--
		}
		deepest = max(deepest, depth)
	}
	return deepest
}

// moved is a copy of a block whose ranges count from another place.
func moved(b *block.Block, by int) *block.Block {
	out := *b
	shift := func(r *block.Range) { r.Start += by; r.End += by }
	tokens := func(in []block.Token) []block.Token {
		in = slices.Clone(in)
		for i := range in {
			shift(&in[i].At)
		}
		return in
	}
	shift(&out.At)
	shift(&out.Head)
	shift(&out.Kind.At)
	out.Labels, out.Fields, out.Blocks = tokens(b.Labels), slices.Clone(b.Fields), slices.Clone(b.Blocks)
	for i := range out.Fields {
		f := &out.Fields[i]
		shift(&f.Name.At)
		shift(&f.Value.At)
		f.Value.Items = tokens(f.Value.Items)
	}
	for i := range out.Blocks {
		out.Blocks[i] = moved(out.Blocks[i], by)
	}
	return &out
}
