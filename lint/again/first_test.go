package again_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"homerun/lint"
	"homerun/lint/again"
	"homerun/schema"
)

// inside is a place with a cable type of which the first run that lies indoors is
// named: its listing is not stated.
const inside = `
plant "p" {
  standard  = "TIA-568"
  fire_code = "NEC-2017"
}
space "1A" { kind = "telecommunications-room" }
space "1-HALL" { kind = "work-area" }
cable "c6" {
  category = "6"
  screen   = "U/UTP"
}
pathway "1-T" {
  kind    = "tray"
  through = ["1A", "1-HALL"]
  length  = "20 m"
}
panel "1A-A" {
  space    = "1A"
  ports    = 24
  category = "6"
}
outlet "1.1" {
  space    = "1-HALL"
  ports    = 4
  category = "6"
}
`

func runText(n int, more string) string {
	return fmt.Sprintf("run \"1A-A%02d\" {\n  from   = \"1A-A:%d\"\n  to     = \"1.1:%d\"\n  length = \"25 m\"\n%s}\n", n, n, n, more)
}

const ownCable = "  cable  = \"c6\"\n  route  = [\"1-T\"]\n"

// TestRunThatLeavesItsBundle lets a run out of its bundle to where it is the first
// one: no piece moves, and yet the order has changed.
func TestRunThatLeavesItsBundle(t *testing.T) {
	t.Parallel()
	m := newMover(day(t, "2026-06-15"))
	others := runText(1, ownCable)
	in := "bundle \"B\" {\n  cable = \"c6\"\n  route = [\"1-T\"]\n" + runText(2, "") + runText(3, "") + "}\n"
	left := strings.Replace(in, runText(2, ""), "", 1)
	for _, s := range []shelf{
		{own: {inside, others}, back: {in}},
		{front: {runText(2, ownCable)}, own: {inside, others}, back: {left}},
		{own: {inside, others}, back: {in}},
	} {
		m.to(t, s)
	}
	if named := fmt.Sprint(m.carried); !strings.Contains(named, "run 1A-A01 lies inside") {
		t.Errorf("nothing names the first run: %s", named)
	}
}

// TestLabelsTakenForEachOther moves one of two labels that differ only in case to
// the front: which of them is told to be renamed depends on the order.
func TestLabelsTakenForEachOther(t *testing.T) {
	t.Parallel()
	outlet := func(label string) string {
		return fmt.Sprintf("outlet %q {\n  space    = \"1-HALL\"\n  ports    = 2\n  category = \"6\"\n}\n", label)
	}
	m := newMover(day(t, "2026-06-15"))
	m.to(t, shelf{own: {inside}, back: {outlet("1.aB"), outlet("1.Ab")}})
	before := fmt.Sprint(m.carried)
	m.to(t, shelf{front: {outlet("1.Ab")}, own: {inside}, back: {outlet("1.aB")}})
	if now := fmt.Sprint(m.carried); now == before {
		t.Errorf("the order tells nothing: %s", now)
	}
	m.to(t, shelf{own: {inside}, back: {outlet("1.aB"), outlet("1.Ab")}})
}

// firstOfAll names the first run of a plant at the plant record.
var firstOfAll = &lint.Rule{
	Name: "test-first", Title: "Checks that the first run is named", Severity: lint.Observation, Reach: lint.Along,
	Check: func(p *lint.Pass) {
		if len(p.Plant.Runs) == 0 {
			return
		}
		f := lint.About(p.Plant.Entry)
		f.Message = fmt.Sprintf("%s: the first run is %s", p.Plant.Label, p.Plant.Runs[0].Label)
		p.Report(f)
	},
}

// TestFirstNamedAtThePlant moves a run to the front while a finding about the plant
// record names the first.
func TestFirstNamedAtThePlant(t *testing.T) {
	t.Parallel()
	today := day(t, "2026-06-15")
	reader := schema.NewReader()
	s := again.New(again.Options{Dir: ".", Rules: []*lint.Rule{firstOfAll}, Known: []string{firstOfAll.Name}})
	plantFile := again.Change{Path: own, File: reader.ReadFile(own, inside+runText(1, ownCable))}
	second := reader.ReadFile(back, runText(2, ownCable))
	if _, err := s.Step([]again.Change{plantFile, {Path: back, File: second}}, today); err != nil {
		t.Fatal(err)
	}
	step, err := s.Step([]again.Change{{Path: front, File: reader.ReadFile(front, runText(2, ownCable))}, {Path: back}}, today)
	if err != nil {
		t.Fatal(err)
	}
	if len(step.Gone) != 1 || len(step.Come) != 1 || step.Gone[0].Message != "p: the first run is 1A-A01" || step.Come[0].Message != "p: the first run is 1A-A02" {
		t.Errorf("gone %q, come %q", told(step.Gone), told(step.Come))
	}
}

// TestRunsThatChangePlacesInTheirBundle turns the runs of a bundle round while a
// finding about the bundle names the first of them.
func TestRunsThatChangePlacesInTheirBundle(t *testing.T) {
	t.Parallel()
	m := newMover(day(t, "2026-06-15"))
	inside := strings.Replace(strings.Replace(inside, "  length  = \"20 m\"\n", "  length  = \"20 m\"\n  width   = \"300 mm\"\n  depth   = \"50 mm\"\n", 1), "  screen   =", "  listing  = \"CMP\"\n  diameter = \"6 mm\"\n  screen   =", 1)
	alone := runText(1, ownCable) + "test \"T1\" {\n  run    = \"1A-A01\"\n  date   = \"2026-01-02\"\n  result = \"pass\"\n}\n"
	bundle := func(runs ...string) string {
		return "bundle \"B\" {\n  cable = \"c6\"\n  route = [\"1-T\"]\n" + strings.Join(runs, "") + "}\n"
	}
	a, b, c := runText(2, ""), runText(3, ""), runText(4, "")
	for _, s := range []shelf{
		{own: {inside, alone, bundle(a, b, c)}},
		{own: {inside, alone, bundle(b, a, c)}},
		{own: {inside, alone, bundle(c, b, a)}},
		{own: {inside, alone}, front: {bundle(a, c)}},
		{own: {inside, alone}, back: {bundle(c, a)}},
	} {
		m.to(t, s)
	}
	if slices.IndexFunc(told(m.last.Come), func(f string) bool { return strings.Contains(f, "tests-missing") }) < 0 {
		t.Error("the last step found no run without a measurement: this proves nothing")
	}
}
