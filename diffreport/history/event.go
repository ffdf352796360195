package history

import (
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
	// Events are newest first.
	Events []Event
	// Lives is how many things have borne the label.
	Lives int
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
	Fields       []diffreport.FieldChange
	// Whole is set where the record came or went as a whole; Fields then list
	// everything that it stated.
	Whole bool
	// Life numbers the things that have borne the label, the oldest 1.
	Life int
	// Via is the merge that brought the commit to the line of first parents;
	// empty for a commit of that line.
	Via string
	// Merge is set where the commit is itself a merge that differs from all
	// its parents.
	Merge bool
}
