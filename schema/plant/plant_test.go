package plant_test

import (
	"fmt"
	"strings"
	"testing"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// build reads files given as path, text, path, text ... into a plant.
func build(t *testing.T, files ...string) *plant.Plant {
	t.Helper()
	reader := schema.NewReader()
	read := make([]*schema.File, 0, len(files)/2)
	for i := 0; i < len(files); i += 2 {
		read = append(read, reader.ReadFile(files[i], files[i+1]))
	}
	return plant.Build(".", read)
}

// problems are the problems as lines, for comparing.
func problems(p *plant.Plant) string {
	var b strings.Builder
	for _, at := range p.Problems {
		fmt.Fprintf(&b, "%s:%d:%d %s: %s; %s\n", at.At.Path, at.At.Line, at.At.Column, at.Code, at.Message, at.Next)
	}
	return b.String()
}

const head = `plant "pier" {
  standard = "TIA-568"
}
space "1A" {
  kind = "telecommunications-room"
}
space "1-HALL" {
  kind = "work-area"
}
cable "c6a" {
  category = "6A"
  screen   = "U/UTP"
}
pathway "1-T-04" {
  kind    = "tray"
  through = ["1A", "1-HALL"]
  length  = "34 m"
}
panel "1A-A" {
  space = "1A"
  ports = 24
}
outlet "1.104" {
  space = "1-HALL"
  ports = 2
}
equipment "1A-SW1" {
  kind  = "switch"
  space = "1A"
  ports = 24
}
`

func TestLinkThroughAConsolidationPoint(t *testing.T) {
	t.Parallel()
	p := build(t, "plant.hcl", head+`
consolidation-point "1-CP1" {
  space = "1-HALL"
  ports = 6
}
bundle "1-B-09" {
  cable = "c6a"
  route = ["1-T-04"]
  run "1A-A07" {
    from   = "1A-A:07"
    to     = "1-CP1:3"
    length = "40 m"
  }
}
run "1-CP1-3" {
  from   = "1-CP1:3"
  to     = "1.104:1"
  cable  = "c6a"
  length = "30 ft"
}
cord "C1" {
  from   = "1A-SW1:1"
  to     = "1A-A:7"
  length = "2 m"
}
`)
	if got := problems(p); got != "" {
		t.Fatalf("problems:\n%s", got)
	}
	if len(p.Links) != 1 || len(p.Channels) != 1 {
		t.Fatalf("%d links and %d channels, want one of each", len(p.Links), len(p.Channels))
	}
	link, channel := p.Links[0], p.Channels[0]
	length, known := link.Length()
	// 30 ft are 9.144 m exactly: the international foot is 0.3048 m (ISO 80000-3).
	if want := unit.Length(49_144_000_000); !known || length != want {
		t.Errorf("link is %v long, want %v", length, want)
	}
	if link.From.String() != "1A-A:07" || link.To.String() != "1.104:1" || link.Connections() != 3 {
		t.Errorf("link from %v to %v over %d connections", link.From, link.To, link.Connections())
	}
	if channel.Start.String() != "1A-SW1:01" || channel.OpenStart || !channel.OpenEnd || len(channel.Parts) != 2 {
		t.Errorf("channel starts at %v (open %v), open at the end %v, %d parts", channel.Start, channel.OpenStart, channel.OpenEnd, len(channel.Parts))
	}
	if run := p.Bundles[0].Runs[0]; run.Cable == nil || run.Way == nil || run.Way.Length != 34_000_000_000 || len(run.Spaces()) != 2 {
		t.Errorf("the run takes neither cable nor route from its bundle: %+v", run)
	}
}

func TestChannelThroughACrossConnect(t *testing.T) {
	t.Parallel()
	p := build(t, "plant.hcl", head+`
panel "1A-B" {
  space = "1A"
  ports = 24
}
run "1A-SW1-1" {
  from   = "1A-SW1:1"
  to     = "1A-B:1"
  cable  = "c6a"
  length = "3 m"
}
cord "C1" {
  from   = "1A-B:1"
  to     = "1A-A:1"
  length = "2 m"
}
run "1A-A01" {
  from   = "1A-A:1"
  to     = "1.104:1"
  cable  = "c6a"
  length = "50 m"
}
`)
	if len(p.Channels) != 1 {
		t.Fatalf("%d channels, want one over both runs:\n%s", len(p.Channels), problems(p))
	}
	c := p.Channels[0]
	if !c.CrossConnected() || len(c.Links) != 2 || c.Connections() != 3 || c.Start.String() != "1A-SW1:01" || c.End.String() != "1.104:1" {
		t.Errorf("cross-connected %v, %d links, %d connections, from %v to %v", c.CrossConnected(), len(c.Links), c.Connections(), c.Start, c.End)
	}
}

func TestProblemsOfReference(t *testing.T) {
	t.Parallel()
	p := build(t, "a.hcl", head, "b.hcl", `run "1A-A07" {
  from   = "1A-AA:07"
  to     = "1A:1"
  cable  = "c6"
  length = "40 m"
}
run "1A-A07" {
  from   = "1A-A:07"
  to     = "1.104:3"
  length = "40 m"
}
`)
	want := `b.hcl:2:12 unknown-reference: 1A-A07: from: there is no "1A-AA"; did you mean "1A-A"?
b.hcl:3:12 unknown-reference: 1A-A07: to: "1A" is a space; name an outlet or a consolidation-point or a splice-closure or a panel or an equipment
b.hcl:4:12 unknown-reference: 1A-A07: cable: there is no "c6"; did you mean "c6a"?
b.hcl:7:5 duplicate-label: 1A-A07: the label is already that of a run; give one of the two another label, as on the wall
`
	if got := problems(p); got != want {
		t.Errorf("problems:\n%s\nwant:\n%s", got, want)
	}
}

func TestTwoCablesOnOneSide(t *testing.T) {
	t.Parallel()
	p := build(t, "plant.hcl", head+`
run "R1" {
  from = "1A-A:1"
  to   = "1.104:1"
}
run "R2" {
  from = "1A-A:1"
  to   = "1.104:2"
}
cord "C1" {
  from = "1A-A:1"
  to   = "1A-SW1:1"
}
cord "C2" {
  from = "1A-A:2"
  to   = "1A-SW1:1"
}
`)
	var got []string
	for _, c := range p.Clashes {
		got = append(got, fmt.Sprintf("%v %s %s %s", c.Port, c.Side, c.First.Place().Label, c.Second.Place().Label))
	}
	if want := "[1A-A:01 rear R1 R2 1A-SW1:01 front C1 C2]"; fmt.Sprint(got) != want {
		t.Errorf("clashes %v, want %s", got, want)
	}
}

func TestDuplexCordTakesTwoPorts(t *testing.T) {
	t.Parallel()
	p := build(t, "plant.hcl", head+`
panel "1A-F" {
  space = "1A"
  ports = 12
}
cord "C1" {
  from = "1A-F:1-2"
  to   = "1A-SW1:24"
}
cord "C2" {
  from = "1A-F:2"
  to   = "1A-SW1:23"
}
`)
	second, _ := p.FindPort("1A-F:2")
	if second.Front == nil || second.Front.Label != "C1" || len(p.Clashes) != 1 || p.Clashes[0].Port != second {
		t.Fatalf("port 2 has %v in front, clashes %v", second.Front, p.Clashes)
	}
	if other := p.Cords[0].Other(second); other == nil || other.String() != "1A-SW1:24" {
		t.Errorf("the duplex cord leads from port 2 to %v", other)
	}
	last, _ := p.FindPort("1A-SW1:24")
	if back := p.Cords[0].Other(last); back == nil || back.String() != "1A-F:01" {
		t.Errorf("the duplex cord leads back to %v", back)
	}
}

// TestRingsEnd feeds records that lead back to themselves: building has to end,
// with every run in exactly one link and every link in one channel.
func TestRingsEnd(t *testing.T) {
	t.Parallel()
	p := build(t, "plant.hcl", head+`
consolidation-point "CP" {
  space = "1A"
  ports = 2
}
run "R1" {
  from = "CP:1"
  to   = "CP:2"
}
run "R2" {
  from = "CP:2"
  to   = "CP:1"
}
run "R3" {
  from = "1A-A:1"
  to   = "1A-A:2"
}
cord "C1" {
  from = "1A-A:1"
  to   = "1A-A:2"
}
cord "C2" {
  from = "1A-A:3"
  to   = "1A-A:3"
}
busbar "B1" {
  kind  = "secondary"
  space = "1A"
  bond  = "B1"
}
`)
	seen := 0
	for _, l := range p.Links {
		seen += len(l.Runs)
		if l.Channel == nil {
			t.Errorf("link of %s has no channel", l.Lead().Label)
		}
	}
	if seen != len(p.Runs) {
		t.Errorf("%d runs in links, want %d", seen, len(p.Runs))
	}
	if _, reached := p.Busbars[0].Primary(); reached {
		t.Error("a busbar bonded to itself reaches no primary busbar")
	}
}

// TestJointInTheMiddleOfARow ends a run at a port that is not the first of those from
// which another leaves: whichever of the two is recorded first, no link is without runs.
func TestJointInTheMiddleOfARow(t *testing.T) {
	t.Parallel()
	closure := `
splice-closure "SC" {
  space = "1A"
  ports = 4
}
`
	arrives := `
run "R1" {
  from = "1A-A:1"
  to   = "SC:2"
}
`
	leaves := `
run "R2" {
  from = "SC:1-2"
  to   = "1.104:1"
}
`
	for _, text := range []string{arrives + leaves, leaves + arrives} {
		p := build(t, "plant.hcl", head+closure+text)
		seen := 0
		for _, l := range p.Links {
			seen += len(l.Runs)
			if len(l.Runs) == 0 {
				t.Errorf("the link from %v has no runs", l.From)
			}
		}
		if seen != len(p.Runs) {
			t.Errorf("%d runs in links, want %d", seen, len(p.Runs))
		}
	}
}

func TestOrderOfFilesDoesNotMatter(t *testing.T) {
	t.Parallel()
	runs := `run "R1" {
  from = "1A-A:1"
  to   = "1.104:1"
}
`
	a := build(t, "plant.hcl", head, "runs.hcl", runs)
	b := build(t, "runs.hcl", runs, "plant.hcl", head)
	if problems(a) != problems(b) || len(a.Links) != len(b.Links) || a.Runs[0].From.String() != b.Runs[0].From.String() {
		t.Error("the plant depends on the order in which its files are read")
	}
}
