package table

import (
	"cmp"
	"slices"
	"strings"

	"homerun/schema"
	"homerun/schema/block"
)

// An edit puts a text in the place of a range of a document. Edits touch nothing but
// what a table states, so comments, layout and order stay.
type edit struct {
	start, end int
	text       string
}

func (d *document) edit(start, end int, text string) {
	d.edits = append(d.edits, edit{start, end, text})
}

// settle carries the edits out. A file that was laid out as fmt does it is so again.
func (d *document) settle() {
	if len(d.edits) == 0 {
		return
	}
	canonical := block.Format(d.text) == d.text
	slices.SortStableFunc(d.edits, func(a, b edit) int { return cmp.Compare(a.start, b.start) })
	var b strings.Builder
	done := 0
	for _, e := range d.edits {
		b.WriteString(d.text[done:max(done, e.start)])
		b.WriteString(e.text)
		done = max(done, e.end)
	}
	b.WriteString(d.text[done:])
	d.text, d.edits, d.fresh = b.String(), nil, true
	if canonical {
		d.text = block.Format(d.text)
	}
}

// lineStart and lineStop are the ends of the line at a place, without its newline.
func (d *document) lineStart(at int) int { return strings.LastIndexByte(d.text[:at], '\n') + 1 }

func (d *document) lineStop(at int) int {
	if n := strings.IndexByte(d.text[at:], '\n'); n >= 0 {
		return at + len(strings.TrimRight(d.text[at:at+n], "\r"))
	}
	return len(d.text)
}

// indent is the white space before a place, if nothing else is on its line before it.
func (d *document) indent(at int) (space string, alone bool) {
	space = d.text[d.lineStart(at):at]
	return space, strings.TrimLeft(space, " \t") == ""
}

// replace writes another literal for a value.
func (f found) replace(v *schema.Value, literal string) {
	f.doc.edit(f.start+v.At.Start, f.start+v.At.End, literal)
}

// remove takes a field out, with its line where nothing else is on it.
func (f found) remove(v *schema.Value) {
	d, start, end := f.doc, f.start+v.Name.Start, f.start+v.At.End
	if _, alone := d.indent(start); alone && d.lineStart(start) > 0 {
		start, end = d.lineStart(start)-1, d.lineStop(end)
		if start > 0 && d.text[start-1] == '\r' {
			start--
		}
	}
	d.edit(start, end, "")
}

// spread says whether the record's closing brace stands on a line of its own, so that
// lines can be added before it.
func (f found) spread() bool {
	_, alone := f.doc.indent(f.start + f.record.At.End - 1)
	return alone
}

// insert writes a field on a line of its own, behind those that the record has.
func (f found) insert(field *schema.Field, literal string) {
	d := f.doc
	head, _ := d.indent(f.start + f.record.At.Start)
	indent, at := head+"  ", f.start+f.record.Head.End
	for i := range f.record.Values {
		v := &f.record.Values[i]
		if len(f.record.Inner) > 0 && v.At.Start > f.record.Inner[0].At.Start {
			break
		}
		at = f.start + v.At.End
		if own, alone := d.indent(f.start + v.Name.Start); alone {
			indent = own
		}
	}
	at = d.lineStop(at)
	d.edit(at, at, d.newline+indent+field.Name+" = "+literal)
}

// add writes a block inside the record, before its closing brace.
func (f found) add(c *Claim, k *schema.Kind) {
	d := f.doc
	brace := f.start + f.record.At.End - 1
	indent, _ := d.indent(brace)
	at := d.lineStart(brace)
	text := strings.Join(c.lines(k, indent+"  "), d.newline) + d.newline
	before := strings.TrimRight(d.text[:at], " \t\r\n")
	if !strings.HasSuffix(before, "{") || slices.ContainsFunc(d.edits, func(e edit) bool { return e.start == at }) {
		text = d.newline + text
	}
	d.edit(at, at, text)
}

// append writes a block at the end of the document.
func (d *document) append(c *Claim, k *schema.Kind) {
	text := strings.Join(c.lines(k, ""), d.newline) + d.newline
	end := len(d.text)
	switch {
	case end == 0 && len(d.edits) == 0:
	case end > 0 && !strings.HasSuffix(d.text, "\n") && !slices.ContainsFunc(d.edits, func(e edit) bool { return e.start == end }):
		text = d.newline + d.newline + text
	default:
		text = d.newline + text
	}
	d.edit(end, end, text)
}
