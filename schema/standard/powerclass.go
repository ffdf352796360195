package standard

import "homerun/schema/unit"

// PowerClass is a row of the classes of power over Ethernet, IEEE 802.3: what a device that
// asks for the class is granted.
type PowerClass struct {
	Class       int
	Power       unit.Power // the least at the source
	DevicePower unit.Power // what the device may take at its own port
	Least       PowerType  // the lowest type that grants the class
	Volts       float64    // the least at the source
	Pairs       int        // pairs powered by that type
	Ohms        float64    // resistance of the whole path that the standard counts with
	Source      Source
	OhmsSource  Source
}

// classRow is a row of the table, powers in hundredths of a watt.
type classRow struct {
	power, device int64
	least         PowerType
	pairs         int
}

// classRows are the classes 0 to 8. Class 0 is granted as class 3.
var classRows = []classRow{
	{1540, 1295, PowerType1, 2},
	{400, 384, PowerType1, 2},
	{700, 649, PowerType1, 2},
	{1540, 1295, PowerType1, 2},
	{3000, 2550, PowerType2, 2},
	{4500, 4000, PowerType3, 4},
	{6000, 5100, PowerType3, 4},
	{7500, 6200, PowerType4, 4},
	{9000, 7130, PowerType4, 4},
}

// PowerClassOf returns the figures of a class, 0 to 8; ok is false for another number.
func PowerClassOf(class int) (c PowerClass, ok bool) {
	if class < 0 || class >= len(classRows) {
		return PowerClass{}, false
	}
	row := classRows[class]
	t := powerFigures[row.least]
	return PowerClass{
		Class: class, Power: unit.Power(row.power) * unit.Watt / 100, DevicePower: unit.Power(row.device) * unit.Watt / 100,
		Least: row.least, Volts: t.Volts, Pairs: row.pairs, Ohms: t.Ohms, Source: t.Source, OhmsSource: t.OhmsSource,
	}, true
}

// Grants returns the class that a source of the type grants to a device that asks for one:
// the class asked for, or the highest that the type has. less is true where it is less than
// asked. The figures are those of the lowest type that grants the class: a higher type gives
// no less. ok is false for no type and no class.
func (t PowerType) Grants(class int) (granted PowerClass, less bool, ok bool) {
	f, known := t.Figures()
	if _, asked := PowerClassOf(class); !known || !asked {
		return PowerClass{}, false, false
	}
	granted, ok = PowerClassOf(min(class, f.HighestClass))
	return granted, granted.Class < class, ok
}

// ClassFor returns the lowest class from 1 on that lets a device take a power at its port. ok
// is false for no power at all and for more than class 8 lets it take.
func ClassFor(needs unit.Power) (c PowerClass, ok bool) {
	for class := 1; class < len(classRows); class++ {
		c, _ = PowerClassOf(class)
		if needs > 0 && needs <= c.DevicePower {
			return c, true
		}
	}
	return PowerClass{}, false
}
