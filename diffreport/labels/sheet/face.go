package sheet

import (
	"homerun/diffreport/labels"
	"homerun/schema/unit"
)

// The measures of a label's face.
const (
	edge        = unit.Millimetre
	largestCode = 22 * unit.Millimetre
	largestType = 8 * unit.Millimetre
	kindSize    = 9 * unit.Millimetre / 5
)

// face draws a label: the code at the left, or on top of an upright label, and
// beside it the identifier over the kind of thing.
func (l *layout) face(page *Page, at box, label labels.Label) {
	at = at.inset(min(edge, at.w/12, at.h/12))
	square, words := at, at
	if at.w >= at.h {
		square.w = min(at.h, at.w*2/5, largestCode)
		words.x, words.w = at.x+square.w, at.w-square.w
	} else {
		square.h = min(at.w, at.h/2, largestCode)
		words.y, words.h = at.y+square.h, at.h-square.h
	}
	l.code(page, square, label.ID)
	l.identifier(page, words, label)
}

// identifier sets the identifier in the middle of its part of the label, with
// the kind below it where that leaves the identifier readable.
func (l *layout) identifier(page *Page, in box, label labels.Label) {
	id := l.shown(label.ID)
	kind, _ := l.doc.regular.shown(label.Kind)
	kind = l.doc.regular.brief(kind, in.w, kindSize)
	below := lead(kindSize)
	s := l.doc.bold.fit(id, in.w, in.h-below, largestType)
	if s.size < leastReadable || kind == "" {
		kind, below = "", 0
		s = l.doc.bold.fit(id, in.w, in.h, largestType)
	}
	l.judge(label.ID, s.size)
	y := in.y + max(0, (in.h-s.height()-below)/2)
	for _, line := range s.lines {
		l.write(page, in.x, y+baseline(s.size), s.size, Strong, line)
		y += lead(s.size)
	}
	l.write(page, in.x, y+baseline(kindSize), kindSize, Plain, kind)
}

// shown is an identifier as it is printed; one that can not be printed as it is
// written is reported.
func (l *layout) shown(id string) string {
	words, whole := l.doc.bold.shown(id)
	if !whole {
		l.replaced.add(id, 0)
	}
	return words
}

func (l *layout) judge(id string, size unit.Length) {
	if size < leastReadable {
		l.small.add(id, size)
	}
}

// code draws the code of an identifier in the middle of a square, with its
// clear border.
func (l *layout) code(page *Page, in box, id string) {
	m := l.codes[id]
	if m == nil {
		made, err := encode(id)
		if err != nil {
			l.codeless.add(id, 0)
			return
		}
		m = made
		l.codes[id] = m
	}
	across := unit.Length(m.Side + 2*quiet)
	// Whole micrometres, so that both renderers draw the same.
	module := min(in.w, in.h) / across / unit.Micrometre * unit.Micrometre
	if module < finest {
		l.fine.add(id, module)
	}
	border := module * quiet
	page.Codes = append(page.Codes, Code{
		X: in.x + (in.w-module*across)/2 + border, Y: in.y + (in.h-module*across)/2 + border, Module: module, Matrix: m,
	})
}
