package weave

// align brings the items of three texts together, in the order in which they
// shall stand. What both sides have keeps the order of the side that changed
// it; what only one side has stands behind what it stands behind there, ours
// before theirs.
func align(base, ours, theirs []item) []triple {
	a := &aligner{base: base, ours: ours, theirs: theirs}
	a.identify()
	if a.inOrder(a.ofOurs) && !a.inOrder(a.ofTheirs) {
		return a.weave(a.ofTheirs, a.ofOurs, newcomersFirst)
	}
	return a.weave(a.ofOurs, a.ofTheirs, newcomersLast)
}

type aligner struct {
	base, ours, theirs []item
	// all holds the triples: first those of the base, in its order.
	all []triple
	// ofOurs and ofTheirs give for each item of a side its triple.
	ofOurs, ofTheirs []int
}

// turn says which of two newcomers to one place stands first.
type turn uint8

const (
	newcomersLast turn = iota
	newcomersFirst
)

func (a *aligner) identify() {
	a.all = make([]triple, len(a.base), len(a.base)+len(a.ours)+len(a.theirs))
	for i := range a.base {
		a.all[i].base = &a.base[i]
	}
	fresh := make(map[string][]int)
	for n, i := range pair(a.base, a.ours) {
		if i < 0 {
			i = len(a.all)
			a.all = append(a.all, triple{})
			fresh[a.ours[n].key] = append(fresh[a.ours[n].key], i)
		}
		a.all[i].ours = &a.ours[n]
		a.ofOurs = append(a.ofOurs, i)
	}
	for n, i := range pair(a.base, a.theirs) {
		if key := a.theirs[n].key; i < 0 {
			if both := fresh[key]; len(both) > 0 {
				i, fresh[key] = both[0], both[1:]
			} else {
				i = len(a.all)
				a.all = append(a.all, triple{})
			}
		}
		a.all[i].theirs = &a.theirs[n]
		a.ofTheirs = append(a.ofTheirs, i)
	}
}

// inOrder says whether a side has left what the base had in its order.
func (a *aligner) inOrder(side []int) bool {
	last := -1
	for _, i := range side {
		if i >= len(a.base) {
			continue
		}
		if i < last {
			return false
		}
		last = i
	}
	return true
}

// weave takes the order of one side and sets what only the other has behind
// what it stands behind there.
func (a *aligner) weave(spine, other []int, who turn) []triple {
	inSpine := make([]bool, len(a.all))
	for _, i := range spine {
		inSpine[i] = true
	}
	inOther := make([]bool, len(a.all))
	behind := make(map[int][]int)
	anchor := -1
	for _, i := range other {
		inOther[i] = true
		if inSpine[i] {
			anchor = i
		} else {
			behind[anchor] = append(behind[anchor], i)
		}
	}
	order := make([]triple, 0, len(a.all))
	waiting := behind[-1]
	flush := func() {
		for _, i := range waiting {
			order = append(order, a.all[i])
		}
		waiting = nil
	}
	for _, i := range spine {
		if who == newcomersFirst || inOther[i] || i < len(a.base) {
			flush()
		}
		order = append(order, a.all[i])
		waiting = append(waiting, behind[i]...)
	}
	flush()
	return order
}
