package cli

import (
	"context"
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"homerun/schema"
	"homerun/schema/block"
	"homerun/schema/console"
)

func newFormat(a *app) *cobra.Command {
	var check bool
	cmd := &cobra.Command{
		Use:   "fmt [--check]",
		Short: "lay out the records of the working tree in one way",
		Long: `Lay out the records of the working tree in one way: indentation and alignment.
Values, comments and the order of records stay. A file that can not be read
without mistakes is left as it is and named.`,
		Args: exactly(0, "no arguments"),
		RunE: func(cmd *cobra.Command, _ []string) error { return a.format(cmd.Context(), check) },
	}
	cmd.Flags().BoolVar(&check, "check", false, "change nothing; name the files that would change, exit status 1 if there are any")
	return cmd
}

func (a *app) format(ctx context.Context, check bool) error {
	src, err := a.open(ctx)
	if err != nil {
		return err
	}
	defer src.close()
	snap, err := src.worktree(ctx)
	if err != nil {
		return err
	}
	page := console.New(a.Out, a.page(ctx, a.Out))
	objected := false
	for _, p := range snap.Plants {
		for _, e := range snap.entries[p.Dir] {
			said, bad, err := src.formatFile(e.Path, check)
			if err != nil {
				return err
			}
			if said != "" {
				page.Line(0, 2, console.Plain(e.Path+": "+said))
			}
			objected = objected || bad
		}
	}
	if err := page.Err(); err != nil {
		return err
	}
	if objected {
		return errObjected
	}
	return nil
}

// formatFile lays out one file. The new text is read again before it is kept:
// unless it states exactly what the old one did, the file stays as it is.
func (s *source) formatFile(path string, check bool) (said string, bad bool, err error) {
	old, err := s.repo.ReadFile(path)
	if err != nil {
		return "can not be read and stays as it is", true, nil
	}
	before := s.reader.ReadFile(path, string(old))
	for _, p := range before.Problems {
		if p.Code == schema.Unreadable {
			return fmt.Sprintf("line %d: %s; the file stays as it is", p.At.Line, p.Message), true, nil
		}
	}
	fresh := block.Format(string(old))
	if fresh == string(old) {
		return "", false, nil
	}
	if !schema.SameContent(before, s.reader.ReadFile(path, fresh)) {
		return "laying it out would change what it states; it stays as it is", true, nil
	}
	if check {
		return "is not laid out", true, nil
	}
	full := filepath.Join(s.repo.Top(), filepath.FromSlash(path))
	info, err := os.Stat(full)
	if err != nil {
		return "", false, fmt.Errorf("%s: %w", path, err)
	}
	return "laid out", false, replaceFile(full, []byte(fresh), info.Mode().Perm())
}
