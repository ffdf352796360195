package again

import "hash/maphash"

// kin are the labels that may be taken for each other, by the keys of lint.Rule.Alike.
// Keys are held by their hashes: two of one hash make labels kin that are not, and
// more is looked at.
type kin struct {
	seed maphash.Seed
	by   map[uint64]relatives
	// crowded counts the keys of a label that others share.
	crowded map[string]int
}

// relatives are the labels of one key. Most have none beside the first.
type relatives struct {
	first string
	more  []string
}

func newKin() kin {
	return kin{seed: maphash.MakeSeed(), by: make(map[uint64]relatives), crowded: make(map[string]int)}
}

// enter adds a label that was not there under its keys.
func (k *kin) enter(label string, keys []string) {
	for _, key := range keys {
		at := maphash.String(k.seed, key)
		r, known := k.by[at]
		if !known {
			k.by[at] = relatives{first: label}
			continue
		}
		k.crowd(r, label, 1)
		r.more = append(r.more, label)
		k.by[at] = r
	}
}

// leave takes a label out.
func (k *kin) leave(label string, keys []string) {
	for _, key := range keys {
		at := maphash.String(k.seed, key)
		r := k.by[at]
		switch n := len(r.more); {
		case r.first != label:
			r.more = without(r.more, label)
		case n == 0:
			delete(k.by, at)
			continue
		default:
			r.first, r.more = r.more[n-1], r.more[:n-1]
		}
		k.by[at] = r
		k.crowd(r, label, -1)
	}
}

// crowd counts that a label comes to others of a key, or leaves them.
func (k *kin) crowd(others relatives, label string, by int) {
	k.count(label, by)
	if len(others.more) == 0 { // the others share it anyway
		k.count(others.first, by)
	}
}

func (k *kin) count(label string, by int) {
	if k.crowded[label] += by; k.crowded[label] == 0 {
		delete(k.crowded, label)
	}
}

// each tells the labels of a key.
func (k *kin) each(key string, tell func(label string)) {
	r, known := k.by[maphash.String(k.seed, key)]
	if !known {
		return
	}
	tell(r.first)
	for _, label := range r.more {
		tell(label)
	}
}
