package standard

import "homerun/schema/unit"

// Conduit is a kind of conduit with a table of sizes. The zero value is none.
type Conduit uint8

// The kinds.
const (
	EMT   Conduit = iota + 1 // electrical metallic tubing, Article 358
	RMC                      // rigid metal conduit, Article 344
	PVC40                    // rigid PVC conduit, schedule 40, Article 352
)

// conduits are the words for the kinds.
var conduits = []string{EMT: "EMT", RMC: "RMC", PVC40: "PVC-40"}

// String returns the word for the kind; empty for none.
func (c Conduit) String() string { return wordOf(conduits, int(c)) }

// ParseConduit reads "EMT", "RMC" or "PVC-40". The error is a *unit.Error.
func ParseConduit(s string) (Conduit, error) {
	i, err := indexOf(conduits, "kind of conduit", s)
	return Conduit(i), err
}

// sizeRow is a trade size: areas in thousandths of a square inch, the inside diameter of EMT
// in thousandths of an inch, radii of bends in quarters of an inch.
type sizeRow struct {
	trade         string
	emt, rmc, pvc int64
	emtDiameter   int64
	shoe, other   int64
}

// sizeRows are NFPA 70-2017, Chapter 9, Tables 2 and 4.
var sizeRows = []sizeRow{
	{"1/2", 304, 314, 285, 622, 16, 16},
	{"3/4", 533, 549, 508, 824, 18, 20},
	{"1", 864, 887, 832, 1049, 23, 24},
	{"1 1/4", 1496, 1526, 1453, 1380, 29, 32},
	{"1 1/2", 2036, 2071, 1986, 1610, 33, 40},
	{"2", 3356, 3408, 3291, 2067, 38, 48},
	{"2 1/2", 5858, 4866, 4695, 2731, 42, 60},
	{"3", 8846, 7499, 7268, 3356, 52, 72},
	{"3 1/2", 11545, 10010, 9737, 3834, 60, 84},
	{"4", 14753, 12882, 12554, 4334, 64, 96},
}

// nanoPerThousandth is a thousandth of a square inch in square nanometres, exactly.
const nanoPerThousandth = 645_160_000_000

// TradeSizes returns the trade sizes of the table in inches, from "1/2" to "4".
func TradeSizes() []string {
	out := make([]string, len(sizeRows))
	for i, row := range sizeRows {
		out[i] = row.trade
	}
	return out
}

// sizeOf finds a trade size.
func sizeOf(trade string) (sizeRow, bool) {
	for _, row := range sizeRows {
		if row.trade == trade {
			return row, true
		}
	}
	return sizeRow{}, false
}

// ConduitSection returns the section of a conduit of a trade size, by the area that the code
// prints. ok is false for no kind and no size of the table, and where the code is no edition
// of the NEC.
func ConduitSection(code FireCode, kind Conduit, trade string) (s Section, src Source, ok bool) {
	row, found := sizeOf(trade)
	if !found || !code.NEC() {
		return Section{}, Source{}, false
	}
	src = inEdition(code, "Chapter 9, Table 4")
	var thousandths int64
	switch kind {
	case EMT:
		thousandths = row.emt
	case PVC40:
		thousandths = row.pvc
	case RMC:
		thousandths = row.rmc
		src.Confidence = Conflicting
		src = src.noted("one copy of the table prints other areas for this conduit")
	default:
		return Section{}, Source{}, false
	}
	return Section{square: thousandths * nanoPerThousandth}, src, true
}

// TubingDiameter returns the inside diameter of electrical metallic tubing of a trade size;
// ok as for ConduitSection.
func TubingDiameter(code FireCode, trade string) (l unit.Length, src Source, ok bool) {
	row, found := sizeOf(trade)
	if !found || !code.NEC() {
		return 0, Source{}, false
	}
	return unit.Length(row.emtDiameter) * unit.Inch / 1000, inEdition(code, "Chapter 9, Table 4"), true
}

// ConduitBend is the least radius of a bend in a conduit, to its centre line.
type ConduitBend struct {
	Shoe, Other unit.Length // made on a one-shot or full-shoe bender, or in another way
	Source      Source
}

// ConduitBendOf returns the least radius of a bend by trade size; ok as for ConduitSection.
func ConduitBendOf(code FireCode, trade string) (b ConduitBend, ok bool) {
	row, found := sizeOf(trade)
	if !found || !code.NEC() {
		return ConduitBend{}, false
	}
	return ConduitBend{
		Shoe: unit.Length(row.shoe) * unit.Inch / 4, Other: unit.Length(row.other) * unit.Inch / 4,
		Source: inEdition(code, "Chapter 9, Table 2"),
	}, true
}
