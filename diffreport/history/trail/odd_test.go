package trail_test

import (
	"bytes"
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"homerun/diffreport/history"
)

// oddBlocks are blocks as people and programs may write them: labels with escapes,
// in letters that are read as others, as bare words, given twice; comments in
// between; new labels stated and not; lengths that a test measured.
func oddBlocks() []string {
	return []string{
		"plant \"generated\" {\n  standard = \"TIA-568\"\n}\n", "plant \"other\" {\n  standard = \"TIA-568\"\n  units = \"us\"\n}\n", "plant generated {\n standard = \"TIA-568\"\n}\n",
		"space \"1A\" {\n  kind = \"corridor\"\n}\n", "space \"1\\u0041\" {\n  kind = \"corridor\"\n  note = \"by its number\"\n}\n", "space 1A {\n}\n", "space \"1B\" {\n  kind = \"corridor\"\n  former = \"1A\"\n}\n",
		"panel \"P\" {\n  space = \"1A\"\n  ports = 24\n}\n", "panel P {\n  space = \"1A\"\n  ports = 48\n}\n", "panel \"Q\" {\n  space = \"1A\"\n  ports = 24\n}\n", "panel \"Q\" {\n  space = \"1B\"\n  ports = 24\n  former = \"P\"\n}\n",
		"panel /* it's \"R\" */ \"P\" {\n  space = \"1A\" # a \"remark\n  ports = 24\n}\n", "/* x */ panel \"R\" { // {\n  space = \"1B\"\n  ports = 24\n}\n",
		"outlet \"\u212a\" {\n  space = \"1A\"\n  ports = 2\n}\n", "outlet \"K\" {\n  space = \"1B\"\n  ports = 2\n}\n", "outlet \"e\u0301\" {\n  space = \"1A\"\n  ports = 2\n}\n", "outlet \"\u00e9\" {\n  space = \"1B\"\n  ports = 4\n}\n",
		"outlet \"a \\\"b\\\"\" {\n  space = \"1A\"\n  ports = 2\n}\n", "outlet \"a \\\"b\\\"\" {\n  space = \"1B\"\n  ports = 2\n  note = \"moved \\\\ by hand\"\n}\n",
		"outlet \"x:1\" {\n  space = \"1A\"\n  ports = 2\n}\n", "cord \"C\" {\n  from = \"P:1\"\n  to = \"x:1:1\"\n}\n", "cord \"C\" {\n  from = \"Q:1\"\n  to = \"x:1:1\"\n}\n", "cord \"D\" {\n  from = \"P:01\"\n  to = \"x:1:1\"\n  former = \"C\"\n}\n",
		"run \"A\" {\n  from = \"P:1\"\n  to = \"K:1\"\n  length = \"40 m\"\n}\n", "run \"A\" {\n  from = \"P:1\"\n  to = \"K:1\"\n  length = \"52 m\"\n}\n", "run \"B\" {\n  from = \"P:1\"\n  to = \"K:1\"\n  length = \"52 m\"\n  former = \"A\"\n}\n",
		"run \"B\" {\n  from = \"P:2\"\n  to = \"K:2\"\n  length = \"40 m\"\n}\n", "test \"T\" {\n  run = \"A\"\n  length = \"52 m\"\n  result = \"pass\"\n  date = \"2019-03-03\"\n}\n", "test \"T\" {\n  run = \"B\"\n  length = \"51 m\"\n  result = \"pass\"\n  date = \"2019-03-03\"\n}\n",
		"bundle \"N\" {\n  cable = \"c\"\n  run \"M1\" {\n    from = \"P:3\"\n    to = \"K:1\"\n  }\n  run \"M2\" {\n    from = \"P:4\"\n    to = \"K:2\"\n  }\n}\n", "bundle \"N\" {\n  cable = \"d\"\n  run \"M1\" {\n    from = \"P:3\"\n    to = \"K:1\"\n  }\n}\n",
		"bundle \"O\" {\n  cable = \"c\"\n  run \"M1\" {\n    from = \"Q:3\"\n    to = \"K:1\"\n  }\n  run \"M3\" {\n    from = \"Q:4\"\n    to = \"K:2\"\n  }\n}\n", "run \"M2\" {\n  from = \"P:4\"\n  to = \"K:2\"\n  cable = \"c\"\n}\n",
		"cable \"c\" {\n  category = \"6A\"\n}\n", "cable \"d\" {\n  category = \"6\"\n}\n", "waiver \"W\" {\n  rule = \"length-channel\"\n  records = [\"A\",\n    \"B\"]\n  reason = \"old\"\n}\n", "waiver \"W\" {\n  rule = \"length-channel\"\n  records = [\"A\"]\n  reason = \"old\"\n}\n",
		"run \"broken\" {\n  from = \"P:9\n}\n", "\t run \"A\" {\n\t from=\"P:1\"\n\t\tto=\"K:1\"\n length = \"40 m\"\n}\n", "run \"A\" { from = \"P:1\" }\n", "pathway \"W1\" {\n  through = [\"1A\", \"1B\"]\n}\n",
	}
}

