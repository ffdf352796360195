package examples_test

import (
	"flag"
	"io/fs"
	"os"
	"path"
	"strings"
	"testing"

	"homerun/examples"
	"homerun/schema"
	"homerun/schema/block"
	"homerun/schema/plant"
)

// folder reads the record files of an example by path, with slashes.
func folder(t *testing.T, dir string) map[string]string {
	t.Helper()
	root, files := os.DirFS(dir), make(map[string]string)
	err := fs.WalkDir(root, ".", func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !schema.IsRecords(p) {
			return err
		}
		text, err := fs.ReadFile(root, p)
		files[p] = string(text)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// build makes a plant of files.
func build(files map[string]string) *plant.Plant {
	reader := schema.NewReader()
	var read []*schema.File
	for p, text := range files {
		read = append(read, reader.ReadFile(p, text))
	}
	return plant.Build(".", read)
}

func states(t *testing.T) []examples.State {
	t.Helper()
	commits, err := examples.Story()
	if err != nil {
		t.Fatal(err)
	}
	all, err := examples.States(commits)
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// With -update the example is written anew as the story leaves it, after
// somebody has told the story otherwise.
var update = flag.Bool("update", false, "write saltmarsh-hall as the story leaves it")

func rewrite(t *testing.T, dir string, files map[string]string) {
	t.Helper()
	for p := range folder(t, dir) {
		if err := os.Remove(path.Join(dir, p)); err != nil {
			t.Fatal(err)
		}
	}
	for p, text := range files {
		to := path.Join(dir, p)
		if err := os.MkdirAll(path.Dir(to), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(to, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}

// Not parallel: with -update it writes what the other tests read.
func TestStoryEndsWithTheExample(t *testing.T) {
	all := states(t)
	last := all[len(all)-1].Files
	if *update {
		rewrite(t, "saltmarsh-hall", last)
	}
	want := folder(t, "saltmarsh-hall")
	for p, text := range want {
		if last[p] != text {
			t.Errorf("%s is not what the story leaves", p)
		}
	}
	for p := range last {
		if _, ok := want[p]; !ok {
			t.Errorf("the story leaves %s, the example has no such file", p)
		}
	}
}

// What a newcomer is promised: the size of the plant and what is in it.
func TestSaltmarshHallHoldsWhatItPromises(t *testing.T) {
	t.Parallel()
	p := build(folder(t, "saltmarsh-hall"))
	if n := len(p.Runs); n < 120 {
		t.Errorf("%d runs, at least 120 are promised", n)
	}
	floors := make(map[string]int)
	media := make(map[plant.Medium]int)
	states := make(map[string]int)
	for _, r := range p.Runs {
		media[r.Cable.Medium()]++
		state, _ := r.State()
		states[state]++
		if s := r.To.Space(); s != nil {
			floor, _ := schema.SpaceFloor.In(s.Record())
			floors[floor]++
		}
	}
	if floors["1"] < 50 || floors["2"] < 30 {
		t.Errorf("runs by floor: %v, two floors are promised", floors)
	}
	if media[plant.TwistedPair] == 0 || media[plant.Fibre] == 0 || media[plant.Coax] == 0 || media[plant.Unstated] > 0 {
		t.Errorf("runs by medium: %v", media)
	}
	if states[schema.StateTagged] == 0 || states[schema.StateSpare] == 0 {
		t.Errorf("runs by state: %v", states)
	}
	if len(p.Cords) < 80 || len(p.Tests) < 60 || len(p.Waivers) != 1 || len(p.Policies) != 1 {
		t.Errorf("%d cords, %d tests, %d waivers, %d policies", len(p.Cords), len(p.Tests), len(p.Waivers), len(p.Policies))
	}
}

func TestFilesStaySmall(t *testing.T) {
	t.Parallel()
	for _, dir := range []string{"saltmarsh-hall", "granary-court"} {
		for p, text := range folder(t, dir) {
			if len(text) > 6<<10 {
				t.Errorf("%s is %d bytes, too long to read at a sitting", path.Join(dir, p), len(text))
			}
			if strings.Contains(text, "\r") || !strings.HasSuffix(text, "\n") {
				t.Errorf("%s does not end its lines as git keeps them", path.Join(dir, p))
			}
		}
	}
}

func TestEveryStateOfTheStoryReads(t *testing.T) {
	t.Parallel()
	for _, s := range states(t) {
		p := build(s.Files)
		for _, problem := range p.Problems {
			t.Errorf("%s: %s:%d: %s", s.Commit.Subject, problem.At.Path, problem.At.Line, problem.Message)
		}
		for _, c := range p.Clashes {
			t.Errorf("%s: %s %s is used twice", s.Commit.Subject, c.Port, c.Side)
		}
	}
}

// The files are laid out as "git homerun fmt" would lay them out, so that nobody's
// first change to them is a change of spaces.
func TestFilesAreLaidOut(t *testing.T) {
	t.Parallel()
	for _, s := range states(t) {
		for p, text := range s.Commit.Write {
			if block.Format(text) != text {
				t.Errorf("%s: %s would be laid out otherwise", s.Commit.Subject, p)
			}
		}
	}
	for p, text := range folder(t, "granary-court") {
		if block.Format(text) != text {
			t.Errorf("%s would be laid out otherwise", p)
		}
	}
}
