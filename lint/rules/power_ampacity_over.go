package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// over is a bundle whose conductors carry too much.
func (w *warmBundle) over(a standard.BundleAmpacity, ambient unit.Temperature) lint.Finding {
	shown, limit := w.current.Beside(a.Most, w.pass.Units())
	f := w.finding(a.Source)
	f.Message = fmt.Sprintf("%s: %s in each conductor, %d cables of %d AWG in one bundle may carry %s", schema.Printable(w.bundle.Label), shown, w.cables, w.wire.Gauge, limit)
	rated, stated := schema.CableRated.In(w.cable.Record())
	column := a.Column.Text(w.pass.Units()) + " assumed, the least that a listed cable has"
	if stated {
		column = a.Column.Text(w.pass.Units()) + ", jacket rated " + rated.Text(w.pass.Units())
	}
	around := ambient.Text(w.pass.Units()) + " assumed, no space on the way states its temperature"
	if w.hot.where != nil {
		around = schema.Printable(w.hot.where.Label) + ", " + ambient.Text(w.pass.Units()) + " (stated)"
	}
	f.Working = append(f.Working,
		term("column of the table", column),
		term("value of the table", fmt.Sprintf("%s for %d AWG, %s", a.Base, w.wire.Gauge, sizes(a))),
		term("hottest space", around),
		term("correction for it", decimals(float64(a.Ambient)/100, 2)),
		term("allowed", fmt.Sprintf("%s A x %s = %s A", decimals(a.Base.Amperes(), 3), decimals(float64(a.Ambient)/100, 2), decimals(a.Most.Amperes(), 4))))
	f.Result, f.Limit = shown, limit
	if a.Ambient != 100 {
		f.Source += "; " + a.AmbientSource.Clause
	}
	if cool := w.hot.where != nil && ambient <= coolEnough; cool && w.current <= a.Base*upward/100 || w.hot.where == nil {
		f.Severity = lint.Observation
		f.Source += "; the correction upwards for a cooler space is not counted: check the printed code"
	}
	f.Next = "divide the bundle, use cable of thicker conductors or of a higher temperature rating, or cable listed for limited power"
	if w.hot.where == nil {
		f.Next = "state temperature of the spaces on its way; where it stands, " + f.Next
	}
	f.Excess = (w.current - a.Most).Amperes()
	if w.hot.where != nil {
		f.Related = append(f.Related, note(w.hot.where.Entry, "the hottest space on its way"))
	}
	return f
}

// sizes are the sizes of bundle that a value is for.
func sizes(a standard.BundleAmpacity) string {
	if a.From == a.To {
		return "1 cable"
	}
	return fmt.Sprintf("%d to %d cables", a.From, a.To)
}

// noValue is a bundle on which the table leaves the word to an engineer.
func (w *warmBundle) noValue(why string, src standard.Source) lint.Finding {
	f := w.finding(src)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: no ampacity for %d cables of %d AWG, %s: engineering supervision decides", schema.Printable(w.bundle.Label), w.cables, w.wire.Gauge, why)
	f.Result, f.Limit = w.current.String(), "no value in the table"
	f.Next = "divide the bundle, or have its ampacity worked out under engineering supervision and record a waiver"
	f.Excess = float64(w.cables)
	return f
}

func (w *warmBundle) finding(src standard.Source) lint.Finding {
	f := lint.About(w.bundle.Entry)
	if !src.Sure() || !w.src.Sure() {
		f.Severity = lint.Observation
	}
	f.Working = []lint.Term{
		term("carries", w.carries.String()+", up to "+(2*w.current).String()+" in a pair, "+w.current.String()+" in each of its conductors"),
		term("cables in use, planned or spare", fmt.Sprintf("%d of %s, %s", w.cables, schema.Printable(w.cable.Label), w.wire)),
	}
	f.Source = src.String()
	f.Key = []string{w.cable.Label}
	f.Related = []schema.Note{note(w.cable.Entry, "the cable type")}
	return f
}
