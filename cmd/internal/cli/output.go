package cli

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// outputUsage is what the option says that takes the name of a file.
const outputUsage = "write to a file, whole or not at all, instead of standard output"

// handOver hands over what a report writes: to standard output, or to a file
// that the user named. A file is written whole or not at all, so that no service
// ever reads half a report; a pipe or a device is written to as it is.
func (a *app) handOver(ctx context.Context, name string, write func(io.Writer) error) error {
	if name == "" || name == "-" {
		return write(a.Out)
	}
	var text bytes.Buffer
	if err := write(&text); err != nil {
		return err
	}
	if err := ctx.Err(); err != nil {
		return err // interrupted: what was there stays
	}
	file, mode, err := target(a.userPath(name))
	if err != nil {
		return err
	}
	if mode.IsRegular() {
		return replaceFile(file, text.Bytes(), mode.Perm())
	}
	return pour(file, text.Bytes())
}

// userPath is a path as its user meant it. Git moves aliases and hooks to the
// top of the working tree and says in GIT_PREFIX where the user stood; a script
// that moved on from there knows better where it stands.
func (a *app) userPath(name string) string {
	if filepath.IsAbs(name) {
		return name
	}
	prefix := filepath.FromSlash(a.getenv("GIT_PREFIX"))
	if _, err := os.Lstat(filepath.Join(a.stand, ".git")); filepath.IsLocal(prefix) && (err == nil || a.getenv("GIT_DIR") != "") {
		return filepath.Join(a.stand, prefix, name)
	}
	return filepath.Join(a.stand, name)
}

// target follows links to the file that is to be written, which need not be
// there yet; its mode is then that of any new file.
func target(file string) (where string, mode fs.FileMode, err error) {
	const fresh fs.FileMode = 0o644
	info, err := os.Stat(file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return file, fresh, nil
	case err != nil:
		return "", 0, fmt.Errorf("the report can not be written: %w", err)
	case info.IsDir():
		return "", 0, &usageError{file + " is a folder", "name the file that the report is to be written to"}
	case !info.Mode().IsRegular():
		return file, info.Mode(), nil
	}
	if where, err = filepath.EvalSymlinks(file); err != nil {
		return "", 0, fmt.Errorf("the report can not be written: %w", err)
	}
	return where, info.Mode(), nil
}

func pour(file string, text []byte) error {
	f, err := os.OpenFile(file, os.O_WRONLY, 0)
	if err != nil {
		return fmt.Errorf("the report can not be written: %w", err)
	}
	_, err = f.Write(text)
	if err = errors.Join(err, f.Close()); err != nil {
		return fmt.Errorf("the report can not be written: %w", err)
	}
	return nil
}
