package standard

import (
	"slices"

	"homerun/schema/unit"
)

// BundleCase is a bundle of four-pair cable that carries power.
type BundleCase struct {
	Code    FireCode
	Gauge   int // AWG of the conductors
	Cables  int
	Rated   unit.Temperature // of the cable; 0, not stated, counts as 60 C, the least a cable may have
	Ambient unit.Temperature // around the bundle
	Loaded  Loading
}

// Loading is how many of the conductors of a cable carry power. The zero value is all.
type Loading uint8

// The two loadings.
const (
	AllConductors Loading = iota
	HalfConductors
)

// BundleAmpacity is the most that a conductor in a bundle may carry, with the working:
// Most = Base x Ambient x Load.
type BundleAmpacity struct {
	Base          unit.Current     // cell of the table
	Column        unit.Temperature // 60 C, 75 C or 90 C
	From, To      int              // sizes of bundle that the cell is for
	Ambient       int              // correction in percent
	Load          int              // in percent: 140 where half of the conductors are loaded
	Most          unit.Current
	Supervision   string // why engineering supervision decides in place of the table; empty where it does not
	Source        Source
	AmbientSource Source
}

// bundleSteps are the sizes of bundle, each up to and with the number.
var bundleSteps = []int{1, 7, 19, 37, 61, 91, 192}

// columns are the temperature ratings of the table.
var columns = []int64{60, 75, 90}

// ampacityRow is a row of the table: tenths of an ampere by size of bundle and rating. A cell
// without a value has zeros.
type ampacityRow struct {
	gauge int
	cells [7][3]int64
}

// ampacities are NFPA 70-2017, Table 725.144: all conductors loaded, 30 C around.
var ampacities = []ampacityRow{
	{26, [7][3]int64{{10, 10, 10}, {10, 10, 10}, {7, 8, 10}, {5, 6, 7}, {4, 5, 6}, {4, 5, 6}, {0, 0, 0}}},
	{24, [7][3]int64{{20, 20, 20}, {10, 14, 16}, {8, 10, 11}, {6, 7, 9}, {5, 6, 7}, {4, 5, 6}, {3, 4, 5}}},
	{23, [7][3]int64{{25, 25, 25}, {12, 15, 17}, {8, 11, 12}, {6, 8, 9}, {5, 7, 8}, {5, 7, 8}, {4, 5, 6}}},
	{22, [7][3]int64{{30, 30, 30}, {14, 18, 21}, {10, 12, 14}, {7, 9, 11}, {6, 8, 9}, {6, 8, 9}, {5, 6, 7}}},
}

// BundleAmpacityOf returns the ampacity of a conductor. It is of NEC 2017 alone: for a later
// edition ok is false and the source says that its printed table decides. ok is false too
// for no code, no cable, a gauge between or thicker than the rows, a rating under 60 C and a
// space over 60 C, where the table gives nothing to go by. Where Supervision is set there is
// no figure, but an answer: an engineer decides.
func BundleAmpacityOf(c BundleCase) (a BundleAmpacity, ok bool) {
	a.Source = inEdition(c.Code, "Table 725.144")
	if c.Code != NEC2017 {
		return BundleAmpacity{Source: lackingTable(c.Code)}, false
	}
	if c.Cables < 1 {
		return BundleAmpacity{}, false
	}
	const mostCables, thinnest = 192, 26
	switch {
	case c.Cables > mostCables:
		a.Supervision = "more than 192 cables"
	case c.Gauge > thinnest:
		a.Supervision = "conductors thinner than 26 AWG"
	}
	if a.Supervision != "" {
		return a, true
	}
	return a.fromTable(c)
}

// lackingTable is the source of an edition whose table was not found; none for another code.
func lackingTable(code FireCode) Source {
	if !code.NEC() {
		return Source{}
	}
	src := inEdition(code, "ampacity of bundled cable")
	src.Confidence, src.Note = FromMemory, "no table of this edition was found: its printed table decides"
	return src
}

// fromTable fills in the terms.
func (a BundleAmpacity) fromTable(c BundleCase) (BundleAmpacity, bool) {
	column, rated := columnOf(c.Rated)
	row, found := rowOf(c.Gauge)
	if !rated || !found {
		return BundleAmpacity{}, false
	}
	a.Column = unit.Temperature(columns[column]) * unit.DegreeCelsius
	step := 0
	for c.Cables > bundleSteps[step] {
		a.From = bundleSteps[step]
		step++
	}
	a.From, a.To = a.From+1, bundleSteps[step]
	a.Base = unit.Current(row.cells[step][column]) * unit.Ampere / 10
	a.Ambient, a.AmbientSource, rated = AmbientCorrection(c.Code, c.Ambient, a.Column)
	switch {
	case a.Base == 0:
		a.Supervision = "the table gives no value"
		return a, true
	case !rated:
		return BundleAmpacity{}, false
	}
	a.Load = 100
	if c.Loaded == HalfConductors {
		a.Load = 140
	}
	a.Most = a.Base * unit.Current(a.Ambient) * unit.Current(a.Load) / (100 * 100)
	return a, true
}

// rowOf finds the row of a gauge.
func rowOf(gauge int) (ampacityRow, bool) {
	for _, row := range ampacities {
		if row.gauge == gauge {
			return row, true
		}
	}
	return ampacityRow{}, false
}

// columnOf returns the column of a rating: the highest that it reaches.
func columnOf(rated unit.Temperature) (i int, ok bool) {
	if rated == 0 {
		return 0, true
	}
	for i, celsius := range slices.Backward(columns) {
		if rated >= unit.Temperature(celsius)*unit.DegreeCelsius {
			return i, true
		}
	}
	return 0, false
}
