package cli

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"homerun/schema"
	"homerun/schema/vcs"
)

type initFlags struct{ standard, fireCode, units string }

func newInit(a *app) *cobra.Command {
	var o initFlags
	cmd := &cobra.Command{
		Use:   "init [LABEL]",
		Short: "begin a plant in this folder",
		Long: `Begin a plant in this folder: write a plant.hcl that names it and says by whose
rules it is judged. Nothing that is there is overwritten.`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return &usageError{"init takes one label", "see git homerun init -h"}
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			label := ""
			if len(args) == 1 {
				label = args[0]
			}
			return a.initPlant(cmd.Context(), label, o)
		},
	}
	cmd.Flags().StringVar(&o.standard, "standard", "TIA-568", "TIA-568 or ISO-11801")
	cmd.Flags().StringVar(&o.fireCode, "fire-code", "", "NEC-2017, NEC-2020, NEC-2023 or EN-50575; by default what goes with the standard")
	cmd.Flags().StringVar(&o.units, "units", "metric", "metric or us")
	return cmd
}

func (o *initFlags) settle() error {
	if o.fireCode == "" {
		o.fireCode = "NEC-2023"
		if o.standard == "ISO-11801" {
			o.fireCode = "EN-50575"
		}
	}
	for _, check := range []struct {
		flag, value string
		field       *schema.Field
	}{
		{"--standard", o.standard, schema.PlantStandard.Field},
		{"--fire-code", o.fireCode, schema.PlantFireCode.Field},
		{"--units", o.units, schema.PlantUnits.Field},
	} {
		if next := check.field.Refuses(check.value); next != "" {
			return &usageError{fmt.Sprintf("%s %s is not known", check.flag, schema.Quote(check.value)), next}
		}
	}
	return nil
}

func (a *app) initPlant(ctx context.Context, label string, o initFlags) error {
	if err := o.settle(); err != nil {
		return err
	}
	repo, err := vcs.Open(ctx, vcs.Options{Dir: a.stand, Env: a.Env})
	if err != nil {
		return err
	}
	defer func() { _ = repo.Close() }()
	dir := filepath.Join(repo.Top(), filepath.FromSlash(repo.Prefix()))
	if label == ".." || filepath.IsAbs(label) || strings.HasPrefix(label, "./") || strings.HasPrefix(label, "../") {
		return &usageError{schema.Quote(label) + " is a folder and no label", "go to the folder and write git homerun init LABEL; without a label the folder's name is taken"}
	}
	if label == "" || label == "." {
		label = strings.ToLower(filepath.Base(dir))
	}
	file := filepath.Join(dir, schema.PlantFile)
	err = createFrom(repo.GitDir(), file, []byte(starterPlant(label, o)))
	if errors.Is(err, fs.ErrExist) {
		return &usageError{"this folder already is a plant: " + file + " is there and stays as it is", "see what is wrong with it: git homerun lint"}
	}
	if err != nil {
		return fmt.Errorf("plant.hcl can not be written: %w", err)
	}
	_, err = fmt.Fprintf(a.Out, `%s is written.
Next:
  git homerun explain          the kinds of record, and the rules
  git homerun explain space    what a record holds; begin with spaces and pathways
  git homerun hook install     check every commit from now on
  git homerun lint             see what is still missing
`, file)
	return err
}

func starterPlant(label string, o initFlags) string {
	var b strings.Builder
	fmt.Fprintf(&b, "# The plant: what it is called, and by whose rules it is judged.\n")
	fmt.Fprintf(&b, "# Every .hcl file in this folder and below it belongs to it.\n\n")
	fmt.Fprintf(&b, "plant %s {\n", schema.Literal(label))
	fmt.Fprintf(&b, "  standard  = %s\n", schema.Literal(o.standard))
	fmt.Fprintf(&b, "  fire_code = %s\n", schema.Literal(o.fireCode))
	fmt.Fprintf(&b, "  units     = %s\n}\n", schema.Literal(o.units))
	return b.String()
}
