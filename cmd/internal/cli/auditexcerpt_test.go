package cli_test

import (
	"fmt"
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"
	"pgregory.net/rapid"

	"homerun/diffreport"
	"homerun/lint/again"
	"homerun/lint/rules"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/plant/planttest"
	"homerun/schema/unit"
)

// TestExcerptsTellWhatWholePlantsTell edits plants, sound or not, and compares the
// excerpts that an audit compares: they tell the same as the whole plants.
func TestExcerptsTellWhatWholePlantsTell(t *testing.T) {
	t.Parallel()
	today := unit.Date{} // no waiver bears on what differs
	texts := comparedTexts(t)
	steps, entire := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		shelf := rapid.SampledFrom(texts).Draw(t, "plant")
		s := &excerptSite{shelf: maps.Clone(shelf), reader: schema.NewReader(), standing: again.New(again.Options{Dir: ".", Rules: rules.All()})}
		s.step(t, today)
		for range rapid.IntRange(1, 10).Draw(t, "steps") {
			for range rapid.IntRange(1, 3).Draw(t, "edits") {
				s.edit(t)
			}
			step, base := s.step(t, today)
			head := s.whole()
			if steps++; step.Whole {
				entire++
			}
			have := changesTold(diffreport.Compare(step.Base, step.Head, diffreport.Options{}))
			want := changesTold(diffreport.Compare(base, head, diffreport.Options{}))
			if !slices.Equal(have, want) {
				t.Fatalf("of the excerpts\n%s\nof the whole plants\n%s", strings.Join(have, "\n"), strings.Join(want, "\n"))
			}
		}
	})
	if 2*entire > steps {
		t.Errorf("%d of %d steps looked at everything: that proves nothing of excerpts", entire, steps)
	}
}

// TestExcerptOfALabelThatTwoRecordsClaim lets a record state the label of another one as its former one, under a new
// label: which of the two it is decides what the records name that name it.
func TestExcerptOfALabelThatTwoRecordsClaim(t *testing.T) {
	t.Parallel()
	other := "space \"1A-N1\" {\n  former = \"1A\"\n}\n"
	s := &excerptSite{reader: schema.NewReader(), standing: again.New(again.Options{Dir: ".", Rules: rules.All()}), shelf: map[string][]string{
		"plant.hcl": {"plant \"p\" {\n  standard = \"TIA-568\"\n}\n", "space \"1A\" {\n  kind = \"telecommunications-room\"\n}\n", other, "panel \"1A-A\" {\n  space = \"1A\"\n  ports = 24\n}\n"},
	}}
	s.step(t, unit.Date{})
	s.shelf["plant.hcl"][2] = strings.Replace(other, "1A-N1", "1A-N2", 1)
	step, base := s.step(t, unit.Date{})
	have := changesTold(diffreport.Compare(step.Base, step.Head, diffreport.Options{}))
	want := changesTold(diffreport.Compare(base, s.whole(), diffreport.Options{}))
	if !slices.Equal(have, want) {
		t.Fatalf("of the excerpts\n%s\nof the whole plants\n%s", strings.Join(have, "\n"), strings.Join(want, "\n"))
	}
	if !strings.Contains(strings.Join(want, "\n"), "panel") {
		t.Errorf("the panel stands where it stood: this proves nothing: %q", want)
	}
}

// comparedTexts are the plants to edit, as blocks by path: the cases of the linter
// and a generated plant.
func comparedTexts(t *testing.T) []map[string][]string {
	t.Helper()
	var all []map[string][]string
	paths, err := filepath.Glob("../../../testdata/lint/*/*.txtar")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no cases: %v", err)
	}
	for _, path := range paths {
		archive, err := txtar.ParseFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range archive.Files {
			if f.Name == schema.PlantFile {
				all = append(all, map[string][]string{f.Name: topBlocks(string(f.Data)), "more.hcl": nil})
			}
		}
	}
	made := make(map[string][]string)
	for _, f := range planttest.Generate(planttest.Options{Runs: 96, Files: 2, Seed: 3}) {
		made[f.Path] = topBlocks(f.Text)
	}
	for range len(all) / 2 { // as likely as every second case
		all = append(all, made)
	}
	return all
}

// topBlocks cuts a text behind each line that closes a block at the top.
func topBlocks(text string) []string {
	all := strings.SplitAfter(text, "\n}\n")
	return slices.DeleteFunc(all, func(b string) bool { return strings.TrimSpace(b) == "" })
}

// An excerptSite is a plant that is edited, and a standing that follows it.
type excerptSite struct {
	shelf    map[string][]string
	reader   *schema.Reader
	standing *again.Standing
	files    map[string]*schema.File
	fresh    int
}

