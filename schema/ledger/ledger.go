// Package ledger writes a file of records as a list with one fact on each line,
// for programs that compare texts line by line: what differs between two such
// lists is what differs between the records, and each line says whose fact it
// is. Layout, comments and the order of records and fields leave no trace in
// it.
//
// What can not be read stands in the list as it is written, so that a
// difference never disappears. The package is pure and the text untrusted:
// nothing in the list can move a terminal's cursor.
package ledger

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"homerun/schema"
	"homerun/schema/block"
)

// Of lists the facts of a file, each line ended by LF, sorted by record. A file
// that can not be cut into records is given back as it is.
func Of(src string) string {
	chunks, problems := block.Split(src)
	if len(problems) > 0 {
		return src
	}
	var l list
	for _, c := range chunks {
		b, problems := block.Parse(c.Text)
		if b == nil || len(problems) > 0 {
			l.unread(c.Text)
			continue
		}
		l.record(b, words(b, 0), "")
	}
	slices.SortStableFunc(l.entries, func(x, y entry) int { return cmp.Compare(x.record, y.record) })
	var text strings.Builder
	for _, e := range l.entries {
		for _, line := range e.lines {
			text.WriteString(line + "\n")
		}
	}
	return text.String()
}

// An entry is one record and its lines.
type entry struct {
	record string
	lines  []string
}

type list struct{ entries []entry }

// record lists a record. One that could also stand by itself, such as a run in
// a bundle, is listed for itself, with the record around it as a fact.
func (l *list) record(b *block.Block, name, around string) {
	e := entry{record: name, lines: []string{name}}
	if around != "" {
		e.lines = append(e.lines, name+", "+around)
	}
	e.facts(name, b)
	seen := make(map[string]int)
	var apart []*block.Block
	for _, in := range b.Blocks {
		if len(in.Labels) > 0 && isTop(in.Kind.Text) {
			apart = append(apart, in)
			continue
		}
		plain := words(in, 0)
		seen[plain]++
		e.inner(name+" "+words(in, seen[plain]), in, 1)
	}
	l.entries = append(l.entries, e)
	for _, in := range apart {
		l.record(in, words(in, 0), b.Kind.Text+": "+strings.TrimPrefix(words(b, 0), b.Kind.Text+" "))
	}
}

// inner lists a block that belongs to the record around it.
func (e *entry) inner(name string, b *block.Block, depth int) {
	e.lines = append(e.lines, name)
	e.facts(name, b)
	for n, in := range b.Blocks {
		if depth < block.MaxDepth {
			e.inner(name+" "+words(in, n+1), in, depth+1)
		}
	}
}

func (e *entry) facts(name string, b *block.Block) {
	lines := make([]string, 0, len(b.Fields))
	for i := range b.Fields {
		f := &b.Fields[i]
		lines = append(lines, name+", "+schema.Printable(f.Name.Text)+": "+shown(&f.Value))
	}
	slices.Sort(lines)
	e.lines = append(e.lines, lines...)
}

func shown(v *block.Value) string {
	switch v.Shape {
	case block.List:
		items := make([]string, len(v.Items))
		for i, item := range v.Items {
			items[i] = schema.Printable(item.Text)
		}
		return "[" + strings.Join(items, ", ") + "]"
	case block.Text, block.Number, block.Bool:
	}
	return schema.Printable(v.Text)
}

// words name a block: its kind and labels, or for one of several without a
// label its number.
func words(b *block.Block, number int) string {
	all := []string{schema.Printable(b.Kind.Text)}
	for _, l := range b.Labels {
		all = append(all, schema.Printable(l.Text))
	}
	if len(b.Labels) == 0 && number > 0 {
		all = append(all, strconv.Itoa(number))
	}
	return strings.Join(all, " ")
}

func isTop(kind string) bool {
	return slices.ContainsFunc(schema.Kinds(), func(k *schema.Kind) bool { return k.Name == kind })
}

// unread lists a record that can not be read, line by line as it is written.
func (l *list) unread(text string) {
	e := entry{record: "unreadable"}
	if b, _ := block.Parse(text); b != nil {
		e.record = words(b, 0)
	}
	for line := range strings.Lines(text) {
		e.lines = append(e.lines, fmt.Sprintf("%s, unreadable: %s", e.record, schema.Printable(strings.TrimRight(line, "\r\n"))))
	}
	l.entries = append(l.entries, e)
}
