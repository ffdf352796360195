package trail

import "homerun/schema"

// A content is the text of a version of a file; most are looked at several times, for
// what a commit did and for what the next one did.
type content struct {
	text string
	cut  []schema.Block
}

// leastBlock is how long blocks are at least on an average whose places are kept: where
// they are shorter, the places would take more room than the text.
const leastBlock = 32

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
