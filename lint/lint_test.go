package lint_test

import (
	"fmt"
	"strings"
	"testing"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

const records = `plant "p" {
  standard = "TIA-568"
}
rack "K1" {
  space = "1A"
}
rack "K2" {
  space = "1A"
}
space "1A" {
  kind = "equipment-room"
}
`

// racks finds every rack, further beyond its limit the higher it is.
func racks(severity lint.Severity, safety bool) *lint.Rule {
	return &lint.Rule{
		Name: "test-rack", Title: "Checks that there is no rack", Severity: severity, Reach: lint.Along, Safety: safety, Limit: lint.GreatestLength,
		Check: func(p *lint.Pass) {
			for _, r := range p.Plant.Racks {
				f := lint.About(r.Entry)
				most, own := p.Most(unit.Length(100))
				f.Message = fmt.Sprintf("%s: limit %d%s", r.Label, most, own)
				if units, ok := schema.RackUnits.In(r.Record()); ok {
					f.Excess = float64(units)
				}
				p.Report(f)
			}
		},
	}
}

func unmatched() *lint.Rule {
	return &lint.Rule{
		Name: "test-review", Title: "Checks that waivers match", Severity: lint.Observation,
		Review: func(r *lint.Review) {
			for _, w := range r.Waivers {
				for i, m := range w.Matched {
					if !m || w.Expired {
						f := lint.About(w.Entry)
						f.Message = fmt.Sprintf("%s: %s matched %v, expired %v", w.Label, w.Records[i], m, w.Expired)
						r.Report(f)
					}
				}
			}
			for _, fault := range r.Faults() {
				f := lint.AboutField(fault.Entry, fault.Field)
				f.Message = fault.Message
				r.Report(f)
			}
		},
	}
}

func run(t *testing.T, text string, rule *lint.Rule) *lint.Report {
	t.Helper()
	p := plant.Build(".", []*schema.File{schema.NewReader().ReadFile("plant.hcl", text)})
	today, _ := unit.NewDate(2026, 3, 2)
	report, err := lint.Run(p, []*lint.Rule{rule, unmatched()}, lint.Options{Today: today})
	if err != nil {
		t.Fatal(err)
	}
	return report
}

func lines(findings []lint.Finding) string {
	var b strings.Builder
	for _, f := range findings {
		fmt.Fprintf(&b, "%d %s %s | ", f.At.Line, f.Severity, f.Message)
	}
	return b.String()
}

const waiver = `waiver "W1" {
  rule    = "test-rack"
  records = ["K2", "K9"]
  reason  = "it stands in the wrong room for a month"
  granted = "owner, letter of 1 February"
  expires = "%s"
}
`

func TestWaiver(t *testing.T) {
	t.Parallel()
	held := run(t, records+fmt.Sprintf(waiver, "2026-03-02"), racks(lint.Nonconformity, false))
	if got, want := lines(held.Findings), "4 nonconformity K1: limit 100 | 13 observation W1: K9 matched false, expired false | "; got != want {
		t.Errorf("on its last day: %s, want %s", got, want)
	}
	if len(held.Waived) != 1 || held.Waived[0].Record != "K2" || held.Waived[0].Waiver != "W1" {
		t.Errorf("waived: %+v", held.Waived)
	}
	over := run(t, records+fmt.Sprintf(waiver, "2026-03-01"), racks(lint.Nonconformity, false))
	if got := over.Count(lint.Nonconformity); got != 2 || len(over.Waived) != 0 {
		t.Errorf("a day later: %d nonconformities and %d waived, want 2 and 0", got, len(over.Waived))
	}
}

func TestWaiverWithoutReasonCoversNothing(t *testing.T) {
	t.Parallel()
	text := records + strings.Replace(fmt.Sprintf(waiver, "2027-01-01"), "  reason  = \"it stands in the wrong room for a month\"\n", "", 1)
	if got := run(t, text, racks(lint.Nonconformity, false)); len(got.Waived) != 0 {
		t.Errorf("waived without a reason: %+v", got.Waived)
	}
}

func TestPolicy(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name, policy string
		severity     lint.Severity
		safety       bool
		want         string
	}{
		{"raised", `severity = "nonconformity"`, lint.Observation, false, "4 nonconformity K1: limit 100 | 7 nonconformity K2: limit 100 | "},
		{"lowered", `severity = "observation"`, lint.Nonconformity, false, "4 observation K1: limit 100 | 7 observation K2: limit 100 | "},
		{"off", `severity = "off"`, lint.Nonconformity, false, ""},
		{"stricter", `limit = "50 nm"`, lint.Observation, false, "4 observation K1: limit 50owner's policy P1 | 7 observation K2: limit 50owner's policy P1 | "},
		{"laxer is no limit", `limit = "150 nm"`, lint.Observation, false, "4 observation K1: limit 100 | 7 observation K2: limit 100 | "},
		{
			"safety stays", `severity = "off"`, lint.Nonconformity, true,
			"4 nonconformity K1: limit 100 | 7 nonconformity K2: limit 100 | 15 observation P1: test-rack is a safety rule and stays a nonconformity | ",
		},
		{
			"bad limit", `limit = "50"`, lint.Observation, false,
			"4 observation K1: limit 100 | 7 observation K2: limit 100 | 15 observation P1: limit: length needs a unit | ",
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			text := records + "policy \"P1\" {\n  rule = \"test-rack\"\n  " + c.policy + "\n  reason = \"the owner's way\"\n}\n"
			if got := lines(run(t, text, racks(c.severity, c.safety)).Findings); got != c.want {
				t.Errorf("got  %s\nwant %s", got, c.want)
			}
		})
	}
}

