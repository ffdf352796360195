package block_test

import (
	"fmt"
	"strings"
	"testing"

	"homerun/schema/block"
)

// told is one problem as the tests write it. The text «between these marks» in
// a source is where the first problem is expected, {{between these}} its second
// place.
type told struct {
	name, src     string
	code          block.Code
	message, next string
	// blocks is how the file reads, in short.
	blocks string
}

// line puts one line into a cord between two good ones.
func line(text string) string {
	return "cord \"A\" {\n  from = \"x\"\n  " + text + "\n  to = \"y\"\n}\n"
}

const (
	values      = "write the value itself"
	expressions = "expressions are not allowed in records"
	sample      = `a record starts with its kind, its label and a brace: space "1A" {`
)

var fieldProblems = []told{
	{"unit without quotes", line("length = 41.5 «m»"), block.Unreadable, "the value is not in quotes", `write "41.5 m"`, `cord "A" bad [from="x" length? to="y"]`},
	{"word that starts with a digit", line("category = 6«A»"), block.Unreadable, "the value is not in quotes", `write "6A"`, `cord "A" bad [from="x" category? to="y"]`},
	{"decimal comma", line("length = 41«,»5 m"), block.Unreadable, "a number is written with a decimal comma", `write a decimal point: "41.5 m"`, `cord "A" bad [from="x" length? to="y"]`},
	{"colon", line(`«length»: "41.5 m"`), block.Unreadable, "a colon stands after length", `write an equals sign: length = "41.5 m"`, `cord "A" bad [from="x" to="y"]`},
	{"no equals sign", line(`«length "41.5 m"»`), block.Unreadable, "neither an equals sign nor a brace stands after length", `write length = "41.5 m", or a brace at the end of the line`, `cord "A" bad [from="x" length? to="y"]`},
	{"name alone", line("«length»"), block.Unreadable, "length has no value", "write an equals sign and a value after it", `cord "A" bad [from="x" to="y"]`},
	{"no value", line("length =«»"), block.Unreadable, "a value is missing", `write a value after the equals sign: name = "value"`, `cord "A" bad [from="x" length? to="y"]`},
	{"text without end", line(`length = «"41.5 m»`), block.Unclosed, "the text is not closed on its line", `add the quote " that is missing`, `cord "A" [from="x" length? to="y"]`},
	{"quote lost in a list", line(`route = ["a, "b«"]»`), block.Unclosed, "the text is not closed on its line", `add the quote " that is missing`, `cord "A" [from="x" route? to="y"]`},
	{"word", line("kind = «tray»"), block.NotLiteral, "tray is not in quotes", `write "tray"`, `cord "A" [from="x" kind? to="y"]`},
	{"word in a list", line(`route = ["a", «b»]`), block.NotLiteral, "b is not in quotes", `write "b"`, `cord "A" [from="x" route? to="y"]`},
	{"number in a list", line(`route = [«1»]`), block.NotLiteral, "an item of the list is not a text", "write every item in quotes", `cord "A" [from="x" route? to="y"]`},
	{"backslash", line(`note = "C:«\p»lans"`), block.Unreadable, "a single backslash stands in the text", `write it twice: \\p`, `cord "A" [from="x" note? to="y"]`},
	{"short escape", line(`note = "«\u12»"`), block.Unreadable, `\u12 names no character`, `write four hexadecimal digits after \u, or \\ where a backslash is meant`, `cord "A" [from="x" note? to="y"]`},
	{"single quotes", line("note = «'»x'"), block.Unreadable, "single quotes do not enclose a text", `write "`, `cord "A" bad [from="x" note? to="y"]`},
	{"curly quotes", line("note = «“»x”"), block.Unreadable, "a typographic quote stands in place of a straight one", `write "`, `cord "A" bad [from="x" note? to="y"]`},
	{"no-break space", line("note =«\u00a0»\"x\""), block.Unreadable, "a no-break space stands in place of a space", "write a space", `cord "A" bad [from="x" note? to="y"]`},
	{"semicolon", line(`note = "x"«;»`), block.Unreadable, "a semicolon does not end a field", "take it out; each field has a line of its own", `cord "A" bad [from="x" note? to="y"]`},
	{"comma", line(`note = "x"«,»`), block.Unreadable, "a comma stands after the field", "take it out; each field has a line of its own", `cord "A" bad [from="x" note? to="y"]`},
	{"name in quotes", line(`«"»note" = "x"`), block.Unreadable, "the name of the field is in quotes", `write it without quotes: name = "value"`, `cord "A" bad [from="x"]`},
	{"two fields", line(`a = "x" «b» = "y"`), block.Unreadable, "two fields stand on one line", "start a new line before b", `cord "A" bad [from="x" a? to="y"]`},
	{"two points", line("note = «1.2.3»"), block.Unreadable, "this is not a number", "write digits with at most one point, or a text in quotes", `cord "A" bad [from="x" note? to="y"]`},
	{"list without end", line(`route = «["a", "b"»`), block.Unreadable, "a comma is missing in the list, or its closing bracket", `write ["a", "b"]`, `cord "A" bad [from="x" route?]`},
	{"list without comma", line(`route = ["a" «"»b"]`), block.Unreadable, "a comma is missing between the items of the list", `write ["a", "b"]`, `cord "A" bad [from="x" route? to="y"]`},
	{"duplicate", "cord \"A\" {\n  {{from}} = \"x\"\n  «from» = \"z\"\n}\n", block.Duplicate, "from is written twice", "take one of the two out", `cord "A" [from="x"]`},
	{"null", line("note = «null»"), block.NotLiteral, "null is not a value", "leave the field out", `cord "A" [from="x" note? to="y"]`},
	{"template", line(`note = «"a ${b("}")} c"»`), block.NotLiteral, "the text holds an expression after ${ or %{", "write the value itself, or $${ where the characters ${ are meant", `cord "A" [from="x" note? to="y"]`},
	{"heredoc", line("note = «<<EOT»\n  one\n  two\nEOT"), block.NotLiteral, "a text over several lines is not a value of a record", `write the text in quotes on one line, with \n where a new line is meant`, `cord "A" [from="x" note? to="y"]`},
	{"call", line(`note = «foo("x")»`), block.NotLiteral, expressions, values, `cord "A" [from="x" note? to="y"]`},
	{"sum", line("note = «1 + 2»"), block.NotLiteral, expressions, values, `cord "A" [from="x" note? to="y"]`},
	{"reference", line("note = «a.b»"), block.NotLiteral, expressions, values, `cord "A" [from="x" note? to="y"]`},
	{"condition", line("note = «a ? b : c»"), block.NotLiteral, expressions, values, `cord "A" [from="x" note? to="y"]`},
	{"group", line("note = «{ a = 1 }»"), block.NotLiteral, "a group of fields is not a value", "write a block, without the equals sign: name { ... }", `cord "A" [from="x" note? to="y"]`},
	{"control character", line("note = \"a«\x1b»[1m\""), block.ControlCharacter, "control character U+001B stands in the text", "take it out", `cord "A" [from="x" note? to="y"]`},
	{"escaped control character", line(`note = «"\u001b[1m"»`), block.ControlCharacter, "control character U+001B stands in the text", "take it out", `cord "A" [from="x" note? to="y"]`},
	{"old code page", line("note = \"«\xe9»t\xe9\""), block.NotUTF8, "byte 0xE9 is not UTF-8 text, and 1 more such", "save the file as UTF-8; it was probably saved in an older code page", `cord "A" [from="x" note? to="y"]`},
	{"comment without end", line("«/* see below»"), block.Unclosed, "the comment is not closed", "add */ where it ends, or start each line with #", `cord "A" [from="x" to="y"]`},
	{"conflict in a block", "cord \"A\" {\n  from = \"x\"\n«<<<<<<< HEAD\n  to = \"y\"\n=======\n  to = \"z\"\n>>>>>>> branch»\n}\n", block.MergeMarkers, "unresolved merge conflict", "keep the lines that are right, and take out the others and the marker lines", `cord "A" bad [from="x"]`},
}

