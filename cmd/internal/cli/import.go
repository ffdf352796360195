package cli

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/table"
	"homerun/schema/vcs"
	"homerun/schema/workbook"
)

type importFlags struct {
	kind, sheet, into string
	fills             []string
	clear, dry        bool
}

func newImport(a *app) *cobra.Command {
	var o importFlags
	cmd := &cobra.Command{
		Use:   "import FILE [--kind KIND] [--fill 'FIELD=TEMPLATE']... [--dry-run]",
		Short: "bring a spreadsheet into the records",
		Long: `Bring tables into the records of the working tree: a spreadsheet (.xlsx), or
values with commas, semicolons or tabs between them (.csv). A sheet is of the
kind of record that it is named for, and its headings are names of fields, as
export writes them; git homerun explain KIND lists them.

Any other list is brought in with --kind and --fill, once for each field that it
gives. In a template a heading in braces stands for that column's cell:

  git homerun import cables.xlsx --kind run --sheet Cables
    --fill 'label={Cable no.}' --fill 'from={Panel}:{Port}'
    --fill 'to={Outlet}' --fill 'length={Metres} m' --fill 'cable=c6a-cmp'

A record that is there is changed in its place, and only where the table states
something else; comments, layout and order stay. A new one is written into
--into, or into a file for its kind. Rows of one label are one record. What the
table does not name stays. Where any cell is wrong nothing is written.`,
		Args: exactlyOne("a spreadsheet or a file of separated values"),
		RunE: func(cmd *cobra.Command, args []string) error { return a.importTable(cmd.Context(), args[0], o) },
	}
	cmd.Flags().StringVar(&o.kind, "kind", "", "the kind of record, where the sheet's name does not say it")
	cmd.Flags().StringVar(&o.sheet, "sheet", "", "only the sheet of this name")
	cmd.Flags().StringArrayVar(&o.fills, "fill", nil, "what goes into a field: FIELD=TEMPLATE, with headings in {braces}")
	cmd.Flags().StringVar(&o.into, "into", "", "the file of records for what is new, such as runs/level-2.hcl")
	cmd.Flags().BoolVar(&o.clear, "clear", false, "take out the fields of a record that its row leaves empty")
	cmd.Flags().BoolVar(&o.dry, "dry-run", false, "write nothing; say what would be done")
	return cmd
}

func (a *app) importTable(ctx context.Context, name string, o importFlags) error {
	src, err := a.open(ctx)
	if err != nil {
		return err
	}
	defer src.close()
	snap, err := src.worktree(ctx)
	if err != nil {
		return err
	}
	p, err := snap.one()
	if err != nil {
		return err
	}
	grids, err := a.readGrids(name)
	if err != nil {
		return err
	}
	chosen, err := o.choose(name, grids)
	if err != nil {
		return err
	}
	docs, err := src.documents(snap, p)
	if err != nil {
		return err
	}
	options := table.Options{Dir: p.Dir, Clear: o.clear}
	if options.Into, err = src.newRecords(p, o.into); err != nil {
		return err
	}
	taken := chosen.claims()
	if taken.rows == 0 {
		return &noPlantError{message: schema.Printable(filepath.Base(name)) + " has no row of a record: nothing was taken", next: "below its headings each row is a record"}
	}
	var fresh []schema.Document
	if len(taken.mistakes) == 0 {
		fresh, taken.outcomes, taken.mistakes = table.Enter(src.reader, docs, taken.batches, options)
	}
	if err := src.unseen(ctx, fresh, docs); err != nil {
		return err
	}
	if len(taken.mistakes) == 0 && !o.dry {
		if err := ctx.Err(); err != nil {
			return err // interrupted: the records are as they were
		}
		if err := src.replaceAll(fresh); err != nil {
			return err
		}
	}
	return a.sayImport(ctx, taken, o)
}

