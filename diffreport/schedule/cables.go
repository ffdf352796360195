package schedule

import (
	"homerun/schema"
	"homerun/schema/plant"
)

// cables is the cable schedule: every run of the records, also those out of use,
// since the cable is there.
func cables() Schedule {
	return Schedule{
		Name: "cable-schedule", Doc: "every run: its cable, ends, route, length and test",
		headings: []string{
			"Run", "Cable type", "Category", "Screen", "Fire rating", "From space", "From", "To space", "To", "Route", "Length",
			"Bundle", "Serves", "State", "Installed", "Link tested", "Result",
		},
		prose: []string{"Route"},
		rows: func(s *survey) [][]any {
			var rows [][]any
			for _, r := range s.runs() {
				rows = append(rows, s.cable(r))
			}
			return rows
		},
	}
}

func (s *survey) cable(r *plant.Run) []any {
	rec := r.Record()
	var t tested
	if r.Link != nil {
		t = s.latest(r.Link)
	}
	return []any{
		schema.Printable(rec.Label), s.show(rec, schema.RunCable.Field), s.class(r.Cable), s.typed(r.Cable, schema.CableScreen.Field), s.rating(r.Cable),
		spaceOf(r.From.Space()), s.end(rec, r.From, schema.RunFrom.Field), spaceOf(r.To.Space()), s.end(rec, r.To, schema.RunTo.Field),
		s.show(rec, schema.RunRoute.Field), s.show(rec, schema.RunLength.Field),
		bundleOf(r), s.show(rec, schema.RunServes.Field), s.state(r), s.show(rec, schema.RunYear.Field), t.day, t.result,
	}
}

func bundleOf(r *plant.Run) string {
	if r.Bundle == nil {
		return ""
	}
	return label(r.Bundle)
}

// typed is what a cable type states in a field.
func (s *survey) typed(c *plant.Cable, f *schema.Field) string {
	if c == nil {
		return ""
	}
	return s.show(c.Record(), f)
}

// class is what a cable type is for the standard: a category of twisted pair, a
// class of fibre or a series of coaxial cable.
func (s *survey) class(c *plant.Cable) string {
	switch c.Medium() {
	case plant.TwistedPair:
		return "Category " + s.typed(c, schema.CableCategory.Field)
	case plant.Fibre:
		return s.typed(c, schema.CableFibre.Field)
	case plant.Coax:
		return "Series " + s.typed(c, schema.CableSeries.Field)
	case plant.Unstated:
	}
	return ""
}

// rating is the fire listing, or the Euroclass where the type states that.
func (s *survey) rating(c *plant.Cable) string {
	listing, class := s.typed(c, schema.CableListing.Field), s.typed(c, schema.CableClass.Field)
	if listing != "" && class != "" {
		return listing + ", " + class
	}
	return listing + class
}

// end names the ports at one end of a run as they stand on the wall; where the
// records name what is not there, as they write it.
func (s *survey) end(rec *schema.Record, row plant.Row, f *schema.Field) string {
	if len(row) > 0 {
		return schema.Printable(row.String())
	}
	return s.show(rec, f)
}
