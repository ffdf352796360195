package pack

import (
	"bytes"
	"slices"
)

// Blobs finds every blob that holds any of the texts. Texts of less than two or
// more than 255 bytes are searched for by as many of their bytes as fit: of an
// empty one every blob is found.
func (s *Store) Blobs(texts ...string) map[ID]bool {
	rows := make([][]ID, len(s.groups))
	place := make(map[*object]int, len(s.groups))
	for i, g := range s.groups {
		place[g[0]] = i
	}
	_ = s.each(func(group []*object) error {
		if group[0].kind == Blob {
			rows[place[group[0]]] = holding(group, texts)
		}
		return nil
	})
	found := make(map[ID]bool)
	for _, row := range rows {
		for _, id := range row {
			found[id] = true
		}
	}
	return found
}

// holding finds the objects of a group that hold any of the texts.
func holding(group []*object, texts []string) []ID {
	found := make([]bool, len(group))
	for _, text := range texts {
		w := newWanted(text)
		for i, hits := range w.group(group) {
			found[i] = found[i] || len(hits) > 0 || len(w.text) == 0
		}
	}
	var ids []ID
	for i, yes := range found {
		if yes {
			ids = append(ids, group[i].id)
		}
	}
	return ids
}

// wanted is a text that is searched for in objects, bases before what is stored
// as a difference from them.
type wanted struct {
	text  []byte
	bytes [256]bool
	// hits are the places of the text in the objects of the group at hand.
	hits   [][]int32
	number int
	buffer []byte
}

func newWanted(text string) *wanted {
	w := &wanted{text: []byte(text[:min(len(text), 255)])}
	for _, c := range w.text {
		w.bytes[c] = true
	}
	return w
}

// group finds the places of the text in every object of one group.
func (w *wanted) group(group []*object) [][]int32 {
	w.hits, w.number = make([][]int32, len(group)), group[0].number
	if len(w.text) == 0 {
		return w.hits
	}
	for i, o := range group {
		if o.base == nil {
			w.hits[i] = w.in(nil, o.data, 0)
		} else {
			w.hits[i] = w.pieces(o, w.hits[o.base.number-w.number])
		}
	}
	return w.hits
}

// in adds the places of the text in plain bytes.
func (w *wanted) in(hits []int32, data []byte, shift int) []int32 {
	for at := 0; ; at++ {
		i := bytes.Index(data[at:], w.text)
		if i < 0 {
			return hits
		}
		at += i
		hits = append(hits, int32(shift+at))
	}
}

// pieces finds the text in an object with a base: in what is new, in what is
// copied, and across the seams.
func (w *wanted) pieces(o *object, base []int32) []int32 {
	var hits []int32
	inNew := bytes.Contains(o.data, w.text)
	for i := range o.pieces {
		p := &o.pieces[i]
		switch {
		case !p.literal && len(base) > 0:
			hits = copied(hits, base, p, int32(len(w.text)))
		case p.literal && inNew:
			hits = w.in(hits, o.data[p.from:p.from+p.length], int(p.at))
		}
		if i > 0 && w.across(o, i) {
			hits = w.seam(hits, o, int(p.at))
		}
	}
	if len(hits) > 1 {
		slices.Sort(hits)
		hits = slices.Compact(hits)
	}
	return hits
}

// copied adds the places of the base that a copy takes over whole.
func copied(hits, base []int32, p *piece, length int32) []int32 {
	from, _ := slices.BinarySearch(base, p.from)
	for _, at := range base[from:] {
		if at+length > p.from+p.length {
			break
		}
		hits = append(hits, at-p.from+p.at)
	}
	return hits
}

// across says whether the text can lie across the seam before a piece: by the
// literals beside it, which cost nothing, then by the two bytes at the seam.
func (w *wanted) across(o *object, i int) bool {
	left, right := o.literal(i-1), o.literal(i)
	if len(left) > 0 && !w.bytes[left[len(left)-1]] || len(right) > 0 && !w.bytes[right[0]] || !w.fits(left, right) {
		return false
	}
	at := int(o.pieces[i].at)
	if last := o.byteAt(at - 1); w.bytes[last] {
		return bytes.Contains(w.text, []byte{last, o.byteAt(at)})
	}
	return false
}

// fits says whether the literals beside a seam agree with the text at any cut.
func (w *wanted) fits(left, right []byte) bool {
	for cut := 1; cut < len(w.text); cut++ {
		l, r := min(len(left), cut), min(len(right), len(w.text)-cut)
		if bytes.Equal(left[len(left)-l:], w.text[cut-l:cut]) && bytes.Equal(right[:r], w.text[cut:cut+r]) {
			return true
		}
	}
	return false
}

// literal is the bytes of a literal piece, nothing of a copied one.
func (o *object) literal(i int) []byte {
	if p := &o.pieces[i]; p.literal {
		return o.data[p.from : p.from+p.length]
	}
	return nil
}

// seam adds the places of the text that begin before a seam and end behind it.
func (w *wanted) seam(hits []int32, o *object, at int) []int32 {
	from, to := max(0, at-len(w.text)+1), min(o.size, at+len(w.text)-1)
	w.buffer = o.read(w.buffer[:0], from, to)
	return w.in(hits, w.buffer, from)
}
