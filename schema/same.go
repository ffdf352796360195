package schema

import "slices"

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
