package schema

import (
	"slices"

	"homerun/schema/block"
)

// A Block is one top-level block of a file, cut out but not yet read.
type Block = block.Chunk

// Blocks cuts the text of a file into its top-level blocks, without reading them.
func Blocks(text string) []Block {
	blocks, _ := block.Split(text)
	return blocks
}

// ReadPart reads only those top-level blocks of a file whose text is wanted. The
// file's records are the ones that ReadFile gives, but for what was left out; the
// mistakes between blocks are not told.
func (rd *Reader) ReadPart(name, text string, wanted func(text string) bool) *File {
	return rd.ReadBlocks(name, slices.DeleteFunc(Blocks(text), func(b Block) bool { return !wanted(b.Text) }))
}

// ReadBlocks is ReadPart of a file that was cut before, given the blocks that are wanted.
func (rd *Reader) ReadBlocks(name string, blocks []Block) *File {
	f := &File{Path: name, Entries: make([]Entry, 0, len(blocks))}
	for _, b := range blocks {
		f.add(rd.read(b.Text), b.Line)
	}
	f.bound()
	return f
}
