package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"homerun/lint"
)

// tubes are the inside diameters of electrical metallic tubing in inches, and
// how many cables of a diameter keep 53, 31 and 40 %: NFPA 70-2017, Chapter 9,
// Tables 1 and 4, the counts by hand from the printed diameters.
var tubes = []struct {
	trade, inside string
	of22, of25    int
	of30          int
}{
	{"1/2", "0.622", 3, 1, 1},
	{"3/4", "0.824", 5, 4, 3},
	{"1", "1.049", 9, 7, 4},
	{"1 1/4", "1.38", 15, 12, 8},
	{"1 1/2", "1.61", 21, 16, 11},
	{"2", "2.067", 35, 27, 18},
	{"2 1/2", "2.731", 61, 47, 33},
	{"3", "3.356", 93, 72, 50},
	{"4", "4.334", 155, 120, 83},
}

// filled is a plant with so many cables in one conduit. They are tagged, so
// that nothing is asked of their ends.
func filled(inside, cable string, n int) string {
	var b strings.Builder
	fmt.Fprintf(&b, "plant \"p\" {\n  standard = \"TIA-568\"\n}\nspace \"A\" {\n  kind = \"corridor\"\n}\n"+
		"cable \"c\" {\n  category = \"6\"\n  screen   = \"U/UTP\"\n  diameter = \"%s in\"\n}\n"+
		"pathway \"P\" {\n  kind     = \"conduit\"\n  through  = [\"A\"]\n  length   = \"10 m\"\n  diameter = \"%s in\"\n}\n", cable, inside)
	for i := range n {
		fmt.Fprintf(&b, "run \"R%d\" {\n  length = \"12 m\"\n  cable  = \"c\"\n  route  = [\"P\"]\n  state  = \"tagged\"\n}\n", i+1)
	}
	return b.String()
}

// fillOf is the finding about the fill of a plant; nil where there is none.
func fillOf(t *testing.T, text string) *lint.Finding {
	t.Helper()
	report := lintText(t, text)
	for i := range report.Findings {
		if f := &report.Findings[i]; f.Rule == "pathway-fill" {
			return f
		}
	}
	return nil
}

func TestCablesInTubing(t *testing.T) {
	t.Parallel()
	for _, tube := range tubes {
		for cable, most := range map[string]int{"0.22": tube.of22, "0.25": tube.of25, "0.30": tube.of30} {
			if f := fillOf(t, filled(tube.inside, cable, most)); f != nil {
				t.Errorf("trade size %s with %d of %s in: %s", tube.trade, most, cable, f.Message)
			}
			if f := fillOf(t, filled(tube.inside, cable, most+1)); f == nil {
				t.Errorf("trade size %s takes %d of %s in", tube.trade, most+1, cable)
			}
		}
	}
}

// TestFillNeverFalls adds cable after cable: what is too full stays so, and
// grows fuller. The limit of one cable is above that of two and of three (NFPA
// 70-2017, Chapter 9, Table 1), so only the fill is compared from the third on.
func TestFillNeverFalls(t *testing.T) {
	t.Parallel()
	before := -1.0
	for n := 3; n < 20; n++ {
		f := fillOf(t, filled("1.049", "0.25", n))
		switch {
		case f == nil && before >= 0:
			t.Fatalf("with %d cables the conduit is no longer too full", n)
		case f != nil && f.Excess <= before:
			t.Fatalf("with %d cables it is %v over, before %v", n, f.Excess, before)
		case f != nil:
			before = f.Excess
		}
	}
	if before < 0 {
		t.Error("nothing was ever too full")
	}
}
