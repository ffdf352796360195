package block

// Scan is the scanner alone.
func Scan(chunk string) *Block { return scan(chunk, 0) }

// ParserOnly reads a whole chunk with the parser, inner blocks and all.
func ParserOnly(chunk string) (*Block, []Problem) {
	r := reading{outline: newOutline(chunk)}
	found := r.convert(r.masked, 0)
	if len(found.blocks) != 1 || len(found.fields) != 0 {
		r.report(byValue, Unreadable, Range{}, "not one block", "")
		return nil, settle(chunk, r.found)
	}
	return found.blocks[0], settle(chunk, r.found)
}
