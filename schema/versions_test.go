package schema_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/schema"
)

// blocks and gaps are what most files are put together from, and oddities what
// changes how all that follows is read. Three of the blocks go on for longer where
// there is an end for them.
var (
	blocks = []string{
		"run \"R1\" {\n  from = \"P:1\"\n  to   = \"O:1\"\n}\n", "run \"R2\" {\n  from = \"P:2\"\n}", "space \"1A\" {\n  kind = \"hall\"\n}\n", "space \"1B\" {}\n", "runn \"R\" {\r\n}\r\n",
		"bundle \"B\" {\n  run \"R3\" {\n    from = \"P:3\"\n  }\n}\n", "panel \"P\" {\n  ports = 48\n  ports = 24\n}\n", "rack \"K\" {\n  units = [\n}\n", "cord \"C\"\n{\n}\n", "cord \"C\" {\n  note = \"x }\n}\n",
		"cord \"D\" {\n  /* open\n}\n", "cord \"E\" {\n  note = <<X\n}\n", "cord \"F\" {\n<<<<<<< ours\n}\n", "cord \"G\" {\n>>>>>>> theirs\n}\n",
	}
	gaps     = []string{"\n", "\n\n", "\r\n", " ", "\t", "# a note\n", "// }\n", "/* a\n{ note */", "/*\nX\n*/\n"}
	oddities = []string{
		"# no end", "/*", "*/", "}", "{", "{\n", "\"", "<<X\n", "X\n", "  a = <<X\n", "a = 1\n", "=", "[", "]",
		"<<<<<<< ours\n", "=======\n", ">>>>>>> theirs\n", "\n*/", "\nX\n", "\n>>>>>>> theirs\n", "\ufeff", "\xff", "\x00", "\r", "é", "run \"R4\" {\n", "run \"", "run",
	}
)

func drawn(random *rand.Rand, most int) string {
	var text strings.Builder
	for range random.IntN(most) {
		from := [][]string{blocks, blocks, blocks, gaps, oddities}[random.IntN(5)]
		text.WriteString(from[random.IntN(len(from))])
	}
	return text.String()
}

// edited is a text with a part of it replaced, moved or repeated.
func edited(random *rand.Rand, text string) string {
	a, b := random.IntN(len(text)+1), random.IntN(len(text)+1)
	a, b = min(a, b), max(a, b)
	switch random.IntN(4) {
	case 0:
		return text[:a] + drawn(random, 3) + text[a:]
	case 1:
		return text[:a] + drawn(random, 4) + text[min(b, a+12):]
	case 2:
		return text[:a] + text[b:]
	}
	return text[b:] + text[a:b] + text[:a]
}

// wanted are the blocks that are read where not all are.
func wanted(block string) bool { return strings.Contains(block, "P") }

// checkVersion holds a version against the same text read as a whole, to the very
// records, and a part of its blocks against the same part of the whole text.
func checkVersion(t *testing.T, rd *schema.Reader, vs, parts *schema.Versions, text string) {
	t.Helper()
	bytes := []byte(text)
	got, part := vs.Read("r.hcl", bytes), parts.Read("r.hcl", bytes)
	clear(bytes)
	want := rd.ReadFile("r.hcl", text)
	if whole := rd.ReadPart("r.hcl", text, wanted); !slices.Equal(part.Entries, whole.Entries) {
		t.Fatalf("%q\na part read after the version before it: %+v\nread as a whole: %+v", text, part.Entries, whole.Entries)
	}
	if got.Path != want.Path || !slices.Equal(got.Entries, want.Entries) {
		t.Fatalf("%q\nread after the version before it: %+v\nread as a whole: %+v", text, got.Entries, want.Entries)
	}
	if diff := cmp.Diff(want.Problems, got.Problems); diff != "" {
		t.Fatalf("%q\nproblems (-read as a whole +read after the version before it):\n%s", text, diff)
	}
}

