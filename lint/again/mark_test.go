package again_test

import (
	"maps"
	"testing"

	"homerun/schema"
	"homerun/schema/plant/planttest"
)

// TestAForgottenWayIsNotGone asks for the way back once it is forgotten: nothing is
// changed then, and the state is judged as any other.
func TestAForgottenWayIsNotGone(t *testing.T) {
	t.Parallel()
	today := day(t, "2026-06-15")
	_, first := generated(schema.NewReader(), planttest.Options{Runs: 48, Files: 2, Seed: 1})
	second := maps.Clone(first)
	delete(second, "runs/part-002.hcl")
	w := newTrail()
	w.to(t, first, today)
	start := w.stop()
	w.to(t, second, today)
	w.back(t, start)
	w.to(t, second, today)
	here := w.stop()
	here.mark.Forget()
	known, err := w.standing.Return(w.changes(first), start.mark)
	if err != nil || known {
		t.Fatalf("a way that was forgotten is known: %t, %v", known, err)
	}
	if w.standing.Mark() != here.mark || w.standing.Problems() != here.problems {
		t.Error("something was changed all the same")
	}
	w.to(t, first, today)
	w.to(t, second, today)
}
