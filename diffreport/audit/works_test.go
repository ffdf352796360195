package audit_test

import (
	"testing"

	"homerun/diffreport"
	"homerun/diffreport/audit"
	"homerun/schema"
	"homerun/schema/plant"
)

// TestATestThatIsRewordedIsNotMadeAnew terminates a tested cable anew. The test was
// written down before; that its record is edited afterwards proves nothing.
func TestATestThatIsRewordedIsNotMadeAnew(t *testing.T) {
	t.Parallel()
	head := plant.Build(".", []*schema.File{schema.NewReader().ReadFile("plant.hcl", `plant "pier" {
  standard = "TIA-568"
}
run "A" {
}
test "T" {
  run  = "A"
  date = "1970-01-02"
}
`)})
	for name, c := range map[string]struct {
		fresh bool
		since bool
	}{"edited": {false, false}, "entered": {true, true}} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			a := audit.New(audit.Options{})
			first := []audit.Deed{{Kind: schema.KindRun, Label: "A", New: true}}
			if !c.fresh {
				first = append(first, audit.Deed{Kind: schema.KindTest, Label: "T", New: true})
			}
			a.Take(&audit.Step{Revision: on(0), Main: true, Root: true, Deeds: first})
			a.Take(&audit.Step{Revision: on(9), Parents: []string{id(0)}, Main: true, Deeds: []audit.Deed{
				{Kind: schema.KindRun, Label: "A", Class: diffreport.ClassChange, Meaning: schema.Reterminate},
			}})
			a.Take(&audit.Step{Revision: on(10), Parents: []string{id(9)}, Main: true, Deeds: []audit.Deed{{Kind: schema.KindTest, Label: "T", New: c.fresh}}})
			r := a.Report(audit.About{To: id(10)}, head)
			if len(r.Untested) != 1 || r.Untested[0].Test != "T" || r.Untested[0].EnteredSince != c.since {
				t.Errorf("told %+v", r.Untested)
			}
		})
	}
}