var blockProblems = []told{
	{"one line", line("power { a = 1«,» b = 2 }"), block.Unreadable, "a block on one line holds one field only", "put each field and each brace on a line of its own", `cord "A" [from="x" to="y" power bad [a?]]`},
	{"brace below", line("power\n  «{»\n    a = 1\n  }"), block.Unreadable, "the opening brace stands on a line of its own", "put it at the end of the line above", `cord "A" [from="x" to="y" power [a="1"]]`},
	{"label without quotes", line("power «x» {\n  }"), block.UnquotedLabel, "the label x is not in quotes", `write "x"`, `cord "A" [from="x" to="y" power "x" []]`},
	{"label without end", "space «\"1A {»\n  floor = \"1\"\n}\nspace \"1B\" {\n}\n", block.Unclosed, "the text is not closed on its line", `add the quote " that is missing`, `space "1A" [floor="1"] space "1B" []`},
	{"no closing brace", "«space \"1A\" {»\n  floor = \"1\"\n\nspace \"1B\" {\n}\n", block.Unclosed, "the block is not closed", "add a closing brace on a line of its own", `space "1A" bad [floor="1"] space "1B" []`},
	{"no closing brace inside", "«bundle \"B\" {»\n  run \"1\" {\n    to = \"x\"\n}\n\nspace \"1B\" {\n}\n", block.Unclosed, "the block is not closed", "add a closing brace on a line of its own", `bundle "B" bad [run "1" [to="x"]] space "1B" []`},
	{"closing brace too many", "space \"1A\" {\n}\n«}»\nspace \"1B\" {\n}\n", block.Unreadable, "a closing brace has no opening brace", "take it out, or find the record above that is closed too early", `space "1A" [] space "1B" []`},
	{"two on one line", "space \"1A\" {\n} «space» \"1B\" {\n}\n", block.Unreadable, "a record starts on the line on which another ends", "start a new line before it", `space "1A" [] space "1B" []`},
	{"field outside", "«floor = \"1\"» # why\nspace \"1A\" {\n}\n", block.StrayField, "a field stands outside any record", `put it between the braces of a record: space "1A" { ... }`, `space "1A" []`},
	{"prose", "«to do: measure»\nspace \"1A\" {\n}\n", block.Unreadable, "this is not a record", sample, `space "1A" []`},
	{"head alone", "«space \"1A\"»\n\nspace \"1B\" {\n}\n", block.Unreadable, "this is not a record", sample, `space "1B" []`},
	{"conflict around blocks", "space \"1A\" {\n}\n«<<<<<<< HEAD\nspace \"1B\" {\n}\n=======\nspace \"1C\" {\n}\n>>>>>>> branch»\nspace \"1D\" {\n}\n", block.MergeMarkers, "unresolved merge conflict", "keep the lines that are right, and take out the others and the marker lines", `space "1A" [] space "1D" []`},
	{"old code page outside", "# caf«\xe9»\nspace \"1A\" {\n}\n", block.NotUTF8, "byte 0xE9 is not UTF-8 text", "save the file as UTF-8; it was probably saved in an older code page", `space "1A" []`},
	{"second mark", "space \"1A\" {\n}\n«\ufeff»space \"1B\" {\n}\n", block.Unreadable, "a byte order mark stands in the middle of the file", "take the invisible character out", `space "1A" []`},
	{"one mistake of two", "bundle \"B\" {\n  run \"1\" {\n    length = 41 «m»\n  }\n  run \"2\" {\n    length = \"42 m\"\n  }\n}\n", block.Unreadable, "the value is not in quotes", `write "41 m"`, `bundle "B" [run "1" bad [length?] run "2" [length="42 m"]]`},
}

