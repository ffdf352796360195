package workbook

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"
)

// Write writes the sheets as one spreadsheet with a title, the same bytes for the
// same sheets. No text in it can work as a formula, there or in what is exported
// from it: one that begins like a formula has an apostrophe in front. The error is
// that of the writer, or of a sheet with more rows than a spreadsheet takes.
func Write(w io.Writer, title string, sheets []Sheet) (err error) {
	b := &book{File: excelize.NewFile(), title: title}
	defer func() {
		if closing := b.Close(); err == nil {
			err = closing
		}
	}()
	if err := b.styles(); err != nil {
		return err
	}
	for _, s := range sheets {
		if err := b.add(s); err != nil {
			return fmt.Errorf("sheet %s: %w", s.Name, err)
		}
	}
	if err := b.DeleteSheet("Sheet1"); err != nil {
		return err
	}
	if err := b.about(); err != nil {
		return err
	}
	var packed bytes.Buffer
	if err := b.Write(&packed); err != nil {
		return err
	}
	return repack(w, packed.Bytes())
}

// about says in the file's properties what it is.
func (b *book) about() error {
	if err := b.SetDocProps(&excelize.DocProperties{Title: b.title, Creator: "homerun", LastModifiedBy: "homerun"}); err != nil {
		return err
	}
	return b.SetAppProps(&excelize.AppProperties{Application: "homerun"})
}

// A book is a spreadsheet in the making.
type book struct {
	*excelize.File
	title string
	// The faces of headings, of numbers and of texts.
	head, number, text int
}

// styles makes the faces of headings and of what stands below them.
func (b *book) styles() (err error) {
	family, err := b.GetDefaultFont()
	if err != nil {
		return err
	}
	top := &excelize.Alignment{Vertical: "top", WrapText: true}
	if b.head, err = b.NewStyle(&excelize.Style{
		Font: &excelize.Font{Bold: true, Family: family}, Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"E3ECEF"}},
		Border: []excelize.Border{{Type: "bottom", Color: "17475A", Style: 2}}, Alignment: top,
	}); err != nil {
		return err
	}
	left := *top
	left.Horizontal = "left" // numbers name steps and visits, and stand beside texts
	body := excelize.Style{Font: &excelize.Font{Family: family}, Alignment: &left}
	if b.number, err = b.NewStyle(&body); err != nil {
		return err
	}
	// Else a label such as 1.10 is a number as soon as somebody edits it, and a day
	// is counted from 1900.
	const asText = 49 // the format "@", ECMA-376 part 1, clause 18.8.30 (from memory)
	body.NumFmt = asText
	b.text, err = b.NewStyle(&body)
	return err
}

func (b *book) add(s Sheet) error {
	if _, err := b.NewSheet(s.Name); err != nil {
		return err
	}
	// What is said about a sheet as a whole has to be said before its rows.
	if err := b.page(s); err != nil {
		return err
	}
	if err := b.assist(s); err != nil {
		return err
	}
	out, err := b.NewStreamWriter(s.Name)
	if err != nil {
		return err
	}
	widths := s.widths()
	for i, width := range widths {
		if err := out.SetColWidth(i+1, i+1, width); err != nil {
			return err
		}
	}
	for i, heading := range s.Headings {
		if _, written := s.Entries[heading]; !written {
			continue
		}
		if err := out.SetColStyle(i+1, i+1, b.text); err != nil {
			return err
		}
	}
	if err := out.SetPanes(&excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}); err != nil {
		return err
	}
	if err := out.SetRow("A1", b.headings(s)); err != nil {
		return err
	}
	for i, row := range s.Rows {
		if err := out.SetRow("A"+strconv.Itoa(i+2), b.cells(row), excelize.RowOpts{Height: height(row, widths)}); err != nil {
			return err
		}
	}
	return out.Flush()
}

func (b *book) cells(row []any) []any {
	cells := make([]any, len(row))
	for i, cell := range row {
		style := b.number
		if _, isText := cell.(string); isText {
			style = b.text
		}
		cells[i] = excelize.Cell{StyleID: style, Value: inert(cell)}
	}
	return cells
}

func (b *book) headings(s Sheet) []any {
	all := slices.Concat(s.Headings, s.Blanks)
	cells := make([]any, len(all))
	for i, text := range all {
		cells[i] = excelize.Cell{StyleID: b.head, Value: inert(text)}
	}
	return cells
}

// page makes the sheet print: across, as wide as the paper, headings on every
// page, without the columns that are there for sorting.
func (b *book) page(s Sheet) error {
	across, tall := "landscape", 0
	if err := b.SetPageLayout(s.Name, &excelize.PageLayoutOptions{Orientation: &across, FitToHeight: &tall}); err != nil {
		return err
	}
	fit := true
	if err := b.SetSheetProps(s.Name, &excelize.SheetPropsOptions{FitToPage: &fit}); err != nil {
		return err
	}
	if err := b.SetHeaderFooter(s.Name, &excelize.HeaderFooterOptions{OddHeader: "&L" + headerText(b.title) + "&R&P / &N"}); err != nil {
		return err
	}
	if s.Printed > 0 {
		last, err := excelize.CoordinatesToCellName(s.Printed, len(s.Rows)+1, true)
		if err != nil {
			return err
		}
		if err := b.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", RefersTo: "'" + s.Name + "'!$A$1:" + last, Scope: s.Name}); err != nil {
			return err
		}
	}
	return b.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: "'" + s.Name + "'!$1:$1", Scope: s.Name})
}

// headerText is a text at the head of a printed page, where an ampersand begins a
// command and not much room is (255 characters in all, common practice).
func headerText(text string) string {
	const most = 100
	return strings.ReplaceAll(cutTo(text, most), "&", "&&")
}
