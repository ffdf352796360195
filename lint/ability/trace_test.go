package ability_test

import (
	"encoding/json"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"homerun/lint"
	"homerun/lint/ability"
	"homerun/lint/rules"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// texts are the files of one of the examples.
func texts(t *testing.T, name string) map[string]string {
	t.Helper()
	files := make(map[string]string)
	root := filepath.Join("..", "..", "examples", name)
	err := filepath.WalkDir(root, func(path string, _ fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".hcl" {
			return err
		}
		text, err := os.ReadFile(path)
		rel, _ := filepath.Rel(root, path)
		files[filepath.ToSlash(rel)] = string(text)
		return err
	})
	if err != nil || len(files) == 0 {
		t.Fatalf("%s: %v", name, err)
	}
	return files
}

func build(files map[string]string) *plant.Plant {
	reader := schema.NewReader()
	var read []*schema.File
	for path, text := range files {
		read = append(read, reader.ReadFile(path, text))
	}
	return plant.Build(".", read)
}

var both = []string{"saltmarsh-hall", "granary-court"}

// TestAgreesWithTheRule holds every channel of the examples against the rule on
// applications: what the rule refuses is not carried, what it lets pass is.
func TestAgreesWithTheRule(t *testing.T) {
	t.Parallel()
	for _, name := range both {
		p := build(texts(t, name))
		today, _ := unit.NewDate(2026, 3, 2)
		report, err := lint.Run(p, []*lint.Rule{rules.CategoryApplication}, lint.Options{Today: today})
		if err != nil {
			t.Fatal(err)
		}
		found := make(map[string]lint.Severity)
		for _, f := range append(report.Findings, report.Waived...) {
			found[f.Record] = f.Severity
		}
		asked := 0
		for _, c := range p.Channels {
			if len(c.Links) != 1 || len(c.Links[0].Runs) != 1 {
				continue
			}
			run := c.Links[0].Lead()
			serves, _ := schema.RunServes.In(run.Record())
			a, ok := ability.Judge(p, c, serves)
			if _, err := standard.ParseApplication(serves); !ok || err != nil {
				continue
			}
			asked++
			severity, objected := found[run.Label]
			if carried := a.Verdict == standard.Carries; carried == objected {
				t.Errorf("%s, %s: %s, %s; the rule objects: %v", run.Label, serves, a.Word(), a.Because, objected)
			}
			if (severity == lint.Nonconformity) != (a.Verdict == standard.NotCarried) {
				t.Errorf("%s, %s: %s, the rule's severity is %s", run.Label, serves, a.Word(), severity)
			}
		}
		if asked < 3 {
			t.Errorf("%s: only %d channels were asked", name, asked)
		}
	}
}

// TestEveryChannelReads traces every channel of the examples as text and JSON:
// within 80 columns, each cable named, each application answered once.
func TestEveryChannelReads(t *testing.T) {
	t.Parallel()
	for _, name := range both {
		p := build(texts(t, name))
		for _, channel := range p.Channels {
			c := ability.Of(p, channel)
			var text, doc strings.Builder
			if err := ability.TraceText(&text, "X", []*ability.Channel{c}, p, ability.TextOptions{Revision: "working tree"}); err != nil {
				t.Fatal(err)
			}
			for line := range strings.Lines(text.String()) {
				line = strings.TrimSuffix(line, "\n")
				if utf8.RuneCountInString(line) > 80 || strings.TrimRight(line, " ") != line {
					t.Errorf("%d columns: %q", utf8.RuneCountInString(line), line)
				}
			}
			for _, l := range channel.Links {
				if !strings.Contains(text.String(), "run "+l.Lead().Label) {
					t.Errorf("%s is not in its trace:\n%s", l.Lead().Label, text.String())
				}
			}
			if err := ability.TraceJSON(&doc, "X", []*ability.Channel{c}, p, "worktree"); err != nil || !json.Valid([]byte(doc.String())) {
				t.Errorf("no document: %v\n%s", err, doc.String())
			}
			seen := make(map[string]bool)
			for _, a := range c.Answers {
				if seen[a.Application] || a.Because == "" {
					t.Errorf("answer %+v", a)
				}
				seen[a.Application] = true
			}
		}
	}
}

// TestCrossConnect traces a channel of two links from either end: the way is
// the same, and in the order of the cables.
func TestCrossConnect(t *testing.T) {
	t.Parallel()
	const text = `plant "p" {
  standard = "TIA-568"
}
space "1A" {
  kind = "telecommunications-room"
}
cable "c" {
  category = "6A"
}
panel "A" {
  space = "1A"
  ports = 4
}
panel "B" {
  space = "1A"
  ports = 4
}
panel "C" {
  space = "1A"
  ports = 4
}
outlet "O" {
  space = "1A"
  ports = 1
}
run "TIE" {
  from   = "A:2"
  to     = "B:3"
  cable  = "c"
  length = "20 m"
}
cord "X" {
  from   = "C:4"
  to     = "B:3"
  length = "1 m"
}
run "H" {
  from   = "C:4"
  to     = "O:1"
  cable  = "c"
  length = "40 m"
}
`
	p := build(map[string]string{"plant.hcl": text})
	for _, from := range []string{"A:2", "B:3", "C:4", "O:1", "O", "TIE", "X", "H"} {
		found, err := ability.Find(p, from)
		if err != nil || len(found) != 1 {
			t.Fatalf("%s: %d channels, %v", from, len(found), err)
		}
		c := ability.Of(p, found[0])
		var way []string
		for _, s := range c.Stations {
			switch {
			case s.Run != nil:
				way = append(way, s.Run.Label)
			case s.Cord != nil:
				way = append(way, s.Cord.Label)
			case s.Port != nil:
				way = append(way, s.Port.String())
			default:
				way = append(way, "?")
			}
		}
		if got, want := strings.Join(way, " "), "? A:2 TIE B:3 X C:4 H O:1 ?"; got != want {
			t.Errorf("from %s: %s, want %s", from, got, want)
		}
		// 20 m + 1 m + 40 m, and 9 m of the 10 m that ANSI/TIA-568 allows.
		if got := c.Total(); got != 70*unit.Metre || c.Assumed != 9*unit.Metre {
			t.Errorf("from %s: %s, of it %s assumed", from, got, c.Assumed)
		}
	}
	for _, wrong := range []string{"A:9", "Q", "1A", "c", ""} {
		var lost *ability.LostError
		if _, err := ability.Find(p, wrong); !errors.As(err, &lost) || lost.Next == "" {
			t.Errorf("%q leads somewhere: %v", wrong, err)
		}
	}
	if found, err := ability.Find(p, "A:1"); err != nil || len(found) != 0 {
		t.Errorf("a free port: %d channels, %v", len(found), err)
	}
}

// TestDamage spoils each line of an example in turn: whatever is missing, every
// channel that is left can be traced and asked.
func TestDamage(t *testing.T) {
	t.Parallel()
	files := texts(t, "granary-court")
	for path, text := range files {
		lines := strings.Split(text, "\n")
		step := max(1, len(lines)/60)
		for i := 0; i < len(lines); i += step {
			whole := lines[i]
			for _, damaged := range []string{"", strings.Replace(whole, "\"", "\"?", 1)} {
				lines[i] = damaged
				files[path] = strings.Join(lines, "\n")
				p := build(files)
				for _, c := range p.Channels {
					ability.Of(p, c)
				}
				for _, application := range []string{"10GBASE-T", "10GBASE-SR"} {
					ability.Ready(p, application, nil)
				}
			}
			lines[i] = whole
		}
		files[path] = text
	}
}

// TestSurveyCountsEveryChannel asks all channels of an example, in all and by
// space: each is counted once, with an answer or as of another medium.
func TestSurveyCountsEveryChannel(t *testing.T) {
	t.Parallel()
	p := build(texts(t, "saltmarsh-hall"))
	live := 0
	var counted []*plant.Channel
	for _, h := range p.Holders { // port by port, as a reader would ask
		for i := range h.Ports {
			found, err := ability.Find(p, h.Ports[i].String())
			if err != nil {
				t.Fatal(err)
			}
			for _, c := range found {
				if len(c.Links) == 0 || slices.ContainsFunc(counted, c.Alike) {
					continue
				}
				counted = append(counted, c)
				if !slices.ContainsFunc(c.Links, func(l *plant.Link) bool { return !l.Live() }) {
					live++
				}
			}
		}
	}
	for _, application := range ability.Applications() {
		s := ability.Ready(p, application, nil)
		told := len(s.Of(standard.Carries)) + len(s.Of(standard.Conditional)) + len(s.Of(standard.NotCarried)) + len(s.Of(0))
		if told != len(s.Results) || told+s.Other != live {
			t.Errorf("%s: %d answers of %d, %d of another medium, %d channels in use", application, told, len(s.Results), s.Other, live)
		}
	}
	room, err := ability.SpaceNamed(p, "2-209")
	if err != nil {
		t.Fatal(err)
	}
	if s := ability.Ready(p, "10GBASE-T", room); len(s.Results) == 0 || len(s.Results) >= live {
		t.Errorf("room 209: %d channels of %d", len(s.Results), live)
	}
	var lost *ability.LostError
	if _, err := ability.SpaceNamed(p, "2-2099"); !errors.As(err, &lost) || !strings.Contains(lost.Next, "2-209") {
		t.Errorf("a mistyped space: %v", err)
	}
}
