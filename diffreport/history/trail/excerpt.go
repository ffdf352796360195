package trail

import (
	"slices"

	"homerun/diffreport/history"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/vcs"
)

// excerpt is the work of building as much of two plants as decides what happened
// to one label between them.
type excerpt struct {
	*Trail
	*followed

	at *step
	// before and after are commits, before empty where there is none, and parent
	// the place of before among the parents.
	before, after string
	parent        int32

	trees [2][]vcs.Entry
	homes [2]home
	texts map[string]*content
	// moved is set where records of the subject go from one file to another.
	moved bool
	// more says how often more a block stands on the later side.
	more map[string]int
	// differ are the records of the blocks that differ, on each side.
	differ [2][]*schema.Record
}

// look gives the plants between which something may have happened to the label,
// nil twice where nothing did.
func (e *excerpt) look() (before, after *plant.Plant, err error) {
	if !e.touched() {
		return nil, nil, nil
	}
	e.refresh()
	if err := e.settle(); err != nil {
		return nil, nil, err
	}
	switch {
	case !e.homes[0].sure || !e.homes[1].sure:
		return e.whole()
	case !e.homes[0].found && !e.homes[1].found:
		return nil, nil, nil
	case e.before != "" && (e.homes[0].dir != e.homes[1].dir || !slices.Equal(e.homes[0].dirs, e.homes[1].dirs)):
		return e.whole()
	}
	if e.before == "" {
		return e.first()
	}
	if err := e.compare(); err != nil {
		return nil, nil, err
	}
	switch {
	case e.concerned():
		return e.plants(e.wants())
	case e.moved:
		return e.shuffled()
	}
	return nil, nil, nil
}

// settle finds the plant on both sides.
func (e *excerpt) settle() (err error) {
	for s, commit := range []string{e.before, e.after} {
		e.homes[s] = home{sure: true}
		if commit == "" {
			continue
		}
		if e.trees[s], err = e.tree(commit); err != nil {
			return err
		}
		if e.homes[s], err = e.home(e.trees[s]); err != nil {
			return err
		}
	}
	return nil
}

// compare finds the blocks that one side has more often than the other.
func (e *excerpt) compare() error {
	var ids []string
	for _, d := range e.deltas() {
		for _, b := range []int32{d.before, d.after} {
			if b != none {
				ids = append(ids, e.blobs[b].id)
			}
		}
	}
	var err error
	if e.texts, err = e.load(ids); err != nil {
		return err
	}
	e.more = make(map[string]int)
	for _, d := range e.deltas() {
		before, after := differing(e.blocks(d.before), e.blocks(d.after))
		e.count(before, -1)
		e.count(after, 1)
	}
	for block, n := range e.more {
		if n == 0 {
			delete(e.more, block)
			continue
		}
		s := 1
		if n < 0 {
			s = 0
		}
		e.read += len(block)
		for _, entry := range e.Reader.ReadPart("", block, func(string) bool { return true }).Entries {
			e.differ[s] = append(append(e.differ[s], entry.Record), entry.Inner...)
		}
	}
	return nil
}

// first builds the blocks of a first commit that name the label: with nothing
// before them, no others bear on it.
func (e *excerpt) first() (before, after *plant.Plant, err error) {
	w := &wants{tokens: make(map[token]bool)}
	w.want(e.label, defines)
	if e.what == history.Ties {
		w.want(e.label, mention)
	}
	if after, err = e.part(1, w); err != nil || enough(nil, after, w) {
		return nil, after, err
	}
	return e.whole()
}

// deltas are the differences from the parent in files of the plant.
func (e *excerpt) deltas() []delta {
	var mine []delta
	for _, d := range e.at.deltas {
		if d.parent == e.parent && (e.homes[1].holds(e.paths[d.path]) || e.homes[0].holds(e.paths[d.path])) {
			mine = append(mine, d)
		}
	}
	return mine
}

