package evidence

import (
	"archive/zip"
	"crypto/sha256"
	"fmt"
	"io"
	"strings"
	"time"
)

// The names of the files that every archive has.
const (
	// Sums lists the digest of every other file.
	Sums = "SHA256SUMS"
	// About says what the report was made with, as JSON.
	About = "about.json"
	// Commits is a git bundle.
	Commits = "commits.bundle"
	// Notes tell how to check the archive by hand.
	Notes = "READ-ME.txt"
	// Records, Reports and Keys are folders.
	Records = "records/"
	Reports = "report/"
	Keys    = "keys/"
)

// A File is one file of an archive: its name, slash-separated, and its bytes.
type File struct {
	Name string
	Data []byte
}

// Pack writes an archive of files in their order, with the list of digests in
// front, all dated at one time, and returns the digest of the list in hexadecimal.
// Whoever knows that digest can tell any other archive from this one. The error is
// that of the writer, or a *FlawError for a name that no archive may hold.
func Pack(w io.Writer, files []File, when time.Time) (digest string, err error) {
	var list strings.Builder
	for _, f := range files {
		if what := misnamed(f.Name); what != "" {
			return "", &FlawError{f.Name, what}
		}
		fmt.Fprintf(&list, "%x  %s\n", sha256.Sum256(f.Data), f.Name)
	}
	sums := File{Sums, []byte(list.String())}
	out := zip.NewWriter(w)
	for _, f := range append([]File{sums}, files...) {
		into, err := out.CreateHeader(&zip.FileHeader{Name: f.Name, Method: zip.Deflate, Modified: when.UTC()})
		if err != nil {
			return "", fmt.Errorf("%s: %w", f.Name, err)
		}
		if _, err := into.Write(f.Data); err != nil {
			return "", fmt.Errorf("%s: %w", f.Name, err)
		}
	}
	if err := out.Close(); err != nil {
		return "", err
	}
	return fmt.Sprintf("%x", sha256.Sum256(sums.Data)), nil
}