// labelOf is the label of a block, as far as it can be told from others'.
func labelOf(block string) string {
	head, _, _ := strings.Cut(block, "{")
	for _, same := range [][2]string{{"1\\u0041", "1A"}, {"\u212a", "K"}, {"e\u0301", "\u00e9"}} {
		head = strings.ReplaceAll(head, same[0], same[1])
	}
	fields := strings.Fields(head)
	return strings.Trim(fields[len(fields)-1], `"`)
}

// bounds says how often a commit may give a label.
type bounds struct{ most int }

// keep leaves out blocks that give labels too often. The labels of runs in
// bundles count by their bundle.
func (b bounds) keep(files map[string]string) {
	given := make(map[string]int)
	for _, name := range slices.Sorted(maps.Keys(files)) {
		var text strings.Builder
		for _, block := range strings.SplitAfter(files[name], "\n}\n") {
			label := ""
			if strings.Contains(block, "{") {
				label = labelOf(block)
			}
			if strings.Contains(block, "bundle") || label == "M2" {
				label = "the bundles"
			}
			if given[label]++; label == "" || given[label] <= b.most {
				text.WriteString(block)
			}
		}
		files[name] = text.String()
	}
}

// oddHistory writes commits of odd files onto one branch, with side lines.
func oddHistory(seed uint64, b bounds) []byte {
	random := rand.New(rand.NewPCG(seed, 7))
	names := []string{"plant.hcl", "a.hcl", "sub/b.hcl", "sub/c.hcl", "z.hcl", "sub/plant.hcl", "notes.txt"}
	blocks := oddBlocks()
	files := make(map[string]string)
	files["plant.hcl"] = blocks[0]
	var out bytes.Buffer
	for n := 1; n <= 40; n++ {
		for range 1 + random.IntN(2) {
			name := names[random.IntN(len(names)-1)]
			if name == "sub/plant.hcl" && random.IntN(3) > 0 {
				delete(files, name)
				continue
			}
			var text strings.Builder
			if random.IntN(8) > 0 {
				for range random.IntN(12) {
					text.WriteString(blocks[3+random.IntN(len(blocks)-3)])
				}
			}
			if name == "plant.hcl" || name == "sub/plant.hcl" {
				files[name] = blocks[random.IntN(3)] + text.String()
			} else {
				files[name] = text.String()
			}
		}
		b.keep(files)
		fmt.Fprintf(&out, "commit refs/heads/main\nmark :%d\ncommitter Ada Moor <ada@example.org> %d +0000\ndata 4\nwork\n", n, 978303600+n)
		if n > 1 {
			fmt.Fprintf(&out, "from :%d\n", max(1, n-1-random.IntN(2)*random.IntN(2)))
			if n > 4 && random.IntN(4) == 0 {
				fmt.Fprintf(&out, "merge :%d\n", n-2-random.IntN(2))
			}
		}
		out.WriteString("deleteall\n")
		for _, name := range names {
			if text, there := files[name]; there {
				mode := "100644"
				if random.IntN(40) == 0 {
					mode = "120000"
				}
				fmt.Fprintf(&out, "M %s inline %s\ndata %d\n%s\n", mode, name, len(text), text)
			}
		}
	}
	return out.Bytes()
}

// TestOddTextsOnTheTrailAreAsInWholePlants holds the trail equal to whole plants
// where files are written in every way that can be read, or can not.
func TestOddTextsOnTheTrailAreAsInWholePlants(t *testing.T) {
	t.Parallel()
	labels := []string{
		"generated", "other", "1A", "1B", "P", "Q", "R", "K", "\u00e9", `a "b"`, "x:1", "x", "C", "D", "A", "B", "T", "N", "O", "M1", "M2", "M3", "c", "d", "W", "W1", "broken",
	}
	events := 0
	for seed := range uint64(6) {
		var asked []history.Asked
		for _, label := range labels {
			asked = append(asked, history.Asked{Label: label})
		}
		events += oddPast(t, seed, bounds{most: 9}).asWhole(t, asked)
	}
	if events < 300 {
		t.Errorf("only %d events tell nothing", events)
	}
}

// TestOddTiesOnTheTrailAreAsInWholePlants does so for ports and spaces, where no
// label is given twice: of two bearers that name a place, which is meant depends
// on files that nothing else leads to.
func TestOddTiesOnTheTrailAreAsInWholePlants(t *testing.T) {
	t.Parallel()
	events := 0
	for seed := range uint64(6) {
		events += oddPast(t, seed, bounds{most: 1}).asWhole(t, []history.Asked{
			{Label: "1A", Contents: true}, {Label: "1B", Contents: true}, {Label: "P", Port: 1}, {Label: "Q", Port: 1}, {Label: "K", Port: 2}, {Label: "x:1", Port: 1},
		})
	}
	if events < 150 {
		t.Errorf("only %d events tell nothing", events)
	}
}

func oddPast(t *testing.T, seed uint64, b bounds) *past {
	t.Helper()
	p := &past{dir: t.TempDir(), number: make(map[string]int)}
	git(t, p.dir, nil, "init", "-q", "-b", "main")
	git(t, p.dir, oddHistory(seed, b), "fast-import", "--quiet", "--force")
	p.open(t)
	return p
}
