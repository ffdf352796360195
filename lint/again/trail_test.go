package again_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"homerun/lint"
	"homerun/lint/again"
	"homerun/lint/rules"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/plant/planttest"
	"homerun/schema/unit"
)

// whole is what holding a whole plant against every rule says: the outside that
// everything here is held against.
func whole(t rapid.TB, files map[string]*schema.File, today unit.Date) []string {
	t.Helper()
	if len(files) == 0 {
		return nil
	}
	rep, err := lint.Run(plant.Build(".", list(files)), rules.All(), lint.Options{Today: today})
	if err != nil {
		t.Fatal(err)
	}
	return told(slices.Concat(rep.Findings, rep.Waived))
}

func list(files map[string]*schema.File) []*schema.File {
	var all []*schema.File
	for _, f := range files {
		all = append(all, f)
	}
	return all
}

// generated are the texts of an invented plant, and its files.
func generated(reader *schema.Reader, o planttest.Options) (texts map[string]string, files map[string]*schema.File) {
	texts, files = make(map[string]string), make(map[string]*schema.File)
	for _, f := range planttest.Generate(o) {
		texts[f.Path], files[f.Path] = f.Text, reader.ReadFile(f.Path, f.Text)
	}
	return texts, files
}

// told are findings as texts, sorted.
func told(findings []lint.Finding) []string {
	all := make([]string, 0, len(findings))
	for i := range findings {
		f := &findings[i]
		all = append(all, strings.Join([]string{f.Rule, f.Kind, f.Record, f.Severity.String(), f.Waiver, f.Message, strings.Join(f.Key, ",")}, " | "))
	}
	slices.Sort(all)
	return all
}

// A trail is a standing that goes from state to state, and what it carries.
type trail struct {
	standing *again.Standing
	files    map[string]*schema.File
	carried  map[string]int
	// entire counts the steps that looked at everything.
	steps, entire, size int
	last                *again.Step
}

func newTrail() *trail {
	return &trail{
		standing: again.New(again.Options{Dir: ".", Rules: rules.All(), Known: names()}), files: make(map[string]*schema.File), carried: make(map[string]int),
	}
}

func names() []string {
	var all []string
	for _, r := range rules.All() {
		all = append(all, r.Name)
	}
	return all
}

// to goes to a state and holds what is carried against the whole.
func (w *trail) to(t rapid.TB, next map[string]*schema.File, today unit.Date) *again.Step {
	t.Helper()
	step, err := w.standing.Step(w.changes(next), today)
	if err != nil {
		t.Fatal(err)
	}
	w.files, w.last = next, step
	w.steps++
	w.size += step.Size
	if step.Whole {
		w.entire++
	}
	for _, f := range told(step.Gone) {
		if w.carried[f]--; w.carried[f] < 0 {
			t.Errorf("gone without having come: %s", f)
		}
	}
	for _, f := range told(step.Come) {
		w.carried[f]++
	}
	w.compare(t, whole(t, next, today))
	return step
}

func (w *trail) changes(next map[string]*schema.File) []again.Change {
	var changes []again.Change
	for path := range w.files {
		if next[path] == nil {
			changes = append(changes, again.Change{Path: path})
		}
	}
	for path, f := range next {
		if w.files[path] != f {
			changes = append(changes, again.Change{Path: path, File: f})
		}
	}
	slices.SortFunc(changes, func(a, b again.Change) int { return strings.Compare(a.Path, b.Path) })
	return changes
}

// A stop is a state that a trail was in.
type stop struct {
	mark     *again.Mark
	files    map[string]*schema.File
	carried  map[string]int
	problems int
}

func (w *trail) stop() stop {
	return stop{w.standing.Mark(), w.files, maps.Clone(w.carried), w.standing.Problems()}
}

// back returns to a state. What is carried there was held against the whole before,
// and is again with the next step.
func (w *trail) back(t rapid.TB, to stop) {
	t.Helper()
	known, err := w.standing.Return(w.changes(to.files), to.mark)
	if err != nil || !known {
		t.Fatalf("no way back: %v", err)
	}
	if w.standing.Mark() != to.mark || w.standing.Problems() != to.problems {
		t.Errorf("another state, with %d mistakes for %d", w.standing.Problems(), to.problems)
	}
	w.files, w.carried = to.files, maps.Clone(to.carried)
}

func (w *trail) compare(t rapid.TB, want []string) {
	t.Helper()
	var have []string
	for f, n := range w.carried {
		for range n {
			have = append(have, f)
		}
	}
	slices.Sort(have)
	if !slices.Equal(have, want) {
		for _, f := range have {
			if !slices.Contains(want, f) {
				t.Errorf("carried, and not in the whole: %s", f)
			}
		}
		for _, f := range want {
			if !slices.Contains(have, f) {
				t.Errorf("in the whole, and not carried: %s", f)
			}
		}
		t.Errorf("carried %d findings, the whole has %d", len(have), len(want))
	}
}

func day(t *testing.T, text string) unit.Date {
	t.Helper()
	d, err := unit.ParseDate(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}
