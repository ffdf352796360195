package sheet

import "homerun/schema/unit"

// A Document is laid-out sheets.
type Document struct {
	Title string
	Size  Size
	Pages []Page
	// Labels and Strips count what is on the pages, ports not counted.
	Labels, Strips int
	// Cautions say in words what will be hard to read or to scan, and which
	// characters are shown as code points.
	Cautions []string

	bold, regular *typeface
}

// A Page is one sheet. Positions count from its upper left corner.
type Page struct {
	Texts []Text
	Codes []Code
	Lines []Line
}

// A Text is one line of letters. X is its left end and Y its baseline.
type Text struct {
	X, Y, Size unit.Length
	Words      string
	Tone       Tone
}

// A Tone is the look of a text.
type Tone uint8

// The tones: Strong for identifiers, Plain for other words on a label, Beside
// for what stands outside it.
const (
	Strong Tone = iota
	Plain
	Beside
)

// A Code is a QR code; X and Y are the corner of its first module.
type Code struct {
	X, Y, Module unit.Length
	Matrix       *Matrix
}

// A Line is a cut line.
type Line struct{ X1, Y1, X2, Y2 unit.Length }

// A box is a part of a page.
type box struct{ x, y, w, h unit.Length }

// inset is the box less a border.
func (b box) inset(by unit.Length) box {
	return box{b.x + by, b.y + by, b.w - 2*by, b.h - 2*by}
}
