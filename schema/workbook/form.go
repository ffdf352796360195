package workbook

import (
	"fmt"
	"unicode/utf8"
)

// A Sheet is rows of numbers and texts below a row of headings.
type Sheet struct {
	Name     string
	Headings []string
	Rows     [][]any
	// Widest is how wide the column below a heading may be, in characters, where
	// that is not 42.
	Widest map[string]float64
	// Blanks are the headings of columns behind the others, wide enough to be filled in
	// by hand.
	Blanks []string
	// Printed is how many columns go on paper, the first ones; 0 is all of them.
	Printed int
	// Entries are the columns in which people write, by heading: what they type stays
	// text.
	Entries map[string]Entry
}

// An Entry helps those who write in a column.
type Entry struct {
	// Hint says what belongs there, shown beside the cell.
	Hint string
	// Words are what a spreadsheet offers; another word is taken after a question.
	Words []string
}

// How wide a column is, in characters, of which its border takes a few.
const (
	narrowestColumn, widestColumn = 6, 42
	columnBorder                  = 2
	writtenByHand                 = 18
)

// widths are how wide the columns want to be.
func (s *Sheet) widths() []float64 {
	widths, most := make([]float64, len(s.Headings)+len(s.Blanks)), make([]float64, len(s.Headings))
	for i, h := range s.Headings {
		if most[i] = s.Widest[h]; most[i] == 0 {
			most[i] = widestColumn
		}
		widths[i] = min(max(float64(length(h)+columnBorder), narrowestColumn), most[i])
	}
	for i := range s.Blanks {
		widths[len(s.Headings)+i] = writtenByHand
	}
	for _, row := range s.Rows {
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
