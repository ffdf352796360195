package cli

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// replaceFile writes a file whole or not at all: beside it first, then in its
// place. The mode is set whatever the umask says.
func replaceFile(path string, content []byte, mode fs.FileMode) (err error) {
	beside, err := os.CreateTemp(filepath.Dir(path), ".homerun-*")
	if err != nil {
		return fmt.Errorf("%s can not be written: %w", path, err)
	}
	defer func() {
		if err != nil {
			_ = os.Remove(beside.Name()) // what is left of a failed attempt
			err = fmt.Errorf("%s is unchanged: %w", path, err)
		}
	}()
	if _, err := beside.Write(content); err != nil {
		_ = beside.Close()
		return err
	}
	if err := beside.Chmod(mode); err != nil {
		_ = beside.Close()
		return err
	}
	if err := beside.Close(); err != nil {
		return err
	}
	return os.Rename(beside.Name(), path)
}
