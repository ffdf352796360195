package table_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"homerun/schema"
	"homerun/schema/plant/planttest"
	"homerun/schema/table"
)

// drawnTables are tables of a plant, edited as people edit them.
type drawnTables struct {
	tables []table.Table
	clear  bool
}

// values are some for each type of field, none of them the same as another.
func value(t *rapid.T, f *schema.Field) (string, bool) {
	all := f.Words
	for _, sample := range []struct {
		of     schema.Type
		values []string
	}{
		{schema.Length, []string{"41.13 m", "7 ft", "902 mm"}},
		{schema.Count, []string{"13", "2027"}},
		{schema.Text, []string{"any words", "50 %", `"quoted"`, "${x}", "back\\slash", "ä"}},
		{schema.Temperature, []string{"-5 C", "91 F"}},
		{schema.Date, []string{"2026-03-31"}},
		{schema.Reference, []string{"1A"}},
		{schema.References, []string{"1A, 1B", "1C"}},
		{schema.PortReference, []string{"z:003", "x:1-2"}},
		{schema.Texts, []string{"one", `"a, b", two`}},
	} {
		if f.Type == sample.of {
			all = sample.values
		}
	}
	if len(all) == 0 || f.Name == "listing" || f.Name == "euroclass" || f.Name == "min_class" {
		return "", false
	}
	return rapid.SampledFrom(all).Draw(t, f.Name), true
}

// edit changes a few cells, and adds a few rows.
func (d *drawnTables) edit(t *rapid.T) {
	for range rapid.IntRange(0, 8).Draw(t, "edits") {
		tb := &d.tables[rapid.IntRange(0, len(d.tables)-1).Draw(t, "table")]
		row := tb.Rows[rapid.IntRange(0, len(tb.Rows)-1).Draw(t, "row")]
		i := rapid.IntRange(0, len(tb.Columns)-1).Draw(t, "column")
		f := tb.Columns[i].Field
		switch {
		case f == nil:
		case d.clear && !f.Required && rapid.Bool().Draw(t, "clear"):
			row[i] = ""
		default:
			if v, ok := value(t, f); ok {
				row[i] = v
			}
		}
	}
	for n := range rapid.IntRange(0, 4).Draw(t, "adds") {
		tb := &d.tables[rapid.IntRange(0, len(d.tables)-1).Draw(t, "table")]
		if tb.Kind.Name == schema.KindPlant || tb.Kind.Unlabelled {
			continue
		}
		row := slices.Clone(tb.Rows[rapid.IntRange(0, len(tb.Rows)-1).Draw(t, "row")])
		row[0] = fmt.Sprintf("new %d", n)
		tb.Rows = append(tb.Rows, row)
	}
}

func (d *drawnTables) batches(t *rapid.T) (batches []table.Batch) {
	for _, tb := range d.tables {
		rows := [][]table.Cell{nil}
		for _, c := range tb.Columns {
			rows[0] = append(rows[0], table.Cell{Text: c.Heading, Place: c.Heading})
		}
		for n, row := range tb.Rows {
			var cells []table.Cell
			for i, text := range row {
				cells = append(cells, table.Cell{Text: text, Place: fmt.Sprintf("%s %d %s", tb.Kind.Name, n, tb.Columns[i].Heading)})
			}
			rows = append(rows, cells)
		}
		claims, left, mistakes := tb.Claims(rows, nil)
		if len(left) > 0 || len(mistakes) > 0 {
			t.Fatal(left, mistakes)
		}
		batches = append(batches, table.Batch{Form: tb.Form, Claims: claims})
	}
	return batches
}

func tablesOf(docs []schema.Document) []table.Table {
	var all []schema.Entry
	for _, f := range schema.NewReader().ReadFiles(docs) {
		all = append(all, f.Entries...)
	}
	return table.Of(all)
}

func comments(docs []schema.Document) (all []string) {
	for _, d := range docs {
		for line := range strings.Lines(d.Text) {
			if i := strings.IndexByte(line, '#'); i >= 0 {
				all = append(all, strings.TrimSpace(line[i:]))
			}
		}
	}
	slices.Sort(all)
	return all
}

