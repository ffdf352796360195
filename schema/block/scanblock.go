package block

import "strings"

// extent is where the parts of one block stand so far in a row that all blocks
// share.
type extent struct{ from, to int }

// grow adds a part to a block's extent of the row. When the parts of an inner
// block have come between, the earlier ones are repeated behind them.
func grow[T any](row []T, e extent, part T) ([]T, extent) {
	if e.to != len(row) {
		from := len(row)
		row = append(row, row[e.from:e.to]...)
		e = extent{from, len(row)}
	}
	row = append(row, part)
	return row, extent{e.from, len(row)}
}

// cut is the finished extent, nil when it is empty.
func cut[T any](row []T, e extent) []T {
	if e.from == e.to {
		return nil
	}
	return row[e.from:e.to:e.to]
}

// block reads kind "label" { body }.
func (s *scanner) block(depth int) *Block {
	kind := s.name()
	if kind.Text == "" {
		return nil
	}
	return s.blockOf(kind, depth)
}

// blockOf reads a block whose kind has been read.
func (s *scanner) blockOf(kind Token, depth int) *Block {
	if depth > MaxDepth {
		return nil
	}
	head := kind.At
	labels := extent{len(s.tokens), len(s.tokens)}
	for s.spaces(); s.peek() == '"'; s.spaces() {
		label, ok := s.quoted()
		if !ok {
			return nil
		}
		s.tokens, labels = grow(s.tokens, labels, label)
		head.End = label.At.End
	}
	if s.peek() != '{' {
		return nil
	}
	s.pos++
	s.blocks = append(s.blocks, Block{Kind: kind, Labels: cut(s.tokens, labels), Head: head})
	b := &s.blocks[len(s.blocks)-1]
	s.spaces()
	if s.peek() != '}' && !s.line() || !s.body(b, depth) {
		return nil
	}
	b.At = Range{kind.At.Start, s.pos}
	return b
}

// body reads lines up to the closing brace.
func (s *scanner) body(b *Block, depth int) bool {
	var fields, inner extent
	fields.from, inner.from = len(s.fields), len(s.inner)
	fields.to, inner.to = fields.from, inner.from
	for s.pos < len(s.src) {
		s.spaces()
		if s.peek() == '}' {
			s.pos++
			b.Fields, b.Blocks = cut(s.fields, fields), cut(s.inner, inner)
			return true
		}
		name := s.name()
		if name.Text != "" {
			s.spaces()
			if s.peek() == '=' {
				s.pos++
				f := Field{Name: name}
				if !s.value(&f.Value, depth) || known(s.fields[fields.from:fields.to], name.Text) {
					return false
				}
				s.fields, fields = grow(s.fields, fields, f)
			} else {
				in := s.blockOf(name, depth+1)
				if in == nil {
					return false
				}
				s.inner, inner = grow(s.inner, inner, in)
			}
		}
		if !s.line() {
			return false
		}
	}
	return false
}

// known reports whether a field of that name is there already. Looking through
// the others one by one is right for the few fields of a record; a block of
// very many is left to the parser.
func known(fields []Field, name string) bool {
	const many = 64
	if len(fields) >= many {
		return true
	}
	for i := range fields {
		if fields[i].Name.Text == name {
			return true
		}
	}
	return false
}

// value reads a literal.
func (s *scanner) value(v *Value, depth int) bool {
	s.spaces()
	switch c := s.peek(); {
	case c == '"':
		t, ok := s.quoted()
		*v = Value{Shape: Text, Text: t.Text, At: t.At}
		return ok
	case c == '[':
		return depth < MaxDepth && s.list(v)
	case c == '-' || c >= '0' && c <= '9':
		return s.number(v)
	}
	word := s.name()
	*v = Value{Shape: Bool, Text: word.Text, At: word.At}
	return word.Text == "true" || word.Text == "false"
}

// number reads digits with at most one point between them.
func (s *scanner) number(v *Value) bool {
	start := s.pos
	if s.peek() == '-' {
		s.pos++
	}
	if !s.digits() {
		return false
	}
	if s.peek() == '.' {
		s.pos++
		if !s.digits() {
			return false
		}
	}
	*v = Value{Shape: Number, Text: s.src[start:s.pos], At: Range{start, s.pos}}
	return s.pos-start <= MaxNumber
}

func (s *scanner) digits() bool {
	start := s.pos
	for s.pos < len(s.src) && s.src[s.pos] >= '0' && s.src[s.pos] <= '9' {
		s.pos++
	}
	return s.pos > start
}

// list reads texts in square brackets, on one line or several.
func (s *scanner) list(v *Value) bool {
	start := s.pos
	s.pos++
	items := extent{len(s.tokens), len(s.tokens)}
	for {
		s.gap()
		if s.peek() == '"' {
			item, ok := s.quoted()
			if !ok {
				return false
			}
			s.tokens, items = grow(s.tokens, items, item)
			s.gap()
			if s.peek() == ',' {
				s.pos++
				continue
			}
		}
		if s.peek() != ']' {
			return false
		}
		s.pos++
		*v = Value{Shape: List, Items: cut(s.tokens, items), At: Range{start, s.pos}}
		return true
	}
}

// gap passes over white space and line comments inside a list.
func (s *scanner) gap() {
	for s.pos < len(s.src) {
		switch c := s.src[s.pos]; {
		case c == ' ' || c == '\t':
			s.pos++
		case c == '\n' || c == '#' || strings.HasPrefix(s.src[s.pos:], "\r\n") || strings.HasPrefix(s.src[s.pos:], "//"):
			if !s.line() {
				return
			}
		default:
			return
		}
	}
}
