package render

import (
	"fmt"
	"html/template"

	"homerun/diffreport/drawing"
)

// Sizes of a face, in pixels: two banks side by side fit a telephone.
const (
	jackWidth, jackGap  = 24, 2
	cellHeight, cellGap = 13, 2
	cellTop             = 14
)

// A bankDrawing is one bank of ports as it is drawn.
type bankDrawing struct {
	Width, Height int
	First, Last   string
	Jacks         []jackDrawing
}

type jackDrawing struct {
	Middle  int
	Number  string
	Touched bool
	Cells   []cellDrawing
}

type cellDrawing struct {
	X, Y, W, H int
	Mark, Says string
	Crossed    bool
}

func drawingFuncs() template.FuncMap {
	return template.FuncMap{
		"banks": bankDrawings, "legend": legend, "useClass": useClass,
		// A drawing shrinks with a narrow page, but only as far as it can be read.
		"least":  func(width int) int { return width * 7 / 10 },
		"right":  func(s drawing.Stop) int { return s.X + s.Width },
		"middle": func(s drawing.Stop) int { return s.Y + s.Height/2 },
		"inset":  func(s drawing.Stop) int { return s.X + 10 },
		"line":   func(s drawing.Stop, n int) int { return s.Y + 1 + 15*n },
	}
}

func useClass(u drawing.Use) string {
	switch u {
	case drawing.In:
		return "in"
	case drawing.Out:
		return "out"
	case drawing.Only:
		return "only"
	}
	return ""
}

func bankDrawings(f drawing.Face) []bankDrawing {
	rows := 2
	if f.OneSided {
		rows = 1
	}
	return each(f.Banks, func(b drawing.Bank) bankDrawing {
		d := bankDrawing{
			Width: len(b.Jacks)*(jackWidth+jackGap) + jackGap, Height: cellTop + rows*(cellHeight+cellGap),
			First: b.Jacks[0].Number, Last: b.Jacks[len(b.Jacks)-1].Number,
		}
		for i, j := range b.Jacks {
			d.Jacks = append(d.Jacks, jackOf(j, jackGap+i*(jackWidth+jackGap), rows))
		}
		return d
	})
}

func jackOf(j drawing.Jack, x, rows int) jackDrawing {
	d := jackDrawing{Middle: x + jackWidth/2, Number: j.Number, Touched: j.Rear > drawing.Stays || j.Front > drawing.Stays}
	cell := func(m drawing.Mark, side string) {
		c := cellOf(m)
		c.X, c.Y = x, cellTop+len(d.Cells)*(cellHeight+cellGap)
		c.Says = fmt.Sprintf("%s %s: %s", j.Number, side, c.Says)
		d.Cells = append(d.Cells, c)
	}
	if rows > 1 {
		cell(j.Rear, "rear")
	}
	cell(j.Front, "front")
	return d
}

// cellOf is how a mark looks and what it is called.
func cellOf(m drawing.Mark) cellDrawing {
	c := cellDrawing{W: jackWidth, H: cellHeight}
	switch m {
	case drawing.Free:
		c.Mark, c.Says = "free", "free"
	case drawing.Stays:
		c.Mark, c.Says = "stays", "in use, stays"
	case drawing.Off:
		c.Mark, c.Says, c.Crossed = "off", "comes off", true
	case drawing.On:
		c.Mark, c.Says = "on", "goes on"
	case drawing.Instead:
		c.Mark, c.Says, c.Crossed = "instead", "comes off and another goes on", true
	}
	return c
}

func legend() []cellDrawing {
	return each([]drawing.Mark{drawing.Free, drawing.Stays, drawing.Off, drawing.On, drawing.Instead}, cellOf)
}
