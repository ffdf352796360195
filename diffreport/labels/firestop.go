package labels

import (
	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/unit"
)

// firestopLabel is the n-th label of a fire-stop, counted from 0: one for each
// side of the wall or floor that it closes.
func firestopLabel(s diffreport.Firestop, n int, units unit.System) Label {
	kind, at := "fire-stop", "at "+s.Through
	if s.Rating > 0 {
		kind += ", " + s.Rating.Text(units)
	}
	side := s.Between[n%len(s.Between)]
	if side == "" {
		at += ", one on each side"
	}
	return Label{ID: s.ID, Kind: kind, Space: side, At: at, rank: rankOf(schema.KindPathway)}
}
