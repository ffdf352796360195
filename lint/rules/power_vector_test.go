package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"homerun/lint"
	"homerun/lint/rules"
)

// bundled is a plant with one bundle of type 4, so of 480 mA in each conductor.
func bundled(gauge, rated, cables, ambient int) string {
	var runs strings.Builder
	for i := range cables {
		fmt.Fprintf(&runs, "  run \"r%d\" {\n    length = \"9 m\"\n  }\n", i)
	}
	return fmt.Sprintf(`
plant "p" {
  standard  = "TIA-568"
  fire_code = "NEC-2017"
}
space "S" {
  kind        = "ceiling-void"
  temperature = "%d C"
}
cable "k" {
  category   = "6A"
  conductors = "%d AWG solid"
  rated      = "%d C"
}
pathway "w" {
  kind    = "tray"
  through = ["S"]
  length  = "8 m"
}
bundle "b" {
  cable = "k"
  route = ["w"]
  power = "type-4"
%s}
`, ambient, gauge, rated, runs.String())
}

// TestAmpacityTable asserts NFPA 70-2017, Table 725.144 as quoted in the
// literature, for the 0.48 A of a conductor under type 4 (IEEE 802.3, 0.96 A in
// a pair): the cells for 60 C, 75 C and 90 C, in tenths of an ampere; 0 where the
// table has no value. Each cell holds at its largest bundle.
func TestAmpacityTable(t *testing.T) {
	t.Parallel()
	sizes := [...]int{1, 7, 19, 37, 61, 91, 192}
	rated := [...]int{60, 75, 90}
	for gauge, cells := range map[int][7][3]int{
		26: {{10, 10, 10}, {10, 10, 10}, {7, 8, 10}, {5, 6, 7}, {4, 5, 6}, {4, 5, 6}, {0, 0, 0}},
		24: {{20, 20, 20}, {10, 14, 16}, {8, 10, 11}, {6, 7, 9}, {5, 6, 7}, {4, 5, 6}, {3, 4, 5}},
		23: {{25, 25, 25}, {12, 15, 17}, {8, 11, 12}, {6, 8, 9}, {5, 7, 8}, {5, 7, 8}, {4, 5, 6}},
		22: {{30, 30, 30}, {14, 18, 21}, {10, 12, 14}, {7, 9, 11}, {6, 8, 9}, {6, 8, 9}, {5, 6, 7}},
	} {
		for i, row := range cells {
			for j, tenths := range row {
				want := lint.Severity(0)
				switch {
				case tenths == 0:
					want = lint.Observation // an engineer decides
				case tenths < 5:
					want = lint.Nonconformity
				}
				found := verdictsOn(t, rules.PowerAmpacity, bundled(gauge, rated[j], sizes[i], 30))
				if got := severityOf(found); got != want {
					t.Errorf("%d AWG, %d C, %d cables: %v, want %v", gauge, rated[j], sizes[i], got, want)
				}
			}
		}
	}
}

// TestAmpacityAmbient asserts NFPA 70-2017, Table 310.15(B)(2)(a) as quoted in
// the literature: for 20 cables of 24 AWG, 0.6, 0.7 and 0.9 A before correction,
// the last temperature at which 0.48 A is allowed: 0.6 x 0.82 = 0.492 A at 40 C,
// 0.7 x 0.75 = 0.525 A at 50 C and 0.9 x 0.71 = 0.639 A at 60 C.
func TestAmpacityAmbient(t *testing.T) {
	t.Parallel()
	for _, v := range []struct{ rated, last, first int }{
		{60, 40, 41}, // 0.6 x 0.71 = 0.426 A
		{75, 50, 51}, // 0.7 x 0.67 = 0.469 A
	} {
		if found := verdictsOn(t, rules.PowerAmpacity, bundled(24, v.rated, 20, v.last)); len(found) > 0 {
			t.Errorf("cable of %d C at %d C: %s", v.rated, v.last, found[0].Message)
		}
		if got := severityOf(verdictsOn(t, rules.PowerAmpacity, bundled(24, v.rated, 20, v.first))); got != lint.Nonconformity {
			t.Errorf("cable of %d C at %d C: %v", v.rated, v.first, got)
		}
	}
	if found := verdictsOn(t, rules.PowerAmpacity, bundled(24, 90, 20, 60)); len(found) > 0 {
		t.Errorf("cable of 90 C at 60 C: %s", found[0].Message)
	}
}

