package cli

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/table"
	"homerun/schema/workbook"
)

// widestProse is how wide a column of long texts may be, in characters.
const widestProse = 60

// sheetAbout is the sheet that says what the others are.
const sheetAbout = "about"

// recordKinds are the kinds of record that have a table.
func recordKinds() (names []string) {
	for _, f := range table.Forms() {
		names = append(names, f.Kind.Name)
	}
	return names
}

// recordSheets are the records as sheets, a kind each.
func recordSheets(p *plant.Plant, o exportFlags) ([]workbook.Sheet, error) {
	tables := table.Of(p.Entries())
	kinds := make([]string, len(tables))
	for i := range tables {
		kinds[i] = tables[i].Kind.Name
	}
	if o.kind != "" {
		if _, known := table.FormOf(o.kind); !known {
			return nil, &usageError{"there is no kind of record " + schema.Quote(o.kind), didYouMean(o.kind, kinds, "of this plant there are "+strings.Join(kinds, ", "))}
		}
		tables = slices.DeleteFunc(tables, func(t table.Table) bool { return t.Kind.Name != o.kind })
	}
	switch {
	case len(tables) == 0:
		return nil, &noPlantError{message: "the plant has no " + schema.Printable(o.kind) + ": nothing was exported", next: "there are " + strings.Join(kinds, ", ")}
	case o.format == "csv" && len(tables) > 1:
		return nil, &usageError{"comma-separated values hold one table, and the records have " + fmt.Sprint(len(tables)), "add --kind, one of " + strings.Join(kinds, ", ")}
	}
	var sheets []workbook.Sheet
	for i := range tables {
		s, err := recordSheet(&tables[i])
		if err != nil {
			return nil, err
		}
		sheets = append(sheets, s)
	}
	return sheets, nil
}

// recordSheet is the table of a kind in a form that people can write in. What is
// written in it are the record's own words, so a text that a cell can not hold whole
// is refused.
func recordSheet(t *table.Table) (workbook.Sheet, error) {
	s := workbook.Sheet{Name: t.Kind.Name, Entries: make(map[string]workbook.Entry)}
	for _, c := range t.Columns {
		s.Headings = append(s.Headings, c.Heading)
		s.Entries[c.Heading] = entryOf(&t.Form, c)
	}
	for _, row := range t.Rows {
		cells := make([]any, len(row))
		for i, text := range row {
			if utf8.RuneCountInString(text) > workbook.MostInCell {
				return s, &noPlantError{
					message: fmt.Sprintf("%s: %s has more than the %d characters that a cell holds: nothing was exported", schema.Quote(row[0]), t.Columns[i].Heading, workbook.MostInCell),
					next:    "shorten it, or export the other kinds with --kind",
				}
			}
			cells[i] = schema.Printable(text)
			if n, isNumber := t.Columns[i].Number(text); isNumber {
				cells[i] = n
			}
		}
		s.Rows = append(s.Rows, cells)
	}
	return s, nil
}

// entryOf says what belongs in a column.
func entryOf(f *table.Form, c table.Column) workbook.Entry {
	switch {
	case c.Field != nil:
		hint := c.Field.Doc + "; written as " + c.Field.Form()
		if c.Field.Required {
			hint = "needed: " + hint
		}
		return workbook.Entry{Hint: hint, Words: c.Field.Words}
	case c.Heading == table.HeadingLabel:
		return workbook.Entry{Hint: "needed: the identifier on the wall"}
	}
	return workbook.Entry{Hint: "the " + f.Within.Name + " that it stands in"}
}

// aboutSheet says what the sheets are.
func aboutSheet(p *plant.Plant, snap *snapshot, sheets []workbook.Sheet) workbook.Sheet {
	about := workbook.Sheet{Name: sheetAbout, Headings: []string{"What", "Value"}, Widest: map[string]float64{"Value": widestProse}}
	say := func(what string, value any) { about.Rows = append(about.Rows, []any{what, value}) }
	say("plant", schema.Printable(p.Name()))
	say("state", snap.Title)
	for _, s := range sheets {
		say("sheet "+s.Name, several(len(s.Rows), "row"))
	}
	if sheets[0].Entries != nil {
		say("to bring it back", "git homerun import FILE says what is wrong in it, and writes only when nothing is")
	}
	say("made with", "homerun "+toolVersion())
	say("caution", "These are records: no design approval and no inspection. The local code in force, the authority having jurisdiction and licensed practice decide.")
	return about
}