// TestAPlantBecomesItsTables: whatever people change in the tables of a plant and add
// to them, when they are entered the plant's tables are those, no comment is lost, and
// to enter them again changes nothing.
func TestAPlantBecomesItsTables(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var docs []schema.Document
		for _, f := range planttest.Generate(planttest.Options{Runs: 8, Panel: 4, Files: 2, Seed: rapid.Uint64Range(0, 50).Draw(t, "plant"), Awkward: rapid.Bool().Draw(t, "awkward")}) {
			docs = append(docs, schema.Document{Path: f.Path, Text: f.Text})
		}
		d := drawnTables{tables: tablesOf(docs), clear: rapid.Bool().Draw(t, "clear")}
		d.edit(t)
		o := table.Options{Clear: d.clear}
		fresh, _, mistakes := table.Enter(schema.NewReader(), docs, d.batches(t), o)
		if len(mistakes) > 0 {
			t.Fatal(mistakes)
		}
		after := slices.Clone(docs)
		for _, f := range fresh {
			if i := slices.IndexFunc(after, func(d schema.Document) bool { return d.Path == f.Path }); i >= 0 {
				after[i] = f
			} else {
				after = append(after, f)
			}
		}
		if diff := cmp.Diff(sorted(d.tables), sorted(tablesOf(after))); diff != "" {
			t.Fatalf("tables (-entered +got):\n%s", diff)
		}
		if !d.clear {
			if diff := cmp.Diff(comments(docs), comments(after)); diff != "" {
				t.Fatalf("comments (-before +after):\n%s", diff)
			}
		}
		if again, _, mistakes := table.Enter(schema.NewReader(), after, d.batches(t), o); len(again) > 0 || len(mistakes) > 0 {
			t.Fatalf("entered again: %v %v", again, mistakes)
		}
	})
}

// sorted are the rows of each kind, whatever their order.
func sorted(tables []table.Table) map[string][]string {
	all := make(map[string][]string)
	for _, tb := range tables {
		for _, row := range tb.Rows {
			all[tb.Kind.Name] = append(all[tb.Kind.Name], strings.Join(row, "|"))
		}
		slices.Sort(all[tb.Kind.Name])
	}
	return all
}

// FuzzEnter enters whatever tables into whatever records: nothing panics, and what is
// written states what the tables do.
func FuzzEnter(f *testing.F) {
	f.Add(little, "label,length\n1A-A9,3 m\n", "run", false)
	f.Add(little, "label,from,note\n1A-A10,x:1,\"a ${b} \"\"c\"\"\"\n1A-A10,,\n", "run", true)
	f.Add(little, "pathway,circuits\n1-T-1,1\n1-T-1,2\n1-T-1,3\n", "power", true)
	f.Add("panel \"1A-A\" { ports = 24 } # one line\n", "label,space,ports\n1A-A,1A,12\n", "panel", true)
	f.Add("run \"1A-A1\" {\r\n}", "label,note\n1A-A1,a\n1A-A2,b\n", "run", false)
	f.Add("bundle \"b\" {\n  run \"r\" { /* x\n */ }\n}\n", "label,bundle,note\nr,b,x\ns,b,y\n", "run", false)
	f.Fuzz(func(t *testing.T, records, values, kind string, takeOut bool) {
		form, known := table.FormOf(kind)
		if !known || len(records)+len(values) > 1<<12 {
			return
		}
		var rows [][]table.Cell
		for n, line := range strings.Split(values, "\n") {
			var row []table.Cell
			for i, text := range strings.Split(line, ",") {
				row = append(row, table.Cell{Text: strings.TrimSpace(text), Place: fmt.Sprint(n, i)})
			}
			rows = append(rows, row)
		}
		claims, _, mistakes := form.Claims(rows, nil)
		if len(mistakes) > 0 {
			return
		}
		docs := []schema.Document{{Path: "r.hcl", Text: records}}
		o := table.Options{Clear: takeOut}
		batches := []table.Batch{{Form: form, Claims: claims}}
		fresh, _, mistakes := table.Enter(schema.NewReader(), docs, batches, o)
		if len(mistakes) > 0 && len(fresh) > 0 {
			t.Fatal("mistakes, and new texts all the same", mistakes)
		}
		for _, d := range fresh {
			if got := schema.NewReader().ReadFile(d.Path, d.Text); slices.ContainsFunc(got.Problems, func(p schema.Problem) bool { return p.Code == schema.Unreadable }) {
				t.Fatalf("%q can not be read: %v", d.Text, got.Problems)
			}
		}
	})
}
