package render

import (
	"fmt"

	"homerun/diffreport/drawing"
)

// A cellDrawing is port sides with the same mark, as paths of SVG. Cross is
// empty where nothing comes off.
type cellDrawing struct {
	Mark, Says  string
	Path, Cross string
	crossed     bool
}

// cellOf is how a mark looks and what it is called, without a place.
func cellOf(m drawing.Mark) cellDrawing {
	switch m {
	case drawing.Free:
	case drawing.Stays:
		return cellDrawing{Mark: "stays", Says: "in use, stays"}
	case drawing.Off:
		return cellDrawing{Mark: "off", Says: "comes off", crossed: true}
	case drawing.On:
		return cellDrawing{Mark: "on", Says: "goes on"}
	case drawing.Instead:
		return cellDrawing{Mark: "instead", Says: "comes off and another goes on", crossed: true}
	}
	return cellDrawing{Mark: "free", Says: "free"}
}

// add draws so many neighbouring fields from a place on.
func (c *cellDrawing) add(x, y, fields int) {
	wide := fields * jackWidth
	c.Path += fmt.Sprintf("M%d %dh%dv%dh-%dz", x, y, wide, cellHeight, wide)
	for to := x + wide; c.crossed && x < to; x += jackWidth {
		c.Cross += fmt.Sprintf("M%d %dl%d %dm-%d 0l%d-%d", x, y, jackWidth, cellHeight, jackWidth, jackWidth, cellHeight)
	}
}

// filledMarks are the marks that fill a field.
func filledMarks() []drawing.Mark {
	return []drawing.Mark{drawing.Stays, drawing.Off, drawing.On, drawing.Instead}
}

// legend explains the marks that faces show, each by one field.
func legend(faces []faceDrawing) []cellDrawing {
	met := make(map[string]bool)
	for i := range faces {
		for _, b := range faces[i].Banks {
			for _, c := range b.Fills {
				met[c.Mark] = true
			}
		}
	}
	var all []cellDrawing
	for _, m := range filledMarks() {
		if c := cellOf(m); met[c.Mark] {
			c.add(edgeWidth, edgeWidth, 1)
			all = append(all, c)
		}
	}
	return all
}
