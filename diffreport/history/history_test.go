package history_test

import (
	"errors"
	"fmt"
	"iter"
	"maps"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"homerun/diffreport"
	"homerun/diffreport/history"
	"homerun/schema"
	"homerun/schema/plant"
)

// A cord is one thing in a made-up history. Ports are never used again, so what
// is the same thing is never a matter of guessing.
type cord struct {
	label, former string
	port, sheet   int
	file, indent  int
}

type site map[int]cord

// A past is a made-up history whose truth is known by construction.
type past struct {
	steps  []history.Step // oldest first
	sites  []site
	reader *schema.Reader
	// deeds are what was done to which thing, by commit.
	deeds  []deed
	things int
	ports  int
}

type deed struct {
	commit, thing int
	class         diffreport.Class
	// gone is the label that the thing does not bear after the deed.
	gone, bears string
}

func (p *past) plantOf(s site) *plant.Plant {
	texts := map[int]string{}
	for _, id := range slices.Sorted(maps.Keys(s)) {
		c := s[id]
		in := strings.Repeat(" ", c.indent)
		text := fmt.Sprintf("cord %q {\n%sfrom = \"A:%d\"\n%sto = \"B:%d\"\n", c.label, in, c.port, in, c.port)
		if c.former != "" {
			text += fmt.Sprintf("%sformer = %q\n", in, c.former)
		}
		if c.sheet > 0 {
			text += fmt.Sprintf("%snote = \"sheet %d\"\n", in, c.sheet)
		}
		texts[c.file] += text + "}\n"
	}
	files := []*schema.File{p.reader.ReadFile("plant.hcl", "plant \"mole-end\" { standard = \"TIA-568\" }\nspace \"1A\" { kind = \"equipment-room\" }\n"+
		"panel \"A\" {\n space = \"1A\"\n ports = 999\n}\nequipment \"B\" {\n kind = \"switch\"\n space = \"1A\"\n ports = 999\n}\n")}
	for file, text := range texts {
		files = append(files, p.reader.ReadFile(fmt.Sprintf("cords-%d.hcl", file), text))
	}
	built := plant.Build(".", files)
	if len(built.Problems)+len(built.Clashes) > 0 {
		panic(fmt.Sprintf("the made-up history is not sound: %v %v", built.Problems, built.Clashes))
	}
	return built
}

// commit adds a commit on some parents and returns its number.
func (p *past) commit(s site, parents ...int) int {
	n := len(p.steps)
	step := history.Step{Revision: history.Revision{ID: fmt.Sprintf("%04d", n), Time: time.Unix(int64(n), 0).UTC()}, Plant: p.plantOf(s)}
	for _, i := range parents {
		step.Parents = append(step.Parents, history.Parent{ID: p.steps[i].ID, Plant: p.steps[i].Plant})
	}
	p.steps, p.sites = append(p.steps, step), append(p.sites, s)
	return n
}

// next makes a commit on a parent with some deeds in it, each to another thing.
// Labels and things come from a pool of their own, so that branches do not meet.
func (p *past) next(t *rapid.T, parent int, pool string) int {
	s := maps.Clone(p.sites[parent])
	done := map[int]bool{}
	n := len(p.steps)
	labels := func() []string {
		var free []string
		for _, l := range []string{pool + "1", pool + "2", pool + "3"} {
			if !slices.ContainsFunc(slices.Collect(maps.Values(s)), func(c cord) bool { return c.label == l }) &&
				!slices.ContainsFunc(slices.Collect(maps.Values(p.sites[parent])), func(c cord) bool { return c.label == l }) {
				free = append(free, l)
			}
		}
		return free
	}
	for range rapid.IntRange(0, 2).Draw(t, "deeds") {
		var mine []int
		for _, id := range slices.Sorted(maps.Keys(s)) {
			if strings.HasPrefix(s[id].label, pool) && !done[id] {
				mine = append(mine, id)
			}
		}
		free := labels()
		act := rapid.IntRange(0, 6).Draw(t, "deed")
		if act == 0 || len(mine) == 0 {
			if len(free) > 0 {
				p.things++
				p.ports++
				s[p.things] = cord{label: rapid.SampledFrom(free).Draw(t, "label"), port: p.ports}
				done[p.things] = true
				p.deeds = append(p.deeds, deed{n, p.things, diffreport.ClassAdd, "", s[p.things].label})
			}
			continue
		}
		id := rapid.SampledFrom(mine).Draw(t, "thing")
		done[id] = true
		p.alter(t, s, id, act, n, free)
	}
	return p.commit(s, parent)
}

func (p *past) alter(t *rapid.T, s site, id, act, n int, free []string) {
	c := s[id]
	old := c.label
	switch act {
	case 1:
		p.ports++
		c.port = p.ports
		p.deeds = append(p.deeds, deed{n, id, diffreport.ClassMove, "", old})
	case 2:
		c.sheet++
		p.deeds = append(p.deeds, deed{n, id, diffreport.ClassRecordsOnly, "", old})
	case 3:
		if len(free) == 0 {
			return
		}
		c.label, c.former = rapid.SampledFrom(free).Draw(t, "label"), old
		p.deeds = append(p.deeds, deed{n, id, diffreport.ClassRelabel, old, c.label})
	case 4:
		delete(s, id)
		p.deeds = append(p.deeds, deed{n, id, diffreport.ClassRemoval, old, ""})
		return
	case 5:
		c.file = 1 - c.file
	case 6:
		c.indent++
	}
	s[id] = c
}

