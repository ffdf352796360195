package history

// A bearer is whatever bears a label at a commit.
type bearer struct{ commit, label string }

// things says which bearers are the same thing on the wall: each leads to
// another bearer of the same thing, or to none.
type things map[bearer]bearer

// root is the bearer by which a thing is known.
func (t things) root(b bearer) bearer {
	at := b
	for next, ok := t[at]; ok; next, ok = t[at] {
		at = next
	}
	// Shorten the way for the next to ask, or long histories cost their square.
	for b != at {
		b, t[b] = t[b], at
	}
	return at
}

// join takes two bearers for the same thing.
func (t things) join(a, b bearer) {
	if a, b = t.root(a), t.root(b); a != b {
		t[a] = b
	}
}
