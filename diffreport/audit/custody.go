package audit

import (
	"homerun/diffreport/history"
)

// Signatures is what is known of the signatures of the commits.
type Signatures struct {
	// Counts is how many commits are in which state.
	Counts map[history.Signature]int
	// Doubtful are the commits with no signature or none that is good, oldest first.
	Doubtful []history.Revision
}

// A Lost is a commit or tag of the past that the last commit does not lead to.
type Lost struct {
	// Ref is what it is called, Commit its id; empty where it is not here at all.
	Ref, Commit string
	// Commits are what it leads to and the last commit does not, newest first.
	Commits []history.Revision
	// Records is how many of them touch files of records.
	Records int
}

// A Breach is a finding about a change itself, such as a test edited in place.
type Breach struct {
	Finding
	At history.Revision
}

// custody is how far the commits can be relied on.
type custody struct {
	signatures Signatures
	commits    int
	records    int
	line       int
	// direct are the commits made straight on the line of first parents.
	direct []history.Revision
	breach []Breach
	// backwards are commits whose clock is before that of a parent.
	backwards []history.Revision
	times     map[string]int64
	unread    []history.Revision
}

func (t *custody) take(step *Step) {
	t.commits++
	if step.Records {
		t.records++
	}
	if step.Main {
		t.line++
	}
	if t.signatures.Counts == nil {
		t.signatures.Counts = make(map[history.Signature]int)
		t.times = make(map[string]int64)
	}
	t.signatures.Counts[step.Signature]++
	if step.Signature != history.Good {
		t.signatures.Doubtful = append(t.signatures.Doubtful, step.Revision)
	}
	if step.Main && !step.Merge && !step.Root && step.Records {
		t.direct = append(t.direct, step.Revision)
	}
	t.clock(step)
	for _, f := range step.Against {
		t.breach = append(t.breach, Breach{f, step.Revision})
	}
	if step.Unread > 0 && step.Records {
		t.unread = append(t.unread, step.Revision)
	}
}

// clock finds commits made before what they build on.
func (t *custody) clock(step *Step) {
	now := step.Time.Unix()
	t.times[step.ID] = now
	for _, parent := range step.Parents {
		if before, ok := t.times[parent]; ok && now < before {
			t.backwards = append(t.backwards, step.Revision)
			return
		}
	}
}
