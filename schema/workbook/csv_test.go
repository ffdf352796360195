package workbook_test

import (
	"bytes"
	"encoding/csv"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/xuri/excelize/v2"
	"pgregory.net/rapid"

	"homerun/schema/workbook"
)

// awkward are texts that spreadsheet programs like to take for something else.
var awkward = []string{
	"1.10", "007", "2026-03-31", "1E5", "TRUE", "3/4", "1-2", "12:30", "=1+1", "+1", "-5 C", "@x", "'=x", "''-1", "'quoted'", " =1", "a,b", `say "so"`, "two\nlines", "ä", "50 %", "",
}

func sheetOf(texts []string) workbook.Sheet {
	s := workbook.Sheet{Name: "run", Headings: []string{"label", "text"}, Entries: map[string]workbook.Entry{"text": {Hint: "any words", Words: []string{"a", "b"}}, "label": {}}}
	for _, text := range texts {
		s.Rows = append(s.Rows, []any{"x", text})
	}
	return s
}

// TestCSVIsReadAsWritten draws texts and reads them with another reader of RFC 4180:
// each is the same without what makes it inert, and none begins like a formula.
func TestCSVIsReadAsWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		texts := rapid.SliceOfN(rapid.OneOf(rapid.SampledFrom(awkward), rapid.StringMatching(`[ '=@a"\n,+-]{0,8}`)), 1, 6).Draw(t, "texts")
		var out bytes.Buffer
		if err := workbook.WriteCSV(&out, sheetOf(texts)); err != nil {
			t.Fatal(err)
		}
		rest, marked := strings.CutPrefix(out.String(), "\ufeff")
		rows, err := csv.NewReader(strings.NewReader(rest)).ReadAll()
		if err != nil || !marked || len(rows) != len(texts)+1 {
			t.Fatalf("%q: %v", out.String(), err)
		}
		for i, row := range rows[1:] {
			if first := strings.TrimLeft(row[1], " "); first != "" && strings.ContainsAny(first[:1], "=+-@") {
				t.Errorf("%q begins like a formula", row[1])
			}
			if got := workbook.Bare(row[1]); got != texts[i] {
				t.Errorf("%q was written as %q and means %q", texts[i], row[1], got)
			}
		}
	})
}

// TestASpreadsheetProgramKeepsTexts has a spreadsheet program open the workbook and
// save it again, as somebody does who corrects a cell: every text is still there.
func TestASpreadsheetProgramKeepsTexts(t *testing.T) {
	t.Parallel()
	program, err := exec.LookPath("soffice")
	if err != nil {
		t.Skip("soffice is not installed")
	}
	dir := t.TempDir()
	var out, again bytes.Buffer
	for _, w := range []*bytes.Buffer{&out, &again} {
		if bad := workbook.Write(w, "Texts", []workbook.Sheet{sheetOf(awkward)}); bad != nil {
			t.Fatal(bad)
		}
	}
	if !bytes.Equal(out.Bytes(), again.Bytes()) {
		t.Error("the same sheet gave two workbooks")
	}
	file := filepath.Join(dir, "texts.xlsx")
	if err = os.WriteFile(file, out.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	saved := filepath.Join(dir, "saved")
	cmd := exec.CommandContext(t.Context(), program, "-env:UserInstallation=file://"+filepath.Join(dir, "profile"), "--headless", "--convert-to", "xlsx", "--outdir", saved, file)
	if said, failed := cmd.CombinedOutput(); failed != nil {
		t.Fatalf("%v: %s", failed, said)
	}
	f, err := excelize.OpenFile(filepath.Join(saved, "texts.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	rows, err := f.GetRows("run", excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, row := range rows[1:] {
		text := ""
		if len(row) > 1 {
			text = workbook.Bare(row[1])
		}
		got = append(got, text)
	}
	if diff := cmp.Diff(awkward, got); diff != "" {
		t.Errorf("texts (-written +saved):\n%s", diff)
	}
	// Whoever types a label below the last row types a text.
	style, err := f.GetCellStyle("run", "A99")
	if err != nil {
		t.Fatal(err)
	}
	s, err := f.GetStyle(style)
	if err != nil {
		t.Fatal(err)
	}
	if s.NumFmt != 49 && (s.CustomNumFmt == nil || *s.CustomNumFmt != "@") {
		t.Errorf("an empty cell has the format %+v", s)
	}
	if all, err := f.GetDataValidations("run"); err != nil || len(all) == 0 {
		t.Errorf("no cell has a hint: %v", err)
	}
}
