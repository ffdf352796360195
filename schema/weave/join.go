package weave

import (
	"strings"

	"homerun/schema"
	"homerun/schema/block"
)

// A joiner joins the items of one body: of a file, or of a record.
type joiner struct {
	// name is the record for people, kind its kind; both empty for a file.
	name string
	kind *schema.Kind
	// first are the items that their texts start with.
	first  [2]*item
	pieces []piece
	states states
}

// body joins three bodies and returns the blank lines that stand after them.
func (j *joiner) body(base, ours, theirs body) (blanks string) {
	for i, side := range [][]item{ours.items, theirs.items} {
		if len(side) > 0 {
			j.first[i] = &side[0]
		}
	}
	for _, t := range align(base.items, ours.items, theirs.items) {
		j.item(t)
	}
	return three(base.blanks, ours.blanks, theirs.blanks)
}

// three joins a matter of layout: what was changed; ours where both did.
func three(base, ours, theirs string) string {
	if ours == base {
		return theirs
	}
	return ours
}

func (j *joiner) item(t triple) {
	switch {
	case t.ours == nil && t.theirs == nil:
	case t.ours == nil:
		j.onlyOne(t, t.theirs)
	case t.theirs == nil:
		j.onlyOne(t, t.ours)
	default:
		j.two(t)
	}
}

// apart is the blank lines above something new. A record that started its own
// text and does not start the result gets one.
func (j *joiner) apart(it *item) string {
	if j.name == "" && it.sort != note && it.blanks == "" && len(j.pieces) > 0 && (it == j.first[0] || it == j.first[1]) {
		return "\n"
	}
	return it.blanks
}

// kindOf is the kind by which the values of an item are understood.
func (j *joiner) kindOf(it *item) *schema.Kind {
	if it.sort != record {
		return j.kind
	}
	if j.name == "" {
		return topKind(it.block)
	}
	return inside(j.kind, it.block)
}

// onlyOne takes what one side added, and drops what one side took out; but
// where the other changed what it states, both stand.
func (j *joiner) onlyOne(t triple, left *item) {
	switch {
	case t.base == nil:
		j.take(left, j.apart(left))
	case left.sort == note || same(j.kindOf(left), t.base, left):
	default:
		c := j.conflict(left)
		p := piece{conflict: &c, base: t.base.text()}
		if t.ours != nil {
			p.ours, c.Ours, c.Theirs = left.text(), "is changed", "is taken out"
			j.states.either(left.state(), "")
		} else {
			p.theirs, c.Theirs, c.Ours = left.text(), "is changed", "is taken out"
			j.states.either("", left.state())
		}
		j.line(j.apart(left))
		j.pieces = append(j.pieces, p)
	}
}

// conflict names an item in the words of the trade.
func (j *joiner) conflict(it *item) Conflict {
	if it.sort == field {
		return Conflict{Record: j.name, Field: it.name}
	}
	return Conflict{Record: j.named(it.block)}
}

// named is a record for people: "run 1A-A01", "pathway 1-T-04 power".
func (j *joiner) named(b *block.Block) string {
	words := []string{b.Kind.Text}
	for _, l := range b.Labels {
		words = append(words, l.Text)
	}
	if b.Kind.Text == "" {
		words[0] = "record"
	}
	if len(b.Labels) == 0 && j.name != "" {
		return j.name + " " + words[0]
	}
	return strings.Join(words, " ")
}

func (j *joiner) line(text string) {
	if text != "" {
		j.pieces = append(j.pieces, piece{text: text})
	}
}

// take takes an item as it is written.
func (j *joiner) take(it *item, blanks string) {
	j.line(blanks + it.text())
	j.states.both(it.state())
}

