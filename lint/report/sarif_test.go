package report_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/owenrumney/go-sarif/v3/pkg/report/v210/sarif"

	"homerun/lint"
	"homerun/lint/report"
	"homerun/lint/rules"
	"homerun/schema"
	"homerun/schema/plant"
)

// valid reads a document and holds it against the schema that OASIS publishes
// with SARIF 2.1.0, errata 01; the library brings it along.
func valid(t *testing.T, text string) *sarif.Run {
	t.Helper()
	doc, err := sarif.FromString(text, sarif.WithStrictValidation())
	if err != nil {
		t.Fatal(err)
	}
	if err := doc.Validate(); err != nil {
		t.Fatal(err)
	}
	if len(doc.Runs) != 1 {
		t.Fatalf("%d runs, want one: services refuse several of one tool", len(doc.Runs))
	}
	return doc.Runs[0]
}

// plainSARIF holds a document's messages against what SARIF 2.1.0 says about
// plain text: no placeholder (3.11.5), no embedded link (3.11.6).
func plainSARIF(t *testing.T, text string) {
	t.Helper()
	for _, r := range valid(t, text).Results {
		messages := []string{*r.Message.Text}
		for _, l := range r.RelatedLocations {
			messages = append(messages, *l.Message.Text)
		}
		for _, s := range r.Suppressions {
			messages = append(messages, *s.Justification)
		}
		for _, m := range messages {
			if rest := strings.NewReplacer("{{", "", "}}", "").Replace(m); strings.ContainsAny(rest, "{}") || strings.Contains(rest, "](") {
				t.Errorf("a message has a placeholder or a link: %q", m)
			}
		}
		if uri := *r.Locations[0].PhysicalLocation.ArtifactLocation.URI; strings.Contains(strings.Split(uri, "/")[0], ":") || strings.Contains(uri, " ") {
			t.Errorf("%q is not relative to the repository", uri)
		}
	}
}

// TestSARIFOfEveryRule writes the findings of every rule's failing example.
func TestSARIFOfEveryRule(t *testing.T) {
	t.Parallel()
	for _, rule := range rules.All() {
		page, _ := rules.PageOf(rule.Name)
		b := check(t, "plant.hcl", page.Given+"\n"+page.Fails)
		var w strings.Builder
		if err := report.SARIF(&w, b); err != nil {
			t.Fatal(err)
		}
		run := valid(t, w.String())
		if *run.ColumnKind != "unicodeCodePoints" || len(run.Tool.Driver.Rules) != len(rules.All()) {
			t.Errorf("%s: columns %s, %d rules", rule.Name, *run.ColumnKind, len(run.Tool.Driver.Rules))
		}
		if want := len(b.Reports[0].Findings) + len(b.Reports[0].Waived); len(run.Results) != want {
			t.Errorf("%s: %d results, want %d", rule.Name, len(run.Results), want)
		}
		for _, r := range run.Results {
			if got := *run.Tool.Driver.Rules[r.RuleIndex].ID; got != *r.RuleID {
				t.Errorf("%s: rule index %d is %s", *r.RuleID, r.RuleIndex, got)
			}
			if at := r.Locations[0].PhysicalLocation; *at.ArtifactLocation.URIBaseID != "%SRCROOT%" || *at.ArtifactLocation.URI != "plant.hcl" {
				t.Errorf("%s: at %v", *r.RuleID, *at.ArtifactLocation.URI)
			}
		}
	}
}

// TestSARIFStates shows what became of findings: waived, new, worse, as before,
// gone. The words are those of SARIF 2.1.0, 3.27.24; what is gone is no mistake
// to a service that does not look at them (3.27.9, 3.27.10).
func TestSARIFStates(t *testing.T) {
	t.Parallel()
	b := check(t, "plant.hcl", misused("1A"))
	b.Compared = true
	found := b.Reports[0].Findings
	found[0].Introduced = true
	found[1].Introduced, found[1].Worse = true, true
	gone := found[2]
	gone.Record = "gone"
	b.Reports[0].Gone = []lint.Finding{gone}
	var w strings.Builder
	if err := report.SARIF(&w, b); err != nil {
		t.Fatal(err)
	}
	states := make(map[string]int)
	for _, r := range valid(t, w.String()).Results {
		states[*r.BaselineState]++
		if absent := *r.BaselineState == "absent"; absent != (r.Kind == "pass") || absent != (r.Level == "none") {
			t.Errorf("%s: kind %s, level %s", *r.BaselineState, r.Kind, r.Level)
		}
		for _, s := range r.Suppressions {
			states[*s.Kind+" "+*s.Status+" "+*s.Justification]++
		}
	}
	want := map[string]int{
		"new": 1, "updated": 1, "absent": 1, "unchanged": len(found) + len(b.Reports[0].Waived) - 2,
		"external accepted waiver w: 1A": 1,
	}
	if d := cmp.Diff(want, states); d != "" {
		t.Error(d)
	}
}

