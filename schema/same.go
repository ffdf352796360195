package schema

import (
	"slices"

	"homerun/schema/block"
)

// SameContent says whether two files state the same records with the same
// values in the same order, however they are laid out.
func SameContent(a, b *File) bool {
	return len(a.Problems) == len(b.Problems) && slices.EqualFunc(a.Entries, b.Entries, func(x, y Entry) bool {
		return SameRecord(x.Record, y.Record)
	})
}

// SameRecord says whether two records state the same: kind, label, values in
// the same order, and inner records.
func SameRecord(a, b *Record) bool {
	if a == b {
		return true
	}
	return a.Kind == b.Kind && a.Label == b.Label && a.Damaged == b.Damaged &&
		slices.EqualFunc(a.Values, b.Values, func(v, w Value) bool { return v.Field == w.Field && v.Bad == w.Bad && (v.Bad || v.Same(&w)) }) &&
		slices.EqualFunc(a.Inner, b.Inner, SameRecord)
}

// SameValue says whether two literals state the same in a field, as "41.5 m" and
// "4150 cm" do. It is false where one of them is no value of the field.
func SameValue(f *Field, a, b *block.Value) bool {
	v, w := Value{Field: f}, Value{Field: f}
	if message, _ := decode(f, a, &v); message != "" {
		return false
	}
	if message, _ := decode(f, b, &w); message != "" {
		return false
	}
	return v.Same(&w)
}
