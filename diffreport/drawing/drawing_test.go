package drawing_test

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"

	"homerun/diffreport"
	"homerun/diffreport/drawing"
	"homerun/schema"
	"homerun/schema/plant"
)

type job struct {
	order      diffreport.Order
	base, head *plant.Plant
}

func between(base, head *plant.Plant) job {
	return job{diffreport.Plan(base, head, diffreport.Compare(base, head, diffreport.Options{}), diffreport.PlanOptions{}), base, head}
}

// cases are the orders that the repository keeps, forwards and backwards.
func cases(t *testing.T) map[string]job {
	t.Helper()
	names, err := filepath.Glob(filepath.FromSlash("../../testdata/orders/*.txtar"))
	if err != nil || len(names) == 0 {
		t.Fatalf("there are no cases: %v", err)
	}
	all := make(map[string]job)
	for _, name := range names {
		archive, err := txtar.ParseFile(name)
		if err != nil {
			t.Fatal(err)
		}
		reader := schema.NewReader()
		base, head := plantIn(reader, archive, "base/"), plantIn(reader, archive, "head/")
		all[filepath.Base(name)] = between(base, head)
		all["back from "+filepath.Base(name)] = between(head, base)
	}
	return all
}

func plantIn(reader *schema.Reader, archive *txtar.Archive, dir string) *plant.Plant {
	var files []*schema.File
	for _, f := range archive.Files {
		if name, ok := strings.CutPrefix(f.Name, dir); ok {
			files = append(files, reader.ReadFile(name, string(f.Data)))
		}
	}
	if len(files) == 0 {
		return nil
	}
	return plant.Build(".", files)
}

// TestFacesLeadFromBaseToHead follows the marks of every port side from visit to
// visit: before the first it is as the earlier plant has it, after the last as
// the later has it, and each visit finds what the one before left. What the
// plants have is read from their records' own ends.
func TestFacesLeadFromBaseToHead(t *testing.T) {
	t.Parallel()
	met := 0
	for name, j := range cases(t) {
		if !j.order.Executable || j.base != nil && len(j.base.Clashes) > 0 {
			continue // what is on a side that two cables claim nobody knows
		}
		former := diffreport.Former(j.order.Changes)
		held := make(map[string]bool)
		for v, faces := range drawing.Faces(&j.order, j.base, j.head) {
			for _, f := range faces {
				if f.Gone {
					continue
				}
				for _, b := range f.Banks {
					for _, jack := range b.Jacks {
						for side, mark := range map[string]drawing.Mark{"rear": jack.Rear, "front": jack.Front} {
							at := fmt.Sprintf("%s:%s %s", f.Label, strings.TrimLeft(jack.Number, "0"), side)
							before, after := mark == drawing.Stays || mark == drawing.Off || mark == drawing.Instead, mark == drawing.Stays || mark == drawing.On || mark == drawing.Instead
							stood, known := held[at]
							if !known {
								stood = holds(j.base, former(f.Label), at)
							}
							if before != stood {
								t.Errorf("%s: visit %d finds %s with a cable: %v, but it was left with one: %v", name, v+1, at, before, stood)
							}
							held[at] = after
							met++
						}
					}
				}
			}
		}
		for at, after := range held {
			label, _, _ := strings.Cut(at, ":")
			if want := holds(j.head, label, at); after != want {
				t.Errorf("%s: %s ends with a cable: %v, the records: %v", name, at, after, want)
			}
		}
	}
	if met < 100 {
		t.Errorf("only %d port sides were followed", met)
	}
}

// holds says whether a plant has anything on a port side.
func holds(p *plant.Plant, holder, at string) bool {
	if p == nil || holder == "" {
		return false
	}
	var n int
	var side string
	_, port, _ := strings.Cut(at, ":")
	if _, err := fmt.Sscanf(port, "%d %s", &n, &side); err != nil {
		panic(err)
	}
	found, ok := p.FindPort(fmt.Sprintf("%s:%d", holder, n))
	if !ok {
		return false
	}
	there := func(r *plant.Run) bool {
		if r == nil {
			return false
		}
		state, known := r.State()
		return !known || state != schema.StatePlanned
	}
	if side == "rear" {
		return there(found.Rear)
	}
	return found.Front != nil || there(found.Onward)
}

// TestRoutesKeepApart holds every drawing to what makes it readable: all within
// its size, no two stops or lines of one lane on top of each other, each dot at
// the height of its stop.
func TestRoutesKeepApart(t *testing.T) {
	t.Parallel()
	for name, j := range cases(t) {
		m := drawing.Route(&j.order, j.base, j.head)
		if m == nil {
			if slices.ContainsFunc(j.order.Steps, func(s diffreport.Step) bool { return s.Action == diffreport.Pull }) {
				t.Errorf("%s: cable is pulled, and no pathway is drawn", name)
			}
			continue
		}
		readable(t, name, m)
		var visits []string
		for _, v := range j.order.Visits() {
			visits = append(visits, v.Space)
		}
		for _, space := range visits {
			drawn := slices.ContainsFunc(m.Stops, func(s drawing.Stop) bool { return s.Label == space && s.Visits != "" })
			named := slices.ContainsFunc(m.Apart, func(text string) bool { return strings.HasPrefix(text, space+" (visit") })
			if drawn == named && space != "" {
				t.Errorf("%s: the visited space %s is drawn: %v, and named beside the drawing: %v", name, space, drawn, named)
			}
		}
	}
}

