package lint_test

import (
	"fmt"
	"testing"

	"homerun/lint"
)

// full finds a plant that is fuller than a share allows. The 40 % are those of
// NFPA 70-2017, Chapter 9, Table 1, for more than two cables.
func full() *lint.Rule {
	return &lint.Rule{
		Name: "test-full", Title: "Checks that there is room", Severity: lint.Observation, Limit: lint.GreatestShare,
		Check: func(p *lint.Pass) {
			most, own := p.MostShare(40)
			f := lint.About(p.Plant.Racks[0].Entry)
			f.Message = fmt.Sprintf("limit %v %s", most, own)
			p.Report(f)
		},
	}
}

func TestShareOfThePolicy(t *testing.T) {
	t.Parallel()
	const refused = "4 observation limit 40 %%  | 15 observation P1: limit: %s is no share in whole per cent from 1 to 100 | "
	for limit, want := range map[string]string{
		"25 %":   "4 observation limit 25 % owner's policy P1 | ",
		"25%":    "4 observation limit 25 % owner's policy P1 | ",
		"40 %":   "4 observation limit 40 %  | ",
		"100 %":  "4 observation limit 40 %  | ",
		"0 %":    fmt.Sprintf(refused, `"0 %"`),
		"101 %":  fmt.Sprintf(refused, `"101 %"`),
		"-5 %":   fmt.Sprintf(refused, `"-5 %"`),
		"37.5 %": fmt.Sprintf(refused, `"37.5 %"`),
		"25 m":   fmt.Sprintf(refused, `"25 m"`),
		"%":      fmt.Sprintf(refused, `"%"`),
		"25  %":  fmt.Sprintf(refused, `"25  %"`),
	} {
		text := records + "policy \"P1\" {\n  rule   = \"test-full\"\n  limit  = \"" + limit + "\"\n  reason = \"room\"\n}\n"
		if got := lines(run(t, text, full()).Findings); got != want {
			t.Errorf("limit %q:\ngot  %s\nwant %s", limit, got, want)
		}
	}
	if got := lines(run(t, records, full()).Findings); got != "4 observation limit 40 %  | " {
		t.Errorf("without a policy: %s", got)
	}
}
