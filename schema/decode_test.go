package schema_test

import (
	"fmt"
	"strings"
	"testing"

	"homerun/schema"
	"homerun/schema/unit"
)

// TestMistakes reads one wrong record a case and compares every problem: its
// exact place, its code, its sentence and the next step. The record after it is
// always still read.
func TestMistakes(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ name, text, want string }{
		{"unknown block", `runn "R1" {
}`, `1:1 unknown-block: "runn" is not a kind of record | did you mean run?`},
		{"inner block at the top", `crossing "W1" {
}`, `1:1 unknown-block: "crossing" is not a kind of record | crossing stands inside another record: see explain crossing`},
		{"unknown field", `run "R1" {
  lenght = "2 m"
}`, `2:3 unknown-field: a run has no field "lenght" | did you mean length?`},
		{"block as a field", `pathway "P" {
  kind    = "tray"
  through = []
  length  = "2 m"
  power   = "3"
}`, `5:3 unknown-field: a pathway has no field "power" | power is a block: write power {`},
		{"record inside another", `run "R1" {
  cord "C1" {
  }
}`, `2:3 unknown-block: a run holds no "cord" | close the run first: a cord stands by itself`},
		{"missing unit", `run "R1" {
  length = 40
}`, `2:12 value: length: 40 has no unit | write "41.5 m" or "136 ft"`},
		{"missing unit in a text", `run "R1" {
  length = "40"
}`, `2:12 value: length needs a unit | write "40 m" or "40 ft"`},
		{"negative length", `run "R1" {
  length = "-40 m"
}`, `2:12 value: length: "-40 m" is below zero | write it without the minus`},
		{"unknown unit", `run "R1" {
  length = "40 feet"
}`, `2:12 value: length unit "feet" is not known | write "40 ft"`},
		{"count in quotes", `rack "K" {
  space = "1A"
  units = "42"
}`, `3:11 value: units: a whole number is meant here, not a text | write 42 without the quotes`},
		{"fraction of a count", `rack "K" {
  space = "1A"
  units = 4.5
}`, `3:11 value: units: 4.5 is not a whole number that fits here | write a whole number from 0 to 2147483647`},
		{"enormous number", `rack "K" {
  space = "1A"
  units = 1e99999999
}`, `3:11 value: units: 1e99999999 is not a whole number that fits here | write a whole number from 0 to 2147483647`},
		{"word", `space "1A" {
  kind = "work-aera"
}`, `2:10 value: kind: "work-aera" is not a word for this field | did you mean "work-area"?`},
		{"list expected", `bundle "B" {
  route = "1-T-04"
}`, `2:11 value: route: a list is meant here | write route = ["1-T-04"]`},
		{"port without a number", `run "R1" {
  from = "1A-A"
}`, `2:10 value: from: "1A-A" names no port | write the label, a colon and the port number: "1A-A:07"`},
		{"port row backwards", `run "R1" {
  from = "1A-F:12-1"
}`, `2:10 value: from: the row of ports 12-1 runs backwards | write 1-12`},
		{"missing field", `space "1A" {
}`, `1:1 missing-field: 1A: kind is missing | add kind: what the space is`},
		{"no label", `space {
  kind = "corridor"
}`, `1:1 label: this space has no label | write the identifier on the wall after the word: space "1A" {`},
		{"two labels", `space "1A" "1B" {
  kind = "corridor"
}`, `1:12 label: a space takes one label | take this word out`},
		{"label with a newline", `space "1A\n" {
  kind = "corridor"
}`, `1:7 label: label "1A\n" begins or ends with a space | write it as it is printed on the wall`},
		{"label with an escape character", `space "1\u001bA" {
  kind = "corridor"
}`, `1:7 label: label "1\x1bA" holds a character that can not be printed | write it as it is printed on the wall`},
		{"listing", `cable "c" {
  listing = "CMQ"
}`, `2:13 value: listing: "CMQ" can not be read | write the listing as printed on the jacket, such as CMP, CMR, CM, CL2P-LP(0.5A), OFNR or CATVP`},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			f := schema.NewReader().ReadFile("a.hcl", c.text+"\n\nrack \"LAST\" {\n  space = \"1A\"\n}\n")
			var got []string
			for _, p := range f.Problems {
				got = append(got, fmt.Sprintf("%d:%d %s: %s | %s", p.At.Line, p.At.Column, p.Code, p.Message, p.Next))
			}
			if strings.Join(got, "\n") != c.want {
				t.Errorf("got:\n%s\nwant:\n%s", strings.Join(got, "\n"), c.want)
			}
			if n := len(f.Entries); n == 0 || f.Entries[n-1].Label != "LAST" {
				t.Error("the record after the mistake was not read")
			}
		})
	}
}

func TestUnknownValueIsNotZero(t *testing.T) {
	t.Parallel()
	f := schema.NewReader().ReadFile("a.hcl", "run \"R1\" {\n  length = \"long\"\n}\nrun \"R2\" {\n}\n")
	for _, e := range f.Entries {
		if length, known := schema.RunLength.In(e.Record); known {
			t.Errorf("%s: length %v is taken for known", e.Label, length)
		}
	}
}

func TestSameTextIsTheSameRecord(t *testing.T) {
	t.Parallel()
	const text = "rack \"K\" {\n  space = \"1A\"\n}\n"
	reader := schema.NewReader()
	a := reader.ReadFile("a.hcl", text)
	b := reader.ReadFile("b.hcl", "# moved down\n\n"+text)
	if a.Entries[0].Record != b.Entries[0].Record {
		t.Error("the same block of text was read twice")
	}
	if at := b.Entries[0].Where(schema.RackSpace.Field); at.Path != "b.hcl" || at.Line != 4 || at.Column != 11 {
		t.Errorf("the moved record states its space at %+v", at)
	}
}