// blocks are those of a version of a file, none where there is no file.
func (e *excerpt) blocks(b int32) []schema.Block {
	if b == none {
		return nil
	}
	return e.texts[e.blobs[b].id].blocks()
}

// differing leaves out what two versions begin with and end with both.
func differing(before, after []schema.Block) (leftBefore, leftAfter []schema.Block) {
	n := 0
	for n < min(len(before), len(after)) && before[n].Text == after[n].Text {
		n++
	}
	before, after = before[n:], after[n:]
	i, j := len(before), len(after)
	for i > 0 && j > 0 && before[i-1].Text == after[j-1].Text {
		i, j = i-1, j-1
	}
	return before[:i], after[:j]
}

func (e *excerpt) count(blocks []schema.Block, by int) {
	for _, b := range blocks {
		e.more[b.Text] += by
	}
}

// concerned says whether any record that differs is of the label or, where that
// is asked, names it.
func (e *excerpt) concerned() bool {
	for s := range e.differ {
		if slices.ContainsFunc(e.differ[s], e.concerns) {
			return true
		}
	}
	return false
}

// names says whether a record refers to a label.
func names(r *schema.Record, label string) bool {
	for i := range r.Values {
		if r.Values[i].Text == label || slices.Contains(r.Values[i].List, label) {
			return true
		}
	}
	return slices.ContainsFunc(r.Inner, func(in *schema.Record) bool { return names(in, label) })
}

// plants builds the excerpts: the blocks that differ, those that bear on them,
// and the plant record.
func (e *excerpt) plants(w *wants) (before, after *plant.Plant, err error) {
	var sides [2]*plant.Plant
	for s := range sides {
		if s == 0 && e.before == "" || !e.homes[s].found {
			continue
		}
		if sides[s], err = e.part(s, w); err != nil {
			return nil, nil, err
		}
	}
	if !enough(sides[0], sides[1], w) {
		return e.whole()
	}
	return sides[0], sides[1], nil
}

// shuffled looks at records that only went to another file. That is nothing,
// unless one of them is given twice: then the first file decides.
func (e *excerpt) shuffled() (before, after *plant.Plant, err error) {
	w, subject := e.wants(), &wants{tokens: make(map[token]bool)}
	subject.want(e.label, mention)
	for _, v := range e.texts {
		for _, entry := range e.Reader.ReadBlocks("", v.having(subject, func(string) bool { return false })).Entries {
			for _, r := range append([]*schema.Record{entry.Record}, entry.Inner...) {
				if e.concerns(r) {
					w.want(r.Label, defines)
				}
			}
		}
	}
	before, after, err = e.plants(w)
	if err != nil || doubled(before) || doubled(after) {
		return before, after, err
	}
	return nil, nil, nil
}

// part builds one side.
func (e *excerpt) part(s int, w *wants) (*plant.Plant, error) {
	bearing := e.bearing(w)
	for _, d := range e.deltas() {
		if e.before == "" {
			break
		}
		for _, b := range []int32{d.before, d.after} {
			if b != none {
				bearing.add(b)
			}
		}
	}
	var files []vcs.Entry
	var ids []string
	for _, f := range e.trees[s] {
		if b, known := e.blobNo[f.ID]; known && e.homes[s].holds(f.Path) && (bearing.has(b) || f.Path == e.plantFile(s)) {
			files, ids = append(files, f), append(ids, f.ID)
		}
	}
	texts, err := e.load(ids)
	if err != nil {
		return nil, err
	}
	var parts []*schema.File
	for _, f := range files {
		parts = append(parts, e.Reader.ReadBlocks(f.Path, texts[f.ID].having(w, func(block string) bool {
			return e.more[block] != 0 || statesPlant(block)
		})))
	}
	return plant.Build(e.homes[s].dir, parts), nil
}

func (e *excerpt) plantFile(s int) string {
	if e.homes[s].dir == "." {
		return schema.PlantFile
	}
	return e.homes[s].dir + "/" + schema.PlantFile
}
