package cli

import (
	"io"
	"path/filepath"

	"github.com/spf13/pflag"
)

// nameFlags are those of commands that can print bare names for other programs.
type nameFlags struct{ names, nul bool }

func (o *nameFlags) flags(f *pflag.FlagSet) {
	f.BoolVar(&o.names, "names", false, "print only names, one a line")
	f.BoolVarP(&o.nul, "nul", "z", false, "print only names, each ended by a NUL")
}

// asked says whether only names are wanted.
func (o *nameFlags) asked() bool { return o.names || o.nul }

// print writes a name: on a line quoted as git quotes it, before a NUL to the
// byte.
func (o *nameFlags) print(w io.Writer, name string) error {
	text := name + "\x00"
	if !o.nul {
		text = quotedPath(name) + "\n"
	}
	_, err := io.WriteString(w, text)
	return err
}

// printAll writes names.
func (o *nameFlags) printAll(w io.Writer, names []string) error {
	for _, name := range names {
		if err := o.print(w, name); err != nil {
			return err
		}
	}
	return nil
}

// fromHere is a path of the repository as it is written where the user stands,
// so that the program that reads the name finds the file, as with git ls-files.
// Where there is no working tree the path is the repository's own.
func (s *source) fromHere(name string) string {
	top, err := filepath.EvalSymlinks(s.repo.Top())
	if s.repo.Top() == "" || err != nil {
		return name
	}
	stand, err := filepath.EvalSymlinks(s.app.stand)
	if err != nil {
		return name
	}
	rel, err := filepath.Rel(stand, filepath.Join(top, filepath.FromSlash(name)))
	if err != nil {
		return name
	}
	return filepath.ToSlash(rel)
}
