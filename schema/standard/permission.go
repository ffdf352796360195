package standard

import "homerun/schema/unit"

// Measure is what a bound on a permission is put to. The zero value is no bound.
type Measure uint8

// The measures.
const (
	LengthInSpace Measure = iota + 1 // length of cable in the space
	ExposedLength                    // length of cable in view
	Diameter                         // outside diameter of the cable
)

// measures are the words for the measures.
var measures = []string{LengthInSpace: "length in the space", ExposedLength: "length exposed", Diameter: "diameter"}

// String returns the measure in words.
func (m Measure) String() string { return wordOf(measures, int(m)) }

// Bound is a limit under which alone a permission holds. The zero value is no limit.
type Bound struct {
	On    Measure
	Most  unit.Length
	Under bool // the measure must stay under Most; false: it may reach it
}

// Admits reports whether a measure keeps the bound.
func (b Bound) Admits(l unit.Length) bool {
	return b.On == 0 || l < b.Most || (l == b.Most && !b.Under)
}

// Permission is what the fire code says of a listing in a space.
type Permission struct {
	Permitted bool
	Bound     Bound  // where permitted: the limit it holds under
	Note      string // where permitted: the condition that no record measures; may be empty
	Source    Source
}

// limits of NFPA 70-2017, 800.113.
const (
	ductLength   = 1220 * unit.Millimetre // 4 ft
	exposed      = 3 * unit.Metre         // 10 ft
	thinCable    = 6 * unit.Millimetre    // 0.25 in
	thinCoaxial  = 10 * unit.Millimetre   // 0.375 in
	nothing      = Grade(0)
	memoryOfCell = "cell confirmed for NEC 2017, for this edition from memory"
)

// cell is one row of the permission tables, which run the same way in every family: the
// laxest grade that is admitted, and with it every stricter one. Under-carpet cable
// stands outside that order.
type cell struct {
	space     Space
	enclosure Enclosure
	laxest    Grade
	carpet    bool
	partly    []Family // families for which the row is from memory; nil: confirmed for all
}

// rare are the families whose tables were read in part only.
var rare = []Family{PowerLimitedTray, Optical, OpticalConductive}

// opticals are the families of optical fibre.
var opticals = []Family{Optical, OpticalConductive}

// cells are the rows of NFPA 70-2017, Table 800.154(a); Tables 725.154 and 820.154(a) run
// the same, and 770.113 with them.
var cells = []cell{
	{DuctSpace, Bare, Plenum, false, []Family{PowerLimitedTray}},
	{DuctSpace, MetalRaceway, Limited, false, rare},
	{PlenumSpace, Bare, Plenum, false, nil},
	{PlenumSpace, MetalRaceway, Limited, false, nil},
	{PlenumSpace, PlenumRaceway, Plenum, false, rare},
	{PlenumSpace, CableTray, Plenum, false, rare},
	{PlenumSpace, SolidCoveredTray, Limited, false, []Family{PowerLimitedTray}},
	{RiserSpace, Bare, Riser, false, nil},
	{RiserSpace, MetalRaceway, Limited, false, nil},
	{RiserSpace, PlenumRaceway, Riser, false, rare},
	{RiserSpace, RiserRaceway, Riser, false, rare},
	{RiserFireproof, Bare, Limited, false, nil},
	{RiserDwelling, Bare, Limited, false, nil},
	{GeneralSpace, Bare, Limited, false, nil},
	{GeneralSpace, MetalRaceway, Limited, false, rare},
	{GeneralSpace, NonMetalRaceway, Limited, false, rare},
	{GeneralSpace, PlenumRaceway, General, false, rare},
	{GeneralSpace, RiserRaceway, General, false, rare},
	{GeneralSpace, GeneralRaceway, General, false, rare},
	{GeneralSpace, CableTray, General, false, nil},
	{GeneralSpace, SolidCoveredTray, General, false, nil},
	{GeneralSpace, CrossConnectArray, General, false, opticals},
	{Dwelling, Bare, Limited, true, rare},
	{Multifamily, Bare, Limited, true, rare},
	{NonConcealed, Bare, Limited, true, rare},
	{UnderCarpet, Bare, nothing, true, rare},
}

