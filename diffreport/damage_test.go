package diffreport_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
)

// TestDamagedRecordsAreStillCompared takes pieces out of records and puts
// others in twice: nothing may panic, a plant never differs from itself, and an
// order is a list of steps or a list of clashes.
func TestDamagedRecordsAreStillCompared(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		base, head := damaged(t, siteText), damaged(t, siteText+testText)
		if changes := diffreport.Compare(base(), base(), diffreport.Options{}); len(changes) > 0 {
			t.Fatalf("a damaged plant differs from itself: %v", full(changes))
		}
		b, h := base(), head()
		order := diffreport.Plan(b, h, diffreport.Compare(b, h, diffreport.Options{}), diffreport.PlanOptions{Follow: new(watcher).follow})
		if order.Executable != (len(order.Clashes) == 0) {
			t.Fatalf("executable %v with clashes %v", order.Executable, order.Clashes)
		}
	})
}

func damaged(t *rapid.T, text string) func() *plant.Plant {
	lines := strings.SplitAfter(text, "\n")
	for range rapid.IntRange(0, 5).Draw(t, "injuries") {
		i := rapid.IntRange(0, len(lines)-1).Draw(t, "line")
		switch rapid.IntRange(0, 3).Draw(t, "injury") {
		case 0:
			lines[i] = ""
		case 1:
			lines[i] += lines[i]
		case 2:
			lines[i] = lines[i][:rapid.IntRange(0, len(lines[i])).Draw(t, "cut")]
		case 3:
			lines[i] = strings.Replace(lines[i], "\"", "\"1A-A", 1)
		}
	}
	text = strings.Join(lines, "")
	return func() *plant.Plant {
		return plant.Build(".", []*schema.File{schema.NewReader().ReadFile("plant.hcl", "plant \"mole-end\" { standard = \"TIA-568\" }\n"+text)})
	}
}
