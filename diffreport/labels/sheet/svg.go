package sheet

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/image/font/sfnt"

	"homerun/schema/unit"
)

// SVG writes one page of a document, counted from 0, as a picture in real
// measures. Letters are drawn as outlines, so that the picture needs no typeface;
// their words stand beside them as titles. One unit of the picture is a
// micrometre. The error is that of the writer.
func SVG(w io.Writer, d *Document, page int) error {
	out := &drawing{Writer: bufio.NewWriter(w), doc: d}
	p := &d.Pages[page]
	out.printf(`<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %d %d">`+"\n",
		millimetres(d.Size.W), millimetres(d.Size.H), um(d.Size.W), um(d.Size.H))
	out.printf("<title>%s</title>\n", escaped(d.bold.plain(d.Title)))
	out.letters(p)
	out.printf(`<rect width="%d" height="%d" fill="#fff"/>`+"\n", um(d.Size.W), um(d.Size.H))
	out.lines(p)
	for i := range p.Codes {
		out.code(&p.Codes[i])
	}
	for _, t := range p.Texts {
		out.text(t)
	}
	out.printf("</svg>\n")
	return out.Flush()
}

// um is a length in micrometres.
func um(l unit.Length) int64 { return int64((l + unit.Micrometre/2) / unit.Micrometre) }

// drawing writes one picture. The writer keeps its first error until it is
// flushed.
type drawing struct {
	*bufio.Writer
	doc *Document
}

func (out *drawing) printf(format string, a ...any) { _, _ = fmt.Fprintf(out.Writer, format, a...) }

// face is the typeface of a tone, with the letter that begins its glyphs' names.
func (d *Document) face(t Tone) (f *typeface, name string) {
	if t == Strong {
		return d.bold, "b"
	}
	return d.regular, "r"
}

// letters defines the outline of every letter that the page needs, once.
func (out *drawing) letters(p *Page) {
	used := make(map[string]string)
	for _, t := range p.Texts {
		f, face := out.doc.face(t.Tone)
		for _, r := range t.Words {
			l := f.letter(r)
			name := face + strconv.Itoa(int(l.glyph))
			if _, known := used[name]; !known {
				used[name] = f.outline(l.glyph)
			}
		}
	}
	names := make([]string, 0, len(used))
	for name := range used {
		names = append(names, name)
	}
	slices.Sort(names)
	out.printf("<defs>\n")
	for _, name := range names {
		if used[name] != "" {
			out.printf(`<path id="%s" d="%s"/>`+"\n", name, used[name])
		}
	}
	out.printf("</defs>\n")
}

// outline is the path of a glyph, in units of the em.
func (f *typeface) outline(glyph sfnt.GlyphIndex) string {
	segments, err := f.font.LoadGlyph(&f.buffer, glyph, f.em, nil)
	if err != nil {
		return ""
	}
	var b strings.Builder
	points := map[sfnt.SegmentOp]int{sfnt.SegmentOpMoveTo: 1, sfnt.SegmentOpLineTo: 1, sfnt.SegmentOpQuadTo: 2, sfnt.SegmentOpCubeTo: 3}
	letters := map[sfnt.SegmentOp]string{sfnt.SegmentOpMoveTo: "M", sfnt.SegmentOpLineTo: "L", sfnt.SegmentOpQuadTo: "Q", sfnt.SegmentOpCubeTo: "C"}
	for _, s := range segments {
		b.WriteString(letters[s.Op])
		for i := range points[s.Op] {
			fmt.Fprintf(&b, "%d %d ", int(s.Args[i].X), int(s.Args[i].Y))
		}
	}
	return strings.TrimRight(b.String(), " ")
}

func (out *drawing) lines(p *Page) {
	out.printf(`<g stroke="#999" stroke-width="100">` + "\n")
	for _, l := range p.Lines {
		out.printf(`<path d="M%d %dL%d %d"/>`+"\n", um(l.X1), um(l.Y1), um(l.X2), um(l.Y2))
	}
	out.printf("</g>\n")
}

// code draws the dark modules as one path, so that no seams show between them.
func (out *drawing) code(c *Code) {
	m := um(c.Module)
	out.printf(`<path shape-rendering="crispEdges" d="`)
	for s := range c.Matrix.stretches() {
		out.printf("M%d %dh%dv%dh-%dz", um(c.X)+int64(s.x)*m, um(c.Y)+int64(s.y)*m, int64(s.n)*m, m, int64(s.n)*m)
	}
	out.printf(`"/>` + "\n")
}

func (out *drawing) text(t Text) {
	f, face := out.doc.face(t.Tone)
	fill := ""
	if t.Tone == Beside {
		fill = ` fill="#555"`
	}
	scale := strconv.FormatFloat(float64(um(t.Size))/float64(f.em), 'f', 5, 64)
	out.printf(`<g transform="translate(%d %d) scale(%s)"%s><title>%s</title>`, um(t.X), um(t.Y), scale, fill, escaped(t.Words))
	x := int64(0)
	for _, r := range t.Words {
		l := f.letter(r)
		if r != ' ' {
			out.printf(`<use href="#%s%d" x="%d"/>`, face, l.glyph, x)
		}
		x += l.advance
	}
	out.printf("</g>\n")
}

// plain is a text without what is not printable.
func (f *typeface) plain(text string) string {
	words, _ := f.shown(text)
	return words
}

// escaped is a printable text as XML.
func escaped(text string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&#34;").Replace(text)
}
