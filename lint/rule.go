package lint

import (
	"fmt"
	"strings"

	"homerun/schema"
)

// A Rule is one thing that the linter checks. Rules are values, read-only and
// independent of each other: none sees what another found, but for the few
// that review the findings themselves.
type Rule struct {
	// Name is the family, a hyphen and a slug: "length-channel". It never
	// changes and is never used again for something else.
	Name string
	// Title begins "Checks that" and says in one sentence what is checked.
	Title string
	// Severity is that of its findings where nothing else is said.
	Severity Severity
	// Safety is set where departing from the rule can hurt somebody: a policy
	// can not lower it, only a waiver with a reason and an end can.
	Safety bool
	// Change is set where the rule judges a change and not a state: it is
	// checked only where there is a plant to compare with.
	Change bool
	// Limit says how an owner's stricter limit is written, where one can be.
	Limit LimitKind
	// Reach says what else a finding about a record depends on. A rule without
	// one is about a change, or reviews.
	Reach Reach
	// Wakes are the records that a plant must have for the rule to say anything:
	// one for each function. A plant without them is left in peace.
	Wakes []func(*schema.Record) bool
	// Gathers says of which bundles the rule reads all runs together; of others it
	// looks at each run for itself, or adds up what each of them adds. Nil where it
	// gathers none.
	Gathers func(bundle *schema.Record) bool
	// Alike folds a label into keys; the rule may look at every label that has a
	// key with that of a record in common. Nil where it looks at none.
	Alike func(label string) []string
	// Check reports findings about a plant.
	Check func(*Pass)
	// Review reports findings about waivers and policies, once every Check
	// has been made, and none where a plant has neither. A rule has either Check
	// or Review.
	Review func(*Review)
}

// Family is the first part of the name.
func (r *Rule) Family() string {
	family, _, _ := strings.Cut(r.Name, "-")
	return family
}

// A Severity says how a finding counts, in the words of ISO 9000 and ISO 19011.
type Severity uint8

// The severities.
const (
	// Observation is good practice, or something to look at.
	Observation Severity = iota + 1
	// Nonconformity breaks a code, a standard or the owner's stated policy.
	Nonconformity
)

// String is the severity's word.
func (s Severity) String() string {
	switch s {
	case Observation:
		return "observation"
	case Nonconformity:
		return "nonconformity"
	}
	return "no severity"
}

// A Reach says what a rule looks at besides the record that a finding is about, so
// that whoever judges a change again knows what the change can touch. Whatever the
// reach, a rule may look at what a record names, and what that names in turn; at
// the plant record and the owner's policies. Findings that many records add up to,
// such as one that counts the runs of a cable type or names the first of them, say
// in full what each part of the records adds.
type Reach uint8

// The reaches.
const (
	// Along goes from port to port as far as a signal does, and to the tests of
	// every run on the way.
	Along Reach = iota + 1
	// Within goes to all that lies in the same pathway as plant.Load tells it: how
	// much of which cable in which state, and the first run of each.
	Within
)

// A LimitKind says how a rule's limit is written in a policy.
type LimitKind uint8

// The kinds of limit that an owner may tighten.
const (
	NoLimit LimitKind = iota
	// GreatestLength is a length that must not be exceeded.
	GreatestLength
	// SmallestLength is a length that must be kept.
	SmallestLength
	// GreatestShare is a part of a whole, in per cent, that must not be exceeded.
	GreatestShare
)

// Validate checks the declarations of a set of rules, for the test of the set.
func Validate(rules []*Rule) error {
	seen := make(map[string]bool)
	for _, r := range rules {
		switch {
		case strings.Count(r.Name, "-") < 1 || strings.ToLower(r.Name) != r.Name:
			return fmt.Errorf("rule %q: the name is not a family, a hyphen and a slug", r.Name)
		case seen[r.Name]:
			return fmt.Errorf("rule %s: declared twice", r.Name)
		case !strings.HasPrefix(r.Title, "Checks that "):
			return fmt.Errorf("rule %s: the title does not begin with Checks that", r.Name)
		case r.Severity == 0:
			return fmt.Errorf("rule %s: no severity", r.Name)
		case (r.Check == nil) == (r.Review == nil):
			return fmt.Errorf("rule %s: a rule either checks or reviews", r.Name)
		case (r.Reach == 0) == (r.Check != nil && !r.Change):
			return fmt.Errorf("rule %s: a rule that checks a state has a reach, and no other has", r.Name)
		}
		seen[r.Name] = true
	}
	return nil
}
