// Package console lays out text for people to read in a terminal or a log:
// lines wrapped at a width with a hanging indent, tables of terms and values,
// and a few styles.
//
// Everything it prints is made printable first: a control character, a
// directional override or an invisible character in a record is shown escaped
// and never reaches the terminal. Colour is decided by the caller, once; the
// text says the same without it.
package console

import (
	"fmt"
	"io"
	"strings"

	"github.com/fatih/color"
	"github.com/mattn/go-runewidth"

	"homerun/schema"
)

// DefaultWidth is the width, in columns, that every report fits.
const DefaultWidth = 80

// Options say how a page is laid out.
type Options struct {
	// Width in columns; 0 is DefaultWidth.
	Width int
	// Colour allows styles.
	Colour bool
}

// A Page is written line by line. The first error of its writer is kept and
// ends the writing.
type Page struct {
	w      io.Writer
	width  int
	colour bool
	err    error
}

// New returns a page on a writer.
func New(w io.Writer, o Options) *Page {
	width := o.Width
	if width < 40 {
		width = DefaultWidth
	}
	return &Page{w: w, width: width, colour: o.Colour}
}

// Err is the first error of the writer, or nil.
func (p *Page) Err() error { return p.err }

// A Tone is how a piece of text stands out.
type Tone uint8

// The tones.
const (
	Ordinary Tone = iota
	Strong        // a label or a heading
	Alarm         // a nonconformity
	Notice        // an observation
	Good          // nothing to object to
	Quiet         // places, sources, what can be skipped
)

// A Span is text in one tone.
type Span struct {
	Text string
	Tone Tone
}

// Plain is a span in the ordinary tone.
func Plain(text string) Span { return Span{Text: text} }

// In is a span in a tone.
func In(tone Tone, text string) Span { return Span{Text: text, Tone: tone} }

// Blank writes an empty line.
func (p *Page) Blank() { p.write("\n") }

// Line writes spans one after the other, wrapped, with later lines indented.
func (p *Page) Line(indent, hanging int, spans ...Span) {
	var words []word
	for _, s := range spans {
		words = appendWords(words, s)
	}
	p.fill(indent, hanging, words)
}

// Terms writes a table of terms and values, the values wrapped in their column.
func (p *Page) Terms(indent int, terms ...[2]string) {
	column := 0
	for _, t := range terms {
		column = max(column, runewidth.StringWidth(schema.Printable(t[0])))
	}
	column = min(column, (p.width-indent)/2)
	for _, t := range terms {
		term := schema.Printable(t[0])
		pad := max(1, column-runewidth.StringWidth(term)+2)
		words := appendWords(nil, In(Quiet, term))
		words[len(words)-1].glue = strings.Repeat(" ", pad)
		words = appendWords(words, Plain(t[1]))
		p.fill(indent, indent+column+2, words)
	}
}

// word is text that is not broken, with the space that follows it.
type word struct {
	text string
	tone Tone
	glue string
}

func appendWords(words []word, s Span) []word {
	text := schema.Printable(s.Text)
	for i, part := range strings.Split(text, " ") {
		if i > 0 && len(words) > 0 {
			words[len(words)-1].glue = words[len(words)-1].glue + " "
		}
		if part != "" || i == 0 {
			words = append(words, word{text: part, tone: s.Tone})
		}
	}
	return words
}

func (p *Page) fill(indent, hanging int, words []word) {
	line := &line{page: p}
	line.put(Ordinary, strings.Repeat(" ", indent))
	at, start := indent, true
	for i := 0; i < len(words); {
		// Words without a space between them stay together.
		end := i + 1
		for end < len(words) && words[end-1].glue == "" {
			end++
		}
		width := 0
		for _, w := range words[i:end] {
			width += runewidth.StringWidth(w.text)
		}
		if !start && at+width > p.width {
			line.end()
			line.put(Ordinary, strings.Repeat(" ", hanging))
			at = hanging
		}
		for _, w := range words[i:end] {
			line.put(w.tone, w.text)
			line.put(w.tone, w.glue)
			at += runewidth.StringWidth(w.text) + len(w.glue)
		}
		start = false
		i = end
	}
	line.end()
}

// line is one line in the making: stretches of text, each in one tone.
type line struct {
	page      *Page
	stretches []Span
}

// put adds text, to the last stretch where the tone is the same.
func (l *line) put(tone Tone, text string) {
	if n := len(l.stretches); n > 0 && (l.stretches[n-1].Tone == tone || strings.TrimSpace(text) == "") {
		l.stretches[n-1].Text += text
		return
	}
	l.stretches = append(l.stretches, Span{text, tone})
}

// end writes the line without the spaces at its end and begins the next.
func (l *line) end() {
	var text strings.Builder
	for i, s := range l.stretches {
		words := s.Text
		if i == len(l.stretches)-1 {
			words = strings.TrimRight(words, " ")
		}
		text.WriteString(l.page.styled(s.Tone, words))
	}
	l.page.write(strings.TrimRight(text.String(), " ") + "\n")
	l.stretches = l.stretches[:0]
}

// styled leaves the spaces around text without style: a space has no look.
func (p *Page) styled(tone Tone, text string) string {
	attribute := attributes(tone)
	words := strings.Trim(text, " ")
	if !p.colour || words == "" || attribute == nil {
		return text
	}
	style := color.New(attribute...)
	style.EnableColor()
	before, after, _ := strings.Cut(text, words)
	return before + style.Sprint(words) + after
}

func attributes(t Tone) []color.Attribute {
	switch t {
	case Ordinary:
		return nil
	case Strong:
		return []color.Attribute{color.Bold}
	case Alarm:
		return []color.Attribute{color.FgRed, color.Bold}
	case Notice:
		return []color.Attribute{color.FgYellow}
	case Good:
		return []color.Attribute{color.FgGreen}
	case Quiet:
		return []color.Attribute{color.Faint}
	}
	return nil
}

func (p *Page) write(text string) {
	if p.err != nil {
		return
	}
	if _, err := io.WriteString(p.w, text); err != nil {
		p.err = fmt.Errorf("writing the report: %w", err)
	}
}
