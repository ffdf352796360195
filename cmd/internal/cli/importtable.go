package cli

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"homerun/schema"
	"homerun/schema/console"
	"homerun/schema/table"
	"homerun/schema/workbook"
)

// A choice is the sheets that are taken, each with its form, and the names of the
// others.
type choice struct {
	sheets []formed
	fills  []table.Fill
	left   []string
}

type formed struct {
	table.Form
	grid workbook.Grid
}

// choose finds which sheet is of which kind of record.
func (o *importFlags) choose(name string, grids []workbook.Grid) (c choice, err error) {
	for _, text := range o.fills {
		f, bad := table.ParseFill(text)
		if bad != nil {
			return c, &usageError{schema.Printable(bad.Error()), "write --fill 'length={Metres} m': a field, and the headings of columns in braces"}
		}
		c.fills = append(c.fills, f)
	}
	if o.sheet != "" {
		if grids, err = onlySheet(grids, o.sheet); err != nil {
			return c, err
		}
	}
	if o.kind != "" {
		return c, o.ofKind(&c, grids)
	}
	if len(c.fills) > 0 {
		return c, &usageError{"--fill is for the fields of one kind of record, and none is named", "add --kind, such as --kind run"}
	}
	for _, g := range grids {
		called := g.Name
		if called == sheetAbout {
			continue // export's own words about the others
		}
		if called == "" {
			called = strings.TrimSuffix(filepath.Base(name), filepath.Ext(name))
		}
		if f, known := formFor(called); known {
			c.sheets = append(c.sheets, formed{f, g})
		} else {
			c.left = append(c.left, called)
		}
	}
	if len(c.sheets) == 0 {
		return c, &usageError{"no sheet is named for a kind of record: " + schema.Printable(strings.Join(c.left, ", ")), "say which it is of: --kind, one of " + strings.Join(recordKinds(), ", ")}
	}
	return c, nil
}

func onlySheet(grids []workbook.Grid, name string) ([]workbook.Grid, error) {
	var names []string
	for _, g := range grids {
		if strings.EqualFold(g.Name, name) {
			return []workbook.Grid{g}, nil
		}
		if g.Name != "" {
			names = append(names, g.Name)
		}
	}
	if len(names) == 0 {
		return nil, &usageError{"separated values have no sheets", "leave --sheet out"}
	}
	return nil, &usageError{"there is no sheet " + schema.Quote(name), didYouMean(name, names, "the sheets are "+schema.Printable(strings.Join(names, ", ")))}
}

// ofKind takes the one sheet for a kind that the user names.
func (o *importFlags) ofKind(c *choice, grids []workbook.Grid) error {
	f, known := formFor(o.kind)
	if !known {
		return &usageError{"there is no kind of record " + schema.Quote(o.kind), didYouMean(o.kind, recordKinds(), "the kinds are "+strings.Join(recordKinds(), ", "))}
	}
	if len(grids) > 1 {
		named := slices.DeleteFunc(slices.Clone(grids), func(g workbook.Grid) bool {
			form, is := formFor(g.Name)
			return !is || form.Kind != f.Kind
		})
		if len(named) != 1 {
			return &usageError{fmt.Sprintf("the file has %d sheets, and none is named %s", len(grids), f.Kind.Name), "say which it is: --sheet " + schema.Quote(grids[0].Name)}
		}
		grids = named
	}
	for _, g := range grids {
		c.sheets = append(c.sheets, formed{f, g})
	}
	return nil
}

// formFor finds the kind that a sheet is named for: by its name, or the word for
// several.
func formFor(name string) (table.Form, bool) {
	plain := strings.ToLower(strings.NewReplacer(" ", "-", "_", "-").Replace(name))
	for _, f := range table.Forms() {
		if plain == f.Kind.Name || plain == strings.ReplaceAll(f.Kind.Plural, " ", "-") {
			return f, true
		}
	}
	return table.Form{}, false
}

// A taking is what was read of the tables, and what became of it.
type taking struct {
	rows     int
	batches  []table.Batch
	columns  []string // headings of which nothing was taken
	sheets   []string // sheets of no kind
	mistakes []table.Mistake
	outcomes []table.Outcome
}

func (c *choice) claims() *taking {
	t := &taking{sheets: c.left}
	for i := range c.sheets {
		s := &c.sheets[i]
		claims, left, mistakes := s.Claims(cellsOf(s.grid), c.fills)
		t.rows += max(0, len(s.grid.Rows)-1)
		t.columns = append(t.columns, left...)
		t.mistakes = append(t.mistakes, mistakes...)
		t.batches = append(t.batches, table.Batch{Form: s.Form, Claims: claims})
	}
	return t
}

func cellsOf(g workbook.Grid) [][]table.Cell {
	rows := make([][]table.Cell, len(g.Rows))
	for i, row := range g.Rows {
		rows[i] = make([]table.Cell, len(row))
		for j, c := range row {
			rows[i][j] = table.Cell(c)
		}
	}
	return rows
}

// sayImport tells what became of the tables. Mistakes are an objection, and then
// nothing was written.
func (a *app) sayImport(ctx context.Context, t *taking, o importFlags) error {
	page := console.New(a.Out, a.page(ctx, a.Out))
	if len(t.mistakes) > 0 {
		for _, m := range t.mistakes {
			page.Line(0, 4, console.In(console.Strong, m.Place), console.Plain(": "+m.Message))
			page.Line(4, 10, console.Plain("next  "+m.Next))
		}
		page.Blank()
		page.Line(0, 2, console.Plain("nothing was written: correct the table, then import it again"))
		if err := page.Err(); err != nil {
			return err
		}
		return errObjected
	}
	changed := 0
	for i := range t.outcomes {
		out := &t.outcomes[i]
		changed += out.Added + out.Changed
		page.Line(0, 4, console.In(console.Strong, out.Form.Kind.Name), console.Plain(": "+outcomeText(out)))
	}
	if len(t.columns) > 0 {
		page.Line(0, 4, console.Plain("columns left aside: "+strings.Join(t.columns, ", ")))
	}
	if len(t.sheets) > 0 {
		page.Line(0, 4, console.Plain("sheets left aside: "+strings.Join(t.sheets, ", ")))
	}
	switch {
	case changed == 0:
		page.Line(0, 2, console.Plain("the records state all of it already"))
	case o.dry:
		page.Line(0, 2, console.Plain("nothing was written: --dry-run"))
	default:
		page.Line(0, 2, console.Plain("next  git homerun lint says what is wrong with them, git diff what changed"))
	}
	return page.Err()
}

func outcomeText(out *table.Outcome) string {
	var parts []string
	if out.Added > 0 {
		parts = append(parts, fmt.Sprintf("%d added in %s", out.Added, strings.Join(out.Into, ", ")))
	}
	if out.Changed > 0 {
		fields := make([]string, len(out.Fields))
		for i, f := range out.Fields {
			fields[i] = fmt.Sprintf("%s %d", f.Name, f.Count)
		}
		parts = append(parts, fmt.Sprintf("%d changed (%s)", out.Changed, strings.Join(fields, ", ")))
	}
	if out.Same > 0 || len(parts) == 0 {
		parts = append(parts, fmt.Sprintf("%d as they were", out.Same))
	}
	if out.Absent > 0 {
		parts = append(parts, fmt.Sprintf("%d not in the table stay", out.Absent))
	}
	return strings.Join(parts, ", ")
}
