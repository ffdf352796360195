package standard

// Space is what the fire code sees in a space that cable lies in. The zero value is none.
type Space uint8

// The spaces.
const (
	GeneralSpace   Space = iota + 1
	PlenumSpace          // other space used for environmental air
	DuctSpace            // fabricated duct for environmental air
	RiserSpace           // vertical run through floors, or in a shaft
	RiserFireproof       // fireproof shaft with fire-stops at each floor
	RiserDwelling        // vertical run in a dwelling for one or two families
	Dwelling             // dwelling for one or two families
	Multifamily          // dwelling for several families
	NonConcealed         // space in which the cable is in view
	UnderCarpet
	Outdoor // outside the building: the code's tables for cable inside do not reach it
)

// spaces are the words for the spaces.
var spaces = []string{
	GeneralSpace: "general", PlenumSpace: "plenum", DuctSpace: "duct", RiserSpace: "riser", RiserFireproof: "riser-fireproof",
	RiserDwelling: "riser-dwelling", Dwelling: "dwelling", Multifamily: "multifamily", NonConcealed: "non-concealed",
	UnderCarpet: "under-carpet", Outdoor: "outdoor",
}

// String returns the word for the space, as in a record; empty for none.
func (s Space) String() string { return wordOf(spaces, int(s)) }

// ParseSpace reads "plenum". The error is a *unit.Error.
func ParseSpace(s string) (Space, error) {
	i, err := indexOf(spaces, "use of a space", s)
	return Space(i), err
}

// Spaces returns all spaces.
func Spaces() []Space {
	out := make([]Space, 0, len(spaces))
	for s := GeneralSpace; int(s) < len(spaces); s++ {
		out = append(out, s)
	}
	return out
}

// Enclosure is what the fire code sees around a cable in a space. The zero value is none
// stated, and no answer is given for it.
type Enclosure uint8

// The enclosures.
const (
	Bare              Enclosure = iota + 1 // nothing, or something that gives no credit
	MetalRaceway                           // metal conduit or raceway of NEC chapter 3
	NonMetalRaceway                        // other conduit or raceway of NEC chapter 3
	SolidCoveredTray                       // metal tray with solid bottom and solid metal cover
	CableTray                              // any other cable tray
	PlenumRaceway                          // communications raceway or routing assembly listed for plenums
	RiserRaceway                           // the same, listed for risers
	GeneralRaceway                         // the same, for general use
	CrossConnectArray                      // distributing frame or cross-connect
)

// enclosures are the words for the enclosures.
var enclosures = []string{
	Bare: "none", MetalRaceway: "metal-raceway", NonMetalRaceway: "non-metal-raceway", SolidCoveredTray: "solid-covered-tray",
	CableTray: "cable-tray", PlenumRaceway: "plenum-raceway", RiserRaceway: "riser-raceway", GeneralRaceway: "general-raceway",
	CrossConnectArray: "cross-connect",
}

// String returns the word for the enclosure, as in a record; empty for none stated.
func (e Enclosure) String() string { return wordOf(enclosures, int(e)) }

// ParseEnclosure reads "metal-raceway", or "none" for bare cable. The error is a
// *unit.Error.
func ParseEnclosure(s string) (Enclosure, error) {
	i, err := indexOf(enclosures, "enclosure", s)
	return Enclosure(i), err
}

// Enclosures returns all enclosures.
func Enclosures() []Enclosure {
	out := make([]Enclosure, 0, len(enclosures))
	for e := Bare; int(e) < len(enclosures); e++ {
		out = append(out, e)
	}
	return out
}
