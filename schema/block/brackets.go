package block

// brackets is the stack of brackets that are open. A closing bracket closes
// everything up to its own sort, and nothing when none of its sort is open, so
// a mistake does not outlive the block that it is in.
type brackets struct {
	open                 []byte
	round, square, curly int
}

func (b *brackets) depth() int { return len(b.open) }

func (b *brackets) count(c byte) *int {
	switch c {
	case '(', ')':
		return &b.round
	case '[', ']':
		return &b.square
	}
	return &b.curly
}

func (b *brackets) push(c byte) {
	b.open = append(b.open, c)
	*b.count(c)++
}

// pop closes the nearest bracket of the sort that c closes, with all that are
// open inside it, and reports how many brackets that were.
func (b *brackets) pop(c byte) int {
	count := b.count(c)
	if *count == 0 {
		return 0
	}
	closed := 0
	for {
		last := b.open[len(b.open)-1]
		b.open = b.open[:len(b.open)-1]
		*b.count(last)--
		closed++
		if b.count(last) == count {
			return closed
		}
	}
}
