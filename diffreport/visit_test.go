package diffreport_test

import (
	"testing"

	"homerun/diffreport"
)

// TestVisitsAreTheSteps puts the visits together again: they are all steps in
// their order, each visit in one space, no two neighbours in the same.
func TestVisitsAreTheSteps(t *testing.T) {
	t.Parallel()
	o := diffreport.Order{Steps: []diffreport.Step{
		{Number: 1, Space: "1A"}, {Number: 2, Space: "1A"}, {Number: 3, Space: ""}, {Number: 4, Space: "1A"}, {Number: 5, Space: "1-HALL"}, {Number: 6, Space: "1-HALL"},
	}}
	next := 1
	for i, v := range o.Visits() {
		if v.Number != i+1 || len(v.Steps) == 0 {
			t.Errorf("visit %d: %+v", i+1, v)
		}
		for _, s := range v.Steps {
			if s.Number != next || s.Space != v.Space {
				t.Errorf("visit %d has step %d in %q where step %d in %q was due", v.Number, s.Number, s.Space, next, v.Space)
			}
			next++
		}
		if i > 0 && o.Visits()[i-1].Space == v.Space {
			t.Errorf("visits %d and %d are one", i, i+1)
		}
	}
	if next != 7 || len(o.Visits()) != 4 {
		t.Errorf("%d steps in %d visits", next-1, len(o.Visits()))
	}
	if (&diffreport.Order{}).Visits() != nil {
		t.Error("an order without steps has a visit")
	}
}
