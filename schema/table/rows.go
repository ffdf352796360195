package table

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"homerun/schema"
	"homerun/schema/block"
)

// A Table is the records of one kind: in each row what one of them states, under
// the form's columns, as it is written. A field that a record does not state itself
// is empty.
type Table struct {
	Form
	Rows [][]string
}

// Of lays out records, with those that stand inside them: a table for each kind of
// which there is one, in the order of Forms. Rows are sorted by label as people
// read them; what belongs to another record follows that one's order.
func Of(entries []schema.Entry) []Table {
	rows := make(map[*schema.Kind][]row)
	for _, e := range entries {
		literals := literalsOf(e.Text())
		for _, r := range append([]*schema.Record{e.Record}, e.Inner...) {
			rows[r.Kind] = append(rows[r.Kind], row{r, literals})
		}
	}
	var tables []Table
	for _, f := range Forms() {
		t := Table{Form: f}
		slices.SortStableFunc(rows[f.Kind], f.compare)
		for _, r := range rows[f.Kind] {
			t.Rows = append(t.Rows, f.cells(r))
		}
		if len(t.Rows) > 0 {
			tables = append(tables, t)
		}
	}
	return tables
}

// A row is a record, with the literals of the text that it is written in by the
// place where each starts.
type row struct {
	record   *schema.Record
	literals map[int]*block.Value
}

func (r row) around() string {
	if r.record.Parent == nil {
		return ""
	}
	return r.record.Parent.Label
}

// compare sorts rows: those that can stand by themselves by their label, others by
// the record around them.
func (f *Form) compare(a, b row) int {
	if f.inner() {
		return schema.Natural(a.around(), b.around())
	}
	return cmp.Or(schema.Natural(a.record.Label, b.record.Label), schema.Natural(a.around(), b.around()))
}

func (f *Form) cells(r row) []string {
	cells := make([]string, len(f.Columns))
	for i, c := range f.Columns {
		switch {
		case c.Field != nil:
			if v := r.record.Own(c.Field.Name); v != nil {
				cells[i] = written(r.literals[v.At.Start])
			}
		case c.Heading == HeadingLabel:
			cells[i] = r.record.Label
		default:
			cells[i] = r.around()
		}
	}
	return cells
}

// written is a literal as a cell holds it.
func written(v *block.Value) string {
	switch {
	case v == nil:
		return ""
	case v.Shape == block.List:
		items := make([]string, len(v.Items))
		for i, item := range v.Items {
			items[i] = item.Text
		}
		return Join(items)
	}
	return v.Text
}

// literalsOf finds the literals of a top-level block by where they start.
func literalsOf(text string) map[int]*block.Value {
	found := make(map[int]*block.Value)
	var gather func(b *block.Block)
	gather = func(b *block.Block) {
		for i := range b.Fields {
			found[b.Fields[i].Value.At.Start] = &b.Fields[i].Value
		}
		for _, in := range b.Blocks {
			gather(in)
		}
	}
	if b, _ := block.Parse(text); b != nil {
		gather(b)
	}
	return found
}

// Join writes a list in one cell: its items behind one another with commas between,
// an item that holds a comma, a semicolon, a quote or an end of line, or begins or
// ends with a space, in quotes.
func Join(items []string) string {
	all := make([]string, len(items))
	for i, item := range items {
		all[i] = item
		if item == "" || strings.ContainsAny(item, ",;\"\n\r") || strings.TrimSpace(item) != item {
			all[i] = `"` + strings.ReplaceAll(item, `"`, `""`) + `"`
		}
	}
	return strings.Join(all, ", ")
}

// Number is a cell as a number to reckon with, where it is one in a column of whole
// numbers: others could lose what a spreadsheet takes for decoration.
func (c Column) Number(cell string) (n int64, ok bool) {
	if c.Field == nil || c.Field.Type != schema.Count {
		return 0, false
	}
	n, err := strconv.ParseInt(cell, 10, 64)
	return n, err == nil && strconv.FormatInt(n, 10) == cell
}
