package cli

import (
	"context"
	"fmt"
	"io"
	"os"
	"path"
	"slices"

	"homerun/diffreport"
	"homerun/diffreport/render"
	"homerun/schema"
	"homerun/schema/console"
	"homerun/schema/plant"
	"homerun/schema/vcs"
)

// A fileChange is one file on two sides, as git tells an external diff program.
type fileChange struct {
	// path is the name on the earlier side, now on the later one.
	path, now     string
	before, after fileSide
}

// A fileSide is where git put the text of one side, os.DevNull where there is
// none, and the mode of the file.
type fileSide struct{ file, mode string }

// fileChangeOf reads the arguments that git gives: path, then file, id and mode
// of each side, and for a renamed file the new path and what git says of it.
func fileChangeOf(args []string) (fileChange, bool) {
	const plain, renamed = 7, 9
	if len(args) != plain && len(args) != renamed {
		return fileChange{}, false
	}
	c := fileChange{path: args[0], now: args[0], before: fileSide{args[1], args[3]}, after: fileSide{args[4], args[6]}}
	if len(args) == renamed {
		c.now = args[7]
	}
	return c, true
}

// classes shows what the change of one file is on site, by class. The other files
// of the plant are taken as they stand in the working tree: git does not say
// which commits it compares.
func (a *app) classes(ctx context.Context, args []string) error {
	options := a.page(ctx, a.Out)
	if len(args) == 1 {
		return said(a.Out, args[0], "is not merged yet", options)
	}
	c, ok := fileChangeOf(args)
	if !ok {
		return &usageError{"this is not what git tells a diff program", "git runs it: git diff, once git homerun setup was run"}
	}
	name := c.path
	if c.now != c.path {
		name += ", now " + c.now
	}
	others := a.othersOf(ctx, c)
	var plants [2]*plant.Plant
	for i, side := range []fileSide{c.before, c.after} {
		file, why, err := side.read(a, c.now)
		if err != nil {
			return err
		}
		if why != "" {
			return said(a.Out, name, why+"; its text is shown by git diff --no-ext-diff --no-textconv", options)
		}
		plants[i] = plant.Build(".", slices.Concat(others, file))
	}
	return render.ChangesText(a.Out, name, diffreport.Compare(plants[0], plants[1], diffreport.Options{}), plants[1].Units, options)
}

// said tells why there is nothing to show of a file.
func said(w io.Writer, name, why string, options console.Options) error {
	page := console.New(w, options)
	page.Line(0, 2, console.In(console.Strong, name))
	page.Line(2, 4, console.Plain(why))
	page.Blank()
	return page.Err()
}

// read reads the records of one side: none where the file is not there. Why says
// what keeps them from being compared.
func (s fileSide) read(a *app, name string) (files []*schema.File, why string, err error) {
	switch {
	case s.mode == ".":
		return nil, "", nil
	case s.mode != "100644" && s.mode != "100755":
		return nil, "is no plain file of records", nil
	}
	file, err := os.Open(a.standing(s.file))
	if err != nil {
		return nil, "", fmt.Errorf("the records can not be compared: %w", err)
	}
	defer func() { _ = file.Close() }()
	text, err := io.ReadAll(io.LimitReader(file, vcs.MaxBlob+1))
	if err != nil {
		return nil, "", fmt.Errorf("the records can not be compared: %w", err)
	}
	if len(text) > vcs.MaxBlob {
		return nil, fmt.Sprintf("is larger than %d MiB", vcs.MaxBlob>>20), nil
	}
	read := schema.NewReader().ReadFile(name, string(text))
	for _, p := range read.Problems {
		if p.Code == schema.Unreadable {
			return nil, "can not be read as records", nil
		}
	}
	return []*schema.File{read}, "", nil
}

// othersOf reads the other files of the plant from the working tree. Without one
// the file is weighed alone.
func (a *app) othersOf(ctx context.Context, c fileChange) []*schema.File {
	src, err := a.open(ctx)
	if err != nil {
		return nil
	}
	defer src.close()
	src.all = true
	snap, err := src.worktree(ctx)
	if err != nil {
		return nil
	}
	var folders []schema.Folder
	for dir := range snap.entries {
		folders = append(folders, schema.Folder{Dir: dir})
	}
	at := holding(folders, path.Dir(c.now))
	if at < 0 {
		return nil
	}
	entries := slices.DeleteFunc(slices.Clone(snap.entries[folders[at].Dir]), func(e vcs.Entry) bool { return e.Path == c.path || e.Path == c.now })
	files, err := src.read(ctx, entries)
	if err != nil {
		return nil
	}
	return files
}
