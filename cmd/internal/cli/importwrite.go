package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"

	"homerun/schema"
)

// replaceAll writes files of records, all of them or none: each is written aside
// before the first goes to its place, so that it is known that there is room.
func (s *source) replaceAll(docs []schema.Document) error {
	parts := make([]part, 0, len(docs))
	modes := make([]fs.FileMode, len(docs))
	defer func() {
		for i := range parts {
			parts[i].drop()
		}
	}()
	for i, d := range docs {
		p, mode, err := s.aside(d)
		if err != nil {
			return fmt.Errorf("the records are as they were: %s: %w", schema.Printable(d.Path), err)
		}
		parts, modes[i] = append(parts, p), mode
	}
	for i := range parts {
		if err := parts[i].settle(modes[i]); err != nil {
			return fmt.Errorf("%s could not be put in its place, and %d of %d files were: import the same table again: %w", schema.Printable(docs[i].Path), i, len(docs), err)
		}
	}
	return nil
}

// aside writes one file where git looks for nothing to add. One that is there keeps
// its mode.
func (s *source) aside(d schema.Document) (part, fs.FileMode, error) {
	full := filepath.Join(s.repo.Top(), filepath.FromSlash(d.Path))
	info, err := os.Lstat(full)
	there := err == nil
	switch {
	case there && !info.Mode().IsRegular():
		return part{}, 0, &usageError{"it is no plain file", "take another file for new records: --into"}
	case !there && !errors.Is(err, fs.ErrNotExist):
		return part{}, 0, err
	case !there:
		if err = s.makeFolder(path.Dir(d.Path)); err != nil {
			return part{}, 0, err
		}
	}
	p, err := writePart(s.repo.GitDir(), full, []byte(d.Text))
	if err != nil {
		return part{}, 0, err
	}
	if there {
		err = os.Chmod(p.file, info.Mode().Perm())
	} else if info, err = os.Stat(p.file); err != nil {
		p.drop()
		return part{}, 0, err
	}
	return p, info.Mode().Perm(), err
}

// makeFolder makes the folders of a new file, none of them behind a link that leaves
// the working tree.
func (s *source) makeFolder(dir string) error {
	root, err := os.OpenRoot(s.repo.Top())
	if err != nil {
		return err
	}
	err = root.MkdirAll(filepath.FromSlash(dir), 0o777)
	return errors.Join(err, root.Close())
}
