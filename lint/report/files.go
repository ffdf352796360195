package report

import "slices"

// Files lists the paths of the files with findings that count, sorted, each
// once, for programs that go on with the files.
func Files(b Batch) []string {
	var paths []string
	for _, e := range b.all() {
		if b.counts(e.Finding) {
			paths = append(paths, e.At.Path)
		}
	}
	slices.Sort(paths)
	return slices.Compact(paths)
}
