package report_test

import (
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"homerun/lint"
	"homerun/lint/report"
	"homerun/lint/rules"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// hostile returns the corpus: texts that try to be taken for something else,
// by what they try, and one that no JSON can hold.
func hostile(t *testing.T) map[string]string {
	t.Helper()
	content, err := os.ReadFile("../../testdata/hostile/texts.json")
	if err != nil {
		t.Fatal(err)
	}
	texts := make(map[string]string)
	if err := json.Unmarshal(content, &texts); err != nil {
		t.Fatal(err)
	}
	texts["no UTF-8"] = "1A\xff\xfe\x80-A07"
	return texts
}

// misused are records with one text wherever a text can be, so that findings of
// many rules name it.
func misused(text string) string {
	l := schema.Literal(text)
	if !utf8.ValidString(text) {
		l = `"` + text + `"`
	}
	return "plant " + l + " {\n  standard = \"TIA-568\"\n}\n" +
		"space " + l + " {\n  kind = " + l + "\n  title = " + l + "\n}\n" +
		"space " + l + " {\n  kind = \"corridor\"\n}\n" +
		"cable \"c\" {\n  category = \"5\"\n}\n" +
		"panel \"p\" {\n  space = " + l + "\n  ports = 2\n}\n" +
		"run \"r\" {\n  cable = \"c\"\n  from = " + l + "\n  to = \"p:7\"\n  length = \"120 m\"\n  route = [" + l + "]\n}\n" +
		"run \"s\" {\n  cable = \"c\"\n  from = \"p:1\"\n  to = \"p:2\"\n  length = \"120 m\"\n}\n" +
		"waiver \"w\" {\n  rule = \"length-permanent-link\"\n  records = [\"s\", " + l + "]\n  reason = " + l + "\n  granted = " + l + "\n  expires = \"2027-01-01\"\n}\n" +
		"policy \"q\" {\n  rule = " + l + "\n  reason = " + l + "\n  severity = " + l + "\n}\n"
}

// check lints files, path and text in turn.
func check(t *testing.T, files ...string) report.Batch {
	t.Helper()
	reader := schema.NewReader()
	var read []*schema.File
	for pair := range slices.Chunk(files, 2) {
		read = append(read, reader.ReadFile(pair[0], pair[1]))
	}
	return batch(t, plant.Build(".", read))
}

func batch(t *testing.T, p *plant.Plant) report.Batch {
	t.Helper()
	today, ok := unit.NewDate(2026, 6, 15)
	if !ok {
		t.Fatal("no such day")
	}
	found, err := lint.Run(p, rules.All(), lint.Options{Today: today})
	if err != nil {
		t.Fatal(err)
	}
	return report.Batch{Reports: []*lint.Report{found}, Rules: rules.All(), Explain: what, Revision: "worktree"}
}

func what(rule string) string {
	page, _ := rules.PageOf(rule)
	return page.What
}

// misleading finds what a reader or a terminal could take for something else:
// anything but visible characters, spaces and the ends of lines.
func misleading(text string) string {
	if !utf8.ValidString(text) {
		return "bytes that are no UTF-8"
	}
	for i, r := range text {
		if r != '\n' && !unicode.IsGraphic(r) || unicode.Is(unicode.Cf, r) || unicode.In(r, unicode.Zl, unicode.Zp) {
			return strings.ToValidUTF8(text[max(0, i-40):i], "") + " then " + string(unicode.ReplacementChar) + " for " + schema.Printable(string(r))
		}
	}
	return ""
}

// everyForm writes a batch in every form there is.
func everyForm(t *testing.T, b report.Batch) map[string]string {
	t.Helper()
	forms := make(map[string]string)
	for name, write := range map[string]func(*strings.Builder) error{
		"text": func(w *strings.Builder) error {
			return report.Text(w, b.Reports[0], report.TextOptions{Revision: b.Revision})
		},
		"json":    func(w *strings.Builder) error { return report.JSON(w, b) },
		"sarif":   func(w *strings.Builder) error { return report.SARIF(w, b) },
		"junit":   func(w *strings.Builder) error { return report.JUnit(w, b) },
		"quality": func(w *strings.Builder) error { return report.Quality(w, b) },
		"annotations": func(w *strings.Builder) error {
			return report.Annotations(w, b, report.TextOptions{Revision: b.Revision})
		},
	} {
		var w strings.Builder
		if err := write(&w); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		forms[name] = w.String()
	}
	return forms
}

// TestHostileTexts puts every text of the corpus into records and the names of
// files, and holds every form against it.
func TestHostileTexts(t *testing.T) {
	t.Parallel()
	for name, text := range hostile(t) {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			file := strings.ReplaceAll(text, "\x00", "") + ".hcl" // no file is called so
			b := check(t, "plant.hcl", misused(text), file, "space \"1A\" {\n  flor = 1\n")
			if len(b.Reports[0].Findings) < 5 {
				t.Fatalf("only %d findings: the records are no test", len(b.Reports[0].Findings))
			}
			b.Compared, b.Reports[0].Gone = true, slices.Clone(b.Reports[0].Findings)
			forms := everyForm(t, b)
			for form, out := range forms {
				if bad := misleading(out); bad != "" {
					t.Errorf("%s: %s", form, bad)
				}
			}
			plainSARIF(t, forms["sarif"])
			plainJUnit(t, forms["junit"], b)
			plainLog(t, forms["annotations"])
			for _, form := range []string{"json", "sarif", "quality"} {
				if !json.Valid([]byte(forms[form])) || strings.ContainsAny(forms[form], "<>&") {
					t.Errorf("%s is no JSON, or holds markup", form)
				}
			}
		})
	}
}