// readGrids reads the file that the user names.
func (a *app) readGrids(name string) ([]workbook.Grid, error) {
	file := a.userPath(name)
	info, err := os.Stat(file)
	switch {
	case err != nil:
		return nil, &usageError{schema.Quote(name) + " can not be read: " + cause(err), "name a spreadsheet (.xlsx) or a file of separated values (.csv)"}
	case !info.Mode().IsRegular():
		return nil, &usageError{schema.Quote(name) + " is no file", "name a spreadsheet (.xlsx) or a file of separated values (.csv)"}
	case info.Size() > workbook.MaxFile:
		return nil, &usageError{fmt.Sprintf("%s has %d bytes, and the limit is %d", schema.Quote(name), info.Size(), workbook.MaxFile), "divide it into several files"}
	}
	data, err := os.ReadFile(file)
	if err != nil {
		return nil, fmt.Errorf("%s can not be read: %w", name, err)
	}
	grids, err := workbook.Read(data)
	if err != nil {
		return nil, &usageError{schema.Printable(fmt.Sprintf("%s: %v", filepath.Base(name), err)), "save it as .xlsx, or as .csv in UTF-8"}
	}
	return grids, nil
}

// cause is what a system said, without the path that was named already.
func cause(err error) string {
	if bad, is := errors.AsType[*os.PathError](err); is {
		return bad.Err.Error()
	}
	return err.Error()
}

// documents are the texts of a plant's files. A link is not written through, so its
// records are not to be had.
func (s *source) documents(snap *snapshot, p *plant.Plant) (docs []schema.Document, err error) {
	for _, e := range snap.entries[p.Dir] {
		if e.Mode == vcs.ModeSymlink {
			return nil, &usageError{schema.Printable(e.Path) + " is a symbolic link, and no link is followed", "put the file itself there, then import"}
		}
		text, err := s.repo.ReadFile(e.Path)
		if err != nil {
			return nil, err
		}
		docs = append(docs, schema.Document{Path: e.Path, Text: string(text)})
	}
	return docs, nil
}

// newRecords is the file for new records, as seen from the top of the repository.
func (s *source) newRecords(p *plant.Plant, name string) (string, error) {
	if name == "" {
		return "", nil
	}
	full := s.app.userPath(name)
	if !filepath.IsAbs(name) {
		// Git names the top without links, and the user may stand behind one.
		if here, err := filepath.EvalSymlinks(s.app.userPath(".")); err == nil {
			full = filepath.Join(here, name)
		}
	}
	rel, err := filepath.Rel(s.repo.Top(), full)
	if err != nil || !filepath.IsLocal(rel) {
		return "", &usageError{schema.Quote(name) + " is outside of the repository", "name a file below the plant's folder"}
	}
	rel = filepath.ToSlash(rel)
	switch {
	case !schema.IsRecords(rel):
		return "", &usageError{schema.Quote(name) + " is no file of records by its name", "let the name end in .hcl"}
	case p.Dir != "." && !strings.HasPrefix(rel, p.Dir+"/"):
		return "", &usageError{schema.Quote(name) + " does not belong to the plant", "name a file below " + schema.Printable(p.Dir)}
	case path.Base(rel) == schema.PlantFile:
		return "", &usageError{schema.Quote(name) + " is the file that makes a folder a plant", "take another file for new records"}
	}
	return rel, s.ownFolder(p.Dir, rel)
}

// ownFolder refuses a path of the working tree on whose way from the plant's folder
// there is a symbolic link, another plant, or what git keeps for itself.
func (s *source) ownFolder(plantDir, rel string) error {
	const next = "name a file in a folder of the plant itself"
	for at := rel; at != "." && at != plantDir; at = path.Dir(at) {
		full := filepath.Join(s.repo.Top(), filepath.FromSlash(at))
		info, err := os.Lstat(full)
		switch {
		case strings.EqualFold(path.Base(at), ".git"):
			return &usageError{schema.Printable(at) + " is git's own folder", next}
		case err == nil && info.Mode()&os.ModeSymlink != 0:
			return &usageError{schema.Printable(at) + " is a symbolic link, and no link is followed", next}
		}
		if _, err := os.Lstat(filepath.Join(full, schema.PlantFile)); err == nil {
			return &usageError{schema.Printable(at) + " is a plant of its own", next}
		}
	}
	return nil
}

// unseen refuses new files that git is told to ignore: their records would be neither
// read nor committed.
func (s *source) unseen(ctx context.Context, fresh, docs []schema.Document) error {
	for _, d := range fresh {
		if slices.ContainsFunc(docs, func(old schema.Document) bool { return old.Path == d.Path }) {
			continue
		}
		if _, err := s.app.git(ctx, s.repo.Top(), "check-ignore", "-q", "--", "./"+d.Path); err == nil {
			return &usageError{schema.Printable(d.Path) + " is a file that git ignores here, so its records would belong to no commit", "name another file with --into, or change what is ignored"}
		}
	}
	return nil
}
