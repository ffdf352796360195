package render_test

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
	"golang.org/x/tools/txtar"

	"homerun/diffreport/render"
	"homerun/schema"
)

func workbook(t *testing.T, jobs ...render.Job) []byte {
	t.Helper()
	var first, again bytes.Buffer
	if err := render.OrderWorkbook(&first, jobs); err != nil {
		t.Fatal(err)
	}
	if err := render.OrderWorkbook(&again, jobs); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(first.Bytes(), again.Bytes()) {
		t.Error("the same orders gave two spreadsheets")
	}
	return first.Bytes()
}

// TestHostileWorkbook puts every hostile text into every place: no cell is a
// formula, and none would be one in a file of plain values.
func TestHostileWorkbook(t *testing.T) {
	t.Parallel()
	for _, shift := range []int{0, 1, 7, 30} {
		f, err := excelize.OpenReader(bytes.NewReader(workbook(t, hostileJob(shift))))
		if err != nil {
			t.Fatal(err)
		}
		// no text may add a command to the head of a printed page
		header, err := f.GetHeaderFooter("Steps")
		if err != nil {
			t.Fatal(err)
		}
		if commands := strings.Count(strings.ReplaceAll(header.OddHeader, "&&", ""), "&"); commands != 4 {
			t.Errorf("the head of a page has %d commands: %q", commands, header.OddHeader)
		}
		met := make(map[string]bool)
		for _, name := range f.GetSheetList() {
			rows, err := f.GetRows(name)
			if err != nil {
				t.Fatal(err)
			}
			for r, row := range rows {
				for c, text := range row {
					at, _ := excelize.CoordinatesToCellName(c+1, r+1)
					if formula, _ := f.GetCellFormula(name, at); formula != "" {
						t.Errorf("%s!%s is the formula %s", name, at, formula)
					}
					if trimmed := strings.TrimSpace(text); trimmed != "" && strings.ContainsAny(trimmed[:1], "=+-@") || strings.HasPrefix(trimmed, "＝") {
						t.Errorf("%s!%s begins like a formula: %q", name, at, text)
					}
					if bad := invisible(text); bad != "" {
						t.Errorf("%s!%s holds %q", name, at, bad)
					}
					met[strings.TrimLeft(text, "'")] = true
				}
			}
		}
		for _, text := range hostile {
			if want := schema.Printable(text); len(want) < 1000 && !met[strings.TrimLeft(want, "'")] {
				t.Errorf("no cell shows %q", want)
			}
		}
	}
}

// TestWorkbookInASpreadsheet has a spreadsheet program read the workbook and
// write each sheet as plain values, which have to be those of the order.
func TestWorkbookInASpreadsheet(t *testing.T) {
	t.Parallel()
	program, err := exec.LookPath("soffice")
	if err != nil {
		t.Skip("soffice is not installed")
	}
	archive, err := txtar.ParseFile(filepath.FromSlash("../../testdata/orders/new-runs.txtar"))
	if err != nil {
		t.Fatal(err)
	}
	whole, foul := render.Job{Order: orderOf(t, archive)}, hostileJob(3)
	dir := t.TempDir()
	file := filepath.Join(dir, "order.xlsx")
	if err := os.WriteFile(file, workbook(t, whole, foul), 0o600); err != nil {
		t.Fatal(err)
	}
	// Fields by commas, texts in quotes, UTF-8, every sheet into a file.
	cmd := exec.CommandContext(t.Context(), program, "-env:UserInstallation=file://"+filepath.Join(dir, "profile"), "--headless",
		"--convert-to", "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1", "--outdir", dir, file)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	want := map[string][][]string{"Steps": {}, "Cautions": {}, "Materials": {}, "Labels": {}, "Tests": {}}
	for _, j := range []render.Job{whole, foul} {
		for _, s := range j.Order.Steps {
			want["Steps"] = append(want["Steps"], []string{s.Text, j.Order.Plant, j.Order.Number})
		}
		for _, text := range j.Order.Cautions {
			want["Cautions"] = append(want["Cautions"], []string{text, j.Order.Plant, j.Order.Number})
		}
		for i := range j.Order.Materials {
			m := &j.Order.Materials[i]
			want["Materials"] = append(want["Materials"], []string{m.Item, j.Order.Plant, j.Order.Number})
		}
		for i, text := range j.Order.Labels {
			if i == 0 || text != j.Order.Labels[i-1] {
				want["Labels"] = append(want["Labels"], []string{text, j.Order.Plant, j.Order.Number})
			}
		}
		for _, holder := range j.Order.Strips {
			want["Labels"] = append(want["Labels"], []string{"a strip for the ports of " + holder, j.Order.Plant, j.Order.Number})
		}
		for _, test := range j.Order.Tests {
			want["Tests"] = append(want["Tests"], []string{test.Record, j.Order.Plant, j.Order.Number})
		}
	}
	for name, rows := range want {
		column := map[string]int{"Steps": 6, "Cautions": 1, "Materials": 2}[name]
		if diff := cmp.Diff(seen(rows), plainValues(t, filepath.Join(dir, "order-"+name+".csv"), column)); diff != "" {
			t.Errorf("%s, as the order has it and as the spreadsheet reads it:\n%s", name, diff)
		}
	}
}

