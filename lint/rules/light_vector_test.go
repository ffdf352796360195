package rules_test

import (
	"fmt"
	"testing"

	"homerun/lint"
	"homerun/lint/rules"
)

// fibreRun is a plant with one fibre run in two rooms.
func fibreRun(standard, class, serves string, metres float64) string {
	return fmt.Sprintf(`
plant "p" {
  standard = %q
}
space "S" {
  kind = "equipment-room"
}
cable "k" {
  fibre = %q
}
panel "A" {
  space = "S"
  ports = 1
}
panel "B" {
  space = "S"
  ports = 1
}
run "r" {
  cable  = "k"
  from   = "A:1"
  to     = "B:1"
  length = "%.3f m"
  serves = %q
}
`, standard, class, metres, serves)
}

// TestReaches asserts the reaches of IEEE 802.3 as quoted in the literature: the
// channel of that length carries its application, one a millimetre longer is a
// nonconformity, for the figures on which the sources agree.
func TestReaches(t *testing.T) {
	t.Parallel()
	for _, v := range []struct {
		serves string
		class  string
		metres float64
	}{
		{"1000BASE-SX", "OM1", 275},
		{"1000BASE-SX", "OM2", 550},
		{"10GBASE-SR", "OM1", 33},
		{"10GBASE-SR", "OM2", 82},
		{"10GBASE-SR", "OM3", 300},
		{"10GBASE-SR", "OM4", 400},
		{"40GBASE-SR4", "OM3", 100},
		{"40GBASE-SR4", "OM4", 150},
		{"100GBASE-SR10", "OM3", 100},
		{"100GBASE-SR10", "OM4", 150},
		{"400GBASE-SR8", "OM3", 70},
		{"400GBASE-SR8", "OM4", 100},
		{"400GBASE-SR4.2", "OM3", 70},
		{"400GBASE-SR4.2", "OM4", 100},
		{"400GBASE-SR4.2", "OM5", 150},
		{"25GBASE-SR", "OM4", 100},
		{"10GBASE-LR", "OS2", 10_000},
		{"10GBASE-ER", "OS2", 40_000},
		{"40GBASE-LR4", "OS2", 10_000},
		{"100GBASE-DR", "OS2", 500},
		{"400GBASE-DR4", "OS2", 500},
	} {
		if found := verdictsOn(t, rules.CategoryFibreReach, fibreRun("TIA-568", v.class, v.serves, v.metres)); len(found) > 0 {
			t.Errorf("%s over %g m of %s: %s", v.serves, v.metres, v.class, found[0].Message)
		}
		if got := severityOf(verdictsOn(t, rules.CategoryFibreReach, fibreRun("TIA-568", v.class, v.serves, v.metres+0.001))); got != lint.Nonconformity {
			t.Errorf("%s over more than %g m of %s: %v", v.serves, v.metres, v.class, got)
		}
	}
}

// TestBudgets asserts channels with two connections of 0.75 dB against the losses
// of IEEE 802.3 as quoted in the literature, with 3.5 dB/km of ISO/IEC 11801-1
// for OM3 and OM4: 300 m lose 2.55 dB of the 2.6 dB that 10GBASE-SR allows over
// OM3, 150 m lose 2.025 dB of the 1.5 dB that 40GBASE-SR4 allows over OM4.
func TestBudgets(t *testing.T) {
	t.Parallel()
	if found := verdictsOn(t, rules.CategoryFibreLoss, fibreRun("ISO-11801", "OM3", "10GBASE-SR", 300)); len(found) > 0 {
		t.Errorf("300 m of OM3: %s", found[0].Message)
	}
	found := verdictsOn(t, rules.CategoryFibreLoss, fibreRun("ISO-11801", "OM4", "40GBASE-SR4", 150))
	if len(found) != 1 || found[0].Result != "2.025 dB" || found[0].Limit != "1.5 dB" || found[0].Severity != lint.Observation {
		t.Errorf("150 m of OM4: %+v", found)
	}
}

// TestCores asserts which classes of ISO/IEC 11801-1 may meet in a channel, as
// quoted in the literature: OM1 has 62.5 um, OM2 to OM5 50 um, OS fibre is
// single-mode.
func TestCores(t *testing.T) {
	t.Parallel()
	cores := map[string]string{"OM1": "62.5", "OM2": "50", "OM3": "50", "OM4": "50", "OM5": "50", "OS1": "single", "OS1a": "single", "OS2": "single"}
	for a, one := range cores {
		for b, other := range cores {
			text := fibreRun("TIA-568", a, "other", 20) + fmt.Sprintf(`
cable "kc" {
  fibre = %q
}
equipment "E" {
  kind  = "switch"
  space = "S"
  ports = 1
}
cord "c" {
  from   = "A:1"
  to     = "E:1"
  length = "2 m"
  cable  = "kc"
}
`, b)
			want := lint.Severity(0)
			if one != other {
				want = lint.Nonconformity
			}
			if got := severityOf(verdictsOn(t, rules.CategoryFibreMixed, text)); got != want {
				t.Errorf("%s with a cord of %s: %v, want %v", a, b, got, want)
			}
		}
	}
}

// TestCoaxTable asserts the greatest loss of drop cable that is common practice,
// as remembered: what is left of 20 dBmV after 100 ft, at the rows of the table.
func TestCoaxTable(t *testing.T) {
	t.Parallel()
	for _, v := range []struct {
		series    string
		megahertz int
		left      string
	}{
		{"6", 55, "18.4 dBmV"},
		{"6", 550, "15.1 dBmV"},
		{"6", 1000, "13.45 dBmV"},
		{"11", 55, "19.04 dBmV"},
		{"11", 550, "16.96 dBmV"},
		{"11", 1000, "15.65 dBmV"},
		{"59", 55, "17.95 dBmV"},
		{"59", 550, "14.05 dBmV"},
		{"59", 1000, "11.88 dBmV"},
	} {
		found := verdictsOn(t, rules.CategoryCoaxLoss, fmt.Sprintf(`
plant "p" {
  standard = "TIA-568"
}
space "S" {
  kind = "equipment-room"
}
cable "k" {
  series = %q
}
equipment "H" {
  kind          = "head-end"
  space         = "S"
  ports         = 1
  level         = "20 dBmV"
  top_frequency = "%d MHz"
}
equipment "D" {
  kind  = "display"
  space = "S"
  ports = 1
  wants = "19.9 dBmV"
}
cord "c" {
  from   = "H:1"
  to     = "D:1"
  length = "100 ft"
  cable  = "k"
}
`, v.series, v.megahertz))
		if len(found) != 1 || found[0].Result != v.left || found[0].Severity != lint.Observation {
			t.Errorf("series %s at %d MHz: %+v, want %s", v.series, v.megahertz, found, v.left)
		}
	}
}
