package drawing

import (
	"fmt"
	"strings"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
)

// A Map is the spaces of an order one below the other, and beside them the
// pathways as lines with a dot at each space that they pass. Sizes and places
// are in pixels.
type Map struct {
	Width, Height int
	Stops         []Stop
	Lines         []Line
	// Apart are the spaces visited at which no line stops, in words.
	Apart []string
	// Undrawn says in words what is left out; empty when everything is drawn.
	Undrawn string
}

// A Stop is one space.
type Stop struct {
	X, Y, Width, Height int
	Label, Title        string
	// Visits names the visits to the space; empty where cable only crosses it.
	Visits string
	// Reach is how far to the right the furthest line is that stops here, 0
	// where none does.
	Reach int
}

// A Line is one pathway, or a cable between two spaces of which no route is
// recorded.
type Line struct {
	// Label is empty where no route is recorded.
	Label string
	// Work says what is done there, such as "4 runs pulled in".
	Work string
	// Kind is the word for what the cable lies in.
	Kind string
	Use  Use
	// The line goes down X from Top to Bottom, with dots at these heights; its
	// label stands upright at LabelY.
	X, Top, Bottom int
	Dots           []int
	LabelY         int
	// Passes are the labels of the spaces, in order.
	Passes []string

	rows []int
}

// Use is what happens to the cable of a pathway.
type Use uint8

// The uses.
const (
	In   Use = iota // cable is laid in
	Out             // cable is only taken out
	Only            // the pathway itself is worked on
)

const (
	// mostStops and mostLines bound a drawing to what can still be read.
	mostStops = 60
	mostLines = 40
)

// Route draws the spaces that an order visits and the pathways that its runs are
// laid in or taken out of. It is nil where there is work on none.
func Route(o *diffreport.Order, base, head *plant.Plant) *Map {
	s := newSurvey(o, base, head)
	for _, v := range o.Visits() {
		s.call(v)
	}
	if len(s.lines) == 0 {
		return nil
	}
	spaces, apart := s.walk()
	m := &Map{}
	if n := len(spaces); n > mostStops || len(s.lines) > mostLines {
		m.Undrawn = fmt.Sprintf("%s and %s are too many for one drawing; the steps name each of them", counted(n, "space", "spaces"), counted(len(s.lines), "pathway", "pathways"))
		return m
	}
	for _, label := range spaces {
		m.Stops = append(m.Stops, s.stop(label))
	}
	for _, label := range apart {
		st := s.stop(label)
		m.Apart = append(m.Apart, st.Label+" ("+st.Visits+")")
	}
	m.Lines = s.drawn(spaces)
	m.lay()
	return m
}

// stop is a space with what its door says.
func (s *survey) stop(label string) Stop {
	st := Stop{Label: clip(label, 26)}
	if label == "" {
		st.Label = "place not recorded"
	}
	if sp := s.space(label); sp != nil {
		if title, ok := schema.SpaceTitle.In(sp.Record()); ok {
			st.Title = clip(title, 36)
		} else if kind, ok := schema.SpaceKind.In(sp.Record()); ok {
			st.Title = strings.ReplaceAll(kind, "-", " ")
		}
	}
	visits := s.visits[label]
	const most = 6
	switch n := len(visits); {
	case n == 1:
		st.Visits = fmt.Sprintf("visit %d", visits[0])
	case n > 1:
		var parts []string
		for _, v := range visits[:min(n, most)] {
			parts = append(parts, fmt.Sprint(v))
		}
		st.Visits = "visits " + strings.Join(parts, ", ")
		if n > most {
			st.Visits += fmt.Sprintf(" and %d more", n-most)
		}
	}
	return st
}

// drawn are the lines with the rows that they stop at.
func (s *survey) drawn(spaces []string) []Line {
	row := make(map[string]int, len(spaces))
	for i, label := range spaces {
		row[label] = i
	}
	var all []Line
	for _, l := range s.lines {
		line := Line{Label: clip(l.label, 26), Kind: l.kind, Work: l.words(), Use: l.use()}
		for _, sp := range l.passes {
			line.Passes = append(line.Passes, clip(sp, longestName))
			line.rows = append(line.rows, row[sp])
		}
		all = append(all, line)
	}
	return all
}

func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
