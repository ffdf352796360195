// Package planttest makes plants of any size for benchmarks and property tests.
// The same options make the same text, byte for byte. The plants are sound:
// what the linter finds in them is for the caller to put in.
package planttest

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// Options say what plant to make.
type Options struct {
	// Runs is the number of runs, rounded up to whole panels.
	Runs int
	// Panel is how many ports a panel has, an even number; 0 is 24. Few make a plant
	// of a handful of records.
	Panel int
	// Files is the number of files that the bundles are spread over.
	Files int
	// Seed makes another plant of the same size.
	Seed uint64
	// Awkward puts comments and escapes into every block, where only the
	// full parser can read it.
	Awkward bool
}

// Few are the options of plants of some twenty and some hundred and fifty records, as
// many as a single change is judged by.
func Few() []Options {
	return []Options{{Runs: 4, Panel: 4, Files: 1, Seed: 1}, {Runs: 72, Files: 3, Seed: 1}}
}

// File is one file of a generated plant.
type File struct{ Path, Text string }

const perPanel = 24

// Generate makes a plant: rooms of up to twenty panels, each panel one bundle
// along the floor's tray, outlets of two ports, cords and tests for a quarter
// of the runs.
func Generate(o Options) []File {
	if o.Panel == 0 {
		o.Panel = perPanel
	}
	g := &generator{Options: o, random: rand.New(rand.NewPCG(o.Seed, 1))}
	panels := (o.Runs + o.Panel - 1) / o.Panel
	files := make([]strings.Builder, max(1, o.Files))
	var common strings.Builder
	g.common(&common, panels)
	for i := range panels {
		g.panel(&files[i*len(files)/panels], i)
	}
	out := []File{{"plant.hcl", common.String()}}
	for i := range files {
		out = append(out, File{fmt.Sprintf("runs/part-%03d.hcl", i+1), files[i].String()})
	}
	return out
}

type generator struct {
	Options
	random *rand.Rand
}

// room numbers rooms of twenty panels, one room a floor.
func room(panel int) (floor int, letters string) {
	return panel/20 + 1, fmt.Sprintf("%c", 'A'+panel%20)
}

func (g *generator) remark(b *strings.Builder, indent string) {
	if g.Awkward {
		fmt.Fprintf(b, "%s/* checked on site */ # sheet %d\n", indent, g.random.IntN(90)+10)
	}
}

func (g *generator) note(b *strings.Builder, indent string) {
	if g.Awkward {
		fmt.Fprintf(b, "%snote = \"drawing \\\"A%d\\\"\" // from the survey\n", indent, g.random.IntN(90)+10)
	}
}

func (g *generator) common(b *strings.Builder, panels int) {
	b.WriteString("plant \"generated\" {\n  standard  = \"TIA-568\"\n  fire_code = \"NEC-2017\"\n  units     = \"metric\"\n}\n\n")
	b.WriteString("cable \"c6a-cmp\" {\n  category   = \"6A\"\n  screen     = \"U/UTP\"\n  listing    = \"CMP\"\n  conductors = \"23 AWG solid\"\n  diameter   = \"7.4 mm\"\n}\n\n")
	b.WriteString("cable \"cord-6a\" {\n  category   = \"6A\"\n  screen     = \"U/UTP\"\n  listing    = \"CM\"\n  conductors = \"26 AWG stranded\"\n  diameter   = \"5.8 mm\"\n}\n\n")
	last, _ := room(max(0, panels-1))
	for floor := 1; floor <= last; floor++ {
		fmt.Fprintf(b, "space \"%dA\" {\n  kind        = \"telecommunications-room\"\n  floor       = \"%d\"\n  temperature = \"20 C\"\n}\n\n", floor, floor)
		fmt.Fprintf(b, "space \"%d-HALL\" {\n  kind        = \"work-area\"\n  floor       = \"%d\"\n  temperature = \"20 C\"\n  noise       = \"E1\"\n}\n\n", floor, floor)
		fmt.Fprintf(b, "space \"%d-CV\" {\n  kind        = \"ceiling-void\"\n  air         = \"plenum\"\n  floor       = \"%d\"\n  temperature = \"20 C\"\n  noise       = \"E1\"\n}\n\n", floor, floor)
		fmt.Fprintf(b, "pathway \"%d-T-01\" {\n  kind    = \"tray\"\n  through = [\"%dA\", \"%d-CV\"]\n  length  = \"25 m\"\n  width   = \"600 mm\"\n  depth   = \"100 mm\"\n}\n\n", floor, floor, floor)
		fmt.Fprintf(b, "pathway \"%d-J-01\" {\n  kind    = \"hooks\"\n  through = [\"%d-CV\", \"%d-HALL\"]\n  length  = \"10 m\"\n}\n\n", floor, floor, floor)
		fmt.Fprintf(b, "equipment \"%dA-SW1\" {\n  kind  = \"switch\"\n  space = \"%dA\"\n  ports = 480\n}\n\n", floor, floor)
	}
}

func (g *generator) panel(b *strings.Builder, n int) {
	floor, letter := room(n)
	name := fmt.Sprintf("%dA-%s", floor, letter)
	fmt.Fprintf(b, "panel \"%s\" {\n", name)
	g.remark(b, "  ")
	fmt.Fprintf(b, "  space    = \"%dA\"\n  ports    = %d\n  category = \"6A\"\n  screen   = \"unscreened\"\n", floor, g.Panel)
	g.note(b, "  ")
	b.WriteString("}\n\n")
	for o := range g.Panel / 2 {
		fmt.Fprintf(b, "outlet \"%d.%s%02d\" {\n", floor, letter, o+1)
		g.remark(b, "  ")
		fmt.Fprintf(b, "  space    = \"%d-HALL\"\n  ports    = 2\n  category = \"6A\"\n  screen   = \"unscreened\"\n", floor)
		g.note(b, "  ")
		b.WriteString("}\n\n")
	}
	fmt.Fprintf(b, "bundle \"%d-B-%s\" {\n  cable = \"c6a-cmp\"\n  route = [\"%d-T-01\", \"%d-J-01\"]\n\n", floor, letter, floor, floor)
	for port := 1; port <= g.Panel; port++ {
		fmt.Fprintf(b, "  run \"%s%02d\" {\n", name, port)
		g.remark(b, "    ")
		fmt.Fprintf(b, "    from   = \"%s:%02d\"\n    to     = \"%d.%s%02d:%d\"\n    length = \"%d.%d m\"\n    serves = \"10GBASE-T\"\n",
			name, port, floor, letter, (port+1)/2, 2-port%2, 41+g.random.IntN(44), g.random.IntN(10))
		g.note(b, "    ")
		b.WriteString("  }\n")
	}
	b.WriteString("}\n\n")
	for port := 1; port <= g.Panel; port += 4 {
		fmt.Fprintf(b, "cord \"%s-C%02d\" {\n  from   = \"%s:%02d\"\n  to     = \"%dA-SW1:%d\"\n  length = \"2 m\"\n  cable  = \"cord-6a\"\n}\n\n", name, port, name, port, floor, n%20*g.Panel+port)
		fmt.Fprintf(b, "test \"T-%s%02d\" {\n  run    = \"%s%02d\"\n  limit  = \"TIA permanent link, Category 6A\"\n  result = \"pass\"\n  date   = \"2024-05-%02d\"\n}\n\n", name, port, name, port, port)
	}
}
