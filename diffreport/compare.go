package diffreport

import (
	"cmp"
	"slices"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// comparison is the work of comparing two plants.
type comparison struct {
	options Options
	units   unit.System
	plants  [2]*plant.Plant
	sides   [2][]subject
	// first finds the first record of a kind and label on each side; it is made
	// when it is first asked for. unique is set where no label is given twice:
	// then every labelled record is the first.
	first  [2]map[key]int
	unique bool
	// left are the records of a side that have no unchanged partner; it is made
	// only where labels are unique.
	left [2]map[key]int
	// partner gives for each record the place of the same one on the other
	// side, or -1.
	partner [2][]int
	// how says why two records under different labels are taken for one, by
	// the place of the later record.
	how map[int]string
	// renamed maps labels of the earlier plant to those of the later one.
	renamed map[string]string
	// told holds the bundles, by their later label, of which a run shows the
	// change of cable or route.
	told map[told]bool
	// near finds the pathways near each source of interference; it is made when
	// it is first asked for.
	near [2]map[string][]string
}

type told struct{ bundle, field string }

// Compare says which records differ between two plants, sorted by class, kind
// and label. The earlier plant may be empty or nil: then everything is new.
func Compare(base, head *plant.Plant, o Options) []Change {
	c := newComparison(base, head, o)
	c.pair()
	changes := c.changes()
	if len(changes) > 1 {
		sortChanges(changes)
	}
	return changes
}

func sortChanges(changes []Change) {
	rank := make(map[string]int)
	for i, k := range schema.Kinds() {
		rank[k.Name] = i
	}
	slices.SortStableFunc(changes, func(a, b Change) int {
		return cmp.Or(cmp.Compare(a.Class, b.Class), cmp.Compare(rank[a.Kind], rank[b.Kind]), cmp.Compare(a.Label, b.Label), cmp.Compare(a.Former, b.Former))
	})
}

func newComparison(base, head *plant.Plant, o Options) *comparison {
	c := &comparison{options: o}
	for s, p := range []*plant.Plant{base, head} {
		if p == nil {
			p = &plant.Plant{}
		}
		c.plants[s] = p
		c.sides[s] = subjects(p)
	}
	both := make([]int, len(c.sides[earlier])+len(c.sides[later]))
	c.partner[earlier], c.partner[later] = both[:len(c.sides[earlier])], both[len(c.sides[earlier]):]
	for s := range c.partner {
		for i := range c.partner[s] {
			c.partner[s][i] = -1
		}
	}
	c.unique = !doubled(c.plants[earlier]) && !doubled(c.plants[later])
	c.units = c.plants[later].Units
	return c
}

// doubled says whether a plant gives a label twice.
func doubled(p *plant.Plant) bool {
	return slices.ContainsFunc(p.Problems, func(pr schema.Problem) bool { return pr.Code == schema.DuplicateLabel })
}

// place is where a side has the first record of a kind and label, or -1.
func (c *comparison) place(s side, k key) int {
	if c.first[s] == nil {
		c.first[s] = make(map[key]int, len(c.sides[s]))
		for i := range c.sides[s] {
			if _, taken := c.first[s][c.sides[s][i].key()]; !taken {
				c.first[s][c.sides[s][i].key()] = i
			}
		}
	}
	if i, ok := c.first[s][k]; ok {
		return i
	}
	return -1
}

// pair finds for each record the same one on the other side: the plant record,
// what records say of their former label, equal labels, and what is connected
// the same way under another label.
func (c *comparison) pair() {
	if b, h := c.sides[earlier], c.sides[later]; len(b) > 0 && len(h) > 0 && b[0].Kind.Name == schema.KindPlant && h[0].Kind.Name == schema.KindPlant {
		c.join(0, 0, "there is one plant record on both sides")
	}
	c.unchanged()
	c.stated()
	c.namesakes()
	c.found()
}

// join takes two records for the same one.
func (c *comparison) join(b, h int, how string) {
	c.partner[earlier][b], c.partner[later][h] = h, b
	was, is := c.sides[earlier][b], c.sides[later][h]
	if was.Label == is.Label {
		return
	}
	if c.how == nil {
		c.how = make(map[int]string)
	}
	c.how[h] = how
	if c.bears(earlier, was) {
		c.rename(was.Label, is.Label)
	}
}

// rename lets references by a label of the earlier plant go on under that of the later.
func (c *comparison) rename(was, is string) {
	if c.renamed == nil {
		c.renamed = make(map[string]string)
	}
	c.renamed[was] = is
}

// bears says whether references by the label lead to this record, not to
// another that was given the label first.
func (c *comparison) bears(s side, of subject) bool {
	it, ok := c.plants[s].Find(of.Label)
	return ok && it.Record() == of.Record
}

// unchanged pairs what a reader gave as one and the same record for both sides,
// which is nearly everything in most comparisons: a label that its bearer keeps
// is nobody else's. Most records stand in the same order on both sides.
func (c *comparison) unchanged() {
	if !c.unique {
		return
	}
	was, is := c.sides[earlier], c.sides[later]
	b := 0
	for h := range is {
		at := b
		for at < len(was) && at < b+maxLeft && was[at].Record != is[h].Record {
			at++
		}
		if at < len(was) && was[at].Record == is[h].Record && is[h].Label != "" {
			if c.partner[earlier][at] < 0 && c.partner[later][h] < 0 {
				c.join(at, h, "")
			}
			b = at + 1
		} else if b < len(was) && was[b].key() == is[h].key() {
			b++ // changed where it stands
		}
	}
	for _, s := range []side{earlier, later} {
		for i := range c.sides[s] {
			if c.partner[s][i] >= 0 {
				continue
			}
			if c.left[s] == nil {
				c.left[s] = make(map[key]int)
			}
			c.left[s][c.sides[s][i].key()] = i
		}
	}
}

// namesake is where a side has the record of the same kind and label as one that
// has no unchanged partner, or -1.
func (c *comparison) namesake(s side, k key) int {
	if !c.unique || k.label == "" {
		return c.place(s, k)
	}
	if i, ok := c.left[s][k]; ok {
		return i
	}
	return -1
}

// maxLeft is how many records that have gone are passed over in the search for
// one that has stayed.
const maxLeft = 8

// namesakes pairs what has the same kind and label on both sides. Where a label
// is given twice, its first bearers belong together.
func (c *comparison) namesakes() {
	var again map[key][2][]int
	for h := range c.sides[later] {
		if c.partner[later][h] >= 0 {
			continue
		}
		k := c.sides[later][h].key()
		b := c.namesake(earlier, k)
		if b >= 0 && c.namesake(later, k) == h && c.partner[earlier][b] < 0 {
			c.join(b, h, "")
			continue
		}
		both := again[k]
		both[later] = append(both[later], h)
		if again == nil {
			again = make(map[key][2][]int)
		}
		again[k] = both
	}
	if len(again) == 0 {
		return
	}
	c.doubles(again)
}

// doubles pairs the later bearers of a label that is given more than once, in
// the order of what they state, since their place in the files says nothing.
func (c *comparison) doubles(again map[key][2][]int) {
	for b := range c.sides[earlier] {
		k := c.sides[earlier][b].key()
		if both, ok := again[k]; ok && c.partner[earlier][b] < 0 {
			both[earlier] = append(both[earlier], b)
			again[k] = both
		}
	}
	for _, both := range again {
		for _, s := range []side{earlier, later} {
			slices.SortStableFunc(both[s], func(i, j int) int {
				return cmp.Compare(c.recordKey(s, c.sides[s][i].Record), c.recordKey(s, c.sides[s][j].Record))
			})
		}
		for i := range min(len(both[earlier]), len(both[later])) {
			c.join(both[earlier][i], both[later][i], "")
		}
	}
}

// changes lists every pair that differs and every record without a partner.
func (c *comparison) changes() []Change {
	var changes []Change
	for h, is := range c.sides[later] {
		if b := c.partner[later][h]; b < 0 {
			changes = append(changes, c.added(is))
		} else if change, differs := c.altered(c.sides[earlier][b], is, c.how[h]); differs {
			changes = append(changes, change)
		}
	}
	for b, was := range c.sides[earlier] {
		if c.partner[earlier][b] < 0 {
			changes = append(changes, c.removed(was))
		}
	}
	return changes
}
