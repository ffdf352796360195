package sheet

import (
	"iter"

	qr "github.com/piglig/go-qr"
)

// quiet is the width, in modules, of the clear border that a code needs on each
// side: ISO/IEC 18004:2015, 6.3.8, from memory.
const quiet = 4

// utf8Designator announces text in UTF-8; without it a code's bytes are Latin.
// AIM extended channel interpretation 000026, as ISO/IEC 18004 refers to it.
const utf8Designator = 26

// A Matrix is the dark and light modules of a QR code.
type Matrix struct {
	// Side is the number of modules along each side, without the clear border.
	Side int
	dark []bool
}

// encode makes the smallest code that holds the text at level M, at which about
// 15 % of it may be worn off (ISO/IEC 18004, from memory), with a higher level
// where that needs no more modules.
func encode(text string) (*Matrix, error) {
	var segments []*qr.QrSegment
	if !ascii(text) {
		designator, err := qr.MakeEci(utf8Designator)
		if err != nil {
			return nil, err
		}
		segments = append(segments, designator)
	}
	data, err := qr.MakeSegments(text)
	if err != nil {
		return nil, err
	}
	code, err := qr.EncodeSegments(append(segments, data...), qr.Medium, qr.MinVersion, qr.MaxVersion, -1, true)
	if err != nil {
		return nil, err
	}
	m := &Matrix{Side: code.Size(), dark: make([]bool, code.Size()*code.Size())}
	for y := range m.Side {
		for x := range m.Side {
			m.dark[y*m.Side+x] = code.Module(x, y)
		}
	}
	return m, nil
}

func ascii(text string) bool {
	for i := range len(text) {
		if text[i] >= 0x80 {
			return false
		}
	}
	return true
}

// A stretch is neighbouring dark modules of one row.
type stretch struct{ x, y, n int }

// stretches visits the dark modules row by row.
func (m *Matrix) stretches() iter.Seq[stretch] {
	return func(yield func(stretch) bool) {
		for y := range m.Side {
			for x := 0; x < m.Side; x++ {
				from := x
				for x < m.Side && m.dark[y*m.Side+x] {
					x++
				}
				if x > from && !yield(stretch{from, y, x - from}) {
					return
				}
			}
		}
	}
}
