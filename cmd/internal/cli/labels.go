package cli

import (
	"context"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"homerun/diffreport"
	"homerun/diffreport/labels"
	"homerun/diffreport/labels/sheet"
	"homerun/schema"
	"homerun/schema/console"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

type labelsFlags struct {
	staged, replace                bool
	at, format, output             string
	label, sheet, gap, margin, cut string
	port                           string
	used                           int
}

func newLabels(a *app) *cobra.Command {
	var o labelsFlags
	cmd := &cobra.Command{
		Use:   "labels [BASE..HEAD | BASE...HEAD | COMMIT | --staged | --at REV]",
		Short: "sheets of labels for a change or a plant",
		Long: `Print labels: for a change those that its work order needs, otherwise those of
the whole plant as it stands in the working tree, or with --at in a commit. Runs
have one for each end, fire-stops one for each side, panels and outlets a strip
for their ports. Each shows its identifier and holds it in a code to scan.

The sheets are written as one PDF (labels.pdf) or as a folder of pictures, one
a sheet (labels/sheet-001.svg and so on). What is already there is left alone
unless --replace is given.

Measures are width x height, in millimetres unless they say in: 50x20, 2x0.75in.
A sheet may also be A4, A5, Letter or Legal. For a printer of single labels let
sheet, label and port fit each other: --sheet 50x20 --label 50x20 --port 15x20
--margin 0 --gap 0 --cut none.`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return &usageError{"labels takes one range of commits", "write BASE..HEAD"}
			}
			return o.settle(len(args))
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.labels(cmd.Context(), strings.Join(args, ""), o)
		},
	}
	o.flags(cmd)
	return cmd
}

func (o *labelsFlags) flags(cmd *cobra.Command) {
	f := cmd.Flags()
	f.BoolVar(&o.staged, "staged", false, "what the next commit will change")
	f.StringVar(&o.at, "at", "", "the whole plant in a commit, tag, branch or date")
	f.StringVar(&o.format, "format", "pdf", "pdf or svg")
	f.StringVarP(&o.output, "output", "o", "", "the file (pdf) or folder (svg) to write; - is standard output, for pdf")
	f.BoolVar(&o.replace, "replace", false, "write over labels that are already there")
	f.StringVar(&o.label, "label", "45x20", "size of a label")
	f.StringVar(&o.sheet, "sheet", "", "size of a sheet (default A4, Letter for a plant in US units)")
	f.StringVar(&o.gap, "gap", "3x4", "space between labels, across x down; 0 leaves none, nor a line that says where a label goes")
	f.StringVar(&o.margin, "margin", "10x12", "from the edge of the sheet to the first label, across x down")
	f.StringVar(&o.port, "port", "15x14", "size of one port of a strip")
	f.IntVar(&o.used, "used", 0, "labels already taken from the first sheet")
	f.StringVar(&o.cut, "cut", "lines", "lines to cut along, or none for sheets that are cut already")
}

func (o *labelsFlags) settle(ranges int) error {
	asked := ranges
	for _, set := range []bool{o.staged, o.at != ""} {
		if set {
			asked++
		}
	}
	switch {
	case asked > 1:
		return &usageError{"a range, --staged and --at ask for different things", "give one of them"}
	case o.format != "pdf" && o.format != "svg":
		return &usageError{"there is no format " + schema.Quote(o.format), "the formats are pdf and svg"}
	case o.cut != "lines" && o.cut != "none":
		return &usageError{"--cut is lines or none, not " + schema.Quote(o.cut), ""}
	case o.output == "-" && o.format == "svg":
		return &usageError{"pictures are several files and do not go to standard output", "name a folder with --output"}
	case o.output == "" && o.format == "pdf":
		o.output = "labels.pdf"
	case o.output == "":
		o.output = "labels"
	}
	return nil
}

// measures reads the sizes.
func (o *labelsFlags) measures(system unit.System) (sheet.Options, error) {
	m := sheet.Defaults(system)
	m.Used, m.CutLines = o.used, o.cut == "lines"
	for _, s := range []struct {
		name, text string
		into       *sheet.Size
	}{
		{"label", o.label, &m.Label}, {"sheet", o.sheet, &m.Sheet}, {"gap", o.gap, &m.Gap}, {"margin", o.margin, &m.Margin}, {"port", o.port, &m.Port},
	} {
		if s.text == "" {
			continue
		}
		size, err := sheet.ParseSize(s.text)
		if err != nil {
			return m, &usageError{"--" + s.name + ": " + err.Error(), "write width x height, such as 50x20, 50x20mm or 2x0.75in"}
		}
		*s.into = size
	}
	if err := m.Check(); err != nil {
		return m, &usageError{err.Error(), "see git homerun labels -h"}
	}
	return m, nil
}

func (a *app) labels(ctx context.Context, rng string, o labelsFlags) error {
	src, err := a.open(ctx)
	if err != nil {
		return err
	}
	defer src.close()
	sets, system, err := a.labelSets(ctx, src, rng, o)
	if err != nil {
		return err
	}
	measures, err := o.measures(system)
	if err != nil {
		return err
	}
	doc, err := sheet.Lay(sets, measures)
	if err != nil {
		return &usageError{err.Error(), "choose another --port, --sheet or --margin"}
	}
	page := console.New(a.Err, a.page(ctx, a.Err))
	if len(doc.Pages) == 0 {
		page.Line(0, 2, console.Plain("no label is needed, and nothing was written"))
		return page.Err()
	}
	wrote, err := a.writeLabels(doc, o)
	if err != nil {
		return err
	}
	page.Line(0, 2, console.In(console.Strong, wrote), console.Plain(fmt.Sprintf(": %s and %s on %s of %s",
		several(doc.Labels, "label"), several(doc.Strips, "port strip"), several(len(doc.Pages), "sheet"), doc.Size)))
	for _, c := range doc.Cautions {
		page.Line(2, 4, console.Plain(c))
	}
	for _, s := range sets {
		if len(s.Planned) > 0 {
			page.Line(2, 4, console.Plain(fmt.Sprintf("%s only planned and has no label yet: %s", several(len(s.Planned), "run"), strings.Join(s.Planned, ", "))))
		}
	}
	return page.Err()
}

func several(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// labelSets works out the labels of every plant asked for, and the system of
// units of the first.
func (a *app) labelSets(ctx context.Context, src *source, rng string, o labelsFlags) ([]labels.Set, unit.System, error) {
	if rng == "" && !o.staged {
		snap, err := a.chosen(ctx, src, lintFlags{at: o.at})
		if err != nil {
			return nil, 0, err
		}
		var sets []labels.Set
		for _, p := range snap.Plants {
			sets = append(sets, labels.Whole(p))
		}
		return sets, unitsOf(snap.Plants...), nil
	}
	sp, err := src.span(ctx, rng)
	if err != nil {
		return nil, 0, err
	}
	var sets []labels.Set
	for _, pair := range sp.pairs() {
		changes := diffreport.Compare(pair[0], pair[1], diffreport.Options{})
		order := diffreport.Plan(pair[0], pair[1], changes, diffreport.PlanOptions{Base: sp.baseID, Head: sp.head.Name})
		sets = append(sets, labels.For(order, pair[1]))
	}
	return sets, unitsOf(sp.head.Plants...), nil
}

func unitsOf(plants ...*plant.Plant) unit.System {
	if len(plants) == 0 {
		return unit.Metric
	}
	return plants[0].Units
}
