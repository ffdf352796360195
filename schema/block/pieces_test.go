package block_test

import (
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"homerun/schema/block"
)

// pieces are what files are made of, and what they are spoiled with.
var pieces = []string{
	"a", "b", "space", "run", `"1A"`, `"x"`, `""`, "{", "}", "{\n", "}\n", "\n", "\n", "\r\n", "\r", " ", "  ", "\t", "=", " = ", "==", "=>", "[", "]", ",", "1", "-1", "41.5", "-", "true", "null",
	"# c\n", "// c\n", "/* c */", "/* c\n */", "/*", "*/", "#", `"`, "'", "<<X\n", "X\n", "<<-X\r\n", "<<", "${", "%{", "$${", "$", "%", `\`, `\"`, `\n`, `\u0007`, `"${a}"`, `"\\"`,
	"<<<<<<< h\n", "=======\n", ">>>>>>> t\n", "||||||| b\n", "(", ")", "?", ":", "*", "!", ".", ";", "“", "é", "e\u0301", "\u00a0", "\ufeff", "\xff", "\x00", "\u0085",
	"a = 1\n", "b = \"x\"\n", "c = [\"x\"]\n", "d {\n", "run \"x\" {\n", "space \"1A\" {\n  a = 1\n}\n", "e { f = 1 }\n", "\n}\n",
}

// TestReadPieces holds files put together from pieces, and real files with
// pieces put in or taken out, against the reference. Neighbours matter more than
// single bytes, so this finds what a fuzzer of bytes takes long to find.
func TestReadPieces(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(568, 606))
	rounds := 6000
	for range rounds {
		var src strings.Builder
		for range 1 + random.IntN(14) {
			src.WriteString(pieces[random.IntN(len(pieces))])
		}
		checkRead(t, src.String())
		checkRead(t, "space \"1A\" {\n"+src.String()+"\n}\n")
	}
	for _, name := range []string{"testdata/plant.hcl", "testdata/odd.hcl", "testdata/crlf.hcl"} {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for range rounds / 20 {
			checkRead(t, spoiled(random, string(text)))
		}
	}
}

// spoiled puts one piece into a text, or takes some bytes out.
func spoiled(random *rand.Rand, text string) string {
	at := random.IntN(len(text))
	if random.IntN(2) == 0 {
		return text[:at] + text[min(len(text), at+1+random.IntN(4)):]
	}
	return text[:at] + pieces[random.IntN(len(pieces))] + text[at:]
}

// checkRead holds one file against the reference.
func checkRead(t *testing.T, src string) {
	t.Helper()
	got, problems := read(t, src)
	want, valid, literal := referTo(t, src)
	literal = literal && nesting(src) <= block.MaxDepth
	if literal != (len(problems) == 0) {
		t.Fatalf("%q\nthe reference says valid %v, literal %v; problems: %+v", src, valid, literal, problems)
	}
	if diff := cmp.Diff(want, got, cmpopts.EquateEmpty()); literal && diff != "" {
		t.Fatalf("%q\nblocks (-reference +read):\n%s", src, diff)
	}
}
