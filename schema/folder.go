package schema

import (
	"path"
	"slices"
	"strings"
)

// PlantFile is the name of the file that makes a folder a plant.
const PlantFile = "plant.hcl"

// A Folder is a plant's folder with the files that belong to it.
type Folder struct {
	// Dir is slash-separated and relative to the top; "." for the top itself.
	Dir string
	// Files are the paths of its records, sorted.
	Files []string
}

// Folders finds the plants among the paths of a tree: each folder with a
// plant.hcl, and every .hcl file below it that is not below a nearer plant.
// Records that belong to no plant are returned as strays.
func Folders(paths []string) (plants []Folder, strays []string) {
	byDir := make(map[string]int)
	for _, p := range slices.Sorted(slices.Values(paths)) {
		if path.Base(p) == PlantFile {
			byDir[path.Dir(p)] = len(plants)
			plants = append(plants, Folder{Dir: path.Dir(p)})
		}
	}
	slices.SortFunc(plants, func(a, b Folder) int { return strings.Compare(a.Dir, b.Dir) })
	for i := range plants {
		byDir[plants[i].Dir] = i
	}
	for _, p := range slices.Sorted(slices.Values(paths)) {
		if !IsRecords(p) {
			continue
		}
		if i, ok := owner(byDir, path.Dir(p)); ok {
			plants[i].Files = append(plants[i].Files, p)
		} else {
			strays = append(strays, p)
		}
	}
	return plants, strays
}

// IsRecords says whether a path is a file of records by its name. Where a system
// writes the ending in capitals it is one too: nobody would check it otherwise.
func IsRecords(p string) bool { return strings.EqualFold(path.Ext(p), ".hcl") }

func owner(byDir map[string]int, dir string) (int, bool) {
	for {
		if i, ok := byDir[dir]; ok {
			return i, true
		}
		if dir == "." || dir == "/" {
			return 0, false
		}
		dir = path.Dir(dir)
	}
}
