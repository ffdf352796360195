package weave

import "strings"

// blankOrComment walks over one line of a text that holds nothing but white
// space and comments: to the byte after its end, or to the end of the text. A
// comment that goes on below takes the lines it covers with it. It is not ok
// where something else stands on the line; then end is where that starts.
func blankOrComment(text string, from int) (end int, blank, ok bool) {
	blank = true
	i := from
	for i < len(text) {
		switch rest := text[i:]; {
		case rest[0] == '\n':
			return i + 1, blank, true
		case rest[0] == ' ' || rest[0] == '\t':
			i++
		case rest[0] == '#' || strings.HasPrefix(rest, "//"):
			n := strings.IndexByte(rest, '\n')
			if n < 0 {
				return len(text), false, true
			}
			return i + n + 1, false, true
		case strings.HasPrefix(rest, "/*"):
			n := strings.Index(rest[2:], "*/")
			if n < 0 {
				return i, false, false
			}
			i += 2 + n + 2
			blank = false
		default:
			return i, blank, false
		}
	}
	return i, blank, true
}

// A gap is what stands between two elements of a text: white space and
// comments.
type gap struct {
	// notes are the comments that stand by themselves, with a blank line after
	// them; each with the blank lines before it.
	notes []item
	// blanks are the blank lines after the last of the notes, lead the comment
	// right above the element, indent what stands before it on its line.
	blanks, lead, indent string
}

// newGap divides the text before an element. Without an element after it, at
// the end of a file, a last comment stands by itself.
func newGap(text string, closed side) (gap, bool) {
	var g gap
	for pos := 0; pos < len(text); {
		end, blank, ok := blankOrComment(text, pos)
		if !ok {
			return g, false
		}
		one := text[pos:end]
		pos = end
		switch {
		case !strings.HasSuffix(one, "\n"):
			g.indent = one
		case !blank:
			g.lead += one
		case g.lead == "":
			g.blanks += one
		default:
			g.settle()
			g.blanks = one
		}
	}
	if closed == atEnd && g.lead != "" {
		g.settle()
	}
	return g, true
}

// side says what follows a gap.
type side uint8

const (
	beforeElement side = iota
	atEnd
)

// settle makes a comment that stands by itself of the lines before a blank one.
func (g *gap) settle() {
	g.notes = append(g.notes, item{sort: note, key: "#" + tidy(g.lead), blanks: g.blanks, lead: g.lead})
	g.blanks, g.lead = "", ""
}

// tidy is a comment without its indentation, so that it is known again on
// another level.
func tidy(comment string) string {
	lines := strings.Split(comment, "\n")
	for i := range lines {
		lines[i] = strings.TrimSpace(lines[i])
	}
	return strings.Join(lines, "\n")
}
