package sheet

import (
	"fmt"
	"strings"

	"homerun/diffreport/labels"
	"homerun/schema/unit"
)

// The measures of a strip: the line above each of its pieces, the border of a
// port, and the band at its foot that holds the whole identifier.
const (
	stripHead = 4 * unit.Millimetre
	portEdge  = unit.Millimetre / 2
	portFoot  = 5 * unit.Millimetre / 2
)

// strips fills sheets with port strips, piece beside piece.
func (l *layout) strips(all []labels.Strip) {
	var page *Page
	room, tall := l.room(), l.pieceHeight()
	x, y := unit.Length(0), unit.Length(0)
	for _, s := range all {
		most := max(1, fitting(room.W, l.Port.W, 0))
		for _, p := range pieces(s, most) {
			width := l.Port.W * unit.Length(len(p.Ports))
			if x > 0 && x+width > room.W {
				x, y = 0, y+tall+l.Gap.H
			}
			if page == nil || y+tall > room.H {
				page, x, y = l.newPage(), 0, 0
			}
			l.piece(page, box{l.Margin.W + x, l.Margin.H + y, width, tall}, p)
			x += width + l.Gap.W
		}
		l.doc.Strips++
	}
}

// pieceHeight is the height of a piece with the line above it, which stands only
// where labels have a gap between them.
func (o Options) pieceHeight() unit.Length {
	if o.Gap.H < besideRoom {
		return o.Port.H
	}
	return stripHead + o.Port.H
}

// pieces cuts a strip that is wider than a sheet into pieces of equal numbers
// of ports where the number of ports allows it.
func pieces(s labels.Strip, most int) []labels.Strip {
	ports := len(s.Ports)
	n := min(most, ports)
	for d := n; d*2 > n; d-- {
		if ports%d == 0 {
			n = d
			break
		}
	}
	var all []labels.Strip
	for from := 0; from < ports; from += n {
		piece := s
		piece.Ports = s.Ports[from:min(from+n, ports)]
		all = append(all, piece)
	}
	return all
}

// piece draws some ports of a holder, side by side.
func (l *layout) piece(page *Page, at box, s labels.Strip) {
	above := at.h - l.Port.H
	if above > 0 {
		shown, _ := l.doc.regular.shown(pieceWords(s))
		l.write(page, at.x, at.y+above-unit.Millimetre, besideSize, Beside, l.doc.regular.brief(shown, at.w, besideSize))
	}
	for i, port := range s.Ports {
		in := box{at.x + unit.Length(i)*l.Port.W, at.y + above, l.Port.W, l.Port.H}
		l.outline(page, in)
		l.port(page, in.inset(portEdge), port)
	}
}

// pieceWords says whose ports a piece holds and where they are.
func pieceWords(s labels.Strip) string {
	words := s.Holder
	if n := len(s.Ports); n > 1 {
		words += fmt.Sprintf(", ports %s to %s", portNumber(s.Ports[0]), portNumber(s.Ports[n-1]))
	}
	if s.Space != "" {
		words += ", room " + s.Space
	}
	return words
}

// port draws one port: its code, its number large beside it, and the whole
// identifier below.
func (l *layout) port(page *Page, in box, id string) {
	foot := min(portFoot, in.h/3)
	square := box{in.x, in.y, min(in.h-foot, in.w*5/8), in.h - foot}
	l.code(page, square, id)
	side := box{in.x + square.w, in.y, in.w - square.w, square.h}
	number := l.doc.bold.line(l.printable(portNumber(id)), side.w, side.h, largestType)
	l.write(page, side.x, side.y+(side.h-number.height())/2+baseline(number.size), number.size, Strong, number.lines[0])
	s := l.doc.bold.fit(l.shown(id), in.w, foot, foot*4/5)
	l.judge(id, s.size)
	y := in.y + square.h
	for _, line := range s.lines {
		l.write(page, in.x, y+baseline(s.size), s.size, Plain, line)
		y += lead(s.size)
	}
}

func (l *layout) printable(text string) string {
	words, _ := l.doc.bold.shown(text)
	return words
}

// portNumber is what a port is called on its holder.
func portNumber(id string) string { return id[strings.LastIndexByte(id, ':')+1:] }