// truth lists what was done to the bearers of a label up to the day on which
// they gave it up for the last time, as "commit class thing".
func (p *past) truth(label string) []string {
	last := map[int]int{}
	for i, d := range p.deeds {
		if d.gone == label || d.bears == label {
			last[d.thing] = i
		}
	}
	var all []string
	for i, d := range p.deeds {
		if until, bore := last[d.thing]; bore && i <= until {
			all = append(all, fmt.Sprintf("%04d %s %d", d.commit, d.class, d.thing))
		}
	}
	slices.Sort(all)
	return all
}

func (p *past) walk() iter.Seq2[history.Step, error] {
	return func(yield func(history.Step, error) bool) {
		for _, step := range slices.Backward(p.steps) {
			if !yield(step, nil) {
				return
			}
		}
	}
}

// thingOf finds the thing that an event is about, by the commit's own records.
func (p *past) thingOf(e history.Event) int {
	var n int
	fmt.Sscanf(e.ID, "%d", &n)
	find := func(s site, label string) int {
		for id, c := range s {
			if c.label == label {
				return id
			}
		}
		return 0
	}
	if e.Class != diffreport.ClassRemoval {
		return find(p.sites[n], e.Label)
	}
	for _, parent := range p.steps[n].Parents {
		var at int
		fmt.Sscanf(parent.ID, "%d", &at)
		if id := find(p.sites[at], e.Label); id != 0 {
			return id
		}
	}
	return 0
}

func TestEveryEventIsFoundAndNoneInvented(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		p := &past{reader: schema.NewReader()}
		at := p.commit(site{})
		for range rapid.IntRange(1, 8).Draw(t, "commits") {
			at = p.next(t, at, "M")
		}
		for range rapid.IntRange(0, 2).Draw(t, "branches") {
			main, side := at, at
			for range rapid.IntRange(1, 4).Draw(t, "on both") {
				main = p.next(t, main, "M")
				side = p.next(t, side, "S")
			}
			merged := maps.Clone(p.sites[main])
			maps.DeleteFunc(merged, func(_ int, c cord) bool { return strings.HasPrefix(c.label, "S") })
			for id, c := range p.sites[side] {
				if strings.HasPrefix(c.label, "S") {
					merged[id] = c
				}
			}
			at = p.commit(merged, main, side)
		}
		for _, label := range []string{"M1", "M2", "M3", "S1", "S2"} {
			h, err := history.Of(history.Asked{Label: label}, p.walk())
			if err != nil {
				t.Fatal(err)
			}
			var got []string
			lives := map[int]int{}
			for _, e := range h.Events {
				thing := p.thingOf(e)
				got = append(got, fmt.Sprintf("%s %s %d", e.ID, e.Class, thing))
				if life, known := lives[thing]; known && life != e.Life {
					t.Fatalf("%s: thing %d has two lives: %+v", label, thing, h.Events)
				}
				lives[thing] = e.Life
			}
			if len(lives) != h.Lives || len(slices.Compact(slices.Sorted(maps.Values(lives)))) != len(lives) {
				t.Fatalf("%s: lives %v, said to be %d", label, lives, h.Lives)
			}
			slices.Sort(got)
			if diff := cmp.Diff(p.truth(label), got); diff != "" {
				t.Fatalf("%s: what was done, and what is told:\n%s", label, diff)
			}
		}
	})
}

func TestAWalkThatFailsIsAnError(t *testing.T) {
	t.Parallel()
	broken := errors.New("object missing")
	_, err := history.Of(history.Asked{Label: "1A"}, func(yield func(history.Step, error) bool) { yield(history.Step{}, broken) })
	if !errors.Is(err, broken) {
		t.Errorf("got %v", err)
	}
	h, err := history.Of(history.Asked{Label: "1A"}, func(func(history.Step, error) bool) {})
	if err != nil || len(h.Events) != 0 {
		t.Errorf("no commits, no events: %+v %v", h, err)
	}
}

func TestABundlesOwnLife(t *testing.T) {
	t.Parallel()
	p := &past{reader: schema.NewReader()}
	text := func(cable string) *plant.Plant {
		return plant.Build(".", []*schema.File{p.reader.ReadFile("plant.hcl", "plant \"mole-end\" { standard = \"TIA-568\" }\ncable \"a\" { category = \"6\" }\ncable \"b\" { category = \"6A\" }\n"+
			"bundle \"1-B-09\" {\n cable = \""+cable+"\"\n run \"1A-A07\" { length = \"40 m\" }\n}\n")})
	}
	first := history.Step{Revision: history.Revision{ID: "1"}, Plant: text("a"), Boundary: true}
	second := history.Step{Revision: history.Revision{ID: "2"}, Plant: text("b"), Parents: []history.Parent{{ID: "1", Plant: first.Plant}}}
	h, err := history.Of(history.Asked{Label: "1-B-09"}, func(yield func(history.Step, error) bool) { _ = yield(second, nil) && yield(first, nil) })
	if err != nil || len(h.Events) != 2 || h.Kind != "bundle" {
		t.Fatalf("%+v %v", h, err)
	}
	if e := h.Events[0]; e.Class != diffreport.ClassChange || e.Summary != "cable from a to b" {
		t.Errorf("another cable: %+v", e)
	}
	if e := h.Events[1]; e.Class != diffreport.ClassRecordsOnly || !strings.Contains(e.Summary, "begins") {
		t.Errorf("where the clone begins nothing was installed: %+v", e)
	}
}
