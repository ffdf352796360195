package table

import "strings"

// A Cell is one cell of a table that came in, without white space around its text.
type Cell struct {
	Text string
	// Number is set where the table holds a number, not a text: it has lost zeros that
	// do not count.
	Number bool
	// Broken says why the cell has no value, empty where it has one.
	Broken string
	// Place is where it is, in words.
	Place string
}

func (c Cell) empty() bool { return c.Text == "" && c.Broken == "" }

// A Mistake is something in a table that can not become a record. Place is that of
// the cell, Next what to do about it.
type Mistake struct{ Place, Message, Next string }

// Split takes the items of a list out of one cell, as Join puts them there. Between
// items stand commas, semicolons or ends of lines; empty ones do not count.
func Split(cell string) (items []string) {
	for rest := strings.TrimSpace(cell); rest != ""; {
		var item string
		if strings.HasPrefix(rest, `"`) {
			item, rest = quotedItem(rest)
		} else {
			end := separatorIn(rest)
			item, rest = strings.TrimSpace(rest[:end]), rest[end:]
		}
		if item != "" {
			items = append(items, item)
		}
		rest = strings.TrimSpace(rest[separatorIn(rest):])
		rest = strings.TrimSpace(strings.TrimLeft(rest, ",;\n\r"))
	}
	return items
}

// separatorIn is where the next separator stands, or the end.
func separatorIn(text string) int {
	if i := strings.IndexAny(text, ",;\n\r"); i >= 0 {
		return i
	}
	return len(text)
}

// quotedItem takes an item in quotes off the front, a quote in it written twice. One
// without its end reaches to the end.
func quotedItem(text string) (item, rest string) {
	var b strings.Builder
	for i := 1; i < len(text); i++ {
		if text[i] != '"' {
			b.WriteByte(text[i])
			continue
		}
		if !strings.HasPrefix(text[i+1:], `"`) {
			return b.String(), text[i+1:]
		}
		b.WriteByte('"')
		i++
	}
	return b.String(), ""
}
