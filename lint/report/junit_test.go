package report_test

import (
	"encoding/xml"
	"os/exec"
	"strings"
	"testing"

	"homerun/lint"
	"homerun/lint/report"
)

// plainJUnit counts the elements of a document: a text that is taken for markup
// makes more of them, or none at all.
func plainJUnit(t *testing.T, text string, b report.Batch) {
	t.Helper()
	count := make(map[string]int)
	dec := xml.NewDecoder(strings.NewReader(text))
	for {
		token, err := dec.Token()
		if token == nil {
			if err.Error() != "EOF" {
				t.Fatal(err)
			}
			break
		}
		if start, ok := token.(xml.StartElement); ok {
			count[start.Name.Local]++
		}
	}
	r := b.Reports[0]
	found := make(map[string]bool)
	for _, f := range append(append([]lint.Finding(nil), r.Findings...), r.Waived...) {
		found[f.Rule] = true
	}
	want := map[string]int{
		"testsuites": 1, "testsuite": 1, "failure": r.Count(lint.Nonconformity), "skipped": len(r.Waived), "system-out": r.Count(lint.Observation),
		"testcase": len(r.Findings) + len(r.Waived) + len(b.Rules) - len(found),
	}
	for name, n := range count {
		if n != want[name] {
			t.Errorf("%d elements %s, want %d", n, name, want[name])
		}
	}
}

// TestJUnitWithXmllint has another parser read the document and count.
func TestJUnitWithXmllint(t *testing.T) {
	t.Parallel()
	xmllint, err := exec.LookPath("xmllint")
	if err != nil {
		t.Skip("xmllint is not here")
	}
	b := check(t, "plant.hcl", misused("]]><failure/>&x;"))
	var w strings.Builder
	if err = report.JUnit(&w, b); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(xmllint, "--nonet", "--xpath",
		`concat(count(//failure)," ",/testsuites/@failures," ",/testsuites/testsuite/@failures," ",count(//testcase)," ",/testsuites/@tests)`, "-")
	cmd.Stdin = strings.NewReader(w.String())
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	n := strings.Fields(string(out))
	if len(n) != 5 || n[0] == "0" || n[0] != n[1] || n[0] != n[2] || n[3] != n[4] {
		t.Errorf("failures %v", n)
	}
}

// TestJUnitOfAChange fails only what the change brought.
func TestJUnitOfAChange(t *testing.T) {
	t.Parallel()
	b := check(t, "plant.hcl", misused("1A"))
	b.Compared, b.IntroducedOnly = true, true
	for i := range b.Reports[0].Findings {
		if f := &b.Reports[0].Findings[i]; f.Severity == lint.Nonconformity {
			f.Introduced = true
			break
		}
	}
	var w strings.Builder
	if err := report.JUnit(&w, b); err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(w.String(), "<failure"); n != 1 {
		t.Errorf("%d failures, want the one that is new", n)
	}
}