// two joins an item that both sides have.
func (j *joiner) two(t triple) {
	base := t.base
	if base == nil {
		base = &item{}
	}
	blanks := three(base.blanks, t.ours.blanks, t.theirs.blanks)
	if t.base == nil {
		blanks = t.ours.blanks
	}
	ours, theirs := t.ours.text(), t.theirs.text()
	switch {
	case ours == theirs || t.base != nil && theirs == t.base.text():
		j.take(t.ours, blanks)
	case t.base != nil && ours == t.base.text():
		j.take(t.theirs, blanks)
	default:
		j.line(blanks)
		j.both(t, base)
	}
}

// both joins an item that both sides changed or wrote.
func (j *joiner) both(t triple, base *item) {
	joined := item{
		sort: t.ours.sort, lead: leads(base.lead, t.ours.lead, t.theirs.lead),
		indent: three(base.indent, t.ours.indent, t.theirs.indent), trail: three(base.trail, t.ours.trail, t.theirs.trail),
	}
	if t.base == nil {
		joined.indent = t.ours.indent
	}
	if other := strings.TrimSpace(t.theirs.trail); other != "" && t.theirs.trail != base.trail && t.theirs.trail != joined.trail {
		joined.lead += spaces(joined.indent) + other + "\n" // two remarks on one line: theirs moves above it
	}
	if joined.sort == field {
		j.field(t, base, joined)
		return
	}
	if t.ours.sort == record && t.theirs.sort == record && base.sort != opaque && j.record(t, joined) {
		return
	}
	j.whole(t, t.ours, t.theirs, base)
}

// whole lets both sides stand as they are.
func (j *joiner) whole(t triple, ours, theirs, base *item) {
	switch kind := j.kindOf(ours); {
	case same(kind, ours, theirs):
		j.take(ours, "")
	case t.base != nil && same(kind, base, ours):
		j.take(theirs, "")
	case t.base != nil && same(kind, base, theirs):
		j.take(ours, "")
	default:
		c := j.conflict(ours)
		p := piece{conflict: &c, ours: ours.text(), theirs: theirs.text()}
		if t.base != nil {
			p.base = base.text()
		}
		j.pieces = append(j.pieces, p)
		j.states.either(ours.state(), theirs.state())
	}
}

// field joins a field: its value by what it states, its layout by what was
// changed.
func (j *joiner) field(t triple, base *item, joined item) {
	joined.name = t.ours.name
	joined.pre = three(base.pre, t.ours.pre, t.theirs.pre)
	if t.base == nil {
		joined.pre = t.ours.pre
	}
	from := t.ours
	switch {
	case same(j.kind, t.ours, t.theirs):
		if t.base != nil && t.ours.valueText() == base.valueText() {
			from = t.theirs
		}
	case t.base != nil && same(j.kind, base, t.ours):
		from = t.theirs
	case t.base != nil && same(j.kind, base, t.theirs):
	default:
		j.fieldConflict(t, joined)
		return
	}
	joined.value, joined.core = from.value, joined.pre+from.valueText()
	j.take(&joined, "")
}

func (j *joiner) fieldConflict(t triple, joined item) {
	c := j.conflict(t.ours)
	line := func(of *item) string { return joined.indent + joined.pre + of.valueText() + joined.trail + "\n" }
	p := piece{conflict: &c, ours: line(t.ours), theirs: line(t.theirs)}
	if t.base != nil {
		p.base = line(t.base)
	}
	j.line(joined.lead)
	j.pieces = append(j.pieces, p)
	j.states.either(t.ours.state(), t.theirs.state())
}

// leads joins the comments above an item: what both sides wrote stands.
func leads(base, ours, theirs string) string {
	switch {
	case theirs == base || ours == theirs:
		return ours
	case ours == base:
		return theirs
	case strings.Contains(ours+theirs, "/*"):
		return ours + theirs
	}
	known := make(map[string]bool)
	for line := range strings.Lines(base + ours) {
		known[strings.TrimSpace(line)] = true
	}
	for line := range strings.Lines(theirs) {
		if !known[strings.TrimSpace(line)] {
			ours += line
		}
	}
	return ours
}

func spaces(indent string) string {
	return indent[:len(indent)-len(strings.TrimLeft(indent, " \t"))]
}
