package planttest

import (
	"fmt"
	"strings"
)

// pastPanel is a panel with all that hangs on it: its outlets, one bundle, cords
// and tests. The three parts stand in three sections, each in some file.
type pastPanel struct {
	thing                   int
	label, former, place    string
	space, floor            int
	cable, note             string
	runs                    []*pastRun
	cords                   []*pastCord
	hardware, bundle, extra int
	indent                  int
	// free are labels of runs that nobody bears any more.
	free []string
}

type pastRun struct {
	thing               int
	label, former, note string
	port, decimetres    int
	tested              bool
}

type pastCord struct {
	thing         int
	label, former string
	port, plug    int
}

// build makes the first state: every third of a panel in its section.
func (p *past) build(panels int) {
	p.paths = make([]string, p.files)
	for f := range p.files {
		p.paths[f] = fmt.Sprintf("runs/part-%04d.hcl", f+1)
		p.dirty[f] = true
	}
	for i := range panels {
		floor, letter := room(i)
		h := &pastPanel{
			label: fmt.Sprintf("%dA-%s", floor, letter), place: fmt.Sprintf("%d.%s", floor, letter), space: i % 20, floor: floor, cable: "c6a-cmp", indent: 2,
			hardware: 3 * i * p.files / (3 * panels), bundle: (3*i + 1) * p.files / (3 * panels), extra: (3*i + 2) * p.files / (3 * panels),
		}
		h.thing = p.born(h.label)
		for port := 1; port <= perPanel; port++ {
			r := &pastRun{label: fmt.Sprintf("%s%02d", h.label, port), port: port, decimetres: 410 + p.random.IntN(440), tested: port%4 == 1}
			r.thing = p.born(r.label)
			h.runs = append(h.runs, r)
			if port%4 == 1 {
				c := &pastCord{label: fmt.Sprintf("%s-C%02d", h.label, port), port: port, plug: i%20*perPanel + port}
				c.thing = p.born(c.label)
				h.cords = append(h.cords, c)
			}
		}
		p.panels = append(p.panels, h)
	}
}

// born counts a new thing, with its deed in the commit that comes next.
func (p *past) born(label string) int {
	p.things++
	p.record(p.things, "add", "", label)
	return p.things
}

func (p *past) record(thing int, class, gone, bears string) {
	p.truth.Deeds = append(p.truth.Deeds, Deed{Commit: p.n + 1, Thing: thing, Class: class, Gone: gone, Bears: bears})
	for _, label := range []string{gone, bears} {
		if label != "" {
			p.seen[label] = true
		}
	}
}

func (p *past) common() string {
	var b strings.Builder
	g := &generator{}
	g.common(&b, len(p.panels))
	return strings.Replace(b.String(), "cable \"cord-6a\"", "cable \"c6a-new\" {\n  category   = \"6A\"\n  screen     = \"U/UTP\"\n  listing    = \"CMP\"\n  conductors = \"23 AWG solid\"\n  diameter   = \"7.2 mm\"\n}\n\ncable \"cord-6a\"", 1)
}

// texts are the files that have to be written.
func (p *past) texts() []string {
	texts := make([]strings.Builder, p.files)
	for _, h := range p.panels {
		for part, f := range []int{h.hardware, h.bundle, h.extra} {
			if !p.dirty[f] {
				continue
			}
			switch part {
			case 0:
				h.writeHardware(&texts[f])
			case 1:
				h.writeBundle(&texts[f])
			case 2:
				h.writeExtras(&texts[f])
			}
		}
	}
	out := make([]string, p.files)
	for f := range texts {
		out[f] = texts[f].String()
	}
	return out
}

// line writes one field where it states something.
func (h *pastPanel) line(b *strings.Builder, depth int, name, value string) {
	if value != "" {
		fmt.Fprintf(b, "%s%s = %q\n", strings.Repeat(" ", depth*h.indent), name, value)
	}
}

func (h *pastPanel) writeHardware(b *strings.Builder) {
	in := strings.Repeat(" ", h.indent)
	fmt.Fprintf(b, "panel %q {\n", h.label)
	h.line(b, 1, "space", fmt.Sprintf("%dA", h.floor))
	fmt.Fprintf(b, "%sports = %d\n%scategory = \"6A\"\n%sscreen = \"unscreened\"\n", in, perPanel, in, in)
	h.line(b, 1, "former", h.former)
	h.line(b, 1, "note", h.note)
	b.WriteString("}\n\n")
	for o := range perPanel / 2 {
		fmt.Fprintf(b, "outlet \"%s%02d\" {\n", h.place, o+1)
		h.line(b, 1, "space", fmt.Sprintf("%d-HALL", h.floor))
		fmt.Fprintf(b, "%sports = 2\n%scategory = \"6A\"\n%sscreen = \"unscreened\"\n}\n\n", in, in, in)
	}
}

func (h *pastPanel) writeBundle(b *strings.Builder) {
	in := strings.Repeat(" ", h.indent)
	fmt.Fprintf(b, "bundle \"B-%s\" {\n", h.place)
	h.line(b, 1, "cable", h.cable)
	fmt.Fprintf(b, "%sroute = [\"%d-T-01\", \"%d-J-01\"]\n\n", in, h.floor, h.floor)
	for _, r := range h.runs {
		fmt.Fprintf(b, "%srun %q {\n", in, r.label)
		h.line(b, 2, "from", fmt.Sprintf("%s:%02d", h.label, r.port))
		h.line(b, 2, "to", fmt.Sprintf("%s%02d:%d", h.place, (r.port+1)/2, 2-r.port%2))
		h.line(b, 2, "length", fmt.Sprintf("%d.%d m", r.decimetres/10, r.decimetres%10))
		h.line(b, 2, "serves", "10GBASE-T")
		h.line(b, 2, "former", r.former)
		h.line(b, 2, "note", r.note)
		fmt.Fprintf(b, "%s}\n", in)
	}
	b.WriteString("}\n\n")
}

func (h *pastPanel) writeExtras(b *strings.Builder) {
	for _, c := range h.cords {
		fmt.Fprintf(b, "cord %q {\n", c.label)
		h.line(b, 1, "from", fmt.Sprintf("%s:%02d", h.label, c.port))
		h.line(b, 1, "to", fmt.Sprintf("%dA-SW1:%d", h.floor, c.plug))
		h.line(b, 1, "length", "2 m")
		h.line(b, 1, "cable", "cord-6a")
		h.line(b, 1, "former", c.former)
		b.WriteString("}\n\n")
	}
	for _, r := range h.runs {
		if !r.tested {
			continue
		}
		fmt.Fprintf(b, "test \"T-%d\" {\n", r.thing)
		h.line(b, 1, "run", r.label)
		h.line(b, 1, "limit", "TIA permanent link, Category 6A")
		h.line(b, 1, "result", "pass")
		h.line(b, 1, "date", "2001-01-31")
		b.WriteString("}\n\n")
	}
}
