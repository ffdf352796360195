package history

import (
	"strings"

	"homerun/schema"
)

// Gist is a text that is equal for records of which a comparison finds no
// difference, wherever they stand: what the record states, and what it takes from
// the bundle around it. The runs in a bundle are records of their own. Records
// that are only laid out in another way may have another.
func Gist(r *schema.Record) string {
	var b strings.Builder
	if r.Parent != nil {
		ownGist(&b, r.Parent)
		b.WriteByte(0)
	}
	ownGist(&b, r)
	return b.String()
}

func ownGist(b *strings.Builder, r *schema.Record) {
	text := r.Source()
	if r.Damaged || r.Kind.Name != schema.KindBundle {
		b.WriteString(text)
		return
	}
	at := 0
	for _, in := range r.Inner {
		if from, to := in.At.Start-r.At.Start, in.At.End-r.At.Start; in.Kind.Name == schema.KindRun && at <= from && from <= to && to <= len(text) {
			b.WriteString(strings.TrimRight(text[at:from], " \t\r\n"))
			at = to
		}
	}
	b.WriteString(text[at:])
}

// alike says whether nothing can have happened to what bears a label: it is one
// record, or states word for word the same.
func alike(was, is *schema.Record) bool {
	return was == is || was != nil && is != nil && was.Kind == is.Kind && Gist(was) == Gist(is)
}
