package diffreport_test

import (
	"slices"
	"strings"
	"testing"

	"homerun/diffreport"
)

// TestOneDangerInSeveralPlacesIsOneCaution: the order names all places of a danger
// once, a step its own, and the number leads from one to the other.
func TestOneDangerInSeveralPlacesIsOneCaution(t *testing.T) {
	t.Parallel()
	base := edited(t, siteText, `space "1-HALL" { kind = "work-area" }`, "space \"1-HALL\" {\n kind = \"outdoor\"\n}", `space "1-SHOP" { kind = "workshop" }`, "space \"1-SHOP\" {\n kind = \"outdoor\"\n}")
	head := base + "outlet \"A\" {\n space = \"1-HALL\"\n ports = 1\n}\noutlet \"B\" {\n space = \"1-SHOP\"\n ports = 1\n}\n"
	order := orderOf(t, base, head, diffreport.PlanOptions{})
	if want := []string{"1-HALL and 1-SHOP are outdoors: not in a thunderstorm"}; !slices.Equal(order.Cautions, want) {
		t.Fatalf("got %q, want %q", order.Cautions, want)
	}
	for i := range order.Steps {
		s := &order.Steps[i]
		if want := s.Space + " is outdoors: not in a thunderstorm"; !slices.Equal(s.Cautions, []string{want}) || order.CautionNumber(want) != 1 {
			t.Errorf("step %d: %q, number %d", s.Number, s.Cautions, order.CautionNumber(want))
		}
	}
	for _, c := range order.Cautions {
		if strings.ContainsFunc(c, func(r rune) bool { return r < ' ' }) {
			t.Errorf("no sentence: %q", c)
		}
	}
}
