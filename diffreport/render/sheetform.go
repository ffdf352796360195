package render

import (
	"fmt"
	"unicode/utf8"
)

// A sheet is rows of numbers and texts below a row of headings.
type sheet struct {
	name     string
	headings []string
	rows     [][]any
	// widest is how wide the column below a heading may be, in characters, where
	// that is not widestColumn.
	widest map[string]float64
	// printed is how many columns go on paper, the first ones; 0 is all of them.
	printed int
}

// How wide a column is, in characters, of which its border takes a few.
const (
	narrowestColumn, widestColumn = 6, 42
	columnBorder                  = 2
)

// widths are how wide the columns want to be.
func (s *sheet) widths() []float64 {
	widths, most := make([]float64, len(s.headings)), make([]float64, len(s.headings))
	for i, h := range s.headings {
		if most[i] = s.widest[h]; most[i] == 0 {
			most[i] = widestColumn
		}
		widths[i] = min(max(float64(length(h)+columnBorder), narrowestColumn), most[i])
	}
	for _, row := range s.rows {
		for i, cell := range row {
			widths[i] = max(widths[i], min(float64(length(cell)+columnBorder), most[i]))
		}
	}
	return widths
}

// height is how tall a row is whose long texts are wrapped, in points. Left to
// itself a spreadsheet shows the first line.
func height(row []any, widths []float64) float64 {
	const line, tallest = 15, 400
	lines := 1
	for i, cell := range row {
		// words do not fill a line to its end
		room := max(1, int(widths[i])-2*columnBorder)
		if n := length(cell); n > int(widths[i])-columnBorder {
			lines = max(lines, (n+room-1)/room)
		}
	}
	return float64(min(lines*line, tallest))
}

func length(cell any) int {
	if text, isText := cell.(string); isText {
		return utf8.RuneCountInString(text)
	}
	return len(fmt.Sprint(cell))
}
