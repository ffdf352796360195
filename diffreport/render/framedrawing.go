package render

import (
	"fmt"
	"strings"

	"homerun/diffreport/drawing"
)

// A frameDrawing is the frame of a bank. A page of many faces has thousands of
// banks and few sizes of them, so each is drawn once and referred to.
type frameDrawing struct{ ID, Path string }

func frameID(jacks, sides int) string { return fmt.Sprintf("frame-%d-%d", jacks, sides) }

// frames are the frames of all sizes that a bank has.
func frames() []frameDrawing {
	var all []frameDrawing
	for jacks := 1; jacks <= drawing.MostInBank; jacks++ {
		for sides := 1; sides <= 2; sides++ {
			all = append(all, frameDrawing{frameID(jacks, sides), frame(jacks*jackWidth, sides*cellHeight)})
		}
	}
	return all
}

// frame is a box with lines between ports and between sides.
func frame(wide, high int) string {
	var path strings.Builder
	fmt.Fprintf(&path, "M%d %dh%dv%dh-%dz", edgeWidth, cellTop, wide, high, wide)
	for x := jackWidth; x < wide; x += jackWidth {
		fmt.Fprintf(&path, "M%d %dv%d", edgeWidth+x, cellTop, high)
	}
	for y := cellHeight; y < high; y += cellHeight {
		fmt.Fprintf(&path, "M%d %dh%d", edgeWidth, cellTop+y, wide)
	}
	return path.String()
}
