package block

import "strings"

// text reads a quoted text on its line.
func (l *lexer) text() kind {
	src := l.src
	for i := l.pos + 1; i < len(src); i++ {
		switch src[i] {
		case '"':
			l.pos = i + 1
			return text
		case '\\':
			if i+1 < len(src) && src[i+1] != '\n' && src[i+1] != '\r' {
				i++
			}
		case '\n', '\r':
			l.pos = i
			return openText
		case '$', '%':
			switch {
			case strings.HasPrefix(src[i+1:], "{"):
				return l.template(i)
			case i+2 < len(src) && src[i+1] == src[i] && src[i+2] == '{':
				i += 2
			}
		}
	}
	l.pos = len(src)
	return openText
}

// template reads on from the first ${ or %{ of a text. Texts and braces may
// stand inside a template, and templates inside those texts, all on one line.
func (l *lexer) template(from int) kind {
	src := l.src
	within := []byte{'"'}
	for i := from; i < len(src) && src[i] != '\n' && src[i] != '\r'; i++ {
		inText := within[len(within)-1] == '"'
		switch c := src[i]; {
		case inText && c == '\\' && i+1 < len(src) && src[i+1] != '\n' && src[i+1] != '\r':
			i++
		case inText && (c == '$' || c == '%') && i+2 < len(src) && src[i+1] == c && src[i+2] == '{':
			i += 2
		case inText && (c == '$' || c == '%') && strings.HasPrefix(src[i+1:], "{"):
			within = append(within, '{')
			i++
		case c == '"' && !inText:
			within = append(within, '"')
		case c == '"' && len(within) == 1:
			l.pos = i + 1
			return template
		case c == '"', c == '}' && !inText:
			within = within[:len(within)-1]
		case c == '{' && !inText:
			within = append(within, '{')
		}
	}
	l.pos = from
	for l.pos < len(src) && src[l.pos] != '\n' && src[l.pos] != '\r' {
		l.pos++
	}
	return openText
}
