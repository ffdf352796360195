package evidence

import (
	"archive/zip"
	"fmt"
	"io/fs"
	"strings"
	"unicode"
	"unicode/utf8"
)

// index finds the files by name, and refuses names that lead out of the archive,
// whatever is no plain file, and more than anybody wants to unpack.
func index(in *zip.Reader) (map[string]*zip.File, error) {
	if len(in.File) > mostFiles {
		return nil, &FlawError{"the archive", fmt.Sprintf("it holds more than %d files", mostFiles)}
	}
	files := make(map[string]*zip.File, len(in.File))
	left := uint64(mostBytes)
	for _, f := range in.File {
		if what := misnamed(f.Name); what != "" {
			return nil, &FlawError{f.Name, what}
		}
		switch {
		case !f.Mode().IsRegular():
			return nil, &FlawError{f.Name, "it is no plain file"}
		case files[f.Name] != nil:
			return nil, &FlawError{f.Name, "the archive holds it twice"}
		case f.UncompressedSize64 > left:
			return nil, &FlawError{f.Name, fmt.Sprintf("with it the archive unpacks to more than %d bytes", mostBytes)}
		}
		left -= f.UncompressedSize64
		files[f.Name] = f
	}
	return files, nil
}

// misnamed says what keeps a name out of an archive, or nothing. Lines of a list
// of digests hold names as they are, and other programs' readings of a backslash
// differ.
func misnamed(name string) string {
	switch {
	case !fs.ValidPath(name) || name == ".":
		return "the name leads out of the archive"
	case strings.Contains(name, `\`) || strings.ContainsFunc(name, unicode.IsControl) || !utf8.ValidString(name):
		return "the name holds what a list of digests can not"
	}
	return ""
}
