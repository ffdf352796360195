package diffreport

import (
	"slices"
	"strconv"
	"strings"

	"homerun/schema"
)

// carried is a value of the earlier plant with its references under the labels
// that the later plant uses.
func (c *comparison) carried(v *schema.Value) *schema.Value {
	if v == nil || v.Bad || len(c.renamed) == 0 || !refers(v.Field) {
		return v
	}
	if v.List == nil {
		label, ok := c.renamed[v.Text]
		if !ok {
			return v
		}
		w := *v
		w.Text = label
		return &w
	}
	w := *v
	w.List = make([]string, len(v.List))
	for i, label := range v.List {
		w.List[i] = c.later(label)
	}
	return &w
}

// later is what the later plant calls a record of the earlier one.
func (c *comparison) later(label string) string {
	if now, ok := c.renamed[label]; ok {
		return now
	}
	return label
}

// refers says whether a field's value is made of labels.
func refers(f *schema.Field) bool {
	switch f.Type {
	case schema.Reference, schema.References, schema.PortReference:
		return true
	case schema.Texts:
		return f == schema.WaiverRecords.Field
	case schema.Text, schema.Word, schema.Count, schema.Length, schema.Temperature, schema.Power, schema.Period,
		schema.Frequency, schema.Loss, schema.Current, schema.Angle, schema.Level, schema.Date, schema.Conductors:
	}
	return false
}

// sameValue compares a value of the earlier plant with one of the later. Values
// that can not be read are the same when they are written the same.
func (c *comparison) sameValue(b *schema.Record, v *schema.Value, h *schema.Record, w *schema.Value) bool {
	if v == w {
		return v == nil || v.Bad || !refers(v.Field) || len(c.renamed) == 0 || c.carried(v).Same(w)
	}
	if v != nil && w != nil && v.Bad && w.Bad {
		return written(b, v) == written(h, w)
	}
	return c.carried(v).Same(w)
}

// written is the text of a value; an inherited one stands in the bundle.
func written(r *schema.Record, v *schema.Value) string {
	if r.Own(v.Field.Name) != v && r.Parent != nil {
		r = r.Parent
	}
	text, from, to := r.Source(), v.At.Start-r.At.Start, v.At.End-r.At.Start
	if from < 0 || to > len(text) || from > to {
		return text
	}
	return text[from:to]
}

// A side chooses the plant that a record is taken from.
type side uint8

const (
	earlier side = iota
	later
)

// canon is a record's label as the later plant has it.
func (c *comparison) canon(s side, label string) string {
	if s == earlier {
		return c.later(label)
	}
	return label
}

// valueKey is a text that is equal for equal values.
func (c *comparison) valueKey(s side, r *schema.Record, v *schema.Value) string {
	if v == nil {
		return ""
	}
	if v.Bad {
		return "!" + written(r, v)
	}
	if s == earlier {
		v = c.carried(v)
	}
	parts := make([]string, 0, 3+len(v.List))
	parts = append(parts, strconv.FormatInt(v.Number, 36), strconv.FormatInt(v.Last, 36), v.Text)
	return strings.Join(append(parts, v.List...), "\x01")
}

// recordKey is a text that is equal for records that state the same, but for
// their label, their former label and their note, which a relabelling touches.
func (c *comparison) recordKey(s side, r *schema.Record) string {
	var b strings.Builder
	for _, f := range r.Kind.Fields {
		if f.Name == fieldNote || f.Name == fieldFormer || (r.Kind.Name == schema.KindBundle && runsState(f)) {
			continue
		}
		if v := r.Lookup(f); v != nil {
			b.WriteString(f.Name + "\x02" + c.valueKey(s, r, v) + "\x03")
		}
	}
	inner := make([]string, 0, len(r.Inner))
	for _, in := range r.Inner {
		if in.Kind.Name != schema.KindRun {
			inner = append(inner, c.innerName(s, in)+"\x04"+c.recordKey(s, in))
		}
	}
	slices.Sort(inner)
	b.WriteString(strings.Join(inner, "\x05"))
	return b.String()
}

// The fields that every kind has under the same name.
const (
	fieldNote   = "note"
	fieldFormer = "former"
)

// runsState says whether a field of a bundle is stated for its runs.
func runsState(f *schema.Field) bool {
	return f == schema.BundleCable.Field || f == schema.BundleRoute.Field
}
