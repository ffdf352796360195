package standard

import "homerun/schema/unit"

// Model is one of the four ways in which ISO/IEC 11801 builds horizontal cabling.
type Model uint8

// The models.
const (
	Interconnect   Model = iota + 1 // panel to outlet
	CrossConnect                    // cross-connect to outlet
	InterconnectCP                  // panel over consolidation point to outlet
	CrossConnectCP                  // cross-connect over consolidation point to outlet
)

// models are the words for the models.
var models = []string{
	Interconnect:   "interconnect to outlet",
	CrossConnect:   "cross-connect to outlet",
	InterconnectCP: "interconnect over consolidation point to outlet",
	CrossConnectCP: "cross-connect over consolidation point to outlet",
}

// String returns the model in words.
func (m Model) String() string { return wordOf(models, int(m)) }

// HasConsolidation reports whether the model has a consolidation point.
func (m Model) HasConsolidation() bool { return m == InterconnectCP || m == CrossConnectCP }

// ISOLink is what the length equations of ISO/IEC 11801 are computed from.
type ISOLink struct {
	Model    Model
	Category Category
	Cords    unit.Length // F: all patch cords, jumpers, equipment and work-area cords
	CordLoss int         // X in percent: loss of cord to loss of fixed cable, 150 for 1.5
	CP       unit.Length // C: cable from consolidation point to outlet
	CPLoss   int         // Y in percent: loss of that cable to loss of fixed cable
}

// ISOFixed is the longest fixed cable by the equations.
type ISOFixed struct {
	Base     unit.Length // the number that the equation starts from: 109 m, 104 m
	CordPart unit.Length // F*X
	CPPart   unit.Length // C*Y
	Computed unit.Length // Base - CordPart - CPPart, truncated; not below 0
	Most     unit.Length // Computed, and no more than 90 m
	Source   Source
}

// isoBase are the numbers that the equations start from, in metres, with the reserve of
// classes E and F taken off.
var isoBase = map[Model]map[string]int64{
	Interconnect:   {"D": 109, "E": 107 - 3, "F": 107 - 2},
	CrossConnect:   {"D": 107, "E": 106 - 3, "F": 106 - 3},
	InterconnectCP: {"D": 107, "E": 106 - 3, "F": 106 - 3},
	CrossConnectCP: {"D": 105, "E": 105 - 3, "F": 105 - 3},
}

// ISOFixedLength returns the longest fixed cable. ok is false for a class whose equation
// could not be confirmed at all (EA, FA), for a class without one, and for lengths and
// ratios that are negative or absurd: no answer is given in place of one.
func ISOFixedLength(l ISOLink) (f ISOFixed, ok bool) {
	base, ok := isoBase[l.Model][l.Category.Class()]
	if !ok || !sane(l.Cords, l.CordLoss) || !sane(l.CP, l.CPLoss) {
		return ISOFixed{}, false
	}
	f.Base = unit.Length(base) * unit.Metre
	f.CordPart = percentUp(l.Cords, l.CordLoss)
	if l.Model.HasConsolidation() {
		f.CPPart = percentUp(l.CP, l.CPLoss)
	}
	f.Computed = max(0, f.Base-f.CordPart-f.CPPart)
	f.Most = min(f.Computed, 90*unit.Metre)
	f.Source = Source{Body: "ISO/IEC", Edition: "11801-2:2017", Clause: "horizontal link length equations, " + l.Model.String(), Confidence: Confirmed}
	if l.Category.Class() == "F" {
		f.Source = f.Source.unsure()
	}
	return f, true
}

// sane bounds what the equations are computed from, so that the sum stays exact.
func sane(l unit.Length, percent int) bool {
	return l >= 0 && l <= unit.Kilometre && percent >= 0 && percent <= 1000
}

// percentUp returns l*percent/100, rounded up so that what is left is never too long.
func percentUp(l unit.Length, percent int) unit.Length {
	return (l*unit.Length(percent) + 99) / 100
}
