package ability_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"homerun/lint"
	"homerun/lint/ability"
	"homerun/lint/rules"
	"homerun/schema/unit"
)

// poweredText is a camera on 24 AWG cable, with two cords of 5 m.
func poweredText(metres, needs float64, gauge int, warm string) string {
	return fmt.Sprintf(`plant "p" {
  standard = "TIA-568"
}
space "S" {
  kind        = "work-area"
  temperature = %q
}
cable "c" {
  category   = "6A"
  screen     = "U/UTP"
  conductors = "%d AWG solid"
}
panel "A" {
  space = "S"
  ports = 1
}
outlet "O" {
  space = "S"
  ports = 1
}
equipment "SW" {
  kind     = "switch"
  space    = "S"
  ports    = 1
  supplies = "type-2"
}
equipment "CAM" {
  kind        = "camera"
  space       = "S"
  ports       = 1
  power_class = 4
  needs       = "%.1f W"
}
run "R" {
  cable  = "c"
  from   = "A:1"
  to     = "O:1"
  length = "%.0f m"
}
cord "N" {
  from   = "SW:1"
  to     = "A:1"
  length = "5 m"
  cable  = "c"
}
cord "F" {
  from   = "O:1"
  to     = "CAM:1"
  length = "5 m"
  cable  = "c"
}
`, warm, gauge, needs, metres)
}

func powerMargin(t *testing.T, text string) (m ability.Margin, found bool) {
	t.Helper()
	p := build(map[string]string{"plant.hcl": text})
	c := ability.Of(p, p.Channels[0])
	i := slices.IndexFunc(c.Margins, func(m ability.Margin) bool { return strings.HasPrefix(m.What, "power at CAM") })
	if i < 0 {
		return m, false
	}
	return c.Margins[i], true
}

// TestPowerAtTheDevice works one path out by published figures: 84.2 ohm/km of
// 24 AWG at 20 C (ASTM B258 and IEC 60028 as quoted in the literature), class 4
// of IEEE 802.3, 30 W at 50 V over two pairs. 100 m there and back are 16.84 ohm,
// the path 8.42 ohm; 0.6 A lose 3.03 W in it, 26.97 W are left.
func TestPowerAtTheDevice(t *testing.T) {
	t.Parallel()
	m, ok := powerMargin(t, poweredText(90, 22, 24, "20 C"))
	if !ok || m.Value != "26.97 W" || m.Limit != "22.00 W" || m.Left != "4.97 W" || m.Over || !m.Least {
		t.Errorf("margin %+v", m)
	}
	if _, ok := powerMargin(t, strings.Replace(poweredText(90, 22, 24, "20 C"), `  supplies = "type-2"`, "", 1)); ok {
		t.Error("power of a source that supplies none")
	}
}

// TestPowerAgreesWithTheRule holds the margin against the rule on delivered
// power, over lengths, gauges and temperatures.
func TestPowerAgreesWithTheRule(t *testing.T) {
	t.Parallel()
	today, _ := unit.NewDate(2026, 3, 2)
	short := 0
	for _, gauge := range []int{22, 24, 26} {
		for _, warm := range []string{"20 C", "60 C"} {
			for metres := 10.0; metres <= 90; metres += 10 {
				text := poweredText(metres, 25.5, gauge, warm)
				m, ok := powerMargin(t, text)
				report, err := lint.Run(build(map[string]string{"plant.hcl": text}), []*lint.Rule{rules.PowerDelivered}, lint.Options{Today: today})
				if err != nil || !ok {
					t.Fatal(err, ok)
				}
				if m.Over != (len(report.Findings) > 0) {
					t.Errorf("%d AWG, %g m, %s: short %v, %d findings", gauge, metres, warm, m.Over, len(report.Findings))
				}
				if m.Over {
					short++
				}
			}
		}
	}
	if short == 0 {
		t.Error("none of the paths is too long")
	}
}