// seen are texts as a cell shows them.
func seen(rows [][]string) [][]string {
	out := make([][]string, len(rows))
	for i, row := range rows {
		for _, text := range row {
			text = schema.Printable(text)
			if first := strings.TrimLeft(text, " '"); first != "" && strings.ContainsAny(first[:1], "=+-@") || strings.HasPrefix(first, "＝") {
				text = "'" + text
			}
			out[i] = append(out[i], beginning(text))
		}
	}
	return out
}

func beginning(text string) string { return text[:min(len(text), 2000)] }

// plainValues reads one column and the last two, plant and order, of each row
// but the headings.
func plainValues(t *testing.T, file string, column int) [][]string {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out [][]string
	for _, row := range rows[1:] {
		out = append(out, []string{beginning(row[column]), beginning(row[len(row)-2]), beginning(row[len(row)-1])})
	}
	return out
}

// TestAmountsAreNumbers keeps what is to be added up from being text.
func TestAmountsAreNumbers(t *testing.T) {
	t.Parallel()
	archive, err := txtar.ParseFile(filepath.FromSlash("../../testdata/orders/new-runs.txtar"))
	if err != nil {
		t.Fatal(err)
	}
	order := orderOf(t, archive)
	f, err := excelize.OpenReader(bytes.NewReader(workbook(t, render.Job{Order: order})))
	if err != nil {
		t.Fatal(err)
	}
	for i := range order.Materials {
		m := &order.Materials[i]
		if m.Count == 0 && m.Length == 0 {
			continue
		}
		at, _ := excelize.CoordinatesToCellName(1, i+2)
		kind, err := f.GetCellType("Materials", at)
		if err != nil {
			t.Fatal(err)
		}
		if kind != excelize.CellTypeUnset && kind != excelize.CellTypeNumber {
			t.Errorf("%s, %s: the amount is no number", at, m.Item)
		}
	}
}

// TestSheetsPrint holds every sheet to what makes it fit on paper: across, as wide
// as a page, its headings on each, long texts wrapped.
func TestSheetsPrint(t *testing.T) {
	t.Parallel()
	f, err := excelize.OpenReader(bytes.NewReader(workbook(t, harmlessJob())))
	if err != nil {
		t.Fatal(err)
	}
	titles, areas := 0, 0
	for _, n := range f.GetDefinedName() {
		if n.Name == "_xlnm.Print_Titles" {
			titles++
		}
		if n.Name == "_xlnm.Print_Area" {
			areas++
		}
	}
	if names := f.GetSheetList(); titles != len(names) || areas != len(names) || len(names) != 5 {
		t.Errorf("of the sheets %v %d repeat their headings and %d leave out what is for sorting", names, titles, areas)
	}
	for _, name := range f.GetSheetList() {
		layout, err := f.GetPageLayout(name)
		if err != nil {
			t.Fatal(err)
		}
		header, err := f.GetHeaderFooter(name)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(header.OddHeader, "Work order plain4, plain1") {
			t.Errorf("%s is printed without its order: %q", name, header.OddHeader)
		}
		props, err := f.GetSheetProps(name)
		if err != nil {
			t.Fatal(err)
		}
		if *layout.Orientation != "landscape" || layout.FitToHeight == nil || *layout.FitToHeight != 0 || props.FitToPage == nil || !*props.FitToPage {
			t.Errorf("%s does not fit on paper: %v %v", name, *layout.Orientation, props.FitToPage)
		}
		id, err := f.GetCellStyle(name, "A2")
		if err != nil {
			t.Fatal(err)
		}
		if style, err := f.GetStyle(id); err != nil || style.Alignment == nil || !style.Alignment.WrapText {
			t.Errorf("%s cuts long texts off: %v", name, err)
		}
	}
}
