package workbook

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"
)

// readBook reads every sheet of a spreadsheet, those that are hidden too: records do
// not depend on what somebody last looked at.
func readBook(data []byte) (grids []Grid, err error) {
	f, err := excelize.OpenReader(bytes.NewReader(data), excelize.Options{RawCellValue: true, UnzipSizeLimit: maxUnpacked, UnzipXMLSizeLimit: maxUnpacked})
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrNoTable, err)
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	b := reading{File: f, dates: make(map[int]bool)}
	if props, bad := f.GetWorkbookProps(); bad == nil && props.Date1904 != nil {
		b.from1904 = *props.Date1904
	}
	for _, name := range f.GetSheetList() {
		g := Grid{Name: name}
		if err := b.sheet(&g); err != nil {
			return nil, err
		}
		grids = append(grids, g)
	}
	return grids, nil
}

// A reading is a spreadsheet that is being read.
type reading struct {
	*excelize.File
	// dates says of the styles of cells whether they show a number as a day.
	dates    map[int]bool
	from1904 bool
	cells    tally
}

func (b *reading) sheet(g *Grid) error {
	rows, err := b.Rows(g.Name)
	if err != nil {
		return fmt.Errorf("sheet %s: %w: %w", g.Name, ErrNoTable, err)
	}
	for n := 1; rows.Next(); n++ {
		texts, err := rows.Columns(excelize.Options{RawCellValue: true})
		if err != nil {
			return fmt.Errorf("sheet %s, row %d: %w: %w", g.Name, n, ErrNoTable, err)
		}
		row := make([]Cell, len(texts))
		for i, text := range texts {
			if row[i], err = b.cell(g.Name, i+1, n, text); err != nil {
				return err
			}
		}
		if err := b.cells.take(g, row); err != nil {
			return err
		}
	}
	if err := errors.Join(rows.Error(), rows.Close()); err != nil {
		return fmt.Errorf("sheet %s: %w: %w", g.Name, ErrNoTable, err)
	}
	return nil
}

func (b *reading) cell(sheet string, column, row int, text string) (Cell, error) {
	name, err := excelize.CoordinatesToCellName(column, row)
	if err != nil {
		return Cell{}, err
	}
	c := Cell{Text: strings.TrimSpace(Bare(text)), Place: "sheet " + sheet + ", cell " + name}
	kind, err := b.GetCellType(sheet, name)
	if err != nil {
		return Cell{}, fmt.Errorf("%s: %w: %w", c.Place, ErrNoTable, err)
	}
	if text == "" {
		if formula, bad := b.GetCellFormula(sheet, name); bad == nil && formula != "" {
			c.Broken = "it holds a formula without its result"
		}
		return c, nil
	}
	switch kind {
	case excelize.CellTypeError:
		c.Broken = "it holds the error " + text
	case excelize.CellTypeUnset, excelize.CellTypeNumber:
		b.number(&c, sheet, name, text)
	case excelize.CellTypeBool, excelize.CellTypeDate, excelize.CellTypeFormula, excelize.CellTypeInlineString, excelize.CellTypeSharedString:
	}
	return c, nil
}

// number is a number as people write it, or the day that it counts.
func (b *reading) number(c *Cell, sheet, name, text string) {
	value, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return // a text all the same
	}
	if b.showsDay(sheet, name) {
		if day, bad := excelize.ExcelDateToTime(value, b.from1904); bad == nil {
			c.Text = day.Format("2006-01-02")
			return
		}
	}
	// Fifteen digits are what a spreadsheet keeps (common practice); behind them is
	// what is left over of its sums.
	const digits = 15
	if value, err = strconv.ParseFloat(strconv.FormatFloat(value, 'g', digits, 64), 64); err == nil {
		c.Text, c.Number = strconv.FormatFloat(value, 'f', -1, 64), true
	}
}

// showsDay says whether a cell shows its number as a day.
func (b *reading) showsDay(sheet, name string) bool {
	id, err := b.GetCellStyle(sheet, name)
	if err != nil {
		return false
	}
	day, known := b.dates[id]
	if !known {
		if style, bad := b.GetStyle(id); bad == nil {
			day = isDay(style.NumFmt)
			if style.CustomNumFmt != nil {
				day = isDayFormat(*style.CustomNumFmt)
			}
		}
		b.dates[id] = day
	}
	return day
}

// isDay says whether a number of a built-in format shows a day (ECMA-376 part 1,
// clause 18.8.30, from memory).
func isDay(format int) bool {
	return format >= 14 && format <= 17 || format == 22 || format >= 27 && format <= 36 || format >= 50 && format <= 58
}

// isDayFormat says whether a format of its own shows a year: what is quoted in it or
// set in brackets does not count.
func isDayFormat(format string) bool {
	quoted, bracketed := false, false
	for _, r := range strings.ToLower(format) {
		switch {
		case r == '"':
			quoted = !quoted
		case r == '[' && !quoted:
			bracketed = true
		case r == ']':
			bracketed = false
		case r == 'y' && !quoted && !bracketed:
			return true
		}
	}
	return false
}
