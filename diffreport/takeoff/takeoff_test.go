package takeoff_test

import (
	"encoding/json"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"homerun/diffreport"
	"homerun/diffreport/takeoff"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

func build(texts map[string]string) *plant.Plant {
	reader := schema.NewReader()
	var files []*schema.File
	for path, text := range texts {
		files = append(files, reader.ReadFile(path, text))
	}
	return plant.Build(".", files)
}

func example(t *testing.T, name string) *plant.Plant {
	t.Helper()
	root := filepath.Join("..", "..", "examples", name)
	texts := make(map[string]string)
	err := filepath.WalkDir(root, func(path string, _ fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".hcl" {
			return err
		}
		text, err := os.ReadFile(path)
		texts[filepath.ToSlash(path)] = string(text)
		return err
	})
	if err != nil || len(texts) == 0 {
		t.Fatalf("%s: %v", name, err)
	}
	return build(texts)
}

const small = `plant "p" {
  standard = "TIA-568"
}
space "1A" {
  kind = "telecommunications-room"
}
space "1-H" {
  kind = "work-area"
}
pathway "T" {
  kind    = "tray"
  through = ["1A", "1-H"]
  length  = "30 m"

  crossing {
    rating = "1 h"
  }
}
cable "c" {
  category = "6A"
}
cable "k" {
  category = "6A"
}
panel "A" {
  space    = "1A"
  ports    = 24
  category = "6A"
}
outlet "O" {
  space    = "1-H"
  ports    = 4
  category = "6A"
}
bundle "B" {
  cable = "c"
  route = ["T"]

  run "R1" {
    from   = "A:1"
    to     = "O:1"
    length = "40 m"
  }
  run "R2" {
    from   = "A:2"
    to     = "O:2"
    length = "42.5 m"
    state  = "planned"
  }
  run "R3" {
    from   = "A:3"
    to     = "O:3"
    length = "41 m"
    state  = "abandoned"
  }
  run "R4" {
    from = "A:4"
    to   = "O:4"
  }
}
cord "P" {
  from   = "A:1"
  to     = "A:5"
  cable  = "k"
  length = "2 m"
}
`

func quantities(t takeoff.Takeoff) map[string]string {
	got := make(map[string]string)
	for i := range t.Items {
		got[t.Items[i].Group+": "+t.Items[i].Name] = t.Items[i].Quantity(&t)
	}
	return got
}

// TestCountedByHand holds a plant against a count with pencil and paper: 40 m
// and 42.5 m and a tenth more are 90.75 m; three runs in use end in six jacks.
func TestCountedByHand(t *testing.T) {
	t.Parallel()
	got := takeoff.Whole(build(map[string]string{"plant.hcl": small}), takeoff.Options{Head: "x", Waste: 10, Reel: 305 * unit.Metre})
	want := map[string]string{
		"cable: c":                               "90.75 m, 1 reel",
		"terminations: jack, category 6A":        "6",
		"cords: k, 2 m":                          "1",
		"hardware: panel, 24 ports, category 6A": "1",
		"hardware: outlet, 4 ports, category 6A": "1",
		"pathways: tray":                         "30 m",
		"fire-stops: closed anew, rated 1 h":     "1",
		"labels: cable label, one at each end":   "8",
		"labels: label on hardware and pathways": "3",
	}
	if diff := cmp.Diff(want, quantities(got)); diff != "" {
		t.Errorf("(- by hand, + counted)\n%s", diff)
	}
	if diff := cmp.Diff([]string{"R3"}, got.Left); diff != "" {
		t.Errorf("withdrawn: %s", diff)
	}
	if diff := cmp.Diff([]string{"R4"}, got.Items[0].Unknown); diff != "" {
		t.Errorf("without a length: %s", diff)
	}
}

// TestChange counts what one more run needs: the cable, its ends, its labels,
// and the fire-stop that is opened for it.
func TestChange(t *testing.T) {
	t.Parallel()
	base := build(map[string]string{"plant.hcl": small})
	more := strings.Replace(small, `  run "R2" {`, "  run \"R5\" {\n    from   = \"A:6\"\n    to     = \"1A-X:1\"\n    length = \"50 m\"\n  }\n  run \"R2\" {", 1)
	more = strings.Replace(more, "1A-X:1", "O:5", 1)
	more = strings.Replace(more, "ports    = 4", "ports    = 6", 1)
	head := build(map[string]string{"plant.hcl": more})
	got := quantities(takeoff.Of(head, diffreport.Compare(base, head, diffreport.Options{}), takeoff.Options{Waste: 0, Reel: 0}))
	want := map[string]string{
		"cable: c":                                   "50 m",
		"terminations: jack, category 6A":            "2",
		"hardware: outlet, 6 ports, category 6A":     "1",
		"fire-stops: opened and put back, rated 1 h": "1",
		"labels: cable label, one at each end":       "2",
		"labels: label on hardware and pathways":     "1",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(- by hand, + counted)\n%s", diff)
	}
	if again := takeoff.Of(head, diffreport.Compare(head, head, diffreport.Options{}), takeoff.Options{}); len(again.Items) != 0 {
		t.Errorf("nothing was changed: %v", quantities(again))
	}
}

// TestReels cuts runs from reels. No run is spliced: of 90 m three go on a reel
// of 305 m, whatever the sum of the metres says. Longest first, 60 m and 40 m
// fill a reel of 100 m between them.
func TestReels(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		lengths      []int
		reel         unit.Length
		least, whole int
		tooLong      int
	}{
		{repeated(90, 100), 305 * unit.Metre, 30, 34, 0},
		{repeated(100, 6), 305 * unit.Metre, 2, 2, 0},
		{[]int{40, 60, 40, 60}, 100 * unit.Metre, 2, 2, 0},
		{[]int{51, 51, 51}, 100 * unit.Metre, 2, 3, 0},
		{[]int{30, 400}, 305 * unit.Metre, 1, 1, 1},
		{[]int{305}, 305 * unit.Metre, 1, 1, 0},
	} {
		var b strings.Builder
		b.WriteString("plant \"p\" {\n  standard = \"TIA-568\"\n}\ncable \"c\" {\n  category = \"6\"\n}\n")
		for i, l := range c.lengths {
			fmt.Fprintf(&b, "run \"R%d\" {\n  cable = \"c\"\n  length = \"%d m\"\n}\n", i, l)
		}
		got := takeoff.Whole(build(map[string]string{"plant.hcl": b.String()}), takeoff.Options{Reel: c.reel})
		r := got.Items[0].Reels
		if r == nil || r.Least != c.least || r.Whole != c.whole || len(r.TooLong) != c.tooLong {
			t.Errorf("%v from %s: %+v, want %d, %d, %d", c.lengths, c.reel, r, c.least, c.whole, c.tooLong)
		}
	}
}

