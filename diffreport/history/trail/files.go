package trail

import (
	"crypto/sha256"
	"fmt"
	"path"
	"slices"
	"strings"

	"homerun/schema"
	"homerun/schema/vcs"
	"homerun/schema/vcs/pack"
)

// file is one version of a file of records.
type file struct {
	path string
	id   pack.ID
}

const folderMode = 0o40000

// holding is where some versions of files stand in all folders.
type holding struct {
	ids map[pack.ID]bool
	// lines lead from each folder to the files. Where they would be too many,
	// broad is set, and there are none: the label is named all over the plant.
	lines map[pack.ID][]pack.Entry
	broad bool
	marks map[pack.ID]mark
	store *pack.Store
}

// mark is equal for folders in which the same files stand under the same names.
type mark [sha256.Size]byte

// mostLines bounds the lines that are kept of one label.
const mostLines = 1 << 20

func (t *Trail) hold(ids map[pack.ID]bool) *holding {
	h := &holding{ids: ids, marks: make(map[pack.ID]mark), store: t.store}
	lines, ok := t.store.Holdings(ids, mostLines)
	h.lines, h.broad = lines, !ok
	return h
}

// same says whether the same files stand in two folders, as far as is known
// without looking at them.
func (h *holding) same(a, b pack.ID) bool {
	return a == b || !h.broad && h.mark(a, 0) == h.mark(b, 0)
}

func (h *holding) mark(tree pack.ID, depth int) mark {
	if m, ok := h.marks[tree]; ok || depth > deepest {
		return m
	}
	sum := sha256.New()
	for _, e := range h.lines[tree] {
		if e.Mode == folderMode {
			below := h.mark(e.ID, depth+1)
			fmt.Fprintf(sum, "%s\x00/%s", e.Name, below[:])
			continue
		}
		fmt.Fprintf(sum, "%s\x00%o %s", e.Name, e.Mode, e.ID[:])
	}
	h.marks[tree] = mark(sum.Sum(nil))
	return h.marks[tree]
}

// files lists those of the files that are in a folder.
func (h *holding) files(tree pack.ID) []file {
	return h.below(nil, tree, "", 0)
}

// deepest bounds the nesting of folders.
const deepest = 512

func (h *holding) below(all []file, tree pack.ID, dir string, depth int) []file {
	lines := h.lines[tree]
	if h.broad {
		lines, _ = h.store.Folder(tree)
	}
	for _, e := range lines {
		at := dir + e.Name
		switch {
		case e.Mode == folderMode && depth < deepest:
			all = h.below(all, e.ID, at+"/", depth+1)
		case records(e, at) && h.ids[e.ID]:
			all = append(all, file{at, e.ID})
		}
	}
	return all
}

func records(e pack.Entry, at string) bool {
	return (e.Mode == vcs.ModeFile || e.Mode == vcs.ModeExecutable) && schema.IsRecords(at)
}

// home is the folder of the plant that is asked about, among the folders that
// hold one; there is none where the second result is false. Certain is not set
// where a folder's own file does not say what its plant is called.
func (t *Trail) home(files []file) (dirs []string, dir string, found, certain bool) {
	certain = true
	for _, f := range files {
		if path.Base(f.path) != schema.PlantFile {
			continue
		}
		at := path.Dir(f.path)
		dirs = append(dirs, at)
		name := t.plantName(f.id)
		certain = certain && name != ""
		if name == t.Plant && (!found || dir > at) {
			dir, found = at, true
		}
	}
	slices.Sort(dirs)
	if !found && slices.Contains(dirs, t.Dir) {
		dir, found = t.Dir, true
	}
	return dirs, dir, found, certain
}

// plantName is the label of the plant record in one version of a plant's file.
func (t *Trail) plantName(id pack.ID) string {
	if name, ok := t.names[id]; ok {
		return name
	}
	name := ""
	text, _ := t.text(id)
	for _, e := range t.Reader.ReadPart(schema.PlantFile, text, statesPlant).Entries {
		if e.Kind.Name == schema.KindPlant {
			name = e.Label
			break
		}
	}
	t.names[id] = name
	return name
}

// statesPlant says whether a block may be that of a plant.
func statesPlant(text string) bool {
	return strings.HasPrefix(strings.TrimLeft(text, " \t"), schema.KindPlant)
}

// within says whether a file belongs to the plant in a folder, not to a nearer
// one.
func within(name, dir string, dirs []string) bool {
	for at := path.Dir(name); ; at = path.Dir(at) {
		if _, holds := slices.BinarySearch(dirs, at); holds {
			return at == dir
		}
		if at == "." || at == "/" {
			return false
		}
	}
}

// changed is one path that differs between two trees; a side without it has no
// file of records there.
type changed struct {
	path           string
	before, after  pack.ID
	hadIt, holdsIt bool
}

// ids is the version on each side, nil where there is none.
func (c *changed) ids() [2]*pack.ID {
	var ids [2]*pack.ID
	if c.hadIt {
		ids[0] = &c.before
	}
	if c.holdsIt {
		ids[1] = &c.after
	}
	return ids
}

// differences lists the files of records that differ between two trees, nil
// standing for an empty one.
func (t *Trail) differences(before, after *pack.ID) ([]changed, bool) {
	d := differ{store: t.store}
	ok := d.folder("", before, after, 0)
	return d.all, ok
}

type differ struct {
	store *pack.Store
	all   []changed
}

func (d *differ) folder(dir string, before, after *pack.ID, depth int) bool {
	if depth > deepest {
		return false
	}
	var sides [2][]pack.Entry
	for i, id := range []*pack.ID{before, after} {
		if id == nil {
			continue
		}
		entries, ok := d.store.Folder(*id)
		if !ok {
			return false
		}
		sides[i] = entries
	}
	was := make(map[string]pack.Entry, len(sides[0]))
	for _, e := range sides[0] {
		was[e.Name] = e
	}
	ok := true
	for _, e := range sides[1] {
		old, had := was[e.Name]
		delete(was, e.Name)
		if !had || old != e {
			ok = d.line(dir+e.Name, old, had, e, true, depth) && ok
		}
	}
	for _, e := range sides[0] {
		if old, gone := was[e.Name]; gone {
			ok = d.line(dir+e.Name, old, true, pack.Entry{}, false, depth) && ok
		}
	}
	return ok
}

// line takes one name that differs: as folders, and as files.
func (d *differ) line(at string, old pack.Entry, had bool, now pack.Entry, has bool, depth int) bool {
	c := changed{path: at, before: old.ID, after: now.ID, hadIt: had && records(old, at), holdsIt: has && records(now, at)}
	if c.hadIt || c.holdsIt {
		d.all = append(d.all, c)
	}
	var was, is *pack.ID
	if had && old.Mode == folderMode {
		was = &old.ID
	}
	if has && now.Mode == folderMode {
		is = &now.ID
	}
	if was == nil && is == nil {
		return true
	}
	return d.folder(at+"/", was, is, depth+1)
}
