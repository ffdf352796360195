package weave

import (
	"strings"

	"homerun/schema/block"
)

// record joins a record field by field. It reports whether it could: a body that
// can not be cut into lines is left to the caller.
func (j *joiner) record(t triple, joined item) bool {
	ours, ok := open(t.ours)
	theirs, also := open(t.theirs)
	if !ok || !also {
		return false
	}
	base := opened{block: &block.Block{}}
	if t.base != nil {
		if base, ok = open(t.base); !ok {
			return false
		}
	}
	in := joiner{name: j.named(ours.block), kind: j.kindOf(t.ours)}
	in.line(joined.lead)
	in.head(t, base, ours, theirs, joined.indent)
	blanks := in.body(base.body, ours.body, theirs.body)
	foot := three(base.foot, ours.foot, theirs.foot)
	if t.base == nil {
		foot = ours.foot
	}
	in.line(blanks + foot + "}" + joined.trail + "\n")
	j.states.enclosed(in.headBlocks(t, base, ours, theirs, in.states))
	j.pieces = append(j.pieces, j.laidOut(in.pieces, t, joined.lead)...)
	return true
}

// head writes the first line of a record: its label by what was changed.
func (j *joiner) head(t triple, base, ours, theirs opened, indent string) {
	after := three(base.after, ours.after, theirs.after)
	line := func(o opened) string { return indent + o.head + after + "\n" }
	switch from := chosenHead(t, base, ours, theirs); from {
	case nil:
		c := Conflict{Record: j.name, Field: "label"}
		if t.base != nil {
			c.Record = (&joiner{}).named(base.block) // both know it by that
		}
		j.pieces = append(j.pieces, piece{conflict: &c, ours: line(ours), base: line(base), theirs: line(theirs)})
	default:
		j.line(line(*from))
	}
}

// chosenHead is the text with the head that the sides agree about, nil where
// both gave the record another label.
func chosenHead(t triple, base, ours, theirs opened) *opened {
	o, w := keyOf(ours.block), keyOf(theirs.block)
	switch {
	case o == w:
		if t.base != nil && ours.head == base.head {
			return &theirs
		}
		return &ours
	case keyOf(base.block) == o:
		return &theirs
	case keyOf(base.block) == w:
		return &ours
	}
	return nil
}

// headBlocks are the blocks whose heads the result has with either pick, and
// the parts.
func (j *joiner) headBlocks(t triple, base, ours, theirs opened, parts states) (o, w *block.Block, p states) {
	if from := chosenHead(t, base, ours, theirs); from != nil {
		return from.block, from.block, parts
	}
	return ours.block, theirs.block, parts
}

// laidOut aligns a joined record where both sides had theirs aligned. Only
// records at the top are: what stands in them goes with them.
func (j *joiner) laidOut(pieces []piece, t triple, lead string) []piece {
	if j.name != "" {
		return pieces
	}
	for i := range pieces {
		if pieces[i].conflict != nil {
			return pieces
		}
	}
	for _, side := range []*item{t.ours, t.theirs} {
		if text := side.indent + side.core + side.trail + "\n"; block.Format(text) != text {
			return pieces
		}
	}
	text, _ := strings.CutPrefix(picked(pieces, pickOurs), lead)
	return []piece{{text: lead + block.Format(text)}}
}
