package trail

import (
	"homerun/schema/plant"
	"homerun/schema/vcs/pack"
)

// memory keeps what is likely to be asked for again, in bounds.
type memory struct {
	names  map[pack.ID]string
	texts  map[pack.ID]string
	held   int
	wholes wholes
}

// mostText bounds the texts of files that are kept, in bytes.
const mostText = 64 << 20

func newMemory() memory {
	return memory{names: make(map[pack.ID]string), texts: make(map[pack.ID]string)}
}

// text is the content of one file version; false where it is no blob that is read.
func (t *Trail) text(id pack.ID) (string, bool) {
	if text, ok := t.texts[id]; ok {
		return text, true
	}
	data, ok := t.store.Content(id)
	if !ok {
		return "", false
	}
	if t.held += len(data); t.held > mostText {
		clear(t.texts)
		t.held = len(data)
	}
	text := string(data)
	t.texts[id] = text
	return text, true
}

type wholeKey struct {
	tree pack.ID
	dir  string
}

// wholes are the last whole plants: those of a commit are needed again for its
// parents.
type wholes struct {
	keys   [4]wholeKey
	plants [4]*plant.Plant
	next   int
}

func (w *wholes) get(key wholeKey) *plant.Plant {
	for i, k := range w.keys {
		if k == key && w.plants[i] != nil {
			return w.plants[i]
		}
	}
	return nil
}

func (w *wholes) put(key wholeKey, p *plant.Plant) {
	w.keys[w.next], w.plants[w.next] = key, p
	w.next = (w.next + 1) % len(w.keys)
}
