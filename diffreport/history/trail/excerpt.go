package trail

import (
	"fmt"
	"maps"
	"slices"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/vcs"
	"homerun/schema/vcs/pack"
)

// look gives the plants between which something may have happened to the label:
// the same one twice where nothing did.
func (t *Trail) look(label string, before *pack.ID, after pack.ID) (was, is *plant.Plant, err error) {
	f := t.follow(label)
	if before != nil && t.plants.same(*before, after) && f.same(*before, after) {
		return nil, nil, nil
	}
	e := &excerpt{Trail: t, followed: f, trees: [2]*pack.ID{before, &after}}
	return e.plants()
}

// excerpt is the work of building as much of two plants as decides what happened
// to one label between them.
type excerpt struct {
	*Trail
	*followed

	trees [2]*pack.ID
	// dirs are the plants' folders of each side, home the one that is asked
	// about; lost is set on a side without it. Certain is not set where a folder's
	// own file does not say what its plant is called.
	dirs    [2][]string
	home    [2]string
	lost    [2]bool
	certain bool
	// changed are the files that differ.
	changed []changed
}

func (e *excerpt) plants() (was, is *plant.Plant, err error) {
	e.certain = true
	for s, tree := range e.trees {
		e.lost[s] = true
		if tree != nil {
			e.settle(s, e.Trail.plants.files(*tree))
		}
	}
	ok := true
	if e.trees[0] != nil {
		e.changed, ok = e.differences(e.trees[0], e.trees[1])
	}
	switch {
	case !ok || !e.certain || e.trees[0] != nil && !slices.Equal(e.dirs[0], e.dirs[1]):
		return e.whole()
	case e.lost[0] && e.lost[1] || e.quiet():
		return nil, nil, nil
	}
	sides := e.sides()
	switch {
	case e.trees[0] == nil:
		return nil, sides[1], nil
	case !e.enough(sides[0], sides[1]):
		return e.whole()
	}
	return sides[0], sides[1], nil
}

// settle finds the plant on one side.
func (e *excerpt) settle(s int, files []file) {
	dirs, home, found, certain := e.Trail.home(files)
	e.dirs[s], e.home[s], e.lost[s] = dirs, home, !found
	e.certain = e.certain && certain
}

// quiet says whether the blocks that state the label are the same on both
// sides, whatever else differs.
func (e *excerpt) quiet() bool {
	if e.trees[0] == nil {
		return false
	}
	var blocks [2][]string
	for _, c := range e.changed {
		for s, id := range c.ids() {
			if id != nil && e.ids[*id] && within(c.path, e.home[s], e.dirs[s]) {
				blocks[s] = append(blocks[s], e.stating(*id)...)
			}
		}
	}
	for s := range blocks {
		slices.Sort(blocks[s])
	}
	return slices.Equal(blocks[0], blocks[1])
}

// stating is the blocks of one file version that state a record of the label.
func (e *excerpt) stating(id pack.ID) []string {
	if known, ok := e.stated[id]; ok {
		return known
	}
	var found []string
	text, _ := e.text(id)
	for _, entry := range e.Reader.ReadPart("", text, e.mayName).Entries {
		if states(entry.Record, e.label) {
			found = append(found, entry.Text())
		}
	}
	e.stated[id] = found
	return found
}

func states(r *schema.Record, label string) bool {
	return r.Label == label || slices.ContainsFunc(r.Inner, func(in *schema.Record) bool { return in.Label == label })
}

// sides builds the excerpts: of each side the blocks that the other does not
// have as often, those that name the label, and the plant record.
func (e *excerpt) sides() (plants [2]*plant.Plant) {
	var texts [2]map[string]pack.ID
	for s, tree := range e.trees {
		texts[s] = make(map[string]pack.ID)
		if tree == nil || e.lost[s] {
			continue
		}
		for _, f := range append(e.files(*tree), e.Trail.plants.files(*tree)...) {
			texts[s][f.path] = f.id
		}
	}
	more := make(map[string]int)
	for _, c := range e.changed {
		for s, id := range c.ids() {
			if id != nil && within(c.path, e.home[s], e.dirs[s]) {
				texts[s][c.path] = *id
				e.count(more, *id, 2*s-1)
			}
		}
	}
	for s := range texts {
		plants[s] = e.part(texts[s], e.home[s], e.dirs[s], more)
	}
	return plants
}

func (e *excerpt) count(more map[string]int, id pack.ID, by int) {
	text, _ := e.text(id)
	for _, b := range schema.Blocks(text) {
		more[b] += by
	}
}

func (e *excerpt) part(texts map[string]pack.ID, dir string, dirs []string, more map[string]int) *plant.Plant {
	wanted := func(block string) bool {
		return more[block] != 0 || statesPlant(block) || e.mayName(block)
	}
	var files []*schema.File
	for _, name := range slices.Sorted(maps.Keys(texts)) {
		if text, ok := e.text(texts[name]); ok && within(name, dir, dirs) {
			files = append(files, e.Reader.ReadPart(name, text, wanted))
		}
	}
	return plant.Build(dir, files)
}

// whole builds both plants as they are.
func (e *excerpt) whole() (was, is *plant.Plant, err error) {
	var plants [2]*plant.Plant
	for s, tree := range e.trees {
		if tree == nil || e.certain && e.lost[s] {
			continue
		}
		if plants[s], err = e.all(*tree, e.home[s], e.certain); err != nil {
			return nil, nil, err
		}
	}
	return plants[0], plants[1], nil
}

// all builds the whole plant in a folder of a tree. Where it is not certain which
// one it is, it builds them all, to find the one of the right name.
func (t *Trail) all(tree pack.ID, dir string, certain bool) (*plant.Plant, error) {
	key := wholeKey{tree, dir}
	if p := t.wholes.get(key); p != nil {
		return p, nil
	}
	everything, ok := t.differences(nil, &tree)
	if !ok {
		return nil, fmt.Errorf("folder %s: %w", tree, vcs.ErrMissingObject)
	}
	paths := make([]string, len(everything))
	ids := make(map[string]pack.ID, len(everything))
	for i, c := range everything {
		paths[i], ids[c.path] = c.path, c.after
	}
	folders, _ := schema.Folders(paths)
	var best *plant.Plant
	for _, f := range folders {
		if certain && f.Dir != dir {
			continue
		}
		p := t.build(f, ids)
		if p.Name() == t.Plant {
			best = p
			break
		}
		if p.Dir == t.Dir || certain {
			best = p
		}
	}
	if best != nil {
		t.wholes.put(key, best)
	}
	return best, nil
}

func (t *Trail) build(f schema.Folder, ids map[string]pack.ID) *plant.Plant {
	docs := make([]schema.Document, 0, len(f.Files))
	for _, name := range f.Files {
		if text, there := t.text(ids[name]); there {
			docs = append(docs, schema.Document{Path: name, Text: text})
		}
	}
	return plant.Build(f.Dir, t.Reader.ReadFiles(docs))
}
