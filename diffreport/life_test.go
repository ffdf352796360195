package diffreport_test

import (
	"slices"
	"testing"

	"homerun/diffreport"
)

// TestBundleTellsOfItsCable asks for the life of a bundle whose cable type is exchanged,
// and of one whose cable type only goes under another label.
func TestBundleTellsOfItsCable(t *testing.T) {
	t.Parallel()
	base := plantOf(t, siteText)
	relabelled := edited(t, siteText, `cable "c6a" { category = "6A" }`, `cable "c6a-uutp" { category = "6A" }`, `cable = "c6a"`, `cable = "c6a-uutp"`)
	tests := []struct {
		name, text string
		told       bool
	}{
		{"exchanged", edited(t, siteText, `cable = "c6a"`, `cable = "c6"`), true},
		{"relabelled", relabelled, false},
	}
	for _, test := range tests {
		head := plantOf(t, test.text)
		changes := diffreport.WithBundle(diffreport.Compare(base, head, diffreport.Options{}), base, head, "1-B-09")
		told := slices.ContainsFunc(changes, func(c diffreport.Change) bool {
			return c.Label == "1-B-09" && len(c.Fields) > 0 && c.Fields[0].Name == "cable"
		})
		if told != test.told {
			t.Errorf("%s: the bundle tells of its cable: %v, want %v", test.name, told, test.told)
		}
	}
}
