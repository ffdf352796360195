package render

import (
	"html/template"

	"homerun/diffreport/drawing"
)

// mapFuncs are the places inside the drawing of spaces and pathways.
func mapFuncs() template.FuncMap {
	return template.FuncMap{
		"useClass": useClass,
		// A drawing shrinks with a narrow page, but only as far as it can be read.
		"least":  func(width int) int { return width * 7 / 10 },
		"right":  func(s drawing.Stop) int { return s.X + s.Width },
		"middle": func(s drawing.Stop) int { return s.Y + s.Height/2 },
		"inset":  func(s drawing.Stop) int { return s.X + 10 },
		"line":   func(s drawing.Stop, n int) int { return s.Y + 1 + 15*n },
	}
}

func useClass(u drawing.Use) string {
	switch u {
	case drawing.In:
		return "in"
	case drawing.Out:
		return "out"
	case drawing.Only:
		return "only"
	}
	return ""
}
