package block_test

import (
	"slices"
	"strings"
	"testing"

	"homerun/schema/block"
)

func TestSplit(t *testing.T) {
	t.Parallel()
	const a, b = "space \"1A\" {\n  floor = \"1\"\n}", "cord \"C\" { to = \"}\" }"
	tests := []struct {
		name, src string
		chunks    []block.Chunk
	}{
		{"empty", "", nil},
		{"comments only", "# one\n/* two\n three */\n// four", nil},
		{"two", a + "\n" + b + "\n", []block.Chunk{{Text: a, Offset: 0, Line: 1}, {Text: b, Offset: 29, Line: 4}}},
		{"no line end", "\n" + a, []block.Chunk{{Text: a, Offset: 1, Line: 2}}},
		{"mark", "\ufeff" + b, []block.Chunk{{Text: b, Offset: 3, Line: 1}}},
		{"comment after", b + " # }\n" + a, []block.Chunk{{Text: b, Offset: 0, Line: 1}, {Text: a, Offset: 26, Line: 2}}},
		{"comment before", "/* { */ " + b, []block.Chunk{{Text: b, Offset: 8, Line: 1}}},
		{"indent stays", "\n\t " + b, []block.Chunk{{Text: "\t " + b, Offset: 1, Line: 2}}},
		{"CR LF", "\r\n\r\n" + b + "\r\n", []block.Chunk{{Text: b, Offset: 4, Line: 3}}},
		{"heads in the first column", "bundle \"B\" {\nrun \"1\" {\n}\nrun \"2\" {\n}\n}\n", []block.Chunk{{Text: "bundle \"B\" {\nrun \"1\" {\n}\nrun \"2\" {\n}\n}", Offset: 0, Line: 1}}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			t.Parallel()
			chunks, problems := block.Split(test.src)
			if !slices.Equal(chunks, test.chunks) || len(problems) > 0 {
				t.Errorf("got  %+v, problems %+v\nwant %+v", chunks, problems, test.chunks)
			}
		})
	}
}

// TestSplitPlace checks that the text of a block decides how it is read, and not
// where it stands.
func TestSplitPlace(t *testing.T) {
	t.Parallel()
	src := big("")
	before, _ := block.Split(src)
	after, _ := block.Split("# a line\n\n" + src)
	if len(before) != len(after) || len(before) < 5000 {
		t.Fatalf("%d chunks, then %d", len(before), len(after))
	}
	for i := range before {
		if before[i].Text != after[i].Text || before[i].Line+2 != after[i].Line || before[i].Offset+10 != after[i].Offset {
			t.Fatalf("chunk %d: %+v, then %+v", i, before[i], after[i])
		}
	}
}

// TestScannerReads checks that the records people write are in fact read by the
// fast reader.
func TestScannerReads(t *testing.T) {
	t.Parallel()
	chunks, _ := block.Split(strings.ReplaceAll(big("    # a comment\n\n    spare = true // and another\n"), "\n", "\r\n"))
	for _, c := range chunks {
		if block.Scan(c.Text) == nil {
			t.Fatalf("declined %q", c.Text)
		}
	}
}

func TestParseAlone(t *testing.T) {
	t.Parallel()
	for _, src := range []string{"", " \n", "# only a comment\n", "a = 1\n", "}", "\"", "((((", strings.Repeat("(", 100)} {
		if b, problems := block.Parse(src); b != nil || len(problems) == 0 {
			t.Errorf("%q gives %+v, problems %+v", src, b, problems)
		}
	}
	if b, problems := block.Parse("space \"1A\" {\n}\nspace \"1B\" {\n}\n"); b == nil || b.Labels[0].Text != "1A" || len(problems) != 1 {
		t.Errorf("two blocks give %+v, problems %+v", b, problems)
	}
}

func TestTooLarge(t *testing.T) {
	t.Parallel()
	b, problems := block.Parse("space \"1A\" {\n" + strings.Repeat("  # a comment\n", block.MaxBlock/14) + "}")
	if b == nil || !b.Bad || b.Labels[0].Text != "1A" || len(problems) != 1 || problems[0].Code != block.TooLarge {
		t.Errorf("block %+v, problems %+v", b, problems)
	}
	chunks, problems := block.Split(strings.Repeat("#\n", block.MaxFile/2+1))
	if len(chunks) > 0 || len(problems) != 1 || problems[0].Code != block.TooLarge {
		t.Errorf("%d chunks, problems %+v", len(chunks), problems)
	}
}
