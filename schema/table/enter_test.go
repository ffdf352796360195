package table_test

import (
	"encoding/csv"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/tools/txtar"

	"homerun/schema"
	"homerun/schema/table"
)

// cells are rows of separated values as cells.
func cells(t *testing.T, text string) (rows [][]table.Cell) {
	t.Helper()
	in := csv.NewReader(strings.NewReader(text))
	in.FieldsPerRecord = -1
	all, err := in.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for n, fields := range all {
		var row []table.Cell
		for i, field := range fields {
			number, isNumber := strings.CutPrefix(field, "number ")
			row = append(row, table.Cell{Text: number, Number: isNumber, Place: fmt.Sprintf("%d/%d", n+1, i+1)})
		}
		rows = append(rows, row)
	}
	return rows
}

// entered enters the tables of a case: "run.csv" is of runs.
func entered(t *testing.T, archive *txtar.Archive) string {
	t.Helper()
	var o table.Options
	var fills []table.Fill
	for line := range strings.Lines(string(archive.Comment)) {
		option, value, _ := strings.Cut(strings.TrimSpace(line), " ")
		switch option {
		case "clear":
			o.Clear = true
		case "into":
			o.Into = value
		case "fill":
			f, err := table.ParseFill(value)
			if err != nil {
				t.Fatal(err)
			}
			fills = append(fills, f)
		}
	}
	var docs []schema.Document
	var batches []table.Batch
	var mistakes []table.Mistake
	for _, f := range archive.Files {
		name, isBefore := strings.CutPrefix(f.Name, "before/")
		kind, isTable := strings.CutSuffix(f.Name, ".csv")
		switch {
		case isBefore:
			docs = append(docs, schema.Document{Path: name, Text: string(f.Data)})
		case isTable:
			form, ok := table.FormOf(kind)
			if !ok {
				t.Fatal("no kind", kind)
			}
			claims, _, wrong := form.Claims(cells(t, string(f.Data)), fills)
			mistakes = append(mistakes, wrong...)
			batches = append(batches, table.Batch{Form: form, Claims: claims})
		}
	}
	var fresh []schema.Document
	var outcomes []table.Outcome
	if len(mistakes) == 0 {
		fresh, outcomes, mistakes = table.Enter(schema.NewReader(), docs, batches, o)
	}
	var got strings.Builder
	for _, m := range mistakes {
		fmt.Fprintf(&got, "%s: %s\n  %s\n", m.Place, m.Message, m.Next)
	}
	if len(mistakes) == 0 {
		for i := range outcomes {
			out := &outcomes[i]
			fmt.Fprintf(&got, "%s: %d added %v, %d changed %v, %d same, %d absent\n", out.Form.Kind.Name, out.Added, out.Into, out.Changed, out.Fields, out.Same, out.Absent)
		}
	}
	for _, d := range fresh {
		fmt.Fprintf(&got, "-- %s --\n%s", d.Path, d.Text)
	}
	return got.String()
}

// TestTablesAreEntered holds what becomes of tables to what was written by hand: the
// new texts, or the mistakes.
func TestTablesAreEntered(t *testing.T) {
	names, err := filepath.Glob("testdata/*.txtar")
	if err != nil || len(names) < 8 {
		t.Fatal(err, names)
	}
	for _, name := range names {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
			archive, err := txtar.ParseFile(name)
			if err != nil {
				t.Fatal(err)
			}
			var want strings.Builder
			for _, f := range archive.Files {
				if f.Name == "want" {
					want.Write(f.Data)
				}
				if after, is := strings.CutPrefix(f.Name, "after/"); is {
					fmt.Fprintf(&want, "-- %s --\n%s", after, f.Data)
				}
			}
			if diff := cmp.Diff(want.String(), entered(t, archive)); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

// TestSplitIsTheInverseOfJoin: what lists hold comes back out of one cell.
func TestSplitIsTheInverseOfJoin(t *testing.T) {
	for _, items := range [][]string{nil, {"1A"}, {"1A", "1-CV"}, {"a, b", "c"}, {`say "so"`}, {"a;b", " c "}, {"two\nlines", "d"}} {
		if got := table.Split(table.Join(items)); !slices.Equal(got, items) {
			t.Errorf("%q comes back as %q", items, got)
		}
	}
	for cell, want := range map[string][]string{"1A; 1B": {"1A", "1B"}, "1A\n1B\n": {"1A", "1B"}, " , 1A,,": {"1A"}, `"open`: {"open"}, `"a"b, c`: {"a", "c"}} {
		if got := table.Split(cell); !slices.Equal(got, want) {
			t.Errorf("%q is %q, want %q", cell, got, want)
		}
	}
}

// TestFillsAreRead: templates, and what is no template.
func TestFillsAreRead(t *testing.T) {
	for _, bad := range []string{"", "length", "=x", "length={", "length={}", "length=}", "length={ }"} {
		if f, err := table.ParseFill(bad); err == nil {
			t.Errorf("%q is read as %+v", bad, f)
		}
	}
	if _, err := table.ParseFill("note={{{A b}}} = {C}"); err != nil {
		t.Error(err)
	}
}
