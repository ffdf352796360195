package block_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"homerun/schema/block"
)

// seeds are texts from which the fuzzer starts: the files of testdata, and
// everything that was ever hard.
func seeds(f *testing.F) {
	f.Helper()
	files, err := filepath.Glob("testdata/*.hcl")
	if err != nil || len(files) == 0 {
		f.Fatal("no seeds in testdata", err)
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text))
	}
	for _, text := range hard {
		f.Add(text)
	}
}

var hard = []string{
	"", "\ufeffspace \"1A\" {\n}\n", "space \"1A\" {}", "space {\n}", "space \"1A\" \"B\" { a = 1 }\n", "space x {\n}\n",
	"a = 1\n", "a \"b\" {\n c = \"${d}\"\n}\n", "a \"b\" {\n c = <<X\nd\nX\n}\n", "a \"b\" {\n c = [1]\n}\n", "a \"b\" {\n c = -1\n d = - 1\n e = --1\n}",
	"a \"b\" {\n c = \"50%\"\n d = \"$\"\n e = \"%%{x}\"\n f = \"$$${x}\"\n g = \"\\\"$\\\\\"\n}", "a \"b\" {\n c {\n}\nd {}\n e = 1\n}\n",
	"a \"b\" {\n c = 1\n c = 2\n}\n", "a \"b\n {\n}\n", "a \"b\"\n{\n c = 1\n}\n", "<<<<<<< x\na \"b\" {\n}\n=======\n>>>>>>> y\n",
	"a \"b\" {\n<<<<<<< x\n c = 1\n=======\n c = 2\n>>>>>>> y\n}\n", "a \"b\" {\n c = \"d\n}\ne \"f\" {\n}\n", "a \"b\" {\n\ne \"f\" {\n}\n",
	"a \"b\" {\n c = [\"d\",\n # x\n \"e\" // y\n ]\n}", "a \"b\" {\r\n c = \"d\"\r\n}\r\n", "a \"b\" {\r c = 1\r}\r", "/* x */ a \"b\" { /* y */\n}\n",
	"a \"b\" {\n} c \"d\" {\n}\n", "a \"e\u0301\" {\n c = \"e\u0301\"\n}\n", "a \"b\" {\n c = \"\x00\"\n}\n", "# \xff\na \"b\" {\n c = \"\xe9\"\n}\n",
	"a \"b\" {\n c = 1e3\n d = 007\n e = 1.\n f = 1.5.2\n}\n", "a \"b\" {\n c = true\n d = truex\n e = null\n}\n", "a \"b\" {\n c = \"\\u00b0\\n\\U0001F600\\u0007\"\n}\n",
	"é \"b\" {\n ü = 1\n}\n", "a \"b\" {\n c = { d = 1 }\n}\n", "a \"b\" {\n /* x\n y */ c = 1\n}\n", "a \"b\" {\n c = 1 /* x */\n}\n", "a \"b\" {\n c = [\n", "a \"b\" {\n d \"e\" {\n } }\n",
	"a \"b\" {\n c = [# \x93\n]\n}\n", "a \"b\" {\n c = [\"d\", // \x1b\n]\n}\n", "a \"b\" {\n c = [\"d\" # \u0085\n, \"e\"]\n}\n",
	"a \"b\" {\n c = [\"d\" \n}\ne \"f\" {\n}\n", "a \"b\" {\n c = a[*][*].*.d ? 1 : !x\n}\n",
}

// FuzzRead holds Split and Parse against the reference: a file that is valid and
// literal is read as the reference reads it, and any other has a problem.
func FuzzRead(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, src string) {
		if len(src) > 1<<16 || strings.Count(src, "(")+strings.Count(src, "[")+strings.Count(src, "{")+strings.Count(src, "-")+strings.Count(src, "!")+strings.Count(src, "?") > 2000 {
			t.Skip("the reference recurses without bounds")
		}
		checkRead(t, src)
	})
}

// read reads a file as callers do, and checks what must hold for any text.
func read(t *testing.T, src string) (blocks []*block.Block, all []block.Problem) {
	t.Helper()
	chunks, all := block.Split(src)
	checkProblems(t, src, all)
	end, line := 0, 1
	for _, c := range chunks {
		if c.Offset < end || c.Offset+len(c.Text) > len(src) || src[c.Offset:c.Offset+len(c.Text)] != c.Text {
			t.Fatalf("chunk %+v does not stand in its place", c)
		}
		line += strings.Count(src[end:c.Offset], "\n")
		if line != c.Line {
			t.Fatalf("chunk on line %d says line %d", line, c.Line)
		}
		end = c.Offset + len(c.Text)
		line += strings.Count(c.Text, "\n")
		b, problems := block.Parse(c.Text)
		checkProblems(t, c.Text, problems)
		if b == nil && len(problems) == 0 {
			t.Fatalf("no block and no problem in %q", c.Text)
		}
		all = append(all, problems...)
		if b != nil {
			checkBlock(t, b, problems)
			blocks = append(blocks, moved(b, c.Offset))
		}
	}
	return blocks, all
}

func checkProblems(t *testing.T, src string, problems []block.Problem) {
	t.Helper()
	if len(problems) > block.MaxProblems {
		t.Errorf("%d problems", len(problems))
	}
	for _, p := range problems {
		if p.Code == 0 || p.Message == "" || p.Next == "" || p.At.Start < 0 || p.At.Start > p.At.End || p.At.End > len(src) || p.Also.End > len(src) {
			t.Errorf("problem %+v in a text of %d bytes", p, len(src))
		}
		for _, sentence := range []string{p.Message, p.Next} {
			if !utf8.ValidString(sentence) || strings.ContainsFunc(sentence, unicode.IsControl) || len(sentence) > 400 {
				t.Errorf("sentence %q", sentence)
			}
		}
	}
}

// checkBlock checks that bad parts have a problem and that parts stand in order.
func checkBlock(t *testing.T, b *block.Block, problems []block.Problem) {
	t.Helper()
	if b.Bad && len(problems) == 0 {
		t.Errorf("%s is bad without a problem", b.Kind.Text)
	}
	for i, f := range b.Fields {
		if f.Bad && len(problems) == 0 || !f.Bad && f.Value.Shape == 0 {
			t.Errorf("field %+v, problems %v", f, problems)
		}
		if i > 0 && b.Fields[i-1].Name.At.Start >= f.Name.At.Start {
			t.Errorf("field %s out of order", f.Name.Text)
		}
	}
	for i, in := range b.Blocks {
		if i > 0 && b.Blocks[i-1].At.Start >= in.At.Start {
			t.Errorf("block %s out of order", in.Kind.Text)
		}
		checkBlock(t, in, problems)
	}
}

// FuzzScan holds the scanner against the parser: what it does not decline is
// the parser's block to the byte, without a problem.
func FuzzScan(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, chunk string) {
		scanned := block.Scan(chunk)
		if scanned == nil {
			return
		}
		parsed, problems := block.ParserOnly(chunk)
		if len(problems) > 0 {
			t.Fatalf("scanned what the parser refuses: %+v", problems)
		}
		if diff := cmp.Diff(parsed, scanned, cmpopts.EquateEmpty()); diff != "" {
			t.Errorf("block (-parsed +scanned):\n%s", diff)
		}
	})
}
