package ledger_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/schema"
	"homerun/schema/block"
	"homerun/schema/ledger"
)

const sorted = `bundle 1-B-01
bundle 1-B-01, route: [1-T-04]
pathway 1-T-04
pathway 1-T-04, kind: tray
pathway 1-T-04 power 1
pathway 1-T-04 power 1, circuits: 2
pathway 1-T-04 power 2
pathway 1-T-04 power 2, circuits: 1
run 1A-A01
run 1A-A01, bundle: 1-B-01
run 1A-A01, length: 52.5 m
`

func TestOf(t *testing.T) {
	t.Parallel()
	for name, src := range map[string]string{
		"as it is": `bundle "1-B-01" {
  route = ["1-T-04"]
  run "1A-A01" {
    length = "52.5 m"
  }
}
pathway "1-T-04" {
  kind = "tray"
  power { circuits = 2 }
  power { circuits = 1 }
}
`,
		"another layout": `# A comment.
pathway "1-T-04" {
  power {
    circuits = 2 # two
  }
  kind     = "tray"
  power { circuits = 1 }
}

bundle "1-B-01" {
  run "1A-A01" { length = "52.5 m" }
  route = [
    "1-T-04",
  ]
}`,
	} {
		if diff := cmp.Diff(sorted, ledger.Of(src)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
}

func TestWhatCanNotBeReadStays(t *testing.T) {
	t.Parallel()
	got := ledger.Of("run \"1A-A01\" {\n  length = \n}\n")
	if want := "run 1A-A01, unreadable: run \"1A-A01\" {\nrun 1A-A01, unreadable:   length = \nrun 1A-A01, unreadable: }\n"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if stray := "length = 3\n"; ledger.Of(stray) != stray {
		t.Errorf("a text without records became %q", ledger.Of(stray))
	}
}

// FuzzOf holds that no line of the list could be taken for another, and that
// nothing in it moves a cursor.
func FuzzOf(f *testing.F) {
	f.Add("run \"1A-A01\" {\n  note = \"a\\nb\\u202e\"\n  x {\n    y = [\"z\"]\n }\n}\n")
	f.Add("space \"\u202e1A\" { kind = \"\x1b[2J\" }\n")
	f.Fuzz(func(t *testing.T, src string) {
		got := ledger.Of(src)
		if _, problems := block.Split(src); len(problems) > 0 {
			if got != src {
				t.Error("a text that can not be cut into records was changed")
			}
			return
		}
		for line := range strings.SplitSeq(got, "\n") {
			if schema.Printable(line) != line {
				t.Errorf("line %q can not be printed", line)
			}
		}
	})
}
