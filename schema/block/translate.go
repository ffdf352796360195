package block

import (
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
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
	case "Argument or block definition required":
		c.wordItem(p)
	case "Argument definition required", "Invalid single-argument block definition":
		p.Message, p.Next = "a block on one line holds one field only", "put each field and each brace on a line of its own"
	case "Missing newline after argument", "Unexpected comma after argument":
		c.wordAfter(p, d, written)
	case "Missing newline after block definition":
		p.Message, p.Next = "something stands after the closing brace", "start a new line after the brace"
	case "Invalid block definition":
		p.Message, p.Next = "the head of the block is not complete", `write the kind, the label in quotes and a brace: space "1A" {`
		if written == "=" {
			p.Message, p.Next = "an equals sign stands in the head of a block", "take it out"
		}
	case "Missing expression", "Invalid expression":
		p.Message, p.Next = "a value is missing", `write a value after the equals sign: name = "value"`
	case "Unterminated tuple constructor expression":
		p.Code, p.Message, p.Next = Unclosed, "the list is not closed", "add the bracket ] after the last item"
	case "Missing item separator":
		p.Message, p.Next = "a comma is missing in the list, or its closing bracket", `write ["a", "b"]`
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

// wordItem finds the sentence for a line that is neither a field nor a block.
func (c *conversion) wordItem(p *Problem) {
	written := c.src[p.At.Start:p.At.End]
	rest := strings.TrimLeft(c.src[p.At.End:lineStop(c.src, p.At.End)], " \t")
	switch {
	case strings.HasPrefix(rest, ":"):
		p.Message, p.Next = "a colon stands after "+shown(written), "write an equals sign: "+shown(written)+" = "+shown(strings.TrimSpace(rest[1:]))
	case rest == "" && written != "" && classes[written[0]] == wordByte:
		p.Message, p.Next = shown(written)+" has no value", "write an equals sign and a value after it"
	case written == "{":
		p.Message, p.Next = "a brace opens no block", `write the kind and the label before it: space "1A" {`
	default:
		p.Message, p.Next = "this is neither a field nor a block", `write one field on each line: name = "value"`
	}
}

// wordAfter finds the sentence for what follows a value on its line.
func (c *conversion) wordAfter(p *Problem, d *hcl.Diagnostic, written string) {
	start := p.At.Start
	if d.Context != nil {
		start = span(*d.Context).Start
	}
	line := c.src[start:lineStop(c.src, p.At.Start)]
	_, value, _ := strings.Cut(line, "=")
	value = strings.TrimSpace(value)
	if i := strings.Index(value, " #"); i > 0 {
		value = strings.TrimSpace(value[:i])
	}
	before, after := strings.TrimSpace(c.src[start:p.At.Start]), c.src[p.At.End:]
	switch {
	case written == "," && isDigit(before, len(before)-1) && isDigit(after, 0):
		p.Message, p.Next = "a number is written with a decimal comma", "write a decimal point: "+shown(strings.Replace(value, ",", ".", 1))
	case written == ",":
		p.Message, p.Next = "a comma stands after the field", "take it out; each field has a line of its own"
	case isDigit(value, 0) || isDigit(value, 1) && value[0] == '-':
		p.Message, p.Next = "the value is not in quotes", `write "`+shown(strings.ReplaceAll(value, `"`, ""))+`"`
	case classes[written[0]] == wordByte && strings.Contains(after[:lineStop(after, 0)], "="):
		p.Message, p.Next = "two fields stand on one line", "start a new line before "+shown(written)
	default:
		p.Message, p.Next = "something stands after the value", "put the value in quotes, all of it, and each field on a line of its own"
	}
}

func isDigit(s string, i int) bool {
	return i >= 0 && i < len(s) && s[i] >= '0' && s[i] <= '9'
}

func (c *conversion) wordEscape(p *Problem, written string) {
	if strings.HasPrefix(written, `\u`) || strings.HasPrefix(written, `\U`) {
		p.Message, p.Next = shown(written)+" names no character", `write four hexadecimal digits after \u, or \\ where a backslash is meant`
		return
	}
	p.Message, p.Next = "a single backslash stands in the text", `write it twice: \\`
	if line := strings.TrimSpace(written); len(line) > 1 {
		p.Next = `write it twice: \` + shown(line)
	}
}

func wordCharacter(p *Problem, written string) {
	r, _ := utf8.DecodeRuneInString(written)
	switch r {
	case '“', '”', '„', '«', '»':
		p.Message, p.Next = "a typographic quote stands in place of a straight one", `write "`
	case '\'', '‘', '’', '`':
		p.Message, p.Next = "single quotes do not enclose a text", `write "`
	case ';':
		p.Message, p.Next = "a semicolon does not end a field", "take it out; each field has a line of its own"
	case '\r':
		p.Message, p.Next = "a line ends with a bare carriage return", "save the file with LF or CR LF line ends"
	case '\u00a0':
		p.Message, p.Next = "a no-break space stands in place of a space", "write a space"
	default:
		p.Message, p.Next = "a character stands here that belongs in quotes only", "take it out, or put the text in quotes"
	}
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
