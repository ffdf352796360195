package block

import (
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"
	"golang.org/x/text/unicode/norm"
)

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

// notLiteral reports a value that is not written out.
func (c *conversion) notLiteral(expr hclsyntax.Expression, at Range) {
	at = c.within(at)
	written := c.src[at.Start:at.End]
	p := Problem{Code: NotLiteral, At: at, Message: "expressions are not allowed in records", Next: "write the value itself"}
	switch e := expr.(type) {
	case *hclsyntax.ScopeTraversalExpr:
		if len(e.Traversal) == 1 {
			p.Message, p.Next = shown(written)+" is not in quotes", `write "`+shown(written)+`"`
		}
	case *hclsyntax.ObjectConsExpr:
		p.Message, p.Next = "a group of fields is not a value", "write a block, without the equals sign: name { ... }"
	case *hclsyntax.LiteralValueExpr:
		if written == "null" {
			p.Message, p.Next = "null is not a value", "leave the field out"
		} else {
			p.Code, p.Message, p.Next = Unreadable, "a value is missing", `write a value after the equals sign: name = "value"`
		}
	}
	c.found = append(c.found, ranked{Problem: p, rank: byValue})
}