// Permit returns what the fire code says of a listing in a space and an enclosure. ok is
// false where it has nothing to say: no edition of the NEC, no listing, no space or
// enclosure, or a space outdoors. Local amendments and the authority having jurisdiction
// decide over any answer.
func Permit(code FireCode, l Listing, s Space, e Enclosure) (p Permission, ok bool) {
	if !code.NEC() || l.IsZero() || s < GeneralSpace || s >= Outdoor || e < Bare || e > CrossConnectArray {
		return Permission{}, false
	}
	row, exact := cellOf(s, e)
	p.Source = tableOf(code, l.Family())
	if !exact {
		p.Source = p.Source.unsure().noted("no row of its own, judged as bare cable")
	}
	for _, f := range row.partly {
		// The strictest optical fibre in a cross-connect is confirmed.
		if f == l.Family() && (row.enclosure != CrossConnectArray || l.Grade() > Riser) {
			p.Source = p.Source.unsure()
		}
	}
	if l.Grade() == UnderCarpetGrade {
		p.Permitted = row.carpet
	} else {
		p.Permitted = l.Grade() <= row.laxest
	}
	if p.Permitted {
		p.restrict(l, row)
	}
	return p, true
}

// cellOf finds the row. A dwelling takes the rows for enclosures from the general space.
// Where a space has no row for an enclosure, the enclosure gives no credit and the cable is
// judged as bare; exact is then false.
func cellOf(s Space, e Enclosure) (row cell, exact bool) {
	if e != Bare && (s == Dwelling || s == Multifamily || s == NonConcealed) {
		s = GeneralSpace
	}
	for _, c := range cells {
		if c.space == s && c.enclosure == e {
			return c, true
		}
		if c.space == s && c.enclosure == Bare {
			row = c
		}
	}
	return row, false
}

// restrict adds the bounds and conditions of 800.113 to a permission of a bare cable. Those
// of the other families are from memory.
func (p *Permission) restrict(l Listing, row cell) {
	if row.enclosure != Bare {
		return
	}
	switch {
	case l.Grade() == UnderCarpetGrade && row.space != NonConcealed:
		p.Note = "under carpet only"
	case row.space == DuctSpace:
		p.Bound = Bound{On: LengthInSpace, Most: ductLength}
		p.Note = "only where the wiring serves the duct"
		if f := l.Family(); f == Coaxial || f == Class2 || f == Class3 {
			p.Source = p.Source.unsure()
		}
	case l.Grade() == Limited:
		p.restrictLimited(l.Family(), row.space)
	}
}

// restrictLimited adds the bounds of the limited-use types.
func (p *Permission) restrictLimited(f Family, s Space) {
	thin := Bound{On: Diameter, Most: thinCable, Under: true}
	if f == Coaxial {
		thin.Most = thinCoaxial
	}
	switch s {
	case GeneralSpace, NonConcealed:
		p.Bound = Bound{On: ExposedLength, Most: exposed}
		p.Note = "in a space where it is not concealed"
	case RiserDwelling, Dwelling:
		p.Bound = thin
	case Multifamily:
		p.Bound = thin
		p.Note = "in a space where it is not concealed"
	case PlenumSpace, DuctSpace, RiserSpace, RiserFireproof, UnderCarpet, Outdoor:
		return
	}
	if f != Communications {
		p.Source = p.Source.unsure()
	}
}

// tableOf returns where the rows of a family stand in an edition.
func tableOf(code FireCode, f Family) Source {
	src := Source{Body: "NFPA", Edition: "70-2017", Confidence: Confirmed}
	switch f {
	case Communications:
		src.Clause = "800.113 and Table 800.154(a)"
	case Coaxial:
		src.Clause = "820.113 and Table 820.154(a)"
	case Class2, Class3, PowerLimitedTray:
		src.Clause = "725.135 and Table 725.154"
	case Optical, OpticalConductive:
		src.Clause = "770.113"
	}
	if code == NEC2017 {
		return src
	}
	src.Edition = "70-2020"
	src.Note = memoryOfCell
	if f == Communications || f == Coaxial {
		src.Clause = "800.113 and 800.154"
	}
	if code == NEC2023 {
		src.Edition = "70-2023"
		if f != Communications && f != Coaxial {
			src.Clause = "Article 722"
		}
	}
	return src
}
