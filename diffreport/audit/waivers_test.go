package audit_test

import (
	"slices"
	"testing"
	"time"

	"homerun/diffreport/audit"
	"homerun/diffreport/history"
)

func on(n int) history.Revision {
	return history.Revision{ID: id(n), Author: "Ada Moor", Time: time.Unix(int64(n)*86400, 0).UTC()}
}

// TestAWaiverFollowsALabel renames what a waiver covers, then gives its old label
// to another record: only the second makes it cover something else.
func TestAWaiverFollowsALabel(t *testing.T) {
	t.Parallel()
	over := func(records ...string) []audit.Waiver {
		return []audit.Waiver{{Label: "W-1", Rule: "length-channel", Records: records}}
	}
	a := audit.New(audit.Options{})
	a.Take(&audit.Step{Revision: on(0), Main: true, Root: true, HasWaivers: true, Waivers: over("A", "B")})
	a.Take(&audit.Step{
		Revision: on(1), Parents: []string{id(0)}, Main: true, HasWaivers: true, Waivers: over("C", "B"),
		Former: func(label string) string { return map[string]string{"C": "A", "B": "B"}[label] },
	})
	r := a.Report(audit.About{To: id(1)}, nil)
	if n := len(r.Waivers[0].Changes); n != 0 {
		t.Errorf("a new label is told as a change: %+v", r.Waivers[0].Changes)
	}
	a.Take(&audit.Step{
		Revision: on(2), Parents: []string{id(1)}, Main: true, HasWaivers: true, Waivers: over("C", "B"),
		Former: func(label string) string { return map[string]string{"D": "B", "C": "C"}[label] },
	})
	r = a.Report(audit.About{To: id(2)}, nil)
	changes := r.Waivers[0].Changes
	if len(changes) != 1 || !slices.Equal(changes[0].Added, []string{"B"}) || !slices.Equal(changes[0].Dropped, []string{"B"}) {
		t.Errorf("B is another record now, told %+v", changes)
	}
}
