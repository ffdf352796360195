package sheet

import (
	"strconv"
	"strings"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"homerun/schema"
	"homerun/schema/unit"
)

// A typeface measures letters and knows their outlines. It is not safe for use
// by several goroutines.
type typeface struct {
	font   *sfnt.Font
	em     fixed.Int26_6
	buffer sfnt.Buffer
	known  map[rune]letter
}

// A letter is one rune's glyph: 0 where the typeface has none, and how far it
// moves the next one, in units of which em make up the size of the type.
type letter struct {
	glyph   sfnt.GlyphIndex
	advance int64
}

// newTypeface reads a typeface that is built in.
func newTypeface(data []byte) *typeface {
	parsed, err := sfnt.Parse(data)
	if err != nil {
		panic("a built-in typeface is not readable: " + err.Error())
	}
	return &typeface{font: parsed, em: fixed.Int26_6(parsed.UnitsPerEm()), known: make(map[rune]letter)}
}

func (f *typeface) letter(r rune) letter {
	if l, ok := f.known[r]; ok {
		return l
	}
	var l letter
	if glyph, err := f.font.GlyphIndex(&f.buffer, r); err == nil && glyph != 0 {
		if advance, err := f.font.GlyphAdvance(&f.buffer, glyph, f.em, font.HintingNone); err == nil {
			l = letter{glyph, int64(advance)}
		}
	}
	f.known[r] = l
	return l
}

// shown is a text as it is printed: what could be taken for something else, and
// what the typeface has no letter for, as code points. Whole says whether
// nothing had to be replaced.
func (f *typeface) shown(text string) (words string, whole bool) {
	words = schema.Printable(text)
	whole = words == text
	if ascii(words) {
		return words, whole
	}
	var b strings.Builder
	for _, r := range words {
		// Letters beyond the first plane can not be set in a PDF of this making.
		if r < 0x10000 && f.letter(r).glyph != 0 {
			b.WriteRune(r)
			continue
		}
		whole = false
		quoted := strconv.QuoteRuneToASCII(r)
		b.WriteString(quoted[1 : len(quoted)-1])
	}
	return b.String(), whole
}

// width is how wide a text is in type of a size.
func (f *typeface) width(words string, size unit.Length) unit.Length {
	var sum int64
	for _, r := range words {
		sum += f.letter(r).advance
	}
	// Rounded up: what is measured to fit does fit.
	return unit.Length((sum*int64(size) + int64(f.em) - 1) / int64(f.em))
}
