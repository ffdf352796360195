package weave

import (
	"maps"
	"slices"
	"strings"

	"homerun/schema/block"
)

// A run may stand by itself or inside a bundle. Where one side moved a record from
// one place to the other and the other side changed it where it was, the change is
// carried along: the record is joined field by field, stands as joined in the text
// of the side that moved it, and is taken out of the two others. What is merged
// then holds it once. A record that can not be joined so stays where each has it,
// and the merge finds one side's change against the other's removal.

// A holding is a text of which records can be taken out and replaced.
type holding struct {
	body   body
	opened map[int]*opened
	at     map[string]spot
}

// A spot is where a record stands: in the item of the file at top, and unless
// inner is -1 in that item's body. Outer is the key of the item it stands in.
type spot struct {
	top, inner int
	outer      string
}

// newHolding finds the records of a text. A key that stands twice is no record's
// own and is left out.
func newHolding(b body) *holding {
	h := &holding{body: b, opened: make(map[int]*opened), at: make(map[string]spot)}
	twice := make(map[string]bool)
	enter := func(key string, s spot) {
		_, there := h.at[key]
		twice[key] = twice[key] || there
		h.at[key] = s
	}
	for i := range b.items {
		it := &b.items[i]
		if it.sort != record {
			continue
		}
		if len(it.block.Labels) > 0 {
			enter(it.key, spot{i, -1, ""})
		}
		if len(it.block.Blocks) == 0 {
			continue
		}
		o, ok := open(it)
		if !ok {
			continue
		}
		h.opened[i] = &o
		for n := range o.items {
			if in := &o.items[n]; in.sort == record && len(in.block.Labels) > 0 {
				enter(in.key, spot{i, n, it.key})
			}
		}
	}
	maps.DeleteFunc(h.at, func(key string, _ spot) bool { return twice[key] })
	return h
}

// item is the record at a spot.
func (h *holding) item(s spot) *item {
	if s.inner < 0 {
		return &h.body.items[s.top]
	}
	return &h.opened[s.top].items[s.inner]
}

// text writes the text with other records in some spots; nil takes one out.
func (h *holding) text(changed map[spot]*item) string {
	var b strings.Builder
	for i := range h.body.items {
		it := &h.body.items[i]
		if fresh, is := changed[spot{i, -1, ""}]; is {
			if fresh != nil {
				b.WriteString(fresh.blanks + fresh.text())
			}
			continue
		}
		b.WriteString(it.blanks + h.whole(i, it, changed))
	}
	return b.String() + h.body.blanks
}

// whole writes an item with what changed inside it, laid out if it was.
func (h *holding) whole(i int, it *item, changed map[spot]*item) string {
	o := h.opened[i]
	if o == nil {
		return it.text()
	}
	var inside strings.Builder
	same := true
	for n := range o.items {
		one := &o.items[n]
		if fresh, is := changed[spot{i, n, it.key}]; is {
			same = false
			if one = fresh; one == nil {
				continue
			}
		}
		inside.WriteString(one.blanks + one.text())
	}
	if same {
		return it.text()
	}
	now := it.indent + o.head + o.after + "\n" + inside.String() + o.blanks + o.foot + "}" + it.trail + "\n"
	if was := it.indent + it.core + it.trail + "\n"; block.Format(was) == was {
		now = block.Format(now)
	}
	return it.lead + now
}

// carry joins the records that one side moved and the other changed, and gives the
// three texts as they are merged then; ok is false where there is none.
func carry(read [3]body) (texts [3]string, ok bool) {
	var held [3]*holding
	for i := range read {
		held[i] = newHolding(read[i])
	}
	changed := [3]map[spot]*item{{}, {}, {}}
	for _, key := range slices.Sorted(maps.Keys(held[0].at)) {
		var spots [3]spot
		everywhere := true
		for i, h := range held {
			s, there := h.at[key]
			spots[i], everywhere = s, everywhere && there
		}
		if !everywhere {
			continue
		}
		mover := 1
		if spots[1].outer == spots[0].outer {
			mover = 2
		}
		stayed := 3 - mover
		if spots[mover].outer == spots[0].outer || spots[stayed].outer != spots[0].outer {
			continue
		}
		joined := together(held[0].item(spots[0]), held[1].item(spots[1]), held[2].item(spots[2]), mover)
		if joined == nil {
			continue
		}
		changed[0][spots[0]], changed[stayed][spots[stayed]], changed[mover][spots[mover]] = nil, nil, joined
		ok = true
	}
	for i, h := range held {
		texts[i] = h.text(changed[i])
	}
	return texts, ok
}

// together joins one record that stands in different places; nil where somebody
// has to decide, or where there is nothing to carry.
func together(base, ours, theirs *item, mover int) *item {
	stayed, moved := theirs, ours
	if mover == 2 {
		stayed, moved = ours, theirs
	}
	if stayed.text() == base.text() {
		return nil // what was only moved is merged by itself
	}
	plain := [3]item{*base, *ours, *theirs}
	for i := range plain {
		plain[i].blanks = ""
	}
	var j joiner
	j.item(triple{&plain[0], &plain[1], &plain[2]})
	for i := range j.pieces {
		if j.pieces[i].conflict != nil {
			return nil
		}
	}
	b, err := readFile("", picked(j.pieces, pickOurs))
	if err != nil || len(b.items) != 1 || b.items[0].sort != record {
		return nil
	}
	joined := b.items[0]
	joined.blanks = moved.blanks
	return &joined
}
