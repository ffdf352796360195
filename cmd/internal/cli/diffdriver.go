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
	return &cobra.Command{
		Use:    "diff-driver FILE",
		Hidden: true, // git's own way in, set by setup
		Short:  "list a file of records one fact a line, as git diff and git log -p ask for it",
		Long: `List a file of records one fact a line, so that git diff, git log -p and git blame
show which facts of which records differ, and nothing of layout, comments and
order. The text itself is shown by: git diff --no-textconv`,
		Args: exactly(1, "one file"),
		RunE: func(_ *cobra.Command, args []string) error { return a.diffDriver(args[0]) },
	}
}

func (a *app) diffDriver(name string) error {
	if !filepath.IsAbs(name) {
		name = filepath.Join(a.stand, name)
	}
	file, err := os.Open(name)
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
