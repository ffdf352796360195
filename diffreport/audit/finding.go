package audit

import "strings"

// A Finding is one thing that a rule found in the records as a commit has them.
type Finding struct {
	// Rule is the rule's name, Kind and Record the record at fault.
	Rule, Kind, Record string
	// Key tells findings of one rule about one record apart.
	Key []string
	// Message says what is wrong.
	Message string
	// Nonconformity is set where a rule is broken; the rest are observations.
	Nonconformity bool
	// Waiver is the label of the waiver that covers it, or empty.
	Waiver string
}

// fingerprint identifies a finding over commits, whatever its figures; labels
// are passed through renamed.
func (f *Finding) fingerprint(renamed func(label string) string) string {
	if renamed == nil {
		renamed = same
	}
	parts := make([]string, 0, 3+len(f.Key))
	parts = append(parts, f.Rule, f.Kind, renamed(f.Record))
	for _, k := range f.Key {
		parts = append(parts, renamed(k))
	}
	return strings.Join(parts, "\x00")
}

func same(label string) string { return label }
