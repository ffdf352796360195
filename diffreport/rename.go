package diffreport

import (
	"slices"

	"homerun/schema"
)

// A claim is a record's own word that it had another label before.
type claim struct {
	b, h int
	how  string
	// back is set where it is the earlier record that says so.
	back bool
	dead bool
}

// stated pairs records by the former label that one of them states: the later
// record the label it had, or, where a relabelling is taken back, the earlier
// record the label it has again. Labels may be exchanged or passed on in a row;
// a claim counts only where everything under its two labels is accounted for.
func (c *comparison) stated() {
	claims := c.believed(c.claims())
	if len(claims) == 0 {
		return
	}
	byB, byH := make(map[int]*claim), make(map[int]*claim)
	for _, cl := range claims {
		byB[cl.b], byH[cl.h] = cl, cl
	}
	pending := claims
	for len(pending) > 0 {
		cl := pending[len(pending)-1]
		pending = pending[:len(pending)-1]
		if cl.dead || (c.vacated(cl, byH) && c.freed(cl, byB)) {
			continue
		}
		cl.dead = true
		// Whoever counted on this record to go elsewhere has to look again.
		pending = append(pending, c.dependants(cl, byB, byH)...)
	}
	for _, cl := range claims {
		if !cl.dead {
			c.join(cl.b, cl.h, cl.how)
		}
	}
}

// vacated says whether the earlier label is free in the later plant, or borne
// there by a record that came from elsewhere.
func (c *comparison) vacated(cl *claim, byH map[int]*claim) bool {
	at := c.place(later, c.sides[earlier][cl.b].key())
	if at < 0 {
		return true
	}
	other, ok := byH[at]
	return ok && !other.dead
}

// freed says whether the later label was free in the earlier plant, or borne
// there by a record that went elsewhere.
func (c *comparison) freed(cl *claim, byB map[int]*claim) bool {
	at := c.place(earlier, c.sides[later][cl.h].key())
	if at < 0 {
		return true
	}
	other, ok := byB[at]
	return ok && !other.dead
}

// dependants are the claims that hold only while this one does: the one that
// takes over its earlier label and the one that gave up its later label.
func (c *comparison) dependants(cl *claim, byB, byH map[int]*claim) []*claim {
	var found []*claim
	was, is := c.sides[earlier][cl.b].key(), c.sides[later][cl.h].key()
	if other, ok := byH[c.place(later, was)]; ok && !other.dead {
		found = append(found, other)
	}
	if other, ok := byB[c.place(earlier, is)]; ok && !other.dead {
		found = append(found, other)
	}
	return found
}

// claims lists what records newly state, each record at most once: where two
// claim the same one, none of them is believed.
func (c *comparison) claims() []*claim {
	var all []*claim
	for h, is := range c.sides[later] {
		if c.partner[later][h] >= 0 {
			continue
		}
		if old, fresh := c.freshFormer(later, is); fresh && c.place(later, is.key()) == h {
			if b := c.place(earlier, key{is.Kind, old}); b >= 0 {
				all = append(all, &claim{b: b, h: h, how: "its record says so"})
			}
		}
	}
	for b, was := range c.sides[earlier] {
		if c.partner[earlier][b] >= 0 {
			continue
		}
		if old, fresh := c.freshFormer(earlier, was); fresh && c.place(earlier, was.key()) == b && !c.tidied(was) {
			if h := c.place(later, key{was.Kind, old}); h >= 0 {
				all = append(all, &claim{b: b, h: h, back: true, how: "it gets its old label back"})
			}
		}
	}
	return unrivalled(all)
}

// freshFormer is the former label that a record states and its namesake on the
// other side does not.
func (c *comparison) freshFormer(s side, r subject) (label string, fresh bool) {
	v := r.Own(fieldFormer)
	if v == nil || v.Bad || v.Text == r.Label || v.Text == "" {
		return "", false
	}
	if i := c.namesake(1-s, r.key()); i >= 0 {
		if w := c.sides[1-s][i].Own(fieldFormer); w != nil && w.Text == v.Text {
			return "", false
		}
	}
	return v.Text, true
}

// tidied says whether the later plant has the same record under the same label
// and merely no longer says what it was called once.
func (c *comparison) tidied(was subject) bool {
	h := c.place(later, was.key())
	return h >= 0 && c.recordKey(earlier, was.Record) == c.recordKey(later, c.sides[later][h].Record)
}

// believed keeps the claims of later records, and those of earlier ones where
// something else speaks for them too: an old former label outlives the record
// that stated it, and the label may have gone to something new since.
func (c *comparison) believed(claims []*claim) []*claim {
	now := make(map[string]string)
	for _, cl := range claims {
		now[c.sides[earlier][cl.b].Label] = c.sides[later][cl.h].Label
	}
	return slices.DeleteFunc(claims, func(cl *claim) bool {
		return cl.back && !resembles(c.sides[earlier][cl.b].Record, c.sides[later][cl.h].Record, now)
	})
}

// resembles says whether two records share an end or, where they have none, any
// other reference.
func resembles(was, is *schema.Record, now map[string]string) bool {
	ends := was.Kind.Name == schema.KindRun || was.Kind.Name == schema.KindCord
	stated := false
	for i := range was.Values {
		v := &was.Values[i]
		if v.Bad || !refers(v.Field) || ends && v.Field.Type != schema.PortReference {
			continue
		}
		stated = true
		w := is.Own(v.Field.Name)
		if w == nil || w.Bad {
			continue
		}
		if v.Same(w) || v.List == nil && v.Number == w.Number && v.Last == w.Last && now[v.Text] == w.Text {
			return true
		}
	}
	return !stated
}

// unrivalled keeps the claims that no other claim contradicts.
func unrivalled(all []*claim) []*claim {
	byB, byH := make(map[int][]*claim), make(map[int][]*claim)
	var kept []*claim
	for _, cl := range all {
		byB[cl.b] = append(byB[cl.b], cl)
		byH[cl.h] = append(byH[cl.h], cl)
	}
	seen := make(map[[2]int]bool)
	for _, cl := range all {
		pair := [2]int{cl.b, cl.h}
		if seen[pair] || !agree(byB[cl.b]) || !agree(byH[cl.h]) {
			continue
		}
		seen[pair] = true
		kept = append(kept, cl)
	}
	return kept
}

func agree(claims []*claim) bool {
	for _, cl := range claims {
		if cl.b != claims[0].b || cl.h != claims[0].h {
			return false
		}
	}
	return true
}
