package cli

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"homerun/schema"
	"homerun/schema/block"
	"homerun/schema/console"
	"homerun/schema/vcs"
)

type formatFlags struct {
	nameFlags
	check bool
}

func newFormat(a *app) *cobra.Command {
	var o formatFlags
	cmd := &cobra.Command{
		Use:   "fmt [--check] [--names | -z]",
		Short: "lay out the records of the working tree in one way",
		Long: `Lay out the records of the working tree in one way: indentation and alignment.
Values, comments and the order of records stay. A file that can not be read
without mistakes is left as it is and named.

With --names, standard output holds nothing but the names of the files that
were laid out, or with --check would be, one a line, quoted as git quotes them;
with -z each ends in a NUL and is not quoted. They are written as seen from
where you stand. What else there is to say goes to standard error.`,
		Args: exactly(0, "no arguments"),
		RunE: func(cmd *cobra.Command, _ []string) error { return a.format(cmd.Context(), o) },
	}
	cmd.Flags().BoolVar(&o.check, "check", false, "change nothing; name the files that would change, exit status 1 if there are any")
	o.flags(cmd.Flags())
	return cmd
}

func (a *app) format(ctx context.Context, o formatFlags) error {
	src, err := a.open(ctx)
	if err != nil {
		return err
	}
	defer src.close()
	snap, err := src.worktree(ctx)
	if err != nil {
		return err
	}
	objected := false
	for _, p := range snap.Plants {
		for _, e := range snap.entries[p.Dir] {
			if err := ctx.Err(); err != nil {
				return err // interrupted: every file is whole
			}
			l, err := src.layOut(e)
			if err == nil && l.changes {
				l, err = src.keep(e.Path, l, o)
			}
			if err != nil {
				return err
			}
			if err := a.sayLayout(ctx, src, e.Path, l, o); err != nil {
				return err
			}
			objected = objected || l.objected
		}
	}
	if objected {
		return errObjected
	}
	return nil
}

// sayLayout tells what became of a file, where anything did. To a program that
// asks for names only those of files that change matter; the rest is told aside.
func (a *app) sayLayout(ctx context.Context, src *source, name string, l layout, o formatFlags) error {
	w := a.Out
	switch {
	case l.said == "":
		return nil
	case o.asked() && l.changes:
		return o.print(w, src.fromHere(name))
	case o.asked():
		w = a.Err
	}
	page := console.New(w, a.page(ctx, w))
	page.Line(0, 2, console.Plain(name+": "+l.said))
	return page.Err()
}

// A layout is what became of one file: the new text where it changes, and what
// to say about it.
type layout struct {
	changes  bool
	fresh    []byte
	said     string
	objected bool
}

// layOut works out the new text of one file. It is read again before it is
// offered: unless it states exactly what the old one did, the file stays as it is.
func (s *source) layOut(e vcs.Entry) (layout, error) {
	if e.Mode == vcs.ModeSymlink {
		return layout{said: "is a symbolic link, and no link is followed; it stays as it is", objected: true}, nil
	}
	name := e.Path
	old, err := s.repo.ReadFile(name)
	switch {
	case errors.Is(err, vcs.ErrOutside), errors.Is(err, vcs.ErrNotFile), errors.Is(err, vcs.ErrTooLarge):
		return layout{said: "is no plain file of records and stays as it is", objected: true}, nil
	case err != nil:
		return layout{}, err
	}
	before := s.reader.ReadFile(name, string(old))
	for _, p := range before.Problems {
		if p.Code == schema.Unreadable {
			return layout{said: fmt.Sprintf("line %d: %s; the file stays as it is", p.At.Line, p.Message), objected: true}, nil
		}
	}
	fresh := block.Format(string(old))
	switch {
	case fresh == string(old):
		return layout{}, nil
	case !schema.SameContent(before, s.reader.ReadFile(name, fresh)):
		return layout{said: "laying it out would change what it states; it stays as it is", objected: true}, nil
	}
	return layout{changes: true, fresh: []byte(fresh)}, nil
}

// keep writes the new text, or with --check only says that there is one.
func (s *source) keep(name string, l layout, o formatFlags) (layout, error) {
	if o.check {
		return layout{changes: true, said: "is not laid out", objected: true}, nil
	}
	full := filepath.Join(s.repo.Top(), filepath.FromSlash(name))
	info, err := os.Stat(full)
	if err != nil {
		return l, fmt.Errorf("%s: %w", name, err)
	}
	return layout{changes: true, said: "laid out"}, replaceFrom(s.repo.GitDir(), full, l.fresh, info.Mode().Perm())
}
