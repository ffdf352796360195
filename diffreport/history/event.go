package history

import (
	"strings"
	"time"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
)

// A Revision is what is known about one commit.
type Revision struct {
	ID, Subject       string
	Author, Committer string
	// Time is when the commit was made, with the offset that was written down.
	Time      time.Time
	Signature Signature
	// Orders are the work orders that the commit says it carries out.
	Orders []string
}

// Branch is the branch that a merge says it joined, in git's own words for one;
// empty where it says none.
func (r *Revision) Branch() string {
	rest, merged := strings.CutPrefix(strings.Replace(r.Subject, "remote-tracking branch", "branch", 1), "Merge branch '")
	branch, _, closed := strings.Cut(rest, "'")
	if !merged || !closed {
		return ""
	}
	return branch
}

// A Signature is what is known about the signature of a commit.
type Signature uint8

// The states of a signature. The zero value is one that nobody looked at.
const (
	NotChecked Signature = iota
	Unsigned
	Good
	Bad
	UnknownKey
	// ExpiredKey is a signature that is right, by a key that had run out when it
	// was made or was not allowed to sign then.
	ExpiredKey
	// RevokedKey is one that is right, by a key that its owner has withdrawn.
	RevokedKey
)

// String is the state for people.
func (s Signature) String() string {
	switch s {
	case NotChecked:
		return "not checked"
	case Unsigned:
		return "none"
	case Good:
		return "good"
	case Bad:
		return "bad"
	case UnknownKey:
		return "unknown key"
	case ExpiredKey:
		return "expired key"
	case RevokedKey:
		return "revoked key"
	}
	return "not checked"
}

// Word is the state in the words that other programs rely on: good, bad,
// unknown key, expired key, revoked key or none. A signature that was not checked is by an unknown key.
func (s Signature) Word() string {
	if s == NotChecked {
		return UnknownKey.String()
	}
	return s.String()
}

// A Step is one commit of a walk with its plant and those of its parents.
type Step struct {
	Revision
	// Plant is the plant at the commit, nil where the commit has none.
	Plant *plant.Plant
	// Parents are the commits before it; empty for a first commit.
	Parents []Parent
	// Boundary marks a commit whose parents exist but are not in this clone:
	// what it holds may be older than it.
	Boundary bool
	// Look, where it is set, stands for Plant and those of Parents: it gives as
	// much of two plants as decides what happened to one label, or to that and
	// what names it, between a parent and the commit, the parent by its place.
	// Both are nil where nothing did. Without parents the place is -1 and there
	// is no plant before.
	Look func(label string, what Interest, parent int) (before, after *plant.Plant, err error)
}

// look gives the plants between which something may have happened to a label.
func (s *Step) look(label string, what Interest, parent int) (before, after *plant.Plant, err error) {
	switch {
	case s.Look != nil:
		return s.Look(label, what, parent)
	case parent < 0:
		return nil, s.Plant, nil
	}
	return s.Parents[parent].Plant, s.Plant, nil
}

// A Parent is a commit before another, with its plant, nil where it has none.
type Parent struct {
	ID    string
	Plant *plant.Plant
}

// A History is the life, or the lives, of one label.
type History struct {
	// Kind is that of the newest record, Record the label asked for.
	Kind, Record string
	// Port is the port asked for, 0 where none was.
	Port int64
	// Events are newest first.
	Events []Event
	// Lives is how many things have borne the label.
	Lives int
	// LeftOut is how many more events there are that nobody asked for.
	LeftOut int
	// On are the labels that the things bore at the commit that was asked for.
	On []string
}

// A FieldChange is one value that differs.
type FieldChange = diffreport.FieldChange

// A Part is what an event has to do with what was asked.
type Part uint8

// The parts: Own is an event of the record itself; Came and Went are those of
// what came to the port or into the space, and of what left it.
const (
	Own Part = iota
	Came
	Went
)

// String is the part for programs.
func (p Part) String() string {
	switch p {
	case Own:
		return "own"
	case Came:
		return "came"
	case Went:
		return "went"
	}
	return "own"
}

// An Event is one commit that changed the record.
type Event struct {
	Revision
	Class diffreport.Class
	// Kind and Label are the record's at the commit; Former is the label that
	// it had before, where that was another.
	Kind, Label, Former string
	// Summary says what happened in one sentence, Why why it is in its class.
	Summary, Why string
	Meaning      schema.Meaning
	Fields       []FieldChange
	// Whole is set where the record came or went as a whole; Fields then list
	// everything that it stated.
	Whole bool
	// Life numbers the things that have borne the label, the oldest 1.
	Life int
	// Via is the merge that brought the commit to the line of first parents;
	// empty for a commit of that line.
	Via string
	// Merged is what is known of that merge, where somebody looked.
	Merged Revision
	// Order is the number of the work order from the commit's first parent to it.
	Order string
	// Merge is set where the commit is itself a merge that differs from all
	// its parents.
	Merge bool
	// Parents are the commits before this one.
	Parents []string
	// Part says whether the event is one of the record itself. Where it is one
	// of what came or went, Place is where, as it was called then, and End the
	// field that says so.
	Part       Part
	Place, End string
}
