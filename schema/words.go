package schema

// The lists of words that several fields share. Each function returns a fresh
// slice so that no caller can change the language for another.

// Categories are the categories of balanced cabling, ANSI/TIA-568 and ISO/IEC 11801-1.
func Categories() []string {
	return []string{"3", "4", "5", "5e", "6", "6A", "7", "7A", "8", "8.1", "8.2"}
}

// Fibres are the classes of optical fibre, ISO/IEC 11801-1.
func Fibres() []string {
	return []string{"OM1", "OM2", "OM3", "OM4", "OM5", "OS1", "OS1a", "OS2"}
}

// Screens are the construction codes of ISO/IEC 11801-1 Annex E, and the older
// words that leave the construction open.
func Screens() []string {
	return []string{"U/UTP", "F/UTP", "S/UTP", "SF/UTP", "U/FTP", "F/FTP", "S/FTP", "SF/FTP", "UTP", "FTP", "STP", "ScTP"}
}

// Wavelengths are those at which fibre is measured.
func Wavelengths() []string {
	return []string{"850 nm", "953 nm", "1300 nm", "1310 nm", "1383 nm", "1550 nm"}
}

// Connectors are the fibre connectors of the IEC 61754 series.
func Connectors() []string {
	return []string{"LC", "SC", "ST", "FC", "MPO-12", "MPO-16", "MPO-24"}
}

// PowerTypes are the types of power over Ethernet, IEEE 802.3.
func PowerTypes() []string {
	return []string{"type-1", "type-2", "type-3", "type-4"}
}

// SpaceAirs are the uses of a space that the fire code tells apart.
func SpaceAirs() []string {
	return []string{"general", "plenum", "duct", "riser", "riser-fireproof", "dwelling", "multifamily", "under-carpet", "outdoor"}
}

// Enclosures are the ways in which a pathway encloses cable, as the fire code
// tells them apart.
func Enclosures() []string {
	return []string{"none", "metal-raceway", "non-metal-raceway", "solid-covered-tray", "cable-tray", "plenum-raceway", "riser-raceway", "general-raceway", "cross-connect"}
}

// States are the stations of a run's life. A tagged run is one that is not in
// use and carries the tag for future use that the fire code asks for.
func States() []string {
	return []string{"planned", "in-service", "spare", "tagged", "abandoned"}
}

// The states of a run; one that states none is in service.
const (
	StatePlanned   = "planned"
	StateInService = "in-service"
	StateSpare     = "spare"
	StateTagged    = "tagged"
	StateAbandoned = "abandoned"
)

// Applications are what a run may be there for: the Ethernet applications of
// IEEE 802.3 by name, and in plain words what no standard names.
func Applications() []string {
	return []string{
		"10BASE-T", "100BASE-TX", "1000BASE-T", "2.5GBASE-T", "5GBASE-T", "10GBASE-T", "25GBASE-T", "40GBASE-T",
		"1000BASE-SX", "1000BASE-LX", "10GBASE-SR", "10GBASE-LRM", "10GBASE-LR", "10GBASE-ER", "25GBASE-SR", "25GBASE-LR",
		"40GBASE-SR4", "40GBASE-LR4", "100GBASE-SR10", "100GBASE-SR4", "100GBASE-LR4", "100GBASE-DR", "400GBASE-SR8", "400GBASE-SR4.2", "400GBASE-DR4",
		"voice", "video", "access-control", "building-control", "other",
	}
}