func TestIntroduced(t *testing.T) {
	t.Parallel()
	at := func(label string, excess float64) lint.Finding {
		return lint.Finding{Rule: "r", Record: label, Excess: excess}
	}
	base := []lint.Finding{at("A", 1), at("B", 2), at("OLD", 3), at("C", 1), at("C", 1)}
	head := []lint.Finding{at("A", 1), at("B", 2.5), at("NEW", 3), at("C", 1), at("C", 1), at("C", 1), at("D", 0)}
	lint.Introduced(base, head, func(label string) string {
		if label == "NEW" {
			return "OLD"
		}
		return label
	})
	var got []string
	for _, f := range head {
		got = append(got, fmt.Sprint(f.Introduced))
	}
	if want := "false,true,false,false,false,true,true"; strings.Join(got, ",") != want {
		t.Errorf("got %v, want %s", got, want)
	}
}

func TestPanicNamesTheRule(t *testing.T) {
	t.Parallel()
	p := plant.Build(".", nil)
	broken := &lint.Rule{Name: "test-broken", Title: "Checks that nothing", Severity: lint.Observation, Check: func(*lint.Pass) { panic("slipped") }}
	report, err := lint.Run(p, []*lint.Rule{broken}, lint.Options{})
	if report != nil || err == nil || !strings.Contains(err.Error(), "rule test-broken failed: slipped") {
		t.Errorf("report %v, error %v", report, err)
	}
}

func TestValidate(t *testing.T) {
	t.Parallel()
	good := racks(lint.Observation, false)
	if err := lint.Validate([]*lint.Rule{good}); err != nil {
		t.Error(err)
	}
	for _, bad := range []*lint.Rule{
		{Name: "rack", Title: good.Title, Severity: good.Severity, Reach: lint.Along, Check: good.Check},
		{Name: "test-rack", Title: "No racks", Severity: good.Severity, Reach: lint.Along, Check: good.Check},
		{Name: "test-rack", Title: good.Title, Reach: lint.Along, Check: good.Check},
		{Name: "test-rack", Title: good.Title, Severity: good.Severity},
		{Name: "test-rack", Title: good.Title, Severity: good.Severity, Check: good.Check},
		{Name: "test-rack", Title: good.Title, Severity: good.Severity, Reach: lint.Along, Change: true, Check: good.Check},
	} {
		if lint.Validate([]*lint.Rule{bad}) == nil {
			t.Errorf("%+v is taken for good", bad)
		}
	}
	if lint.Validate([]*lint.Rule{good, good}) == nil {
		t.Error("a rule may be declared twice")
	}
}
