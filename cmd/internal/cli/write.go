package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"homerun/schema/vcs"
)

// replaceFile writes a file whole or not at all: aside first, then in its place.
// The mode is set whatever the umask says.
func replaceFile(path string, content []byte, mode fs.FileMode) error {
	return replaceFrom(vcs.FolderAside(filepath.Dir(path)), path, content, mode)
}

// replaceFrom is replaceFile with a folder to write in until all is written.
func replaceFrom(aside, path string, content []byte, mode fs.FileMode) error {
	p, err := writePart(aside, path, content)
	if err == nil {
		err = os.Chmod(p.file, mode)
	}
	if err == nil {
		err = p.settle(mode)
	}
	if err != nil {
		p.drop()
		return fmt.Errorf("%s is unchanged: %w", path, err)
	}
	return nil
}

// createFrom writes a file that must not be there yet, whole or not at all. Error:
// fs.ErrExist.
func createFrom(aside, path string, content []byte) error {
	p, err := writePart(aside, path, content)
	defer p.drop()
	if err == nil {
		err = os.Link(p.file, path)
	}
	if err == nil || errors.Is(err, fs.ErrExist) {
		return err
	}
	return createHere(path, content) // no links here, or on another file system
}

// createHere writes a new file in its place. What can not be written wholly is
// taken away again.
func createHere(path string, content []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	_, err = f.Write(content)
	if err = errors.Join(err, f.Close()); err != nil {
		_ = os.Remove(path) // half a file is worse than none
	}
	return err
}

// A part is a file that is written, and not yet in its place. A program that is
// killed leaves it: so it is written where git looks for nothing to add.
type part struct {
	file, place string
	content     []byte
}

// writePart writes in the folder aside, or where that can not be, beside the
// file's place. The mode is that of any new file.
func writePart(aside, place string, content []byte) (p part, err error) {
	for _, dir := range []string{aside, filepath.Dir(place)} {
		if dir == "" {
			continue
		}
		p = part{place: place, content: content}
		if p.file, err = writeNew(dir, content); err == nil {
			return p, nil
		}
	}
	return part{}, err
}

// writeNew writes content to a file of a free name and gives the name.
func writeNew(dir string, content []byte) (file string, err error) {
	const tries = 100
	for n := range tries {
		file = filepath.Join(dir, fmt.Sprintf("%s%d-%d%s", partPrefix, os.Getpid(), n, partSuffix))
		if err = createHere(file, content); !errors.Is(err, fs.ErrExist) {
			break
		}
	}
	if err == nil {
		sweep(file)
	}
	return file, err
}

// The names of files that are not in their places.
const (
	partPrefix = "homerun-"
	partSuffix = ".part"
)

// sweep takes away what programs left that were killed more than a day before a
// file was written, by the clock of the file system.
func sweep(file string) {
	const old = 24 * time.Hour
	dir := filepath.Dir(file)
	written, err := os.Stat(file)
	entries, listErr := os.ReadDir(dir)
	if err != nil || listErr != nil {
		return // whoever can not sweep leaves it to the next
	}
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), partPrefix) || !strings.HasSuffix(e.Name(), partSuffix) {
			continue
		}
		if info, err := e.Info(); err == nil && written.ModTime().Sub(info.ModTime()) > old {
			_ = os.Remove(filepath.Join(dir, e.Name()))
		}
	}
}

// settle puts the file in its place; where that is on another file system, from
// beside it.
func (p *part) settle(mode fs.FileMode) error {
	err := os.Rename(p.file, p.place)
	if err == nil || filepath.Dir(p.file) == filepath.Dir(p.place) {
		return err
	}
	p.drop()
	if p.file, err = writeNew(filepath.Dir(p.place), p.content); err != nil {
		return err
	}
	if err = os.Chmod(p.file, mode); err != nil {
		return err
	}
	return os.Rename(p.file, p.place)
}

// drop takes the file away, wherever it did not get to its place.
func (p *part) drop() {
	if p.file != "" {
		_ = os.Remove(p.file) // what is left of a failed attempt, if it is
	}
}
