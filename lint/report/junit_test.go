package report_test

import (
	"encoding/xml"
	"os"
	"os/exec"
	"path/filepath"
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

// TestJUnitIsValid holds reports, with every text of the corpus in them, against
// a schema of what strict readers take.
func TestJUnitIsValid(t *testing.T) {
	t.Parallel()
	xmllint, err := exec.LookPath("xmllint")
	if err != nil {
		t.Skip("xmllint is not here")
	}
	args := []string{"--nonet", "--noout", "--schema", "testdata/junit.xsd"}
	dir := t.TempDir()
	for name, text := range hostile(t) {
		var w strings.Builder
		if err := report.JUnit(&w, check(t, "plant.hcl", misused(text))); err != nil {
			t.Fatal(err)
		}
		file := filepath.Join(dir, strings.ReplaceAll(name, "/", "-")+".xml")
		if err := os.WriteFile(file, []byte(w.String()), 0o600); err != nil {
			t.Fatal(err)
		}
		args = append(args, file)
	}
	if out, err := exec.Command(xmllint, args...).CombinedOutput(); err != nil {
		t.Errorf("%v: %s", err, out)
	}
	// The schema can tell a report that a strict reader refuses.
	bad := exec.Command(xmllint, append(args[:4:4], "-")...)
	bad.Stdin = strings.NewReader(`<testsuites><testsuite name="a" tests="1" failures="0" errors="0"><testcase name="b" file="c"/></testsuite></testsuites>`)
	if out, err := bad.CombinedOutput(); err == nil {
		t.Errorf("the schema takes anything: %s", out)
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
