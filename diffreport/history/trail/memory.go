package trail

import (
	"fmt"
	"slices"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/vcs"
)

// memory is what was read of late. It is bounded: what a long history holds is
// never in memory at once.
type memory struct {
	texts  recent[string, *content]
	trees  recent[string, []vcs.Entry]
	wholes recent[wholeKey, *plant.Plant]
	names  recent[string, string]
	// read is how many bytes of blocks the reader was given since it was new.
	read int
}

type wholeKey struct{ commit, dir string }

// The bounds: of texts, with what is kept of them, in bytes, of the others in number.
const (
	mostText   = 96 << 20
	mostTrees  = 8
	mostWholes = 3
	mostNames  = 4096
)

func newMemory() memory {
	return memory{
		texts: newRecent[string, *content](mostText), trees: newRecent[string, []vcs.Entry](mostTrees),
		wholes: newRecent[wholeKey, *plant.Plant](mostWholes), names: newRecent[string, string](mostNames),
	}
}

// recent remembers what came last, up to a sum of weights.
type recent[K comparable, V any] struct {
	most, sum int
	order     []K
	weights   []int
	known     map[K]V
}

func newRecent[K comparable, V any](most int) recent[K, V] {
	return recent[K, V]{most: most, known: make(map[K]V)}
}

func (l *recent[K, V]) put(k K, v V, weight int) {
	if _, known := l.known[k]; known {
		return
	}
	for l.sum+weight > l.most && len(l.order) > 0 {
		delete(l.known, l.order[0])
		l.sum -= l.weights[0]
		l.order, l.weights = l.order[1:], l.weights[1:]
	}
	l.order, l.weights = append(l.order, k), append(l.weights, weight)
	l.known[k], l.sum = v, l.sum+weight
}

// load reads versions of files; there is no text of one that is too large.
func (t *Trail) load(ids []string) (map[string]*content, error) {
	texts := make(map[string]*content, len(ids))
	var missing []string
	for _, id := range ids {
		if text, known := t.texts.known[id]; known {
			texts[id] = text
		} else {
			texts[id] = &content{}
			missing = append(missing, id)
		}
	}
	slices.Sort(missing)
	missing = slices.Compact(missing)
	err := t.Repo.Pour(t.ctx, missing, func(i int, data []byte) error {
		id, v := missing[i], &content{text: string(data)}
		texts[id] = v
		t.texts.put(id, v, v.weight())
		return nil
	})
	if err != nil {
		return nil, fmt.Errorf("reading the history: %w", err)
	}
	return texts, nil
}

// mostRead is how many bytes of blocks one reader is given: it remembers all.
const mostRead = 64 << 20

// refresh takes another reader where the one at hand remembers too much. What
// stood in its memory is no longer the same record as what is read from now on.
func (t *Trail) refresh() {
	if t.read > mostRead {
		t.Reader, t.read = schema.NewReader(), 0
		t.wholes = newRecent[wholeKey, *plant.Plant](mostWholes)
	}
}

// tree lists the plain files of records at a commit.
func (t *Trail) tree(commit string) ([]vcs.Entry, error) {
	if known, ok := t.trees.known[commit]; ok {
		return known, nil
	}
	entries, err := t.Repo.Tree(t.ctx, commit)
	if err != nil {
		return nil, err
	}
	var records []vcs.Entry
	for _, e := range entries {
		if isRecords(e.Path) && e.Regular() {
			records = append(records, e)
		}
	}
	t.trees.put(commit, records, 1)
	return records, nil
}

// plantName is the label of the plant record in one version of a plant's file.
func (t *Trail) plantName(id string) (string, error) {
	if name, ok := t.names.known[id]; ok {
		return name, nil
	}
	texts, err := t.load([]string{id})
	if err != nil {
		return "", err
	}
	name := ""
	if labels := plantLabels(t.Reader, texts[id].blocks()); len(labels) > 0 {
		name = labels[0]
	}
	t.names.put(id, name, 1)
	return name, nil
}
