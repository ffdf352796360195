package trail

import "homerun/schema"

// A content is the text of a version of a file; most are looked at several times, for
// what a commit did and for what the next one did.
type content struct {
	text   string
	cut    []schema.Block
	placed []placed
}

// placed is a token in one of the blocks of a content.
type placed struct {
	token token
	block int32
}

// leastBlock and leastToken are how long blocks are at least, on an average, whose places
// are kept, and how many bytes there are to a token: where they are fewer, the places
// would take more room than the text.
const (
	leastBlock = 32
	leastToken = 8
)

// weight is how many bytes it takes at most, with its blocks and tokens.
func (v *content) weight() int { return 3*len(v.text) + 1 }

// blocks are its top-level blocks.
func (v *content) blocks() []schema.Block {
	if v.cut != nil {
		return v.cut
	}
	cut := schema.Blocks(v.text)
	if leastBlock*len(cut) <= len(v.text) {
		v.cut = cut
	}
	return cut
}

// tokens are those of its blocks, in their order.
func (v *content) tokens(blocks []schema.Block) []placed {
	if v.placed != nil {
		return v.placed
	}
	var all []placed
	var text []byte
	for i, b := range blocks {
		text = append(text[:0], b.Text...)
		tokens(text, func(k token) { all = append(all, placed{k, int32(i)}) })
	}
	if leastToken*len(all) <= len(v.text) {
		v.placed = all
	}
	return all
}

// having are the blocks that may hold what is wanted, and those that are taken for
// another reason.
func (v *content) having(w *wants, also func(block string) bool) []schema.Block {
	blocks := v.blocks()
	if w.all {
		return blocks
	}
	var found []schema.Block
	rest := v.tokens(blocks)
	for i := range blocks {
		has := also(blocks[i].Text)
		for ; len(rest) > 0 && rest[0].block == int32(i); rest = rest[1:] {
			has = has || w.wants(rest[0].token)
		}
		if has {
			found = append(found, blocks[i])
		}
	}
	return found
}
