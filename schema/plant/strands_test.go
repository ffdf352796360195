package plant_test

import (
	"strings"
	"testing"

	"homerun/schema"
	"homerun/schema/plant"
)

// arrays is a way of four fibres from panel A to panel B: by single connectors
// to an array, over an array trunk, and out again.
const arrays = `plant "p" {
  standard = "TIA-568"
}
space "S" {
  kind = "equipment-room"
}
cable "f" {
  fibre   = "OM4"
  strands = 4
}
panel "A" {
  space = "S"
  ports = 4
}
panel "B" {
  space = "S"
  ports = 4
}
panel "M" {
  space = "S"
  ports = 4
}
equipment "X" {
  kind  = "switch"
  space = "S"
  ports = 2
}
equipment "Y" {
  kind  = "switch"
  space = "S"
  ports = 2
}
run "OUT" {
  cable = "f"
  from  = "M:4"
  to    = "B:1-4"
}
run "TRUNK" {
  cable = "f"
  from  = "M:2"
  to    = "M:3"
}
run "IN" {
  cable = "f"
  from  = "A:1-4"
  to    = "M:1"
}
cord "C1" {
  from = "M:1"
  to   = "M:2"
}
cord "C2" {
  from = "M:3"
  to   = "M:4"
}
cord "X1" {
  from = "X:1"
  to   = "A:1-2"
}
cord "X2" {
  from = "X:2"
  to   = "A:3-4"
}
cord "Y1" {
  from = "B:1-2"
  to   = "Y:1"
}
cord "Y2" {
  from = "B:4"
  to   = "Y:2"
}
`

// way writes the cables of a channel with the ports at its ends.
func way(c *plant.Channel) string {
	var b strings.Builder
	b.WriteString(c.Start.String())
	for _, part := range c.Parts {
		if part.Cord != nil {
			b.WriteString(" " + part.Cord.Label)
		}
		for _, r := range part.Runs() {
			b.WriteString(" " + r.Label)
		}
	}
	return b.String() + " " + c.End.String()
}

// TestStrands follows each fibre by itself, through connectors of several
// fibres too: where it goes is what one would find with a light at one end.
func TestStrands(t *testing.T) {
	t.Parallel()
	p := plant.Build(".", []*schema.File{schema.NewReader().ReadFile("plant.hcl", arrays)})
	s := p.Strands(func(l *plant.Link) bool { return l.Medium() == plant.Fibre })
	for port, want := range map[string]string{
		"A:1": "X:1 X1 IN C1 TRUNK C2 OUT Y1 Y:1",
		"A:2": "X:1 X1 IN C1 TRUNK C2 OUT Y1 Y:1",
		"A:3": "X:2 X2 IN C1 TRUNK C2 OUT B:3",
		"A:4": "X:2 X2 IN C1 TRUNK C2 OUT Y2 Y:2",
		"B:1": "X:1 X1 IN C1 TRUNK C2 OUT Y1 Y:1",
		"B:4": "X:2 X2 IN C1 TRUNK C2 OUT Y2 Y:2",
	} {
		at, ok := p.FindPort(port)
		if !ok {
			t.Fatal(port)
		}
		if got := s.Through(at); len(got) != 1 || way(got[0]) != want {
			t.Errorf("%s: %d channels, %s, want %s", port, len(got), way(got[0]), want)
		}
	}
	trunk, _ := p.FindPort("M:3")
	if got := s.Through(trunk); len(got) != 3 {
		t.Errorf("the array trunk is part of %d channels, want 3", len(got))
	}
	counted := 0
	s.Each(func(l *plant.Link, channels []*plant.Channel) {
		counted += len(channels)
		if l.Lead().Label != "OUT" {
			t.Errorf("%d channels belong to %s", len(channels), l.Lead().Label)
		}
	})
	if counted != 3 {
		t.Errorf("%d channels in all, want 3", counted)
	}
	if none := p.Strands(func(*plant.Link) bool { return false }); none.Any() || none.Through(trunk) != nil {
		t.Error("fibres are followed that were not asked for")
	}
}
