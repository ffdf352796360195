package schema

import (
	"slices"
	"strings"

	"homerun/schema/block"
)

// Versions reads the versions of files one after another, each by what differs
// from the version of the same file that it read before. Only the text between
// the blocks that both start with and those that both end with is split and read
// anew. What it returns is what Reader.ReadFile returns for the same text.
//
// It is for one goroutine, though others may use its Reader meanwhile.
type Versions struct {
	reader *Reader
	last   map[string]*version
	// wanted says which blocks are read at all, nil all of them.
	wanted func(text string) bool
}

// Versions returns what reads versions of files and has read none yet. It holds
// on to the records of the last version of every file until Forget.
func (rd *Reader) Versions() *Versions {
	return &Versions{reader: rd, last: make(map[string]*version)}
}

// PartVersions returns what reads of each version only the blocks whose text is
// wanted, as Reader.ReadPart does; the mistakes between blocks are not told. What is
// wanted has to depend on the text alone.
func (rd *Reader) PartVersions(wanted func(text string) bool) *Versions {
	return &Versions{reader: rd, last: make(map[string]*version), wanted: wanted}
}

// Forget tells that no later version of a file is expected.
func (vs *Versions) Forget(name string) {
	if v := vs.last[name]; v != nil {
		vs.reader.recall(v.pieces)
	}
	delete(vs.last, name)
}

// Read reads one version of a file. The text may be changed afterwards.
func (vs *Versions) Read(name string, text []byte) *File {
	if v := vs.last[name]; v != nil && v.follow(vs, text) {
		return v.file(name)
	}
	vs.Forget(name)
	v := &version{}
	if !v.follow(vs, text) {
		if vs.wanted != nil {
			return vs.reader.ReadPart(name, string(text), vs.wanted)
		}
		return vs.reader.ReadFile(name, string(text))
	}
	vs.last[name] = v
	return v.file(name)
}

// A version is the text of a file as its blocks and what stands between them. It
// only ever holds a text whose blocks are firm, as block.SplitPart says it: then a
// text that starts with the same pieces has the same blocks there, and so has one
// that ends with them.
type version struct {
	pieces []piece
	// rest is the text behind the last block.
	rest string
}

// A piece is a block with the text between it and the one before it, or the start
// of the file.
type piece struct {
	gap string
	// down counts the ends of lines in the gap.
	down int
	// left says that the block is not wanted: nothing but its text is known.
	left bool
	*reading
}

// size is how many bytes of the file the piece takes.
func (p *piece) size() int { return len(p.gap) + len(p.text) }

// is says whether a text is that of the piece.
func (p *piece) is(text []byte) bool {
	n := len(p.gap)
	return string(text[:n]) == p.gap && string(text[n:]) == p.text
}

// follow makes the version that of another text. It fails where the blocks of the
// text can not be told part by part.
func (v *version) follow(vs *Versions, text []byte) bool {
	if len(text) > block.MaxFile {
		return false
	}
	head, from := v.head(text)
	tail, to := v.tail(text[from:], len(v.pieces)-max(head, 1))
	to += from
	start := block.AtFile
	if head > 0 {
		start = block.AtBrace
	}
	part := string(text[from:to])
	chunks, firm := block.SplitPart(part, start)
	if !firm {
		return false
	}
	left := part
	if n := len(chunks); n > 0 {
		left = part[chunks[n-1].Offset+len(chunks[n-1].Text):]
	}
	switch {
	case tail == 0:
		v.rest = strings.Clone(left)
	case left != "":
		return false
	}
	old := v.pieces[head : len(v.pieces)-tail]
	vs.reader.recall(old)
	v.pieces = slices.Replace(v.pieces, head, head+len(old), vs.pieces(part, chunks)...)
	return true
}

// head counts the pieces that a text starts with, and their bytes.
func (v *version) head(text []byte) (n, size int) {
	for n < len(v.pieces) {
		p := &v.pieces[n]
		end := size + p.size()
		if end > len(text) || !p.is(text[size:end]) {
			break
		}
		n, size = n+1, end
	}
	return n, size
}

// tail counts the pieces, at most so many, that a text ends with together with
// what is behind the last block, and finds where they start. The first piece of a
// file is never one: there is no brace before it.
func (v *version) tail(text []byte, most int) (n, start int) {
	end := len(text) - len(v.rest)
	if end < 0 || string(text[end:]) != v.rest {
		return 0, len(text)
	}
	for n < most {
		p := &v.pieces[len(v.pieces)-1-n]
		from := end - p.size()
		if from < 0 || !p.is(text[from:end]) {
			break
		}
		n, end = n+1, from
	}
	if n == 0 {
		return 0, len(text)
	}
	return n, end
}

// pieces reads the blocks of a part. Neither a gap nor a block holds the part's
// text, of which they are little.
func (vs *Versions) pieces(part string, chunks []block.Chunk) []piece {
	all := make([]piece, len(chunks))
	end, gap := 0, ""
	for i, c := range chunks {
		if between := part[end:c.Offset]; between != gap {
			gap = strings.Clone(between)
		}
		all[i] = piece{gap: gap, down: strings.Count(gap, "\n")}
		if all[i].left = vs.wanted != nil && !vs.wanted(c.Text); all[i].left {
			all[i].reading = &reading{text: strings.Clone(c.Text), lines: strings.Count(c.Text, "\n")}
		} else {
			all[i].reading = vs.reader.read(c.Text)
		}
		end = c.Offset + len(c.Text)
	}
	return all
}

// file is what the version holds.
func (v *version) file(name string) *File {
	read := 0
	for i := range v.pieces {
		if !v.pieces[i].left {
			read++
		}
	}
	f := &File{Path: name, Entries: make([]Entry, 0, read)}
	line := 1
	for i := range v.pieces {
		p := &v.pieces[i]
		line += p.down
		if !p.left {
			f.add(p.reading, line)
		}
		line += p.lines
	}
	f.bound()
	return f
}
