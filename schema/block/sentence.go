package block

import (
	"strings"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
)

// textStart is where the text of the line starts that holds the offset.
func (c *conversion) textStart(offset int) int {
	start := strings.LastIndexByte(c.src[:offset], '\n') + 1
	for start < offset && classes[c.src[start]] == spaceByte {
		start++
	}
	return start
}

// contextStart is where the thing starts that a message of the parser is about.
func contextStart(d *hcl.Diagnostic, otherwise int) int {
	if d.Context == nil {
		return otherwise
	}
	return min(otherwise, span(*d.Context).Start)
}

// wordHead finds the sentence for the head of a block that lacks its brace.
func (c *conversion) wordHead(p *Problem, written string) {
	p.Message, p.Next = "the head of the block is not complete", `write the kind, the label in quotes and a brace: space "1A" {`
	if written == "=" {
		p.Message, p.Next = "an equals sign stands in the head of a block", "take it out"
		return
	}
	start := c.textStart(p.At.Start)
	p.At = Range{start, max(start, trimEnd(c.src, start, p.At.End))}
	if name, value, ok := strings.Cut(c.src[start:p.At.End], " "); ok {
		p.Message = "neither an equals sign nor a brace stands after " + shown(name)
		p.Next = "write " + shown(name+" = "+strings.TrimSpace(value)) + ", or a brace at the end of the line"
	}
}

// wordItem finds the sentence for a line that is neither a field nor a block.
func (c *conversion) wordItem(p *Problem) {
	written := c.src[p.At.Start:p.At.End]
	rest := strings.TrimLeft(c.src[p.At.End:lineStop(c.src, p.At.End)], " \t")
	switch {
	case strings.HasPrefix(c.src[p.At.Start:], byteOrderMark):
		p.At.End = p.At.Start + len(byteOrderMark)
		p.Message, p.Next = "a byte order mark stands in the middle of the file", "take the invisible character out"
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
	start := contextStart(d, p.At.Start)
	line := c.src[start:lineStop(c.src, p.At.Start)]
	_, value, _ := strings.Cut(line, "=")
	value = strings.TrimSpace(value)
	if i := strings.Index(value, " #"); i > 0 {
		value = strings.TrimSpace(value[:i])
	}
	before, after := strings.TrimSpace(c.src[start:p.At.Start]), c.src[p.At.End:]
	switch {
	case written == "," && isDigit(before, len(before)-1) && isDigit(after, 0):
		value = strings.Replace(value, ",", ".", 1)
		if strings.Contains(value, " ") {
			value = `"` + value + `"`
		}
		p.Message, p.Next = "a number is written with a decimal comma", "write a decimal point: "+shown(value)
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

func isDigit(s string, i int) bool {
	return i >= 0 && i < len(s) && s[i] >= '0' && s[i] <= '9'
}