// severityOf is that of the one finding, zero where there is none.
func severityOf(found []lint.Finding) lint.Severity {
	if len(found) == 0 {
		return 0
	}
	return found[0].Severity
}

// powered is a plant with a device on a cord to what powers it.
func powered(supplies string, device string, length string, gauge int) string {
	return fmt.Sprintf(`
plant "p" {
  standard = "TIA-568"
}
space "S" {
  kind = "equipment-room"
}
cable "k" {
  category   = "6A"
  conductors = "%d AWG solid"
}
equipment "PSE" {
  kind     = "switch"
  space    = "S"
  ports    = 1
  supplies = %q
}
equipment "PD" {
  kind  = "other"
  space = "S"
  ports = 1
  %s
}
cord "c" {
  from   = "PSE:1"
  to     = "PD:1"
  length = %q
  cable  = "k"
}
`, gauge, supplies, device, length)
}

// TestTypesGrantClasses asserts IEEE 802.3, clauses 33 and 145, as quoted in the
// literature: the highest class of types 1 to 4 is 3, 4, 6 and 8.
func TestTypesGrantClasses(t *testing.T) {
	t.Parallel()
	for _, v := range []struct {
		supplies string
		highest  int
	}{{"type-1", 3}, {"type-2", 4}, {"type-3", 6}, {"type-4", 8}} {
		for class := range 9 {
			found := verdictsOn(t, rules.PowerType, powered(v.supplies, fmt.Sprintf("power_class = %d", class), "2 m", 24))
			if (len(found) > 0) != (class > v.highest) {
				t.Errorf("%s and class %d: %d findings", v.supplies, class, len(found))
			}
		}
	}
}

// TestDeliveredOverTheStandardPath asserts that the channel for which the classes
// were made carries each: IEEE 802.3 counts with a loop of 40 ohm for class 0 to
// 3 and 25 ohm above, as quoted in the literature. 24 AWG has 16.84 ohm on 100 m
// of pair (ASTM B258, IEC 60028), so 237 m and 148 m are within them; a device
// that states its power is within its class at the same length, and 1 km carries
// no class from 1 on in full.
func TestDeliveredOverTheStandardPath(t *testing.T) {
	t.Parallel()
	takes := [...]string{"12.95 W", "3.84 W", "6.49 W", "12.95 W", "25.5 W", "40 W", "51 W", "62 W", "71.3 W"}
	supplies := [...]string{"type-1", "type-1", "type-1", "type-1", "type-2", "type-3", "type-3", "type-4", "type-4"}
	for class, power := range takes {
		within := "237 m"
		if class > 3 {
			within = "148 m"
		}
		asks := fmt.Sprintf("power_class = %d", class)
		for _, device := range []string{asks, asks + "\n  needs = " + fmt.Sprintf("%q", power)} {
			if found := verdictsOn(t, rules.PowerDelivered, powered(supplies[class], device, within, 24)); len(found) > 0 {
				t.Errorf("class %d over %s: %s", class, within, found[0].Message)
			}
			if got := severityOf(verdictsOn(t, rules.PowerDelivered, powered(supplies[class], device, "1000 m", 24))); got != lint.Nonconformity {
				t.Errorf("class %d over 1000 m: %v", class, got)
			}
		}
	}
}

// TestDeliveredFallsWithLength asserts that what a device lacks grows with the
// cable and with the number of its gauge: I^2 R (Ohm's law, Joule's law).
func TestDeliveredFallsWithLength(t *testing.T) {
	t.Parallel()
	for _, gauge := range []int{26, 28} {
		last := 0.0
		for length := 150; length <= 300; length += 50 {
			found := verdictsOn(t, rules.PowerDelivered, powered("type-3", "power_class = 6", fmt.Sprintf("%d m", length), gauge))
			if len(found) != 1 || found[0].Excess <= last {
				t.Fatalf("%d AWG over %d m: %d findings", gauge, length, len(found))
			}
			last = found[0].Excess
			thicker := verdictsOn(t, rules.PowerDelivered, powered("type-3", "power_class = 6", fmt.Sprintf("%d m", length), gauge-2))
			if len(thicker) > 0 && thicker[0].Excess >= last {
				t.Errorf("%d AWG lacks as much as %d AWG over %d m", gauge-2, gauge, length)
			}
		}
	}
}
