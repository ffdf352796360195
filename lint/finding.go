package lint

import (
	"cmp"
	"slices"
	"strings"

	"homerun/schema"
)

// A Finding is one thing that a rule found, with the sum that led to it. It is
// data: how it looks is up to the reports.
type Finding struct {
	// Rule and Severity are filled in by the engine. A check may set a lower
	// severity for a finding that rests on an unconfirmed figure.
	Rule     string
	Severity Severity
	// Kind and Record name the record at fault, At the exact place.
	Kind, Record string
	At           schema.Location
	// Message is the label, then the fact, then the limit.
	Message string
	// Next is what can be done about it.
	Next string
	// Working is the sum, line by line, so that it can be redone by hand.
	Working []Term
	// Result and Limit are what was compared, Source where the limit stands.
	Result, Limit, Source string
	// Related are other places that belong to the finding.
	Related []schema.Note
	// Key tells findings of one rule about one record apart: the labels of
	// the other records involved, or words. It holds no quantities.
	Key []string
	// Excess is how far beyond the limit it is, in a measure of the rule's
	// own, so that a change can be seen to make a finding worse.
	Excess float64
	// Introduced is set where a comparison found the finding new or worse, Worse
	// where it stood before to a lesser degree.
	Introduced, Worse bool
	// Waiver is the label of the waiver that covers it, or empty.
	Waiver string
}

// A Term is one line of a sum.
type Term struct{ Term, Value string }

// About starts a finding about an entry: its kind, its label, where it starts.
func About(e schema.Entry) Finding {
	return Finding{Kind: e.Kind.Name, Record: e.Name(), At: e.Start()}
}

// AboutField starts a finding about one field of an entry.
func AboutField(e schema.Entry, f *schema.Field) Finding {
	found := About(e)
	found.At = e.Where(f)
	return found
}

// Fingerprint identifies the finding over commits: rule, record and key,
// whatever the line or the figures. Labels are passed through renamed, which
// tells what a record is called on the other side of a comparison.
func (f *Finding) Fingerprint(renamed func(label string) string) string {
	parts := make([]string, 0, 3+len(f.Key))
	parts = append(parts, f.Rule, f.Kind, renamed(f.Record))
	for _, k := range f.Key {
		parts = append(parts, renamed(k))
	}
	return strings.Join(parts, "\x00")
}

// Sort puts findings in the order in which every report shows them: path, line,
// column, rule, message.
func Sort(findings []Finding) {
	slices.SortStableFunc(findings, func(a, b Finding) int {
		return cmp.Or(
			cmp.Compare(a.At.Path, b.At.Path), cmp.Compare(a.At.Line, b.At.Line), cmp.Compare(a.At.Column, b.At.Column),
			cmp.Compare(a.Rule, b.Rule), cmp.Compare(a.Message, b.Message), cmp.Compare(a.Record, b.Record),
		)
	})
}
