package block

import (
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
)

// The summaries by which the parser's messages are told apart.
const (
	redefined     = "Attribute redefined"
	invalidEscape = "Invalid escape sequence"
)

// damage notes the lines on which the parser found mistakes, other than those
// after which it has still read everything.
func (c *conversion) damage(diags hcl.Diagnostics) {
	for _, d := range diags {
		if d.Subject == nil {
			c.lost = true
			continue
		}
		if d.Summary == redefined {
			continue
		}
		c.lost = c.lost || d.Summary != invalidEscape
		at := span(*d.Subject)
		c.damaged = append(c.damaged, Range{min(at.Start, len(c.src)), at.End})
	}
	slices.SortFunc(c.damaged, func(a, b Range) int { return a.Start - b.Start })
	lines := c.damaged[:0]
	for _, at := range c.damaged {
		if n := len(lines); n > 0 && at.Start < lines[n-1].End {
			lines[n-1].End = max(lines[n-1].End, at.End)
			continue
		}
		end := max(lineEnd(c.src, at.Start), at.End)
		lines = append(lines, Range{strings.LastIndexByte(c.src[:at.Start], '\n') + 1, end})
	}
	c.damaged = lines
}

// isDamaged reports whether part of the range is on a damaged line.
func (c *conversion) isDamaged(at Range) bool {
	i, _ := slices.BinarySearchFunc(c.damaged, at, func(line, at Range) int {
		if line.End <= at.Start {
			return -1
		}
		return 1
	})
	return i < len(c.damaged) && c.damaged[i].overlaps(at)
}

// diagnose puts the parser's messages into words.
func (c *conversion) diagnose(diags hcl.Diagnostics, found body) {
	for _, d := range diags {
		if d.Severity != hcl.DiagError {
			continue
		}
		at := Range{0, 0}
		if d.Subject != nil {
			at = span(*d.Subject)
		}
		p := Problem{Code: Unreadable, At: c.within(at)}
		if d.Summary == redefined {
			c.duplicate(&p, found)
		} else {
			c.word(&p, d)
		}
		c.found = append(c.found, ranked{Problem: p, rank: byParser})
	}
}

// within moves a range that covers an end of line, or nothing at the end of the
// text, onto characters that can be shown.
func (c *conversion) within(at Range) Range {
	at.Start = min(at.Start, len(c.src))
	at.End = max(at.Start, min(at.End, lineStop(c.src, at.Start)))
	return at
}

func (c *conversion) duplicate(p *Problem, found body) {
	name := c.src[p.At.Start:p.At.End]
	p.Code, p.Message, p.Next = Duplicate, shown(name)+" is written twice", "take one of the two out"
	fields := found.fields
	for _, b := range found.blocks {
		fields = append(fields, b.fieldsAround(p.At)...)
	}
	for _, f := range fields {
		if c.src[f.Name.At.Start:f.Name.At.End] == name && f.Name.At.Start < p.At.Start {
			p.Also = f.Name.At
		}
	}
}

// fieldsAround are the fields of the innermost block that holds the range.
func (b *Block) fieldsAround(at Range) []Field {
	for _, in := range b.Blocks {
		if in.At.overlaps(at) {
			return in.fieldsAround(at)
		}
	}
	if b.At.overlaps(at) {
		return b.Fields
	}
	return nil
}

// word finds the sentence for a message of the parser.
func (c *conversion) word(p *Problem, d *hcl.Diagnostic) {
	written := c.src[p.At.Start:p.At.End]
	switch d.Summary {
	case "Invalid argument name":
		p.Message, p.Next = "the name of the field is in quotes", `write it without quotes: name = "value"`
	case "Unclosed configuration block", "Unclosed configuration body":
		p.Code, p.Message, p.Next = Unclosed, "the block is not closed", "add a closing brace on a line of its own"
		p.At.Start = c.textStart(p.At.Start)
	case "Argument or block definition required":
		c.wordItem(p)
	case "Argument definition required", "Invalid single-argument block definition":
		p.Message, p.Next = "a block on one line holds one field only", "put each field and each brace on a line of its own"
	case "Missing newline after argument", "Unexpected comma after argument":
		c.wordAfter(p, d, written)
	case "Missing newline after block definition":
		p.Message, p.Next = "something stands after the closing brace", "start a new line after the brace"
	case "Invalid block definition":
		c.wordHead(p, written)
	case "Missing expression", "Invalid expression":
		p.Message, p.Next = "a value is missing", `write a value after the equals sign: name = "value"`
	case "Unterminated tuple constructor expression":
		p.Code, p.Message, p.Next = Unclosed, "the list is not closed", "add the bracket ] after the last item"
	case "Missing item separator":
		p.Message, p.Next = "a comma is missing between the items of the list", `write ["a", "b"]`
		if open := contextStart(d, p.At.Start); strings.Contains(c.src[open:p.At.Start], "\n") {
			p.Message, p.Next = "a comma is missing in the list, or its closing bracket", `write ["a", "b"]`
			p.At = c.within(Range{open, len(c.src)})
		}
	case "Invalid number literal":
		p.Message, p.Next = "this is not a number", "write digits with at most one point, or a text in quotes"
	case invalidEscape:
		c.wordEscape(p, written)
	case "Invalid character":
		wordCharacter(p, written)
	case "Unsupported operator":
		p.Code, p.Message, p.Next = NotLiteral, "expressions are not allowed in records", "write the value itself"
	default:
		p.Message, p.Next = "this can not be read", `write one field on each line: name = "value"`
	}
}