func readable(t *testing.T, name string, m *drawing.Map) {
	t.Helper()
	bottom := 0
	for _, s := range m.Stops {
		if s.Y < bottom || s.X < 0 || s.X+s.Width > m.Width || s.Y+s.Height > m.Height {
			t.Errorf("%s: stop %s is out of place: %+v", name, s.Label, s)
		}
		bottom = s.Y + s.Height
	}
	for i, l := range m.Lines {
		if len(l.Dots) == 0 {
			continue
		}
		if l.Top < 0 || l.Bottom > m.Height || l.X > m.Width {
			t.Errorf("%s: line %s is out of place: %+v", name, l.Label, l)
		}
		if room := 6 * len(l.Label); l.Bottom-l.Top < room {
			t.Errorf("%s: line %s is %d long, its label about %d", name, l.Label, l.Bottom-l.Top, room)
		}
		for k, label := range l.Passes {
			at := slices.IndexFunc(m.Stops, func(s drawing.Stop) bool { return s.Label == label })
			if at < 0 || !slices.Contains(l.Dots, m.Stops[at].Y+m.Stops[at].Height/2) {
				t.Errorf("%s: line %s does not stop at %s, space %d of its way", name, l.Label, label, k)
			} else if m.Stops[at].Reach < l.X {
				t.Errorf("%s: stop %s does not reach line %s", name, label, l.Label)
			}
		}
		for _, other := range m.Lines[:i] {
			if len(other.Dots) > 0 && other.X == l.X && l.Top <= other.Bottom && other.Top <= l.Bottom {
				t.Errorf("%s: lines %s and %s lie on each other", name, l.Label, other.Label)
			}
		}
	}
}

// TestRouteCountsRuns compares the runs on each line with the routes that the
// records state.
func TestRouteCountsRuns(t *testing.T) {
	t.Parallel()
	j := cases(t)["from-nothing.txtar"]
	want := make(map[string]int)
	for _, r := range j.head.Runs {
		if state, _ := r.State(); state == schema.StatePlanned || r.Way == nil {
			continue
		}
		for _, path := range r.Way.Pathways {
			want[path.Label]++
		}
	}
	if len(want) == 0 {
		t.Fatal("no run of the case has a route")
	}
	m := drawing.Route(&j.order, j.base, j.head)
	for label, n := range want {
		at := slices.IndexFunc(m.Lines, func(l drawing.Line) bool { return l.Label == label })
		if at < 0 || !strings.Contains(m.Lines[at].Work, fmt.Sprintf("%d run", n)) {
			t.Errorf("%s: %d runs are laid in, the drawing has %+v", label, n, m.Lines)
		}
	}
}

// TestLargeOrdersSayWhatIsNotDrawn draws a plant with more spaces than a drawing
// holds, and a panel with more ports.
func TestLargeOrdersSayWhatIsNotDrawn(t *testing.T) {
	t.Parallel()
	var text strings.Builder
	text.WriteString("plant \"mole-end\" {\n  standard = \"TIA-568\"\n}\nspace \"1A\" {\n  kind = \"telecommunications-room\"\n}\npanel \"1A-A\" {\n  space = \"1A\"\n  ports = 288\n}\n")
	for i := range 100 {
		fmt.Fprintf(&text, "space \"R%d\" {\n  kind = \"work-area\"\n}\noutlet \"O%d\" {\n  space = \"R%d\"\n  ports = 1\n}\nrun \"N%d\" {\n  from = \"1A-A:%d\"\n  to = \"O%d:1\"\n}\n", i, i, i, i, i+1, i)
	}
	head := plant.Build(".", []*schema.File{schema.NewReader().ReadFile("plant.hcl", text.String())})
	j := between(nil, head)
	if m := drawing.Route(&j.order, j.base, j.head); m == nil || !strings.Contains(m.Undrawn, "101 spaces") {
		t.Errorf("got %+v", m)
	}
	for _, faces := range drawing.Faces(&j.order, j.base, j.head) {
		for _, f := range faces {
			drawn := 0
			for _, b := range f.Banks {
				drawn += len(b.Jacks)
			}
			if f.Label == "1A-A" && (drawn+f.Undrawn != 288 || drawn != 102) {
				t.Errorf("%d ports are drawn and %d said not to be, of 288 with 100 touched", drawn, f.Undrawn)
			}
		}
	}
}
