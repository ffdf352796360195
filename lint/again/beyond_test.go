package again_test

import (
	"fmt"
	"slices"
	"testing"

	"homerun/lint"
	"homerun/lint/again"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/plant/planttest"
)

// beyond is a rule that breaks its word: it says that it looks along a channel, and
// tells of every cord how many runs the whole plant has.
var beyond = &lint.Rule{
	Name: "test-beyond", Title: "Checks that nothing is taken on trust", Severity: lint.Observation, Reach: lint.Along,
	Check: func(p *lint.Pass) {
		for _, c := range p.Plant.Cords {
			f := lint.About(c.Entry)
			f.Message = fmt.Sprintf("%s: one cord of a plant with %d runs", c.Label, len(p.Plant.Runs))
			p.Report(f)
		}
	},
}

// TestRuleThatLooksBeyond takes away and puts back the cords of a plant: in the
// excerpt the rule says what it never said of the whole. Such a step looks at
// everything, and goes on with what lint.Run finds.
func TestRuleThatLooksBeyond(t *testing.T) {
	t.Parallel()
	today := day(t, "2026-06-15")
	reader := schema.NewReader()
	files := make(map[string]*schema.File)
	first := make([]again.Change, 0, 4)
	for _, f := range planttest.Generate(planttest.Options{Runs: 96, Files: 1, Seed: 1}) {
		files[f.Path] = reader.ReadFile(f.Path, f.Text)
		if f.Path == "plant.hcl" {
			first = append(first, again.Change{Path: f.Path, File: files[f.Path]})
			continue
		}
		for n, block := range blocks(f.Text) { // each in its own file, so that a step is small
			path := fmt.Sprintf("runs/%03d.hcl", n)
			files[path] = reader.ReadFile(path, block)
			first = append(first, again.Change{Path: path, File: files[path]})
		}
		delete(files, f.Path)
	}
	rules := []*lint.Rule{beyond}
	s := again.New(again.Options{Dir: ".", Rules: rules, Known: []string{beyond.Name}})
	if _, err := s.Step(first, today); err != nil {
		t.Fatal(err)
	}
	carried := wholeBy(t, rules, files)
	wholes := 0
	for _, c := range first {
		if len(c.File.Entries) != 1 || c.File.Entries[0].Kind.Name != schema.KindCord {
			continue
		}
		for _, now := range []*schema.File{nil, c.File} {
			if delete(files, c.Path); now != nil {
				files[c.Path] = now
			}
			step, err := s.Step([]again.Change{{Path: c.Path, File: now}}, today)
			if err != nil {
				t.Fatal(err)
			}
			if now != nil {
				continue // what comes is believed: nothing tells that it is wrong
			}
			if step.Whole {
				wholes++
			}
			gone, come := told(step.Gone), told(step.Come)
			carried = slices.DeleteFunc(carried, func(f string) bool { return slices.Contains(gone, f) })
			carried = append(carried, come...)
			slices.Sort(carried)
			if want := wholeBy(t, rules, files); !slices.Equal(carried, want) {
				t.Fatalf("carried\n%q\nwhole\n%q", carried, want)
			}
		}
		break
	}
	if wholes == 0 {
		t.Error("no step looked at everything")
	}
}

func wholeBy(t *testing.T, rules []*lint.Rule, files map[string]*schema.File) []string {
	t.Helper()
	rep, err := lint.Run(plant.Build(".", list(files)), rules, lint.Options{Today: day(t, "2026-06-15")})
	if err != nil {
		t.Fatal(err)
	}
	return told(rep.Findings)
}
