package workbook

import (
	"archive/zip"
	"bytes"
	"cmp"
	"io"
	"slices"
)

// repack writes an archive with its files in the order of their names: the
// library writes sheets in the order of a map. The table of contents comes first,
// as readers of such packages expect it (ECMA-376 part 2, from memory).
func repack(w io.Writer, packed []byte) error {
	const contents = "[Content_Types].xml"
	in, err := zip.NewReader(bytes.NewReader(packed), int64(len(packed)))
	if err != nil {
		return err
	}
	files := slices.Clone(in.File)
	slices.SortFunc(files, func(a, b *zip.File) int {
		switch {
		case a.Name == contents:
			return -1
		case b.Name == contents:
			return 1
		}
		return cmp.Compare(a.Name, b.Name)
	})
	out := zip.NewWriter(w)
	for _, f := range files {
		if err := out.Copy(f); err != nil {
			return err
		}
	}
	return out.Close()
}