func repeated(length, n int) []int {
	all := make([]int, n)
	for i := range all {
		all[i] = length
	}
	return all
}

// TestSums adds up the records of the examples in another way: the metres by
// type of cable, the cords, the hardware.
func TestSums(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"saltmarsh-hall", "granary-court"} {
		p := example(t, name)
		metres, pieces := make(map[string]unit.Length), make(map[string]int)
		for _, r := range p.Runs {
			if length, ok := r.Length(); ok && r.Live() {
				metres[r.Cable.Label] += length
			}
		}
		pieces[takeoff.GroupCord] = len(p.Cords)
		pieces[takeoff.GroupHardware] = len(p.Holders) + len(p.Racks) + len(p.Busbars)
		got := takeoff.Whole(p, takeoff.Options{Waste: 10, Reel: takeoff.DefaultReel})
		counted := make(map[string]int)
		for _, it := range got.Items {
			counted[it.Group] += it.Count
			if it.Group == takeoff.GroupCable && it.Length != metres[it.Name] {
				t.Errorf("%s: %s %s, the runs are %s", name, it.Name, it.Length, metres[it.Name])
			}
			var parts unit.Length
			for _, part := range it.Parts {
				parts += part.Length
			}
			if parts != it.Length {
				t.Errorf("%s: the parts of %s are %s, their sum %s", name, it.Name, parts, it.Length)
			}
			if r := it.Reels; r != nil && (r.Whole < r.Least || r.Least == 0) {
				t.Errorf("%s: %s: %+v", name, it.Name, r)
			}
		}
		for group, n := range pieces {
			if counted[group] != n {
				t.Errorf("%s: %d %s, the records have %d", name, counted[group], group, n)
			}
		}
		reads(t, got)
	}
}

// reads holds text and JSON of a take-off: 80 columns, every item named.
func reads(t *testing.T, got takeoff.Takeoff) {
	t.Helper()
	var text, doc strings.Builder
	if err := takeoff.Text(&text, got, takeoff.TextOptions{Most: 12}); err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(text.String()) {
		line = strings.TrimSuffix(line, "\n")
		if utf8.RuneCountInString(line) > 80 || strings.TrimRight(line, " ") != line {
			t.Errorf("%d columns: %q", utf8.RuneCountInString(line), line)
		}
	}
	if err := takeoff.JSON(&doc, got); err != nil || !json.Valid([]byte(doc.String())) {
		t.Errorf("no document: %v", err)
	}
}

// TestMoreIsNeverLess raises the waste in steps: no metre and no reel goes.
func TestMoreIsNeverLess(t *testing.T) {
	t.Parallel()
	p := example(t, "saltmarsh-hall")
	last := make(map[string]takeoff.Item)
	for _, waste := range []int{0, 5, 10, 15, 50} {
		for _, it := range takeoff.Whole(p, takeoff.Options{Waste: waste, Reel: takeoff.DefaultReel}).Items {
			if it.Group != takeoff.GroupCable {
				continue
			}
			if before, ok := last[it.Name]; ok && (it.Gross <= before.Gross || it.Reels != nil && it.Reels.Least < before.Reels.Least) {
				t.Errorf("%s at %d %%: %s, before %s", it.Name, waste, it.Gross, before.Gross)
			}
			last[it.Name] = it
		}
	}
}
