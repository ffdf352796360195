package render

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// escape makes a text Markdown that reads as the text. Whatever could be markup
// is written as a character reference, which never is (CommonMark 0.31.2,
// section 6.2, entity and numeric character references). References do not stop
// what hosts make of the finished text: names behind an at sign, numbers behind a
// number sign and words between colons; there a comment is put between. A text
// may stand at the start of a list item, so its first character opens no list.
func escape(text string) string {
	var b strings.Builder
	for i := range len(text) {
		c := text[i]
		switch {
		case i == 0 && opensList(text), c == '-' && endsWord(text[:i], "gh"):
			b.WriteString("&#" + strconv.Itoa(int(c)) + ";" + between(c))
		case c >= utf8.RuneSelf, c == ' ', isAlphanumeric(c), strings.IndexByte(",;()/'%+-=", c) >= 0:
			b.WriteByte(c)
		case c == '.' && !endsWord(text[:i], "www"):
			b.WriteByte(c)
		case c == ':' && !startsName(text[i+1:]):
			b.WriteByte(c)
		default:
			b.WriteString("&#" + strconv.Itoa(int(c)) + ";" + between(c))
		}
	}
	return b.String()
}

// opensList says whether a text at the start of a line would be more than text: a
// list, a block of code or a rule.
func opensList(text string) bool {
	rest := strings.TrimLeft(text, "0123456789")
	if rest == text {
		return text[0] < utf8.RuneSelf && !isAlphanumeric(text[0])
	}
	return rest != "" && (rest[0] == '.' || rest[0] == ')') && (len(rest) == 1 || rest[1] == ' ')
}

// between is what keeps a character apart from what follows.
func between(c byte) string {
	if c == '@' || c == '#' || c == ':' || c == '-' {
		return "<!-- -->"
	}
	return ""
}

// code is a text in the face of code: a label, as it stands on the wall.
func code(text string) string { return "<code>" + escape(text) + "</code>" }

// cut shortens what a comment shows of a subject.
func cut(text string) string {
	const most = 300
	if len(text) <= most {
		return text
	}
	end := most
	for !utf8.RuneStart(text[end]) {
		end--
	}
	return text[:end] + "…"
}

func isAlphanumeric(c byte) bool { return c >= '0' && c <= '9' || isLetter(c) }

func isLetter(c byte) bool { return c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' }

// endsWord says whether a text ends with a word, in letters of either case.
func endsWord(text, word string) bool {
	return len(text) >= len(word) && strings.EqualFold(text[len(text)-len(word):], word)
}

// startsName says whether a colon in front of the text could open the name of a
// picture, such as :tada:, or follow the scheme of an address.
func startsName(rest string) bool {
	if strings.HasPrefix(rest, "//") || rest != "" && !isAlphanumeric(rest[0]) && rest[0] != '+' && rest[0] != '-' && rest[0] != ' ' {
		return true
	}
	name, _, closed := strings.Cut(rest, ":")
	return closed && name != "" && strings.IndexFunc(name, func(r rune) bool {
		return r != '_' && r != '+' && r != '-' && (r >= utf8.RuneSelf || !isAlphanumeric(byte(r)))
	}) < 0
}
