package schema

import "homerun/schema/block"

// Blocks cuts the text of a file into its top-level blocks, without reading them.
func Blocks(text string) []string {
	chunks, _ := block.Split(text)
	blocks := make([]string, len(chunks))
	for i, c := range chunks {
		blocks[i] = c.Text
	}
	return blocks
}

// ReadPart reads only those top-level blocks of a file whose text is wanted. The
// file's records are the ones that ReadFile gives, but for what was left out; the
// mistakes between blocks are not told.
func (rd *Reader) ReadPart(name, text string, wanted func(text string) bool) *File {
	f := &File{Path: name}
	chunks, _ := block.Split(text)
	for _, c := range chunks {
		if wanted(c.Text) {
			f.add(rd.read(c.Text), c.Line)
		}
	}
	f.bound()
	return f
}
