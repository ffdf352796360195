package evidence

import (
	"archive/zip"
	"crypto/sha256"
	"fmt"
	"io"
	"io/fs"
	"strings"
)

// Bounds of what is read of an archive.
const (
	mostFiles = 100_000
	mostBytes = 1 << 30
)

// A FlawError is the first thing in an archive that is not as it should be.
type FlawError struct {
	// Name is the file at fault, What what is wrong with it.
	Name, What string
}

// Error is the sentence about the flaw.
func (f *FlawError) Error() string { return f.Name + ": " + f.What }

// An Archive is an unpacked archive whose files are those that its list names.
type Archive struct {
	// Digest is that of the list, in hexadecimal.
	Digest string
	// Files are in the order of the list.
	Files []File
}

// Find returns the file of a name.
func (a *Archive) Find(name string) (File, bool) {
	for _, f := range a.Files {
		if f.Name == name {
			return f, true
		}
	}
	return File{}, false
}

// Under returns the files below a folder, in the order of the list.
func (a *Archive) Under(folder string) []File {
	var list []File
	for _, f := range a.Files {
		if strings.HasPrefix(f.Name, folder) {
			list = append(list, f)
		}
	}
	return list
}

// Open unpacks an archive and holds every file against the list. The error is a
// *FlawError for the first file, in the order of the list, that differs.
func Open(r io.ReaderAt, size int64) (*Archive, error) {
	in, err := zip.NewReader(r, size)
	if err != nil {
		return nil, &FlawError{"the archive", "it can not be unpacked: " + err.Error()}
	}
	files, err := index(in)
	if err != nil {
		return nil, err
	}
	budget := int64(mostBytes)
	list, err := unpack(files[Sums], Sums, &budget)
	if err != nil {
		return nil, err
	}
	a := &Archive{Digest: fmt.Sprintf("%x", sha256.Sum256(list))}
	for line := range strings.Lines(string(list)) {
		sum, name, ok := strings.Cut(strings.TrimSuffix(line, "\n"), "  ")
		if !ok || len(sum) != 2*sha256.Size {
			return nil, &FlawError{Sums, "a line of it is no digest and name"}
		}
		data, err := unpack(files[name], name, &budget)
		if err != nil {
			return nil, err
		}
		if got := fmt.Sprintf("%x", sha256.Sum256(data)); got != sum {
			return nil, &FlawError{name, fmt.Sprintf("its SHA-256 is %s, the list says %s", got, sum)}
		}
		a.Files = append(a.Files, File{name, data})
		delete(files, name)
	}
	delete(files, Sums)
	for _, f := range in.File {
		if files[f.Name] != nil {
			return nil, &FlawError{f.Name, "the list does not name it"}
		}
	}
	return a, nil
}

// index finds the files by name.
func index(in *zip.Reader) (map[string]*zip.File, error) {
	if len(in.File) > mostFiles {
		return nil, &FlawError{"the archive", fmt.Sprintf("it holds more than %d files", mostFiles)}
	}
	files := make(map[string]*zip.File, len(in.File))
	for _, f := range in.File {
		switch {
		case !fs.ValidPath(f.Name) || strings.Contains(f.Name, `\`):
			return nil, &FlawError{f.Name, "the name leads out of the archive"}
		case !f.Mode().IsRegular():
			return nil, &FlawError{f.Name, "it is no plain file"}
		case files[f.Name] != nil:
			return nil, &FlawError{f.Name, "the archive holds it twice"}
		}
		files[f.Name] = f
	}
	return files, nil
}

func unpack(f *zip.File, name string, budget *int64) ([]byte, error) {
	if f == nil {
		return nil, &FlawError{name, "the archive does not hold it"}
	}
	in, err := f.Open()
	if err != nil {
		return nil, &FlawError{name, "it can not be unpacked: " + err.Error()}
	}
	defer func() { _ = in.Close() }() // it was only read
	data, err := io.ReadAll(io.LimitReader(in, *budget+1))
	switch {
	case err != nil:
		return nil, &FlawError{name, "it can not be unpacked: " + err.Error()}
	case int64(len(data)) > *budget:
		return nil, &FlawError{name, fmt.Sprintf("the archive unpacks to more than %d bytes", mostBytes)}
	}
	*budget -= int64(len(data))
	return data, nil
}
