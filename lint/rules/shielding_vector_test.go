package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"homerun/lint"
	"homerun/lint/rules"
)

// besidePower is a plant with one run in one pathway with power beside it.
func besidePower(cable, power string) string {
	return fmt.Sprintf(`
plant "p" {
  standard = "ISO-11801"
}
space "S" {
  kind = "corridor"
}
cable "k" {
  %s
}
pathway "w" {
  kind    = "hooks"
  through = ["S"]
  length  = "1 m"
  power {
    %s
  }
}
run "r" {
  length = "2 m"
  cable  = "k"
  route  = ["w"]
}
`, cable, power)
}

// separationRows are A of EN 50174-2:2009 as printed in the literature for
// classes b, c and d, by circuits and barrier, in millimetres. The first three
// are worked examples; the rest are S x P from its two tables, computed by hand.
var separationRows = []struct {
	class    string
	circuits int
	barrier  string
	least    float64
}{
	{"b", 12, "none", 80},
	{"b", 30, "perforated-metal", 100},
	{"d", 200, "solid-metal", 0},

	{"b", 1, "none", 20},
	{"b", 3, "none", 20},
	{"b", 4, "none", 40},
	{"b", 7, "none", 60},
	{"b", 15, "none", 100},
	{"b", 16, "none", 200},
	{"b", 31, "none", 300},
	{"b", 46, "none", 400},
	{"b", 61, "none", 500},
	{"b", 76, "none", 600},
	{"b", 76, "open-metal", 450},
	{"b", 10, "open-metal", 60},
	{"b", 3, "perforated-metal", 10},
	{"c", 12, "none", 40},
	{"c", 10, "open-metal", 30.4},
	{"c", 6, "perforated-metal", 10},
	{"d", 12, "none", 8},
	{"d", 15, "open-metal", 8},
	{"d", 30, "perforated-metal", 10},
}

// TestSeparationExamples asserts EN 50174-2:2009, A = S x P: at A the gap is
// kept, a tenth of a millimetre less is reported as a nonconformity with A as
// its limit.
func TestSeparationExamples(t *testing.T) {
	t.Parallel()
	for _, row := range separationRows {
		power := func(gap float64) string {
			return fmt.Sprintf("circuits = %d\n    barrier = %q\n    gap = \"%.1f mm\"", row.circuits, row.barrier, gap)
		}
		cable := fmt.Sprintf("category = \"6\"\n  screen = \"U/UTP\"\n  segregation = %q", row.class)
		if found := verdictsOn(t, rules.ShieldingSeparation, besidePower(cable, power(row.least))); len(found) != 0 {
			t.Errorf("class %s, %d circuits, %s at %g mm: %s", row.class, row.circuits, row.barrier, row.least, found[0].Message)
		}
		if row.least == 0 {
			continue
		}
		found := verdictsOn(t, rules.ShieldingSeparation, besidePower(cable, power(row.least-0.1)))
		if len(found) != 1 || found[0].Severity != lint.Nonconformity || found[0].Limit != fmt.Sprintf("%g mm", row.least) {
			t.Errorf("class %s, %d circuits, %s just under %g mm: %+v", row.class, row.circuits, row.barrier, row.least, found)
		}
	}
}

// TestUsualSegregationClass asserts the usual classes of EN 50174-2:2009 as
// quoted in the literature: b for unscreened category 5e and 6, c for screened
// 5e, 6 and 6A, d for 7 and 7A. With 12 circuits and nothing between, class b
// asks for 80 mm, c for 40 mm, d for 8 mm.
func TestUsualSegregationClass(t *testing.T) {
	t.Parallel()
	for _, row := range []struct{ category, screen, least string }{
		{"5e", "U/UTP", "80 mm"},
		{"6", "U/UTP", "80 mm"},
		{"5e", "F/UTP", "40 mm"},
		{"6", "SF/UTP", "40 mm"},
		{"6A", "S/FTP", "40 mm"},
		{"7", "S/FTP", "8 mm"},
		{"7A", "S/FTP", "8 mm"},
	} {
		cable := fmt.Sprintf("category = %q\n  screen = %q", row.category, row.screen)
		found := verdictsOn(t, rules.ShieldingSeparation, besidePower(cable, "circuits = 12\n    gap = \"1 mm\""))
		if len(found) != 1 || found[0].Limit != row.least || found[0].Severity != lint.Nonconformity {
			t.Errorf("category %s, %s: want %s, findings %+v", row.category, row.screen, row.least, found)
		}
	}
}

// TestUnsureClassIsObserved asserts that a class from memory, a by its figures
// and b for unscreened category 6A, gives no more than an observation.
func TestUnsureClassIsObserved(t *testing.T) {
	t.Parallel()
	for _, cable := range []string{"category = \"6\"\n  segregation = \"a\"", "category = \"6A\"\n  screen = \"U/UTP\""} {
		found := verdictsOn(t, rules.ShieldingSeparation, besidePower(cable, "circuits = 12\n    gap = \"1 mm\""))
		if len(found) != 1 || found[0].Severity != lint.Observation || !strings.Contains(found[0].Source, "unconfirmed: check the printed standard") {
			t.Errorf("%s: %+v", cable, found)
		}
	}
}

// TestUnitOfGapNeverDecides asserts that 80 mm, 8 cm and their equal in inches
// give one verdict; 1 in is 25.4 mm (international yard and pound, 1959).
func TestUnitOfGapNeverDecides(t *testing.T) {
	t.Parallel()
	for gap, kept := range map[string]bool{
		"80 mm": true, "8 cm": true, "0.08 m": true, "3.15 in": true, "3.1496 in": false, "79 mm": false, "7.9 cm": false,
	} {
		found := verdictsOn(t, rules.ShieldingSeparation, besidePower("category = \"6\"\n  screen = \"U/UTP\"", "circuits = 12\n    gap = \""+gap+"\""))
		if kept != (len(found) == 0) {
			t.Errorf("gap %s: kept is %v, findings %+v", gap, kept, found)
		}
	}
}
