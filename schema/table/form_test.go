package table_test

import (
	"testing"

	"homerun/schema"
	"homerun/schema/table"
)

// TestEveryFieldHasOneColumn holds the forms to the language: each kind, also
// inside another, has one table, and each heading stands in it once.
func TestEveryFieldHasOneColumn(t *testing.T) {
	kinds := make(map[*schema.Kind]bool)
	for _, f := range table.Forms() {
		if kinds[f.Kind] {
			t.Errorf("%s has two tables", f.Kind.Name)
		}
		kinds[f.Kind] = true
		headings := make(map[string]bool)
		for _, c := range f.Columns {
			if headings[c.Heading] {
				t.Errorf("%s has two columns %s", f.Kind.Name, c.Heading)
			}
			headings[c.Heading] = true
		}
		for _, field := range f.Kind.Fields {
			if !headings[field.Name] {
				t.Errorf("%s has no column %s", f.Kind.Name, field.Name)
			}
		}
		if f.Within != nil && !headings[f.Within.Name] || !f.Kind.Unlabelled && !headings[table.HeadingLabel] {
			t.Errorf("a row of %s does not say which record it is: %v", f.Kind.Name, f.Columns)
		}
	}
	for _, k := range schema.Kinds() {
		for _, each := range append([]*schema.Kind{k}, k.Blocks...) {
			if !kinds[each] {
				t.Errorf("%s has no table", each.Name)
			}
		}
	}
}