// TestSARIFOfAStateAlone says nothing of states where nothing was compared.
func TestSARIFOfAStateAlone(t *testing.T) {
	t.Parallel()
	b := check(t, "plant.hcl", misused("1A"))
	b.Reports[0].Gone = b.Reports[0].Findings[:1]
	var w strings.Builder
	if err := report.SARIF(&w, b); err != nil {
		t.Fatal(err)
	}
	for _, r := range valid(t, w.String()).Results {
		if r.BaselineState != nil {
			t.Errorf("%s is %s", *r.RuleID, *r.BaselineState)
		}
	}
}

// TestSARIFPlaces puts a mistake behind characters that take several bytes and
// several UTF-16 units, in a folder whose name needs escapes (RFC 3986).
func TestSARIFPlaces(t *testing.T) {
	t.Parallel()
	b := check(t, "plant.hcl", "plant \"p\" {\n  standard = \"TIA-568\"\n}\n",
		"dach geschoß/10:30 #1%.hcl", "space \"🏢\" { floor = 7.5 }\n")
	var w strings.Builder
	if err := report.SARIF(&w, b); err != nil {
		t.Fatal(err)
	}
	for _, r := range valid(t, w.String()).Results {
		at := r.Locations[0].PhysicalLocation
		if *r.RuleID != "record-value" {
			continue
		}
		// The value is the 21st code point, the 22nd UTF-16 unit, the 24th byte.
		if got, want := *at.ArtifactLocation.URI, "dach%20gescho%C3%9F/10:30%20%231%25.hcl"; got != want || *at.Region.StartColumn != 21 {
			t.Errorf("at %s, column %d; want %s, column 21", got, *at.Region.StartColumn, want)
		}
		return
	}
	t.Errorf("no finding about the value:\n%s", w.String())
}

// TestSeveralPlants writes two plants into one document.
func TestSeveralPlants(t *testing.T) {
	t.Parallel()
	b := check(t, "a/plant.hcl", misused("1A"))
	other := batch(t, plant.Build("b", []*schema.File{schema.NewReader().ReadFile("b/plant.hcl", strings.Replace(misused("1A"), `plant "1A"`, `plant "2A"`, 1))}))
	b.Reports = append(b.Reports, other.Reports...)
	forms := make(map[string]string)
	for name, write := range map[string]func(*strings.Builder) error{
		"sarif": func(w *strings.Builder) error { return report.SARIF(w, b) },
		"junit": func(w *strings.Builder) error { return report.JUnit(w, b) },
		"json":  func(w *strings.Builder) error { return report.JSON(w, b) },
	} {
		var w strings.Builder
		if err := write(&w); err != nil {
			t.Fatal(err)
		}
		forms[name] = w.String()
	}
	each := len(b.Reports[0].Findings) + len(b.Reports[0].Waived)
	prints := make(map[string]bool)
	for _, r := range valid(t, forms["sarif"]).Results {
		prints[r.PartialFingerprints["homerunFinding/v1"]] = true
	}
	if len(prints) != 2*each {
		t.Errorf("%d fingerprints for twice %d findings", len(prints), each)
	}
	if n := strings.Count(forms["junit"], "<testsuite "); n != 2 {
		t.Errorf("%d test suites, want 2", n)
	}
	dec := json.NewDecoder(strings.NewReader(forms["json"]))
	for _, want := range []*lint.Report{b.Reports[0], b.Reports[1]} {
		var doc struct {
			Plant string `json:"plant"`
		}
		if err := dec.Decode(&doc); err != nil || doc.Plant != want.Plant.Name() {
			t.Errorf("plant %q, error %v; want %q", doc.Plant, err, want.Plant.Name())
		}
	}
}