// The sentences are the project's own; that there is a problem at all, and what
// is read besides, the reference of FuzzRead and TestReadPieces decides.
func TestProblems(t *testing.T) {
	t.Parallel()
	for _, test := range append(fieldProblems, blockProblems...) {
		t.Run(test.name, func(t *testing.T) {
			t.Parallel()
			src, at := unmark(t, test.src, "«", "»")
			src, also := unmark(t, src, "{{", "}}")
			if at.Start > also.Start && also.End > 0 {
				at.Start, at.End = at.Start-len("{{}}"), at.End-len("{{}}")
			}
			blocks, problems := read(t, src)
			if len(problems) != 1 {
				t.Fatalf("%d problems: %+v", len(problems), problems)
			}
			want := block.Problem{Code: test.code, At: at, Message: test.message, Next: test.next, Also: also}
			if got := inFile(src, problems[0]); got != want {
				t.Errorf("got  %+v\nwant %+v", got, want)
			}
			var short []string
			for _, b := range blocks {
				short = append(short, inShort(b))
			}
			if got := strings.Join(short, " "); got != test.blocks {
				t.Errorf("got  %s\nwant %s", got, test.blocks)
			}
		})
	}
}

// unmark takes a pair of marks out of a text and tells where they stood.
func unmark(t *testing.T, text, open, closer string) (string, block.Range) {
	t.Helper()
	before, rest, ok := strings.Cut(text, open)
	if !ok {
		return text, block.Range{}
	}
	inside, after, ok := strings.Cut(rest, closer)
	if !ok {
		t.Fatal("one mark without the other")
	}
	return before + inside + after, block.Range{Start: len(before), End: len(before) + len(inside)}
}

// inFile moves a problem of a block to where the block stands in the file.
func inFile(src string, p block.Problem) block.Problem {
	chunks, problems := block.Split(src)
	if len(problems) > 0 {
		return p
	}
	for _, c := range chunks {
		if _, problems := block.Parse(c.Text); len(problems) == 0 {
			continue
		}
		p.At.Start, p.At.End = p.At.Start+c.Offset, p.At.End+c.Offset
		if p.Also.End > 0 {
			p.Also.Start, p.Also.End = p.Also.Start+c.Offset, p.Also.End+c.Offset
		}
		break
	}
	return p
}

// inShort writes a block on one line.
func inShort(b *block.Block) string {
	head := []string{b.Kind.Text}
	for _, label := range b.Labels {
		head = append(head, fmt.Sprintf("%q", label.Text))
	}
	if b.Bad {
		head = append(head, "bad")
	}
	var parts []string
	for _, f := range b.Fields {
		if f.Bad {
			parts = append(parts, f.Name.Text+"?")
		} else {
			parts = append(parts, fmt.Sprintf("%s=%q", f.Name.Text, f.Value.Text))
		}
	}
	for _, in := range b.Blocks {
		parts = append(parts, inShort(in))
	}
	return strings.Join(head, " ") + " [" + strings.Join(parts, " ") + "]"
}

func TestManyProblems(t *testing.T) {
	t.Parallel()
	_, problems := block.Split(strings.Repeat("bad line\n", 250))
	if len(problems) != block.MaxProblems {
		t.Fatalf("%d problems", len(problems))
	}
	if got, want := problems[len(problems)-1].Message, "this is not a record, and 150 more problems follow"; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}
