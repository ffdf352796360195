package cli

import (
	"context"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"homerun/diffreport/schedule"
	"homerun/lint/ability"
	"homerun/schema"
	"homerun/schema/console"
	"homerun/schema/plant"
	"homerun/schema/workbook"
)

type exportFlags struct {
	at, in, kind   string
	format, output string
}

func newExport(a *app) *cobra.Command {
	var o exportFlags
	cmd := &cobra.Command{
		Use:   "export [SCHEDULE] [--in SPACE] [--kind KIND] [--at REV]",
		Short: "the records, or a schedule of them, as a spreadsheet",
		Long: `Write the records as tables: a sheet for each kind of record, a column for each
field, a row for each record, every value as it is written. With the name of a
schedule it is one of the lists that are handed out on a job:

` + schedules() + `
With --in a schedule is of what ends or stands in one space, or in a space
inside it. A spreadsheet (sheet) holds all kinds of record; comma-separated
values (csv) hold one, that of --kind, or a schedule.`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return &usageError{"export takes one schedule", "write one of " + strings.Join(scheduleNames(), ", ") + ", or none for the records"}
			}
			return o.check(strings.Join(args, ""))
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.export(cmd.Context(), strings.Join(args, ""), o)
		},
	}
	cmd.Flags().StringVar(&o.at, "at", "", "read a commit, tag, branch or date")
	cmd.Flags().StringVar(&o.in, "in", "", "only what ends or stands in a space, of a schedule")
	cmd.Flags().StringVar(&o.kind, "kind", "", "only the records of one kind, such as run")
	cmd.Flags().StringVar(&o.format, "format", "sheet", "sheet or csv")
	cmd.Flags().StringVarP(&o.output, "output", "o", "", outputUsage)
	return cmd
}

// exportFormats are the forms of a table.
func exportFormats() []string { return []string{"sheet", "csv"} }

func scheduleNames() (names []string) {
	for _, s := range schedule.All() {
		names = append(names, s.Name)
	}
	return names
}

// schedules lists them for the help.
func schedules() string {
	var list strings.Builder
	for _, s := range schedule.All() {
		fmt.Fprintf(&list, "  %-15s %s\n", s.Name, s.Doc)
	}
	return list.String()
}

// check finds what the options can not mean together.
func (o *exportFlags) check(name string) error {
	if _, known := schedule.Named(name); name != "" && !known {
		names := scheduleNames()
		return &usageError{"there is no schedule " + schema.Quote(name), didYouMean(name, names, "the schedules are "+strings.Join(names, ", "))}
	}
	switch {
	case name != "" && o.kind != "":
		return &usageError{"a schedule has a form of its own, and --kind asks for records", "give one of them"}
	case name == "" && o.in != "":
		return &usageError{"--in asks for a schedule", "write " + scheduleNames()[0] + " --in " + o.in}
	}
	return nil
}

func (a *app) export(ctx context.Context, name string, o exportFlags) error {
	write, err := a.tableWriter(o)
	if err != nil {
		return err
	}
	snap, p, err := a.plantAt(ctx, o.at)
	if err != nil {
		return err
	}
	var sheets []workbook.Sheet
	if s, asked := schedule.Named(name); asked {
		sheets, err = scheduleSheets(s, p, o.in)
	} else {
		sheets, err = recordSheets(p, o)
	}
	if err != nil {
		return err
	}
	if o.format == "sheet" {
		sheets = append([]workbook.Sheet{aboutSheet(p, snap, sheets)}, sheets...)
	}
	title := "Cable records of " + schema.Printable(p.Name())
	if err := a.handOver(ctx, o.output, func(w io.Writer) error { return write(w, title, sheets) }); err != nil {
		return err
	}
	return a.sayUntabled(ctx, p)
}

// tableWriter chooses what writes tables. A spreadsheet is no text, so it is not
// written to a terminal.
func (a *app) tableWriter(o exportFlags) (func(w io.Writer, title string, sheets []workbook.Sheet) error, error) {
	switch o.format {
	case "sheet":
		if o.output == "" && isTerminal(a.Out) {
			return nil, &usageError{"a spreadsheet is no text for a terminal", "write it to a file, such as --output records.xlsx"}
		}
		return workbook.Write, nil
	case "csv":
		return func(w io.Writer, _ string, sheets []workbook.Sheet) error {
			return workbook.WriteCSV(w, sheets[0])
		}, nil
	}
	return nil, noFormat(o.format, exportFormats())
}

// scheduleSheets is a schedule as a sheet. One without rows is a failure: an empty
// list would read as if there were nothing.
func scheduleSheets(s schedule.Schedule, p *plant.Plant, in string) ([]workbook.Sheet, error) {
	var space *plant.Space
	where := "this plant"
	if in != "" {
		var err error
		if space, err = ability.SpaceNamed(p, in); err != nil {
			return nil, lost(err)
		}
		where = schema.Printable(space.Label)
	}
	t := s.Of(p, space)
	if len(t.Rows) == 0 {
		return nil, &noPlantError{message: "the " + s.Name + " of " + where + " has no row: nothing was exported", next: "git homerun lint says how many runs are recorded"}
	}
	sheet := workbook.Sheet{Name: s.Name, Headings: t.Headings, Rows: t.Rows, Blanks: t.Blanks, Widest: make(map[string]float64)}
	for _, h := range t.Prose {
		sheet.Widest[h] = widestProse
	}
	return []workbook.Sheet{sheet}, nil
}

// sayUntabled tells what the records hold and no table can: it is an objection,
// for who goes on with the table would lose it.
func (a *app) sayUntabled(ctx context.Context, p *plant.Plant) error {
	var first *schema.Problem
	count := 0
	for i := range p.Problems {
		switch p.Problems[i].Code {
		case schema.Unreadable, schema.UnknownBlock, schema.UnknownField:
			count++
			if first == nil {
				first = &p.Problems[i]
			}
		case schema.MissingField, schema.BadValue, schema.BadLabel, schema.DuplicateLabel, schema.UnknownReference:
		}
	}
	if first == nil {
		return nil
	}
	page := console.New(a.Err, a.page(ctx, a.Err))
	page.Line(0, 2, console.Plain(fmt.Sprintf("%s:%d:%d: %s; no table holds that (%s in all)", first.At.Path, first.At.Line, first.At.Column, first.Message, several(count, "mistake"))))
	page.Line(2, 4, console.Plain("next  correct the records: git homerun lint names every mistake"))
	if err := page.Err(); err != nil {
		return err
	}
	return errObjected
}
