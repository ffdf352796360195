package render

import (
	"slices"
	"strings"
	"unicode/utf8"

	"homerun/diffreport/drawing"
)

// orderSheets is an order as it lies on the sheets of a page. At counts the
// orders of the page and keeps their links apart.
type orderSheets struct {
	At int
	*paper
	Route  *drawing.Map
	Sheets []visitSheet
}

// A visitSheet is a visit with its drawings.
type visitSheet struct {
	*visitPart
	At    int
	Class string // of every step, or empty where they differ
	Faces []faceDrawing
	// Legend is the marks that stand in the drawings.
	Legend []cellDrawing
	// Brief is set where the visit shares a sheet of paper with others.
	Brief bool
}

func sheetsOf(at int, j *Job) *orderSheets {
	s := &orderSheets{At: at, paper: paperOf(*j), Route: drawing.Route(&j.Order, j.Base, j.Head)}
	for i, faces := range drawing.Faces(&j.Order, j.Base, j.Head) {
		v := visitSheet{visitPart: &s.Visits[i], At: at, Faces: faceDrawings(faces)}
		v.Class, v.Legend, v.Brief = v.class(), legend(v.Faces), v.lines() <= mostShared
		s.Sheets = append(s.Sheets, v)
	}
	return s
}

// class is what all steps of a visit have in common.
func (v *visitSheet) class() string {
	for i := range v.Steps {
		if v.Steps[i].Class != v.Steps[0].Class {
			return ""
		}
	}
	return v.Steps[0].Class
}

// A stretch is neighbouring steps of which the same has to be known, numbered on
// from First.
type stretch struct {
	First int
	Notes []string
	Steps []stepPart
}

// Shared names the steps that share their notes; it is empty where there are too
// few to speak of, or nothing to note.
func (s stretch) Shared() string {
	const least = 3
	if len(s.Steps) < least || len(s.Notes) == 0 {
		return ""
	}
	return numbers("step", each(s.Steps, func(p stepPart) int { return p.Number }))
}

// Stretches divides the steps so that what several have to say is said once.
func (v *visitSheet) Stretches() []stretch {
	alike := func(a, b stepPart) bool { return b.Number == a.Number+1 && slices.Equal(v.notes(a), v.notes(b)) }
	return each(neighbours(v.Steps, alike), func(steps []stepPart) stretch { return stretch{steps[0].Number, v.notes(steps[0]), steps} })
}

// notes are what there is to say about a step.
func (v *visitSheet) notes(s stepPart) []string {
	if v.Class != "" {
		return s.Notes()
	}
	return append([]string{s.Class}, s.Notes()...)
}

// A sheet of paper holds about 50 lines of print. What fills no more than
// mostShared of them shares a sheet; anything longer begins one.
const (
	mostShared   = 26
	lineOfPrint  = 90 // characters
	headingLines = 7  // of a visit, with the line that is signed
	faceLines    = 5
)

// lines is about how many lines of print a visit fills.
func (v *visitSheet) lines() int {
	n := headingLines
	for _, c := range v.Cautions {
		n += printed(c.Text)
	}
	for _, s := range v.Stretches() {
		for i := range s.Steps {
			n += printed(s.Steps[i].Text)
		}
		if len(s.Notes) > 0 {
			n += printed(strings.Join(s.Notes, ""))
		}
	}
	for i := range v.Faces {
		n += faceLines + (len(v.Faces[i].Banks)+3)/4*3
		for _, work := range v.Faces[i].Work {
			n += 1 + (len(work.Ports)+3)/4
		}
	}
	return n
}

func printed(text string) int { return 1 + utf8.RuneCountInString(text)/lineOfPrint }

// few says whether a list of so many lines shares a sheet with others.
func few(lines int) bool { return lines <= mostShared }
