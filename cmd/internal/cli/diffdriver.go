package cli

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"homerun/schema/ledger"
	"homerun/schema/vcs"
)

func newDiffDriver(a *app) *cobra.Command {
	var classes bool
	cmd := &cobra.Command{
		Use:    "diff-driver FILE | --classes PATH OLD-FILE OLD-HEX OLD-MODE NEW-FILE NEW-HEX NEW-MODE",
		Hidden: true, // git's own way in, set by setup
		Short:  "list a file of records one fact a line, as git diff and git log -p ask for it",
		Long: `List a file of records one fact a line, so that git diff, git log -p and git blame
show which facts of which records differ, and nothing of layout, comments and
order. With --classes, show what the change of a file is on site, as git diff and
git log -p --ext-diff ask for it. The text itself is shown by:
git diff --no-ext-diff --no-textconv`,
		Args: func(cmd *cobra.Command, args []string) error {
			if classes {
				return nil
			}
			return exactly(1, "one file")(cmd, args)
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if classes {
				return a.classes(cmd.Context(), args)
			}
			return a.diffDriver(args[0])
		},
	}
	cmd.Flags().BoolVar(&classes, "classes", false, "compare two sides of a file, by class")
	return cmd
}

// standing is a path of git's as seen from where the program stands.
func (a *app) standing(name string) string {
	if filepath.IsAbs(name) {
		return name
	}
	return filepath.Join(a.stand, name)
}

func (a *app) diffDriver(name string) error {
	file, err := os.Open(a.standing(name))
	if err != nil {
		return fmt.Errorf("the records can not be listed: %w", err)
	}
	defer func() { _ = file.Close() }()
	text, err := io.ReadAll(io.LimitReader(file, vcs.MaxBlob+1))
	if err != nil {
		return fmt.Errorf("the records can not be listed: %w", err)
	}
	if len(text) > vcs.MaxBlob {
		_, err = io.Copy(a.Out, io.MultiReader(bytes.NewReader(text), file))
		return err
	}
	_, err = io.WriteString(a.Out, ledger.Of(string(text)))
	return err
}