func TestVersionsAreReadAsWholeFiles(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(24, 48))
	for range 1500 {
		rd := schema.NewReader()
		vs, parts := rd.Versions(), rd.PartVersions(wanted)
		text := drawn(random, 12)
		for range 8 {
			checkVersion(t, rd, vs, parts, text)
			text = edited(random, text)
		}
	}
}

func FuzzVersions(f *testing.F) {
	for _, odd := range slices.Concat(blocks, gaps, oddities) {
		f.Add(blocks[0]+odd+blocks[2], blocks[0]+blocks[2], blocks[3]+odd+blocks[0])
	}
	f.Fuzz(func(t *testing.T, first, second, third string) {
		if len(first)+len(second)+len(third) > 1<<14 {
			return // short texts show it
		}
		rd := schema.NewReader()
		vs, parts := rd.Versions(), rd.PartVersions(wanted)
		for _, text := range []string{first, second, third, first, second + third, third + first, second + first} {
			checkVersion(t, rd, vs, parts, text)
		}
	})
}

// TestVersionsKeepRecords checks that what stays in a file is the same record, and
// is not even looked for: this reader forgets nearly everything.
func TestVersionsKeepRecords(t *testing.T) {
	t.Parallel()
	rd := schema.NewReader()
	rd.Bound(1)
	vs := rd.Versions()
	spaces := []string{"\n\nspace \"1\" {\n}", " # a note\nspace \"2\" {\n}", "\nspace \"3\" {\n}", "\nspace \"4\" {\n}"}
	before := vs.Read("r.hcl", []byte(strings.Join(spaces, "")+"\n"))
	for _, c := range []struct {
		what, text string
		stay       map[int]int
	}{
		{"a block changed", spaces[0] + spaces[1] + "\n\nspace \"5\" {\n}" + spaces[3] + "\n", map[int]int{0: 0, 1: 1, 3: 3}},
		{"a block put in front", "run \"R\" {\n}" + spaces[0] + spaces[1] + "\n\nspace \"5\" {\n}" + spaces[3] + "\n", map[int]int{0: 1, 1: 2, 2: 3, 3: 4}},
		{"a block added", "run \"R\" {\n}" + spaces[0] + spaces[1] + "\n\nspace \"5\" {\n}" + spaces[3] + spaces[2], map[int]int{0: 0, 1: 1, 2: 2, 3: 3, 4: 4}},
		{"two taken out", "run \"R\" {\n}" + spaces[0] + spaces[1] + spaces[2], map[int]int{0: 0, 1: 1, 2: 2, 5: 3}},
		{"a note in another form", "run \"R\" {\n}" + spaces[0] + " // a note\nspace \"2\" {\n}" + spaces[2], map[int]int{0: 0, 1: 1, 2: 2, 3: 3}},
	} {
		after := vs.Read("r.hcl", []byte(c.text))
		for i, j := range c.stay {
			if before.Entries[i].Record != after.Entries[j].Record {
				t.Errorf("%s: record %s was read again", c.what, after.Entries[j].Label)
			}
		}
		before = after
	}
}

// TestVersionsKeepRecordsThatMove checks that what a file held is the same record
// in the file that it is moved to, however long ago it was read.
func TestVersionsKeepRecordsThatMove(t *testing.T) {
	t.Parallel()
	rd := schema.NewReader()
	rd.Bound(1 << 10)
	vs := rd.Versions()
	text := []byte("space \"1\" {\n}\n\nspace \"2\" {\n}\n")
	before := vs.Read("a.hcl", text)
	for i := range 200 {
		vs.Read("other.hcl", fmt.Appendf(nil, "space \"other %d\" {\n}\n", i))
	}
	vs.Forget("a.hcl")
	after := vs.Read("b.hcl", text)
	for i := range before.Entries {
		if before.Entries[i].Record != after.Entries[i].Record {
			t.Errorf("record %s was read again", before.Entries[i].Label)
		}
	}
}
