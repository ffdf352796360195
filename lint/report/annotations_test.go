package report_test

import (
	"fmt"
	"strings"
	"testing"

	"homerun/lint"
	"homerun/lint/report"
)

// command reads a line of a build log as a hosting service does: after any
// space two colons, the command, its properties, two colons, the text. The
// service's older form stands in number signs and brackets anywhere in a line.
func command(line string) (name string, properties map[string]string, text string, is bool) {
	rest, is := strings.CutPrefix(strings.TrimLeft(line, " \t"), "::")
	if !is {
		return "", nil, "", strings.Contains(line, "##[") || strings.Contains(line, "##vso[")
	}
	head, text, _ := strings.Cut(rest, "::")
	name, list, _ := strings.Cut(head, " ")
	properties = make(map[string]string)
	for part := range strings.SplitSeq(list, ",") {
		key, value, _ := strings.Cut(part, "=")
		properties[key] = strings.NewReplacer("%3A", ":", "%2C", ",", "%0A", "\n", "%0D", "\r", "%25", "%").Replace(value)
	}
	return name, properties, strings.NewReplacer("%0A", "\n", "%0D", "\r", "%25", "%").Replace(text), true
}

// plainLog holds a build log against commands that nobody meant.
func plainLog(t *testing.T, log string) {
	t.Helper()
	n := 0
	for line := range strings.Lines(log) {
		name, properties, text, is := command(strings.TrimSuffix(line, "\n"))
		if !is {
			continue
		}
		n++
		if name != "error" && name != "warning" || properties["file"] == "" || properties["line"] == "" || properties["title"] == "" || text == "" || len(properties) > 5 {
			t.Errorf("forged, or spoilt: %q", line)
		}
	}
	if n == 0 || n > 10 {
		t.Errorf("%d commands, want one to ten", n)
	}
}

// manyRacks are records with more mistakes than a service annotates, the
// observations first.
func manyRacks(n int) string {
	var b strings.Builder
	b.WriteString("plant \"p\" {\n  standard = \"TIA-568\"\n}\n")
	for i := range n {
		fmt.Fprintf(&b, "cable \"c%02d\" {\n  category = \"5\"\n}\nrun \"r%02d\" {\n  cable = \"c%02d\"\n}\n", i, i, i)
	}
	for i := range n {
		fmt.Fprintf(&b, "space \"s%02d\" {\n  kind = \"no such: kind, 100%%\"\n}\n", i)
	}
	return b.String()
}

// TestAnnotations shows the ten worst, and all of them in the log.
func TestAnnotations(t *testing.T) {
	t.Parallel()
	b := check(t, "plant.hcl", manyRacks(12), "100% wahr, ja:nein.hcl", "space \"1A\" {\n  kind = \"corridor\"\n  flor = \"1\"\n}\n")
	var w strings.Builder
	if err := report.Annotations(&w, b, report.TextOptions{Revision: "working tree", Most: 3}); err != nil {
		t.Fatal(err)
	}
	total := len(b.Reports[0].Findings)
	if total <= 12 || b.Reports[0].Count(lint.Observation) == 0 {
		t.Fatalf("only %d findings, %d observations", total, b.Reports[0].Count(lint.Observation))
	}
	shown := make(map[string]int)
	files := make(map[string]int)
	for line := range strings.Lines(w.String()) {
		if name, properties, _, is := command(line); is {
			shown[name]++
			files[properties["file"]]++
		}
	}
	if shown["error"] != 10 || shown["warning"] != 0 {
		t.Errorf("annotated %v, want ten errors", shown)
	}
	if files["100% wahr, ja:nein.hcl"] != 1 {
		t.Errorf("files %v", files)
	}
	if want := fmt.Sprintf("\n10 of %d findings are annotated, the worst first; all of them are listed here\n", total); !strings.Contains(w.String(), want) {
		t.Errorf("no line %q", want)
	}
	for _, f := range b.Reports[0].Findings {
		if place := "\n" + report.Place(f.At) + ":"; !strings.Contains(w.String(), place) {
			t.Errorf("the log does not list %s", place)
		}
	}
}

// TestAnnotationsOfAChange annotates only what the change brought.
func TestAnnotationsOfAChange(t *testing.T) {
	t.Parallel()
	b := check(t, "plant.hcl", manyRacks(3))
	b.Compared, b.IntroducedOnly = true, true
	var last *lint.Finding
	for i := range b.Reports[0].Findings {
		if f := &b.Reports[0].Findings[i]; f.Severity == lint.Nonconformity {
			last = f
		}
	}
	last.Introduced = true
	var w strings.Builder
	if err := report.Annotations(&w, b, report.TextOptions{Revision: "working tree", IntroducedOnly: true}); err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(w.String(), "::error "); n != 1 || strings.Contains(w.String(), "::warning ") {
		t.Errorf("want one annotation:\n%s", w.String())
	}
}
