package workbook_test

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"github.com/google/go-cmp/cmp"
	"github.com/xuri/excelize/v2"

	"homerun/schema/workbook"
)

// textsOf are the texts of a grid, a row a line.
func textsOf(g workbook.Grid) string {
	var b strings.Builder
	for _, row := range g.Rows {
		for i, c := range row {
			if i > 0 {
				b.WriteString("|")
			}
			b.WriteString(c.Text)
		}
		b.WriteString("\n")
	}
	return b.String()
}

func utf16Of(text string, order int) []byte {
	var b []byte
	for _, u := range utf16.Encode([]rune("\ufeff" + text)) {
		pair := []byte{byte(u), byte(u >> 8)}
		b = append(b, pair[order], pair[1-order])
	}
	return b
}

// TestSeparatedValuesAreRead: separators, encodings, quotes, empty rows, and the places
// of cells.
func TestSeparatedValuesAreRead(t *testing.T) {
	t.Parallel()
	const want = "label|note\n1A|ü, b\n1.10|\n"
	for name, data := range map[string][]byte{
		"commas":                 []byte("label,note\n1A,\"ü, b\"\n,\n1.10\n"),
		"semicolons, CR LF":      []byte("label;note\r\n1A;ü, b\r\n;\r\n1.10;\r\n"),
		"tabs, byte order mark":  []byte("\ufefflabel\tnote\n1A\tü, b\n\n1.10\t\n"),
		"UTF-16, little-endian":  utf16Of("label\tnote\n1A\tü, b\n1.10\t\n", 0),
		"UTF-16, big-endian":     utf16Of("label;note\n1A;ü, b\n1.10;\n", 1),
		"an apostrophe, a space": []byte("label, note \n 1A ,\"ü, b\"\n1.10,\n"),
	} {
		grids, err := workbook.Read(data)
		if err != nil || len(grids) != 1 {
			t.Errorf("%s: %v", name, err)
			continue
		}
		got := strings.ReplaceAll(textsOf(grids[0]), "1.10\n", "1.10|\n")
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
	grids, err := workbook.Read([]byte("a,b\n\n\"two\nlines\",'=1\n"))
	if err != nil || grids[0].Rows[1][1] != (workbook.Cell{Text: "=1", Place: "line 4, field 2"}) {
		t.Errorf("%+v, %v", grids, err)
	}
}

// TestWhatIsNoTableIsRefused, each with the place and what is wrong there.
func TestWhatIsNoTableIsRefused(t *testing.T) {
	t.Parallel()
	for said, data := range map[string]string{
		"line 2: it is no spreadsheet and no list of values: byte 0xFC is not UTF-8 text": "a,b\nx\xfc,c\n",
		"line 1: it is no spreadsheet and no list of values: it holds a NUL byte":         "a\x00,b\n",
		"line 2, column 2: it is no spreadsheet and no list of values: bare \"":           "a,b\nx\"y,c\n",
		"it is of the older binary form":                                                  "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1",
		"it is no spreadsheet":                                                            "PK\x03\x04 and nothing of it",
		"it is too large: limit 256 col":                                                  strings.Repeat("a,", 300) + "b\n",
		"it is too large: limit 200000 r":                                                 strings.Repeat("a\n", 200_001),
	} {
		_, err := workbook.Read([]byte(data))
		if err == nil || !strings.Contains(err.Error(), said) || !errors.Is(err, workbook.ErrNoTable) && !errors.Is(err, workbook.ErrTooLarge) {
			t.Errorf("%.20q: %v, want %s", data, err, said)
		}
	}
}

// TestSpreadsheetsAreRead: numbers, days, formulas, errors, and what is left over of a
// spreadsheet's sums.
func TestSpreadsheetsAreRead(t *testing.T) {
	t.Parallel()
	f := excelize.NewFile()
	set := func(cell string, value any) {
		t.Helper()
		if err := f.SetCellValue("Sheet1", cell, value); err != nil {
			t.Fatal(err)
		}
	}
	set("A1", "label")
	set("B1", 1.1)
	set("C1", 0.1+0.2)
	set("D1", time.Date(2026, 3, 31, 0, 0, 0, 0, time.UTC))
	set("A3", "1.10")
	set("B3", 24)
	set("C3", true)
	set("D3", "'-5 C")
	if err := f.SetCellFormula("Sheet1", "E3", "A1&B1"); err != nil {
		t.Fatal(err)
	}
	day := "dd.mm.yyyy"
	style, err := f.NewStyle(&excelize.Style{CustomNumFmt: &day})
	if err != nil {
		t.Fatal(err)
	}
	set("F3", 46112)
	if err = f.SetCellStyle("Sheet1", "F3", "F3", style); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err = f.Write(&out); err != nil {
		t.Fatal(err)
	}
	grids, err := workbook.Read(out.Bytes())
	if err != nil || len(grids) != 1 {
		t.Fatal(err)
	}
	at := func(cell string) string { return "sheet Sheet1, cell " + cell }
	want := [][]workbook.Cell{
		{{Text: "label", Place: at("A1")}, {Text: "1.1", Number: true, Place: at("B1")}, {Text: "0.3", Number: true, Place: at("C1")}, {Text: "2026-03-31", Place: at("D1")}},
		{
			{Text: "1.10", Place: at("A3")},
			{Text: "24", Number: true, Place: at("B3")},
			{Text: "1", Place: at("C3")},
			{Text: "-5 C", Place: at("D3")},
			{Broken: "it holds a formula without its result", Place: at("E3")},
			{Text: "2026-03-31", Place: at("F3")},
		},
	}
	if diff := cmp.Diff(want, grids[0].Rows); diff != "" {
		t.Errorf("cells (-want +got):\n%s", diff)
	}
}

// TestASpreadsheetProgramsFilesAreRead has a spreadsheet program make the file, as
// most of those that come in are made.
func TestASpreadsheetProgramsFilesAreRead(t *testing.T) {
	t.Parallel()
	program, err := exec.LookPath("soffice")
	if err != nil {
		t.Skip("soffice is not installed")
	}
	dir := t.TempDir()
	const list = "label,length,serves,date\n1A-A01,41.5,1000BASE-T,2026-03-31\n1.10,7,\"a, b\",\n"
	if err = os.WriteFile(filepath.Join(dir, "list.csv"), []byte(list), 0o600); err != nil {
		t.Fatal(err)
	}
	cmd := exec.CommandContext(t.Context(), program, "-env:UserInstallation=file://"+filepath.Join(dir, "profile"), "--headless", "--convert-to", "xlsx", "--outdir", dir, filepath.Join(dir, "list.csv"))
	if out, failed := cmd.CombinedOutput(); failed != nil {
		t.Fatalf("%v: %s", failed, out)
	}
	data, err := os.ReadFile(filepath.Join(dir, "list.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	grids, err := workbook.Read(data)
	if err != nil || len(grids) != 1 || grids[0].Name != "list" {
		t.Fatal(err, grids)
	}
	// That program has made a number of the label: it can not be told from 1.1 any
	// more, and the cell says that it is one.
	if diff := cmp.Diff("label|length|serves|date\n1A-A01|41.5|1000BASE-T|2026-03-31\n1.1|7|a, b\n", textsOf(grids[0])); diff != "" {
		t.Errorf("texts (-want +got):\n%s", diff)
	}
	if c := grids[0].Rows[2][0]; !c.Number || c.Place != "sheet list, cell A3" {
		t.Errorf("%+v", c)
	}
}

// FuzzRead reads any bytes: an error at most, which says that it is no table or too
// large.
func FuzzRead(f *testing.F) {
	var out bytes.Buffer
	if err := workbook.Write(&out, "Texts", []workbook.Sheet{sheetOf(awkward)}); err != nil {
		f.Fatal(err)
	}
	f.Add(out.Bytes())
	f.Add([]byte("a,b\n\"c\nd\",e\n"))
	f.Add([]byte("\ufeffa;b\r\n1;2"))
	f.Add(utf16Of("a\tb\n", 0))
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 1<<16 {
			return
		}
		grids, err := workbook.Read(data)
		if err != nil && !errors.Is(err, workbook.ErrNoTable) && !errors.Is(err, workbook.ErrTooLarge) {
			t.Errorf("%v", err)
		}
		for _, g := range grids {
			for _, row := range g.Rows {
				for _, c := range row {
					if c.Place == "" {
						t.Errorf("a cell without a place: %+v", c)
					}
				}
			}
		}
	})
}