// step follows the edits, and returns the plant as it was.
func (s *excerptSite) step(t rapid.TB, today unit.Date) (*again.Step, *plant.Plant) {
	base := s.whole()
	next := make(map[string]*schema.File)
	var changes []again.Change
	for _, path := range slices.Sorted(maps.Keys(s.shelf)) {
		if len(s.shelf[path]) > 0 {
			next[path] = s.reader.ReadFile(path, strings.Join(s.shelf[path], ""))
		}
		if next[path] != nil || s.files[path] != nil {
			changes = append(changes, again.Change{Path: path, File: next[path]})
		}
	}
	step, err := s.standing.Step(changes, today)
	if err != nil {
		t.Fatal(err)
	}
	s.files = next
	return step, base
}

func (s *excerptSite) whole() *plant.Plant {
	if len(s.files) == 0 {
		return nil
	}
	return plant.Build(".", slices.Collect(maps.Values(s.files)))
}

// edit draws one edit: of a figure or a port, of where a block stands, of whether it
// is there, or of what it is called, with its former label or without.
func (s *excerptSite) edit(t *rapid.T) {
	paths := slices.Sorted(maps.Keys(s.shelf))
	path, to := rapid.SampledFrom(paths).Draw(t, "path"), rapid.SampledFrom(paths).Draw(t, "to")
	list := slices.Clone(s.shelf[path])
	if len(list) == 0 {
		return
	}
	i := rapid.IntRange(0, len(list)-1).Draw(t, "block")
	block := list[i]
	switch rapid.SampledFrom([]string{"figure", "figure", "unstate", "move", "remove", "double", "label", "label", "label", "label"}).Draw(t, "edit") {
	case "figure":
		pair := rapid.SampledFrom([][2]string{{"1", "2"}, {"2", "1"}, {"0", "9"}, {"A-A", "A-B"}, {" m\"", "0 m\""}, {"cmp", "cmr"}}).Draw(t, "pair")
		list[i] = restated(t, block, func(line string) string { return strings.Replace(line, pair[0], pair[1], 1) })
	case "unstate":
		list[i] = restated(t, block, func(string) string { return "" })
	case "move":
		list = slices.Delete(list, i, i+1)
		if to == path {
			list = append(list, block)
			break
		}
		s.shelf[to] = append(slices.Clone(s.shelf[to]), block)
	case "remove":
		list = slices.Delete(list, i, i+1)
	case "double":
		list = append(list, block)
	case "label":
		kind, rest, _ := strings.Cut(block, " \"")
		label, body, found := strings.Cut(rest, "\" {\n")
		if !found || strings.Contains(kind, "=") {
			break
		}
		s.fresh++
		name := fmt.Sprintf("%s-N%d", label, s.fresh)
		former := ""
		if rapid.Bool().Draw(t, "stated") && slices.Contains([]string{"run", "cord", "panel", "outlet", "pathway", "space", "equipment"}, strings.TrimSpace(kind)) {
			former = "  former = \"" + label + "\"\n"
		}
		list[i] = kind + " \"" + name + "\" {\n" + former + body
		s.shelf[path] = list
		if rapid.Bool().Draw(t, "followed") {
			s.follow(label, name)
		}
		return
	}
	s.shelf[path] = list
}

// follow writes another label wherever a record is named.
func (s *excerptSite) follow(label, name string) {
	for path, list := range s.shelf {
		now := slices.Clone(list)
		for i := range now {
			head, body, _ := strings.Cut(now[i], "{\n")
			// what a record says of its former label stays
			body = strings.NewReplacer("former = \""+label+"\"", "former = \""+label+"\"", "\""+label+"\"", "\""+name+"\"", "\""+label+":", "\""+name+":").Replace(body)
			now[i] = head + "{\n" + body
		}
		s.shelf[path] = now
	}
}

// restated is a block with one of its lines that state something another one.
func restated(t *rapid.T, block string, as func(line string) string) string {
	lines := strings.SplitAfter(block, "\n")
	var states []int
	for k, line := range lines {
		if strings.Contains(line, " = ") && !strings.Contains(line, "{") {
			states = append(states, k)
		}
	}
	if len(states) == 0 {
		return block
	}
	k := rapid.SampledFrom(states).Draw(t, "line")
	lines[k] = as(lines[k])
	return strings.Join(lines, "")
}

// changesTold are changes with all that they say, in their order.
func changesTold(changes []diffreport.Change) []string {
	all := make([]string, len(changes))
	for i := range changes {
		c := &changes[i]
		var b strings.Builder
		fmt.Fprintf(&b, "%s %s %q, formerly %q, meaning %d, %s; from %s:%d to %s:%d", c.Class, c.Kind, c.Label, c.Former, c.Meaning, c.Why, c.Before.Path, c.Before.Line, c.After.Path, c.After.Line)
		for _, f := range c.Fields {
			fmt.Fprintf(&b, "; %s: %q, %q, %d", f.Name, f.Before, f.After, f.Meaning)
		}
		all[i] = b.String()
	}
	return all
}
