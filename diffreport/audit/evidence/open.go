package evidence

import (
	"archive/zip"
	"bytes"
	"crypto/sha256"
	"fmt"
	"io"
	"slices"
	"strings"
)

// Bounds of what is read of an archive, in files and bytes. All of it is never in
// memory at once: files are read one by one, each when it is asked for.
const (
	mostFiles = 100_000
	mostBytes = 1 << 30
	mostList  = 32 << 20
)

// A FlawError is the first thing in an archive that is not as it should be.
type FlawError struct {
	// Name is the file at fault, What what is wrong with it.
	Name, What string
}

// Error is the sentence about the flaw.
func (f *FlawError) Error() string { return f.Name + ": " + f.What }

// absent is the flaw of a file that is not there.
func absent(name string) error { return &FlawError{name, "the archive does not hold it"} }

// An Archive is an archive whose files are those that its list names. It reads
// from where it was opened.
type Archive struct {
	// Digest is that of the list, in hexadecimal.
	Digest string
	// Names are those of the files, in the order of the list.
	Names []string

	files map[string]*zip.File
}

// Open holds every file of an archive against the list. The error is a *FlawError
// for the first file, in the order of the list, that differs.
func Open(r io.ReaderAt, size int64) (*Archive, error) {
	in, err := zip.NewReader(r, size)
	if err != nil {
		return nil, &FlawError{"the archive", "it can not be unpacked: " + err.Error()}
	}
	a := &Archive{}
	if a.files, err = index(in); err != nil {
		return nil, err
	}
	list, err := a.Read(Sums, mostList)
	if err != nil {
		return nil, err
	}
	a.Digest = fmt.Sprintf("%x", sha256.Sum256(list))
	listed := make(map[string]bool)
	for line := range bytes.Lines(list) {
		name, err := a.check(string(bytes.TrimSuffix(line, []byte("\n"))))
		if err != nil {
			return nil, err
		}
		if listed[name] {
			return nil, &FlawError{name, "the list names it twice"}
		}
		listed[name] = true
		a.Names = append(a.Names, name)
	}
	for _, f := range in.File {
		if f.Name != Sums && !listed[f.Name] {
			return nil, &FlawError{f.Name, "the list does not name it"}
		}
	}
	return a, nil
}

// check holds one file against its line of the list.
func (a *Archive) check(line string) (name string, err error) {
	sum, name, ok := strings.Cut(line, "  ")
	if !ok || len(sum) != 2*sha256.Size {
		return "", &FlawError{Sums, "a line of it is no digest and name"}
	}
	digest := sha256.New()
	if err := a.Copy(digest, name); err != nil {
		return "", err
	}
	if got := fmt.Sprintf("%x", digest.Sum(nil)); got != sum {
		return "", &FlawError{name, fmt.Sprintf("its SHA-256 is %s, the list says %s", got, sum)}
	}
	return name, nil
}

// Under returns the names of the files below a folder, in the order of the list.
func (a *Archive) Under(folder string) []string {
	return slices.DeleteFunc(slices.Clone(a.Names), func(name string) bool { return !strings.HasPrefix(name, folder) })
}

// Read returns a file of at most so many bytes. The error is a *FlawError for one
// that is not there, is larger or can not be unpacked.
func (a *Archive) Read(name string, most int64) ([]byte, error) {
	if f := a.files[name]; f != nil && f.UncompressedSize64 > uint64(max(most, 0)) {
		return nil, &FlawError{name, fmt.Sprintf("it is of %d bytes, more than the %d that it may have", f.UncompressedSize64, most)}
	}
	var data bytes.Buffer
	err := a.Copy(&data, name)
	return data.Bytes(), err
}

// Copy writes a file out, as far as it can be unpacked. The error is the writer's,
// or a *FlawError.
func (a *Archive) Copy(w io.Writer, name string) error {
	f := a.files[name]
	if f == nil {
		return absent(name)
	}
	in, err := f.Open()
	if err != nil {
		return &FlawError{name, "it can not be unpacked: " + err.Error()}
	}
	defer func() { _ = in.Close() }() // it was only read
	out := &writer{w: w}
	// The reader ends with an error where the file has another size than it says.
	if _, err = io.Copy(out, in); err != nil && out.err == nil {
		return &FlawError{name, "it can not be unpacked: " + err.Error()}
	}
	return out.err
}

// writer keeps the error of a writer apart from that of a reader.
type writer struct {
	w   io.Writer
	err error
}

// Write writes on, and keeps the error.
func (w *writer) Write(data []byte) (n int, err error) {
	n, w.err = w.w.Write(data)
	return n, w.err
}
