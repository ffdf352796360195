package block_test

import (
	"fmt"
	"math/rand/v2"
	"runtime"
	"strings"
	"testing"

	"homerun/schema/block"
)

// TestHostile reads what nobody writes by accident. The parser of the language
// ends the program on some of these, or takes the square of their size; here
// each is read in a time and memory in step with its size, and has a problem.
func TestHostile(t *testing.T) {
	// The sizes lie on both sides of what the parser is given.
	for _, size := range []int{14 << 10, 180 << 10, 1 << 20} {
		for name, src := range hostile(size) {
			t.Run(fmt.Sprintf("%s/%d", name, size), func(t *testing.T) {
				allocated := allocation(func() {
					if _, problems := read(t, src); len(problems) == 0 {
						t.Error("no problem")
					}
				})
				// The parser itself takes up to a thousand bytes a byte.
				if limit := uint64(64<<20 + 1500*min(len(src), size)); allocated > limit {
					t.Errorf("%d bytes allocated for a text of %d, limit %d", allocated, len(src), limit)
				}
			})
		}
	}
}

// hostile are texts of about the given size that are not records.
func hostile(size int) map[string]string {
	fill := func(piece string, size int) string { return strings.Repeat(piece, size/len(piece)) }
	in := func(body string) string { return "space \"1A\" {\n  a = " + body + "\n}\n" }
	random := make([]byte, size)
	source := rand.New(rand.NewPCG(1, 2))
	for i := range random {
		random[i] = byte(source.Uint32())
	}
	var names strings.Builder
	for i := range size / 12 {
		fmt.Fprintf(&names, "<<X%07d\n", i)
	}
	return map[string]string{
		"parentheses":           in(fill("(", size)),
		"brackets":              in(fill("[", size)),
		"braces with names":     in(fill("{a=", size)),
		"calls":                 in(fill("f(", size)),
		"templates":             in(fill(`"${`, size)),
		"directives":            in(`"` + fill("%{ if true }", size) + `"`),
		"blocks":                fill("b {\n", size),
		"braces":                fill("{", size),
		"block heads":           fill("b {", size),
		"closing braces":        fill("}", size),
		"mixed brackets":        in(fill("[", size/2) + fill("}", size/2)),
		"shallow brackets":      in(fill("[],", size)),
		"minuses":               in(fill("-", size) + "1"),
		"spaced minuses":        in("[" + fill("- ", size) + "1]"),
		"nots":                  in(fill("!", size) + "true"),
		"conditions":            in(fill("a ? b : ", size) + "c"),
		"splats":                in("a" + fill("[*]", size)),
		"dots":                  in("a" + fill(".b", size)),
		"sums":                  in(fill("1 + ", size) + "1"),
		"heredoc lines":         in("<<X\n" + fill("line\n", size) + "X"),
		"heredoc without end":   in("<<X\n" + fill("line\n", size)),
		"heredocs without end":  in(fill("<<X\n", size)),
		"heredocs of all names": in(names.String()),
		"dollars":               in(`"` + fill("$", 60<<10) + `"`),
		"texts of dollars":      "b {\n" + fill("a = [\""+fill("$", 32)+"\"]\n", size) + "}",
		"long text":             in(`"` + fill("a", max(size, block.MaxText)) + `"`),
		"long text without end": in(`"` + fill("a", size)),
		"long number":           in(fill("1", size)),
		"quotes":                in(fill(`"`, size+1)),
		"escapes":               in(`"` + fill(`\\`, size)),
		"bad lines":             fill("bad line\n", size),
		"bad lines in a block":  "b {\n" + fill("bad line\n", size) + "}\n",
		"unclosed blocks":       fill("b \"c\" {\n", size),
		"unclosed fields":       fill("b = [\n", size),
		"heads without a body":  fill("b \"c\"\n\n", size),
		"head, then lines":      "b" + fill("\n", size) + "c",
		"unclosed comments":     fill("/* ", size),
		"comments":              "b {\n" + fill("/**/", size),
		"merge markers":         fill("<<<<<<< a\n", size),
		"merge lines":           fill("=======\n", size),
		"merge lines in blocks": "b {\n" + fill("=======\n", size) + "}\n",
		"semicolons":            in(fill(";", size)),
		"duplicates":            "b {\n" + fill("a = 1\n", size) + "}\n",
		"zeros":                 string(make([]byte, size)),
		"zeros in a block":      in(string(make([]byte, size))),
		"random":                string(random),
		"random in a block":     in(string(random)),
		"latin":                 in(`"` + fill("\xe9 ", 60<<10) + `"`),
		"large block":           "space \"1A\" {\n" + fill("  a {\n  }\n", 5<<20) + "}\n",
		"large file":            fill("space \"1A\" {\n}\n", 17<<20),
		"huge text":             in(`"` + fill("a", 200<<20) + `"`),
		"deep blocks":           fill("b {\n", 4*(block.MaxDepth+1)) + fill("}\n", 2*(block.MaxDepth+1)),
		"text beyond":           in(`"` + fill("a", block.MaxText-1) + `"`),
		"signs beyond":          in(`"` + fill("%", block.MaxSigns+1) + `"`),
		"number beyond":         in(fill("1", block.MaxNumber+1)),
	}
}

// allocation is how many bytes a call allocates.
func allocation(call func()) uint64 {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	call()
	runtime.ReadMemStats(&after)
	return after.TotalAlloc - before.TotalAlloc
}

// TestLong reads what is long and allowed.
func TestLong(t *testing.T) {
	t.Parallel()
	for name, src := range map[string]string{
		"name":     strings.Repeat("a", 1<<20) + " \"b\" {\n}\n",
		"children": "b {\n" + strings.Repeat("a {}\n", 1<<17) + "}\n",
		"text":     "b {\n  a = \"" + strings.Repeat("a", block.MaxText-2) + "\"\n}\n",
		"signs":    "b {\n  a = \"" + strings.Repeat("%", block.MaxSigns) + "\"\n}\n",
		"number":   "b {\n  a = " + strings.Repeat("1", block.MaxNumber) + "\n}\n",
		"nesting":  strings.Repeat("b {\n", block.MaxDepth) + strings.Repeat("}\n", block.MaxDepth),
		"comment":  "# " + strings.Repeat("a", 1<<20) + "\nb {\n}\n",
		"lines":    strings.Repeat("\n", 1<<20) + "b {\n}\n",
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			if blocks, problems := read(t, src); len(problems) > 0 || len(blocks) != 1 || blocks[0].Bad {
				t.Errorf("%d blocks, problems %+v", len(blocks), problems)
			}
		})
	}
}
