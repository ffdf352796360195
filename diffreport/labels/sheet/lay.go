package sheet

import (
	"fmt"
	"slices"
	"strings"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"homerun/diffreport/labels"
	"homerun/schema"
	"homerun/schema/unit"
)

// Lay places the labels of one or several plants on sheets, each plant on sheets
// of its own, its port strips after its labels. The error is that of
// Options.Check, or says that a port does not fit on a sheet where one is
// needed.
func Lay(sets []labels.Set, o Options) (*Document, error) {
	if err := o.Check(); err != nil {
		return nil, err
	}
	if err := o.checkStrips(sets); err != nil {
		return nil, err
	}
	l := &layout{
		Options: o, doc: &Document{Size: o.Sheet, bold: newTypeface(gobold.TTF), regular: newTypeface(goregular.TTF)},
		codes: make(map[string]*Matrix),
	}
	var titles []string
	for _, set := range sets {
		title := heading(set)
		titles = append(titles, title)
		first := len(l.doc.Pages)
		l.labels(set.Labels)
		l.strips(set.Strips)
		l.head(title, l.doc.Pages[first:])
	}
	l.doc.Title = strings.Join(titles, "; ")
	l.doc.Cautions = l.cautions()
	return l.doc, nil
}

func heading(set labels.Set) string {
	if set.Order == "" {
		return "labels of " + set.Plant
	}
	return "labels of " + set.Plant + " for " + set.Order
}

// layout is the work on one document.
type layout struct {
	Options
	doc *Document
	// codes are those already made: both ends of a run have the same.
	codes map[string]*Matrix

	small, fine, replaced, codeless tally
}

// tally counts the labels with one kind of trouble and keeps the worst.
type tally struct {
	count int
	worst string
	size  unit.Length
}

func (t *tally) add(id string, size unit.Length) {
	if t.count == 0 || size < t.size {
		t.worst, t.size = id, size
	}
	t.count++
}

// newPage begins a sheet.
func (l *layout) newPage() *Page {
	l.doc.Pages = append(l.doc.Pages, Page{})
	return &l.doc.Pages[len(l.doc.Pages)-1]
}

// labels fills sheets with labels, row by row.
func (l *layout) labels(all []labels.Label) {
	g := l.grid()
	var page *Page
	for i, label := range all {
		place := (i + l.Used) % g.places()
		if page == nil || place == 0 {
			page = l.newPage()
		}
		column, row := unit.Length(place%g.columns), unit.Length(place/g.columns)
		at := box{l.Margin.W + column*(l.Label.W+l.Gap.W), l.Margin.H + row*(l.Label.H+l.Gap.H), l.Label.W, l.Label.H}
		l.outline(page, at)
		l.face(page, at, label)
		l.beside(page, at, label)
		l.doc.Labels++
	}
	if len(all) > 0 {
		l.Used = 0 // the next plant begins on a fresh sheet
	}
}

// outline draws where a label is cut, if it is.
func (l *layout) outline(page *Page, b box) {
	if !l.CutLines {
		return
	}
	page.Lines = append(page.Lines,
		Line{b.x, b.y, b.x + b.w, b.y}, Line{b.x, b.y + b.h, b.x + b.w, b.y + b.h},
		Line{b.x, b.y, b.x, b.y + b.h}, Line{b.x + b.w, b.y, b.x + b.w, b.y + b.h})
}

// The type that stands outside of labels, and the room that it needs.
const (
	besideSize = 17 * unit.Millimetre / 10
	besideRoom = 5 * unit.Millimetre / 2
	headSize   = 5 * unit.Millimetre / 2
	headRoom   = 6 * unit.Millimetre
)

// beside says below a label where it is put on, in the gap if there is one.
func (l *layout) beside(page *Page, at box, label labels.Label) {
	if l.Gap.H < besideRoom {
		return
	}
	words := label.At
	if label.Space != "" {
		words = strings.TrimPrefix(words+", room "+label.Space, ", ")
	}
	shown, _ := l.doc.regular.shown(words)
	l.write(page, at.x, at.y+at.h+lead(besideSize), besideSize, Beside, l.doc.regular.brief(shown, at.w, besideSize))
}

// head writes above the labels of each sheet what they are for, where the
// margin leaves room.
func (l *layout) head(title string, pages []Page) {
	if l.Margin.H < headRoom {
		return
	}
	for i := range pages {
		words := fmt.Sprintf("%s, sheet %d of %d. Print at actual size, not fitted to the page.", title, i+1, len(pages))
		shown, _ := l.doc.regular.shown(words)
		l.write(&pages[i], l.Margin.W, l.Margin.H-headSize, headSize, Beside, l.doc.regular.brief(shown, l.room().W, headSize))
	}
}

func (l *layout) write(page *Page, x, y, size unit.Length, tone Tone, words string) {
	if words != "" {
		page.Texts = append(page.Texts, Text{x, y, size, words, tone})
	}
}

// finest is the smallest module of a code that ordinary printers print and
// telephones read. Common practice.
const finest = unit.Millimetre / 4

// cautions put the tallies into words.
func (l *layout) cautions() []string {
	var all []string
	say := func(t tally, format string) {
		if t.count > 0 {
			all = append(all, fmt.Sprintf(format, counted(t.count), schema.Quote(t.worst), millimetres(t.size)))
		}
	}
	say(l.small, "%s in type below "+millimetres(leastReadable)+" mm, %s the smallest at %s mm: choose a larger label or port")
	say(l.fine, "%s with a code whose modules are finer than "+millimetres(finest)+" mm, %s the finest at %s mm: try to scan one before all are printed")
	if l.replaced.count > 0 {
		all = append(all, fmt.Sprintf("%s with characters that are printed as code points, such as %s", counted(l.replaced.count), schema.Quote(l.replaced.worst)))
	}
	if l.codeless.count > 0 {
		all = append(all, fmt.Sprintf("%s without a code, since no code holds so long an identifier, such as %s", counted(l.codeless.count), schema.Quote(l.codeless.worst)))
	}
	return slices.Clip(all)
}

func counted(n int) string {
	if n == 1 {
		return "1 identifier"
	}
	return fmt.Sprintf("%d identifiers", n)
}
