package trail

import (
	"homerun/schema"
	"homerun/schema/plant"
)

// whole builds both plants as they are.
func (e *excerpt) whole() (before, after *plant.Plant, err error) {
	if after, err = e.wholeAt(e.after); err != nil || e.before == "" {
		return nil, after, err
	}
	before, err = e.wholeAt(e.before)
	return before, after, err
}

// wholeAt builds the plant at a commit, nil where there is none: of all plants
// the first of the right label, else the one in the right folder.
func (t *Trail) wholeAt(commit string) (*plant.Plant, error) {
	key := wholeKey{commit, t.Dir}
	if p, known := t.wholes.known[key]; known {
		return p, nil
	}
	entries, err := t.tree(commit)
	if err != nil {
		return nil, err
	}
	paths, ids := make([]string, len(entries)), make(map[string]string, len(entries))
	for i, f := range entries {
		paths[i], ids[f.Path] = f.Path, f.ID
	}
	folders, _ := schema.Folders(paths)
	var named, placed *plant.Plant
	for _, f := range folders {
		p, err := t.build(f, ids)
		switch {
		case err != nil:
			return nil, err
		case p.Name() == t.Plant && named == nil:
			named = p
		case p.Dir == t.Dir:
			placed = p
		}
	}
	if named == nil {
		named = placed
	}
	t.wholes.put(key, named, 1)
	return named, nil
}

func (t *Trail) build(f schema.Folder, ids map[string]string) (*plant.Plant, error) {
	wanted := make([]string, len(f.Files))
	for i, name := range f.Files {
		wanted[i] = ids[name]
	}
	texts, err := t.load(wanted)
	if err != nil {
		return nil, err
	}
	docs := make([]schema.Document, len(f.Files))
	for i, name := range f.Files {
		docs[i] = schema.Document{Path: name, Text: texts[ids[name]].text}
		t.read += len(docs[i].Text)
	}
	return plant.Build(f.Dir, t.Reader.ReadFiles(docs)), nil
}
