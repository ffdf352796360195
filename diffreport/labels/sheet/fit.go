package sheet

import (
	"strings"
	"unicode/utf8"

	"homerun/schema/unit"
)

// Type sizes on labels. That 2 mm (nearly six points) can be read at arm's
// length is common practice; smaller type is set where nothing else fits, and
// reported.
const (
	leastReadable = 2 * unit.Millimetre
	oneLine       = 3 * unit.Millimetre
	step          = unit.Millimetre / 20
	tiniest       = unit.Millimetre / 5
)

// lead is the distance between lines for a size of type, baseline that from the
// upper edge of a line to where its letters stand.
func lead(size unit.Length) unit.Length     { return size * 23 / 20 }
func baseline(size unit.Length) unit.Length { return size * 9 / 10 }

// set is a text broken into lines of one size.
type set struct {
	lines []string
	size  unit.Length
}

func (s set) height() unit.Length { return lead(s.size) * unit.Length(len(s.lines)) }

// fit sets a text as large as a box allows, at most in size most: on one line
// while that is comfortable to read, else broken where identifiers have a
// joint, else broken anywhere. Every character of it is set.
func (f *typeface) fit(words string, w, h, most unit.Length) set {
	best := f.largest([]string{words}, w, h, most)
	if best.size >= min(oneLine, most) {
		return best
	}
	for _, pieces := range [][]string{joints(words), strings.Split(words, "")} {
		if other := f.largest(pieces, w, h, most); other.size > best.size {
			best = other
		}
		if best.size >= leastReadable {
			break
		}
	}
	return best
}

// largest sets pieces that may not be broken in themselves.
func (f *typeface) largest(pieces []string, w, h, most unit.Length) set {
	if len(pieces) == 1 {
		return f.line(pieces[0], w, h, most)
	}
	for size := most; size > tiniest; size -= step {
		s := set{f.wrap(pieces, w, size), size}
		if s.lines != nil && s.height() <= h {
			return s
		}
	}
	// Nothing fits even in the tiniest type: it runs over and is reported as
	// unreadable, but it is there.
	return set{f.wrap(pieces, w, tiniest), tiniest}
}

// line sets a text on one line.
func (f *typeface) line(words string, w, h, most unit.Length) set {
	size := min(most, h*20/23)
	// The width is in proportion to the size, but for its rounding.
	if wide := f.width(words, size); wide > w {
		size = unit.Length(int64(size) / 1000 * int64(w) / int64(wide/1000+1))
	}
	return set{[]string{words}, max(size, tiniest)}
}

// wrap fills lines with pieces; nil when a piece is wider than a line.
func (f *typeface) wrap(pieces []string, w, size unit.Length) []string {
	var lines []string
	line := ""
	for _, piece := range pieces {
		switch {
		case f.width(line+piece, size) <= w:
			line += piece
		case line == "" || f.width(piece, size) > w:
			return nil
		default:
			lines, line = append(lines, line), piece
		}
	}
	return append(lines, line)
}

// joints cuts an identifier after the characters that join its parts.
func joints(words string) []string {
	const marks = "-/.:;,_+ "
	var pieces []string
	for words != "" {
		cut := len(words)
		if i := strings.IndexAny(words, marks); i >= 0 {
			cut -= len(strings.TrimLeft(words[i:], marks))
		}
		pieces, words = append(pieces, words[:cut]), words[cut:]
	}
	return pieces
}

// brief sets words that are a help only: on one line, cut where they are too
// long, which three dots show.
func (f *typeface) brief(words string, w, size unit.Length) string {
	if f.width(words, size) <= w {
		return words
	}
	for words != "" && f.width(words+"...", size) > w {
		_, n := utf8.DecodeLastRuneInString(words)
		words = words[:len(words)-n]
	}
	if words == "" {
		return ""
	}
	return words + "..."
}
