package trail

import (
	"path"
	"slices"
	"strings"

	"homerun/schema"
	"homerun/schema/vcs"
)

// home is where the plant that is asked about stands at a commit.
type home struct {
	// dirs are the folders that hold a plant, sorted, dir the one; found is not
	// set where there is none.
	dirs  []string
	dir   string
	found bool
	// sure is not set where a folder's own file does not say what its plant is
	// called: another file may.
	sure bool
}

// home finds the plant among the files of a commit, by its label, else by its
// folder.
func (t *Trail) home(files []vcs.Entry) (home, error) {
	h := home{sure: true}
	for _, f := range files {
		if path.Base(f.Path) != schema.PlantFile {
			continue
		}
		at := path.Dir(f.Path)
		h.dirs = append(h.dirs, at)
		name, err := t.plantName(f.ID)
		if err != nil {
			return h, err
		}
		h.sure = h.sure && name != ""
		if name == t.Plant && (!h.found || h.dir > at) {
			h.dir, h.found = at, true
		}
	}
	slices.Sort(h.dirs)
	if !h.found && slices.Contains(h.dirs, t.Dir) {
		h.dir, h.found = t.Dir, true
	}
	return h, nil
}

// plantLabels are the labels of the plant records in the blocks of a plant's file.
func plantLabels(reader *schema.Reader, blocks []schema.Block) []string {
	var labels []string
	var plants []schema.Block
	for _, b := range blocks {
		if statesPlant(b.Text) {
			plants = append(plants, b)
		}
	}
	for _, e := range reader.ReadBlocks(schema.PlantFile, plants).Entries {
		if e.Kind.Name == schema.KindPlant {
			labels = append(labels, e.Label)
		}
	}
	return labels
}

// statesPlant says whether a block may be that of a plant.
func statesPlant(text string) bool {
	return strings.HasPrefix(strings.TrimLeft(text, " \t"), schema.KindPlant)
}

// holds says whether a file belongs to the plant, not to a nearer one.
func (h *home) holds(name string) bool {
	if !h.found {
		return false
	}
	for at := path.Dir(name); ; at = path.Dir(at) {
		if _, there := slices.BinarySearch(h.dirs, at); there {
			return at == h.dir
		}
		if at == "." || at == "/" {
			return false
		}
	}
}
