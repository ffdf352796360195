package workbook

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
)

// mark is what tells spreadsheets on Windows that a file is UTF-8: without it they
// read it in the code page of the machine (common practice).
const mark = "\ufeff"

// WriteCSV writes a sheet as comma-separated values by RFC 4180, in UTF-8 with a
// byte order mark. Texts that begin like a formula have an apostrophe in front, as in
// Write. The error is that of the writer.
func WriteCSV(w io.Writer, s Sheet) error {
	if _, err := io.WriteString(w, mark); err != nil {
		return err
	}
	out := csv.NewWriter(w)
	out.UseCRLF = true
	if err := out.Write(slices.Concat(s.Headings, s.Blanks)); err != nil {
		return err
	}
	for _, row := range s.Rows {
		cells := make([]string, len(row)+len(s.Blanks))
		for i, cell := range row {
			cells[i] = fmt.Sprint(inert(cell))
		}
		if err := out.Write(cells); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}
