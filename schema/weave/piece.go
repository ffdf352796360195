package weave

import (
	"strings"

	"homerun/schema"
)

// A piece is a part of the result: whole lines that both sides stand behind, or
// a conflict.
type piece struct {
	text     string
	conflict *Conflict
	// ours, base and theirs are the whole lines of a conflict; empty where a
	// side has nothing.
	ours, base, theirs string
}

// A Conflict is a place that somebody has to decide.
type Conflict struct {
	// Record names the record: its kind and label. Field is its field, "label"
	// for the label itself, and empty where all of the record is in question.
	Record, Field string
	// Ours and Theirs say in a few words what each side did, where it is more
	// than to state another value.
	Ours, Theirs string
}

// String names the conflict: "run 1A-A01, length".
func (c Conflict) String() string {
	if c.Field == "" {
		return schema.Printable(c.Record)
	}
	return schema.Printable(c.Record + ", " + c.Field)
}

// about is the name of a side and what it did, behind a marker.
func (c Conflict) about(name, did string) string {
	text := schema.Printable(name) + ": " + c.String()
	if did != "" {
		text += " " + did
	}
	return text
}

// written writes the pieces with markers around the conflicts.
func written(pieces []piece, o Options) string {
	var b strings.Builder
	mark := func(c string, rest string) {
		b.WriteString(strings.Repeat(c, o.size()))
		if rest != "" {
			b.WriteString(" " + rest)
		}
		b.WriteByte('\n')
	}
	for i := range pieces {
		p := &pieces[i]
		if p.conflict == nil {
			b.WriteString(p.text)
			continue
		}
		mark("<", p.conflict.about(o.name(o.Ours, "ours"), p.conflict.Ours))
		b.WriteString(p.ours)
		if o.Style == WithBase {
			mark("|", o.name(o.Base, "base"))
			b.WriteString(p.base)
		}
		mark("=", "")
		b.WriteString(p.theirs)
		mark(">", p.conflict.about(o.name(o.Theirs, "theirs"), p.conflict.Theirs))
	}
	return b.String()
}

// picked writes the pieces with one side's lines in every conflict.
func picked(pieces []piece, of pick) string {
	var b strings.Builder
	for i := range pieces {
		switch p := &pieces[i]; {
		case p.conflict == nil:
			b.WriteString(p.text)
		case of == pickOurs:
			b.WriteString(p.ours)
		default:
			b.WriteString(p.theirs)
		}
	}
	return b.String()
}

// pick chooses a side of the conflicts.
type pick uint8

const (
	pickOurs pick = iota
	pickTheirs
)
