package render

import (
	"fmt"

	"homerun/diffreport/drawing"
)

// Sizes of a face, in pixels: two banks side by side fit a telephone.
const (
	jackWidth, cellHeight = 25, 13
	cellTop, edgeWidth    = 14, 1
)

// leastDrawn is how many ports a face has at least: of fewer, the steps say all.
const leastDrawn = 3

// A faceDrawing is the ports of one holder as they are drawn.
type faceDrawing struct {
	drawing.Face
	Banks []bankDrawing
	Work  []workPart
}

// A bankDrawing is one bank of ports: the numbers, fields filled by what happens
// to a port side, and a frame around them. Paths are those of SVG.
type bankDrawing struct {
	Width, Height int
	// Says is the drawing in words.
	Says string
	// Touched are the numbers of the ports that the visit works on, Idle those of
	// the others.
	Touched, Idle []portNumber
	Fills         []cellDrawing
	// Frame names the frame: there are a few for all banks.
	Frame string
}

type portNumber struct {
	X    int
	Text string
}

// A workPart is what comes off or goes on one side of a face's ports.
type workPart struct {
	Title string
	Ports []drawing.Work
}

// faceDrawings draws what is worth a drawing.
func faceDrawings(faces []drawing.Face) []faceDrawing {
	var all []faceDrawing
	for _, f := range faces {
		ports := f.Undrawn
		for _, b := range f.Banks {
			ports += len(b.Jacks)
		}
		if ports < leastDrawn {
			continue
		}
		sides := sidesOf(f)
		all = append(all, faceDrawing{f, each(f.Banks, func(b drawing.Bank) bankDrawing { return bankOf(b, sides) }), worksOf(f.Work)})
	}
	return all
}

// worksOf sorts the work by side, what comes off before what goes on.
func worksOf(list []drawing.Work) []workPart {
	var all []workPart
	for _, side := range []string{"rear", "front"} {
		for _, on := range []bool{false, true} {
			part := workPart{Title: side + ", comes off"}
			if on {
				part.Title = side + ", goes on"
			}
			for _, w := range list {
				if w.Side == side && w.On == on {
					part.Ports = append(part.Ports, w)
				}
			}
			if len(part.Ports) > 0 {
				all = append(all, part)
			}
		}
	}
	return all
}

// A side is one row of a face's fields.
type side struct {
	name string
	mark func(drawing.Jack) drawing.Mark
}

// sidesOf are the rows of a face from the top.
func sidesOf(f drawing.Face) []side {
	front := side{"front", func(j drawing.Jack) drawing.Mark { return j.Front }}
	if f.OneSided {
		return []side{front}
	}
	return []side{{"rear", func(j drawing.Jack) drawing.Mark { return j.Rear }}, front}
}

func bankOf(b drawing.Bank, sides []side) bankDrawing {
	wide, high := len(b.Jacks)*jackWidth, len(sides)*cellHeight
	d := bankDrawing{
		Width: wide + 2*edgeWidth, Height: cellTop + high + edgeWidth, Frame: frameID(len(b.Jacks), len(sides)),
		Says: "ports " + spanOf(b.Jacks),
	}
	for i, j := range b.Jacks {
		number := portNumber{edgeWidth + i*jackWidth + jackWidth/2, j.Number}
		if j.Rear > drawing.Stays || j.Front > drawing.Stays {
			d.Touched = append(d.Touched, number)
		} else {
			d.Idle = append(d.Idle, number)
		}
	}
	for _, mark := range filledMarks() {
		d.fill(b, mark, sides)
	}
	return d
}

// spanOf names neighbouring ports.
func spanOf(jacks []drawing.Jack) string {
	first, last := jacks[0].Number, jacks[len(jacks)-1].Number
	if first == last {
		return first
	}
	return first + " to " + last
}

// fill fills the fields that have a mark, neighbours in one, and says which they
// are.
func (d *bankDrawing) fill(b drawing.Bank, mark drawing.Mark, sides []side) {
	cell := cellOf(mark)
	for row, side := range sides {
		var met []string
		at := 0
		for _, same := range neighbours(b.Jacks, func(x, y drawing.Jack) bool { return side.mark(x) == side.mark(y) }) {
			if side.mark(same[0]) == mark {
				cell.add(edgeWidth+at*jackWidth, cellTop+row*cellHeight, len(same))
				met = append(met, spanOf(same))
			}
			at += len(same)
		}
		if len(met) > 0 {
			d.Says += fmt.Sprintf("; %s %s: %s", side.name, list(met), cell.Says)
		}
	}
	if cell.Path != "" {
		d.Fills = append(d.Fills, cell)
	}
}
