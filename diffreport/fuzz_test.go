package diffreport_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
)

// FuzzCompare compares and plans any two texts. Nothing fails on them; a plant does
// not differ from itself; what is printed can be; the same twice is the same.
func FuzzCompare(f *testing.F) {
	const space = "space \"1A\" {\n  kind = \"telecommunications-room\"\n}\n"
	const run = "run \"1A-A01\" {\n  from = \"1A-A:01\"\n  to = \"1.104:1\"\n  length = \"52.5 m\"\n  route = [\"1-T-04\"]\n}\n"
	f.Add(space, space+run)
	f.Add(run+"panel \"1A-A\" {\n  space = \"1A\"\n  ports = 24\n}\n", "run \"1A-A02\" {\n  former = \"1A-A01\"\n  from = \"1A-A:02\"\n  to = \"1.104:1\"\n}\n")
	f.Add(run+run, "run \"1A-A01\" {\n  length = 1e99\n  former = \"1A-A01\"\n}\nbundle \"1A-A01\" {\n  runs = [\"1A-A01\"]\n}\n")
	f.Add("cord \"a\" {\n from = \"b:1\"\n to = \"a:1\"\n former = \"b\"\n}\ncord \"b\" {\n former = \"a\"\n}\n", "cord \"b\" {\n from = \"b:1\"\n to = \"b:1\"\n former = \"a\"\n}\n")
	f.Fuzz(func(t *testing.T, base, head string) {
		if len(base)+len(head) > 1<<13 {
			t.Skip("small texts hold every mistake that large ones do")
		}
		reader := schema.NewReader()
		of := func(text string) *plant.Plant {
			return plant.Build(".", []*schema.File{reader.ReadFile("a.hcl", text)})
		}
		before, after := of(base), of(head)
		if changes := diffreport.Compare(before, of(base), diffreport.Options{}); len(changes) > 0 {
			t.Errorf("a plant differs from itself: %s", listed(changes))
		}
		changes := diffreport.Compare(before, after, diffreport.Options{})
		for i := range changes {
			if changes[i].Class.String() == "" {
				t.Errorf("%+v is of no class", changes[i])
			}
		}
		again := diffreport.Compare(before, after, diffreport.Options{})
		if diff := cmp.Diff(listed(changes), listed(again)); diff != "" {
			t.Errorf("the same twice:\n%s", diff)
		}
		_ = diffreport.Plan(before, after, changes, diffreport.PlanOptions{}) // it may say that there is no order
		_ = diffreport.Compare(after, before, diffreport.Options{})
	})
}