func TestQuantitiesMixUnits(t *testing.T) {
	t.Parallel()
	f := schema.NewReader().ReadFile("a.hcl", "run \"R1\" {\n  length = \"100 ft\"\n}\nrun \"R2\" {\n  length = \"30.48 m\"\n}\n")
	a, _ := schema.RunLength.In(f.Entries[0].Record)
	b, _ := schema.RunLength.In(f.Entries[1].Record)
	// The international foot is 0.3048 m exactly (ISO 80000-3).
	if a != b || a == 0 {
		t.Errorf("100 ft is %d nm, 30.48 m is %d nm", a, b)
	}
}

func TestFolders(t *testing.T) {
	t.Parallel()
	plants, strays := schema.Folders([]string{"b/runs/x.hcl", "b/plant.hcl", "b/annexe/plant.hcl", "b/annexe/Y.HCL", "c/z.hcl", "b/notes.txt"})
	if got := fmt.Sprint(plants, strays); got != "[{b [b/plant.hcl b/runs/x.hcl]} {b/annexe [b/annexe/Y.HCL b/annexe/plant.hcl]}] [c/z.hcl]" {
		t.Errorf("folders: %s", got)
	}
}

// TestLanguageIsWhole holds the table of kinds to its own rules.
func TestLanguageIsWhole(t *testing.T) {
	t.Parallel()
	for _, k := range schema.Kinds() {
		for _, kind := range append([]*schema.Kind{k}, k.Blocks...) {
			seen := make(map[string]bool)
			if kind.Doc == "" || kind.Plural == "" {
				t.Errorf("%s: no doc or plural", kind.Name)
			}
			for _, f := range kind.Fields {
				switch {
				case seen[f.Name]:
					t.Errorf("%s.%s: defined twice", kind.Name, f.Name)
				case f.Doc == "":
					t.Errorf("%s.%s: no doc", kind.Name, f.Name)
				case f.Type == schema.Word && len(f.Words) == 0:
					t.Errorf("%s.%s: no words", kind.Name, f.Name)
				case f.Form() == "":
					t.Errorf("%s.%s: no form", kind.Name, f.Name)
				}
				for _, to := range f.Kinds {
					if _, ok := schema.KindNamed(to); !ok {
						t.Errorf("%s.%s: refers to %s, which is no kind", kind.Name, f.Name, to)
					}
				}
				seen[f.Name] = true
			}
		}
	}
}

func TestPrintable(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]string{
		"1A-A07":         "1A-A07",
		"Büro 2":         "Büro 2",
		"\x1b[31mred":    `\x1b[31mred`,
		"a\nb":           `a\nb`,
		"a\u202eb":       `a\u202eb`,
		"a\u200bb":       `a\u200bb`,
		"\xff":           `\xff`,
		"NUL\x00":        `NUL\x00`,
		"non\u00a0break": "non\u00a0break",
	} {
		if got := schema.Printable(text); got != want {
			t.Errorf("Printable(%q) = %q, want %q", text, got, want)
		}
	}
}

// FuzzReadFile holds the reading of a file to never panicking and to places
// that lie in the file.
func FuzzReadFile(f *testing.F) {
	f.Add("plant \"p\" {\n  standard = \"TIA-568\"\n}\n")
	f.Add("bundle \"B\" {\n  route = [\"P\"]\n  run \"R\" {\n    from = \"A:1-3\"\n    length = \"2 ft\"\n  }\n}\n")
	f.Add("pathway \"P\" {\n power {\n circuits = 4\n }\n}")
	f.Fuzz(func(t *testing.T, text string) {
		file := schema.NewReader().ReadFile("f.hcl", text)
		lines := strings.Count(text, "\n") + 1
		for _, p := range file.Problems {
			if p.At.Line < 1 || p.At.Line > lines || p.At.Column < 1 || p.Message == "" {
				t.Errorf("problem at %+v of %d lines: %q", p.At, lines, p.Message)
			}
		}
		for _, e := range file.Entries {
			if at := e.Start(); at.Line < 1 || at.Line > lines {
				t.Errorf("record at %+v of %d lines", at, lines)
			}
		}
	})
}

// TestPortsArePrintedAsWritten: zeros before a port stay in print, since they stand on
// the wall, and do not make it another port.
func TestPortsArePrintedAsWritten(t *testing.T) {
	t.Parallel()
	port := func(text string) *schema.Value {
		t.Helper()
		f := schema.NewReader().ReadFile("r.hcl", "run \"r\" {\n  from = "+schema.Literal(text)+"\n}\n")
		if len(f.Problems) > 0 || len(f.Entries) != 1 {
			t.Fatal(text, f.Problems)
		}
		return f.Entries[0].Own("from")
	}
	for text, want := range map[string]string{"1A-A:7": "1A-A:7", "1A-A:07": "1A-A:07", "1A-F:001-012": "1A-F:001-012", "1A-F:01-2": "1A-F:01-02", "x:00000000000000007": "x:0000000007"} {
		if got := port(text).Show(unit.Metric); got != want {
			t.Errorf("%s is printed as %s, want %s", text, got, want)
		}
	}
	if a, b := port("1A-A:7"), port("1A-A:07"); !a.Same(b) {
		t.Error("1A-A:7 and 1A-A:07 are two ports")
	}
}
