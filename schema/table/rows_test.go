package table_test

import (
	"encoding/csv"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/table"
)

const little = `plant "pier" {
  standard = "TIA-568"
}

space "1A" {
  kind = "telecommunications-room"
}

pathway "1-T-1" {
  kind    = "tray"
  through = ["1A", "odd, \"label\""]
  length  = "3400 cm" # measured

  power {
    circuits = 12
    gap      = "60 mm"
  }
  power {
    circuits = 3
  }
  crossing "W-1" {
    rating = "1 h"
  }
}

run "1A-A10" {
  from = "1A-A:010"
}

bundle "1-B-1" {
  cable = "c6"

  run "1A-A9" {
    from   = "1A-A:9"
    length = "41.50 m"
    note   = "50 \u0025 of the way"
  }
}
`

// TestRowsAreAsWritten holds tables to what was worked out by hand from a small
// plant: values as they are written, nothing inherited, labels as people sort them,
// what belongs to a pathway in its order.
func TestRowsAreAsWritten(t *testing.T) {
	f := schema.NewReader().ReadFile("plant.hcl", little)
	if len(f.Problems) > 0 {
		t.Fatal(f.Problems)
	}
	var got strings.Builder
	for _, tb := range table.Of(f.Entries) {
		for _, row := range tb.Rows {
			got.WriteString(tb.Kind.Name + ":")
			for i, cell := range row {
				if cell != "" {
					got.WriteString(" " + tb.Columns[i].Heading + "=" + cell)
				}
			}
			got.WriteString("\n")
		}
	}
	const want = `plant: label=pier standard=TIA-568
space: label=1A kind=telecommunications-room
pathway: label=1-T-1 kind=tray through=1A, "odd, ""label""" length=3400 cm
power: pathway=1-T-1 circuits=12 gap=60 mm
power: pathway=1-T-1 circuits=3
crossing: label=W-1 pathway=1-T-1 rating=1 h
bundle: label=1-B-1 cable=c6
run: label=1A-A9 bundle=1-B-1 from=1A-A:9 length=41.50 m note=50 % of the way
run: label=1A-A10 from=1A-A:010
`
	if diff := cmp.Diff(want, got.String()); diff != "" {
		t.Errorf("tables (-want +got):\n%s", diff)
	}
}

// TestEveryStatedFieldHasItsCell counts in the plants to read: each field that a
// record states stands in one cell, and no cell stands for anything else.
func TestEveryStatedFieldHasItsCell(t *testing.T) {
	for _, dir := range []string{"../../examples/saltmarsh-hall", "../../examples/granary-court"} {
		p := example(t, dir)
		stated, records := 0, 0
		for _, e := range p.Entries() {
			for _, r := range append([]*schema.Record{e.Record}, e.Inner...) {
				records++
				stated += len(r.Values)
			}
		}
		cells, rows := 0, 0
		for _, tb := range table.Of(p.Entries()) {
			rows += len(tb.Rows)
			for _, row := range tb.Rows {
				for i, cell := range row {
					if tb.Columns[i].Field != nil && cell != "" {
						cells++
					}
				}
			}
		}
		if rows != records || cells != stated || rows < 100 {
			t.Errorf("%s: %d records with %d fields are %d rows with %d cells", dir, records, stated, rows, cells)
		}
	}
}

// TestListsAreOneRecordOfRFC4180 has another reader of such lists take them apart.
func TestListsAreOneRecordOfRFC4180(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items := rapid.SliceOfN(rapid.StringMatching(`[a-z,"' \n1-]{0,6}`), 1, 5).Draw(t, "items")
		in := csv.NewReader(strings.NewReader(table.Join(items)))
		in.TrimLeadingSpace = true
		got, err := in.Read()
		if len(items) == 1 && items[0] == "" {
			return // such a reader knows no record of one empty field
		}
		if err != nil || cmp.Diff(items, got) != "" {
			t.Fatalf("%q is read as %q, %v", table.Join(items), got, err)
		}
	})
}

func example(t *testing.T, dir string) *plant.Plant {
	t.Helper()
	var files []*schema.File
	rd := schema.NewReader()
	err := filepath.WalkDir(filepath.FromSlash(dir), func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !schema.IsRecords(path) {
			return err
		}
		text, err := os.ReadFile(path)
		files = append(files, rd.ReadFile(filepath.ToSlash(path), string(text)))
		return err
	})
	if err != nil || len(files) == 0 {
		t.Fatal(err, files)
	}
	return plant.Build(dir, files)
}
