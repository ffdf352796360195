package report_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/lint/report"
)

type issue struct {
	CheckName   string `json:"check_name"`
	Fingerprint string `json:"fingerprint"`
	Severity    string `json:"severity"`
	Location    struct {
		Path  string `json:"path"`
		Lines struct {
			Begin int `json:"begin"`
		} `json:"lines"`
	} `json:"location"`
}

func quality(t *testing.T, b report.Batch) []issue {
	t.Helper()
	var w strings.Builder
	if err := report.Quality(&w, b); err != nil {
		t.Fatal(err)
	}
	var list []issue
	if err := json.Unmarshal([]byte(w.String()), &list); err != nil {
		t.Fatal(err)
	}
	return list
}

func prints(list []issue) []string {
	var all []string
	for _, i := range list {
		all = append(all, i.CheckName+" "+i.Fingerprint)
	}
	slices.Sort(all)
	return all
}

// TestFingerprints moves records, within a file and to another, measures one again and rewords nothing that
// matters: every finding keeps its fingerprint, and no two have the same.
func TestFingerprints(t *testing.T) {
	t.Parallel()
	records := misused("1A")
	before := quality(t, check(t, "plant.hcl", records))
	all := prints(before)
	if len(slices.Compact(slices.Clone(all))) != len(all) || len(all) < 5 {
		t.Errorf("fingerprints are not unique: %v", all)
	}
	moved := "# a comment, and lines\n\n\n" + strings.ReplaceAll(records, `"120 m"`, `"125 m"`)
	after := quality(t, check(t, "plant.hcl", moved))
	if d := cmp.Diff(all, prints(after)); d != "" {
		t.Errorf("fingerprints changed:\n%s", d)
	}
	if before[0].Location.Lines.Begin == after[0].Location.Lines.Begin {
		t.Error("nothing was moved")
	}
	elsewhere := quality(t, check(t, "plant.hcl", "", "runs/level-1.hcl", records))
	if d := cmp.Diff(all, prints(elsewhere)); d != "" {
		t.Errorf("fingerprints changed with the file:\n%s", d)
	}
	other := quality(t, check(t, "plant.hcl", strings.Replace(records, `plant "1A"`, `plant "2A"`, 1)))
	if d := cmp.Diff(all, prints(other)); d == "" {
		t.Error("another plant has the same fingerprints")
	}
}

// TestFingerprintsAreUnique has two findings that nothing but their place tells
// apart, and two files that can not be read: services drop the second of two
// issues with one fingerprint.
func TestFingerprintsAreUnique(t *testing.T) {
	t.Parallel()
	b := check(t, "plant.hcl", "plant \"p\" {\n  standard = \"TIA-568\"\n}\n", "a.hcl", "a {{\n", "b.hcl", "a {{\n")
	first := b.Reports[0].Findings[0]
	first.At.Line += 7
	b.Reports[0].Findings = append(b.Reports[0].Findings, first)
	all := prints(quality(t, b))
	if len(all) < 3 || len(slices.Compact(slices.Clone(all))) != len(all) {
		t.Errorf("fingerprints are not unique: %v", all)
	}
	if again := prints(quality(t, b)); !slices.Equal(all, again) {
		t.Errorf("another time they are %v", again)
	}
}

// TestFingerprintsAreTheSameInEveryForm compares JSON, SARIF and the quality
// report.
func TestFingerprintsAreTheSameInEveryForm(t *testing.T) {
	t.Parallel()
	b := check(t, "plant.hcl", misused("1A"))
	forms := everyForm(t, b)
	var doc struct {
		Findings []struct {
			Rule        string `json:"rule"`
			Fingerprint string `json:"fingerprint"`
			Waiver      string `json:"waiver"`
		} `json:"findings"`
	}
	if err := json.Unmarshal([]byte(forms["json"]), &doc); err != nil {
		t.Fatal(err)
	}
	var inJSON, inSARIF []string
	var open []issue
	for _, f := range doc.Findings {
		inJSON = append(inJSON, f.Fingerprint)
		if f.Waiver == "" {
			open = append(open, issue{CheckName: f.Rule, Fingerprint: f.Fingerprint})
		}
	}
	for _, r := range valid(t, forms["sarif"]).Results {
		inSARIF = append(inSARIF, r.PartialFingerprints["homerunFinding/v1"])
	}
	if d := cmp.Diff(inJSON, inSARIF); d != "" {
		t.Errorf("JSON and SARIF differ:\n%s", d)
	}
	if d := cmp.Diff(prints(open), prints(quality(t, b))); d != "" {
		t.Errorf("JSON and quality report differ:\n%s", d)
	}
}

// TestQualitySeverities are those of the format: info, minor, major, critical
// and blocker.
func TestQualitySeverities(t *testing.T) {
	t.Parallel()
	got := make(map[string]bool)
	for _, i := range quality(t, check(t, "plant.hcl", misused("1A"))) {
		got[i.Severity] = true
		if !slices.Contains([]string{"info", "minor", "major", "critical", "blocker"}, i.Severity) || i.Location.Path == "" || i.Location.Lines.Begin < 1 {
			t.Errorf("%+v", i)
		}
	}
	if !got["minor"] || !got["major"] {
		t.Errorf("severities %v", got)
	}
}
