package workbook

import (
	"bytes"
	"errors"
	"fmt"
)

// The bounds of what is read.
const (
	// MaxFile is the size in bytes of the largest file that is read.
	MaxFile = 64 << 20
	// MaxRows is how many rows a sheet may have.
	MaxRows = 200_000
	// MaxColumns is how many columns a sheet may have.
	MaxColumns = 256
	// MaxCells is how many cells a file may have in all, empty ones between others too.
	MaxCells = 8_000_000
	// maxUnpacked is how many bytes the parts of a spreadsheet may have in all.
	maxUnpacked = 256 << 20
)

// What can not be read. Errors of this package wrap one of these.
var (
	ErrTooLarge = errors.New("it is too large")
	ErrNoTable  = errors.New("it is no spreadsheet and no list of values")
)

// A Grid is a sheet as it was read: rows of cells, with empty rows left out.
type Grid struct {
	// Name is the sheet's name, empty for separated values.
	Name string
	Rows [][]Cell
}

// A tally counts the cells of all sheets of a file.
type tally int

// A Cell is one cell of a sheet, without white space around it.
type Cell struct {
	// Text is what stands in it; a number has no more digits than it needs, a day is
	// written 2026-03-31.
	Text string
	// Number is set where the sheet holds a number, which has lost zeros that do not
	// count.
	Number bool
	// Broken says why a cell has no value, empty where it has one.
	Broken string
	// Place is where it is, in words.
	Place string
}

// Read reads a spreadsheet (.xlsx) or separated values: with commas, semicolons or
// tabs between them, in UTF-8 or in UTF-16 with a byte order mark. Which of both it
// is the bytes tell. What Write and WriteCSV put before texts is taken away. The
// error wraps ErrTooLarge or ErrNoTable and says where it is.
func Read(data []byte) ([]Grid, error) {
	switch {
	case len(data) > MaxFile:
		return nil, fmt.Errorf("%w: %d bytes, limit %d", ErrTooLarge, len(data), MaxFile)
	case bytes.HasPrefix(data, []byte("PK\x03\x04")):
		return readBook(data)
	case bytes.HasPrefix(data, []byte("\xd0\xcf\x11\xe0")):
		return nil, fmt.Errorf("%w: it is of the older binary form, or locked by a password; save it as .xlsx or .csv", ErrNoTable)
	}
	return readCSV(data)
}

// take appends a row that holds anything to a sheet.
func (n *tally) take(g *Grid, row []Cell) error {
	filled := 0
	for i := range row {
		if row[i].Text != "" || row[i].Broken != "" {
			filled = i + 1
		}
	}
	switch {
	case filled == 0:
		return nil
	case filled > MaxColumns:
		return fmt.Errorf("%s: %w: limit %d columns", row[filled-1].Place, ErrTooLarge, MaxColumns)
	case len(g.Rows) == MaxRows:
		return fmt.Errorf("%s: %w: limit %d rows", row[0].Place, ErrTooLarge, MaxRows)
	}
	if *n += tally(filled); *n > MaxCells {
		return fmt.Errorf("%s: %w: limit %d cells", row[0].Place, ErrTooLarge, MaxCells)
	}
	g.Rows = append(g.Rows, row[:filled])
	return nil
}
