package cli

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"homerun/diffreport/labels/sheet"
	"homerun/schema/vcs"
)

// writeLabels writes the sheets where they are wanted and says where that is.
func (a *app) writeLabels(doc *sheet.Document, o labelsFlags) (wrote string, err error) {
	if o.output == "-" {
		return "standard output", sheet.PDF(a.Out, doc)
	}
	path := a.userPath(o.output)
	if o.format == "svg" {
		return o.output, writePictures(path, doc, o)
	}
	if err := free(path, o); err != nil {
		return "", err
	}
	var b bytes.Buffer
	if err := sheet.PDF(&b, doc); err != nil {
		return "", err
	}
	return o.output, replaceFile(path, b.Bytes(), 0o644)
}

// free refuses a place where something is that nobody said may be replaced.
func free(path string, o labelsFlags) error {
	_, err := os.Lstat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("%s can not be looked at: %w", path, err)
	case !o.replace:
		return &usageError{o.output + " is already there", "--replace writes over it, --output names another place"}
	}
	return nil
}

// writePictures fills a folder with a picture a sheet. Sheets of an earlier time
// are taken away first, so that no old label is among the new ones; anything
// else in the folder stays.
func writePictures(dir string, doc *sheet.Document, o labelsFlags) error {
	old, err := fs.Glob(os.DirFS(dir), "sheet-*.svg")
	if err != nil {
		return fmt.Errorf("%s can not be looked at: %w", dir, err)
	}
	if len(old) > 0 && !o.replace {
		return &usageError{"there are sheets of labels in " + o.output + " already", "--replace writes over them, --output names another place"}
	}
	if err = os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("%s can not be made: %w", dir, err)
	}
	sheets, err := pictures(dir, doc)
	defer func() {
		for i := range sheets {
			sheets[i].drop()
		}
	}()
	if err != nil {
		return err
	}
	for _, file := range old {
		if err := os.Remove(filepath.Join(dir, file)); err != nil {
			return err
		}
	}
	for i := range sheets {
		if err := sheets[i].settle(0o644); err != nil {
			return err
		}
	}
	return nil
}

// pictures writes all sheets aside: before the old ones go it is known that there
// is room for the new.
func pictures(dir string, doc *sheet.Document) (sheets []part, err error) {
	aside := vcs.FolderAside(dir)
	for i := range doc.Pages {
		var b bytes.Buffer
		if err := sheet.SVG(&b, doc, i); err != nil {
			return sheets, err
		}
		p, err := writePart(aside, filepath.Join(dir, fmt.Sprintf("sheet-%03d.svg", i+1)), b.Bytes())
		if err != nil {
			return sheets, fmt.Errorf("the labels are as they were: %w", err)
		}
		sheets = append(sheets, p)
	}
	return sheets, nil
}
