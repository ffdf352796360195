package schema

// This file is the record language: every kind of record and every field, one
// line each. The order of the lines is the order in documents and tables.

// Names of the kinds, as they stand in references and in output.
const (
	KindPlant         = "plant"
	KindSpace         = "space"
	KindPathway       = "pathway"
	KindPower         = "power"
	KindCrossing      = "crossing"
	KindNear          = "near"
	KindInterference  = "interference"
	KindCable         = "cable"
	KindRack          = "rack"
	KindPanel         = "panel"
	KindOutlet        = "outlet"
	KindConsolidation = "consolidation-point"
	KindClosure       = "splice-closure"
	KindEquipment     = "equipment"
	KindBusbar        = "busbar"
	KindBundle        = "bundle"
	KindRun           = "run"
	KindCord          = "cord"
	KindTest          = "test"
	KindPolicy        = "policy"
	KindWaiver        = "waiver"
)

// Kinds returns every kind that may stand at the top of a file, in the order
// in which the language page explains them.
func Kinds() []*Kind {
	return []*Kind{
		plant, space, pathway, interference, cable, rack, panel, outlet, consolidation, closure,
		equipment, busbar, bundle, run, cord, test, policy, waiver,
	}
}

// KindNamed finds a top-level kind, or the kind of an inner block, by name.
func KindNamed(name string) (*Kind, bool) {
	for _, k := range Kinds() {
		if k.Name == name {
			return k, true
		}
	}
	for _, k := range Kinds() {
		if inner, ok := k.Block(name); ok {
			return inner, true
		}
	}
	return nil, false
}

var plant = &Kind{Name: KindPlant, Plural: "plants", Paper: true, Doc: "the cabling of one building or campus, and by which rules it is judged"}

// The fields of a plant.
var (
	_             = plant.text("title", Paper, "the plant's name for people")
	PlantStandard = required(plant.word("standard", Paper, "whose limits and length equations hold", "TIA-568", "ISO-11801"))
	PlantFireCode = plant.word("fire_code", Paper, "whose fire rules hold", "NEC-2017", "NEC-2020", "NEC-2023", "EN-50575")
	PlantMinClass = of(plant.text("min_class", Paper, "lowest Euroclass that may be installed anywhere, such as Cca-s1b,d2,a2"), euroclassForm)
	PlantUnits    = plant.word("units", Paper, "units of the output", "metric", "us")
	PlantLabels   = plant.word("labels", Paper, "form of the identifiers", "TIA-606", "free")
	PlantBuilt    = plant.count("built", Paper, "year in which the building was finished")
	_             = plant.text("note", Paper, "anything else worth keeping")
)

var space = &Kind{Name: KindSpace, Plural: "spaces", Doc: "a room, void, shaft or outdoor area that cable starts in, ends in or crosses"}

// The fields of a space.
var (
	SpaceKind = required(space.word("kind", Paper, "what the space is", "telecommunications-room", "equipment-room", "entrance-facility",
		"telecommunications-enclosure", "ceiling-void", "floor-void", "riser-shaft", "work-area", "workshop", "corridor", "plant-room", "outdoor"))
	SpaceTitle       = space.text("title", Paper, "the name on the door")
	SpaceFloor       = space.text("floor", Paper, "floor or level")
	SpaceBuilding    = space.text("building", Paper, "building, where the plant has several")
	SpaceInside      = space.ref("inside", Paper, "the larger space that this one is part of", KindSpace)
	SpaceAir         = space.word("air", Paper, "what moves through the space: it decides the cable's fire listing", SpaceAirs()...)
	SpaceMinClass    = of(space.text("min_class", Paper, "lowest Euroclass for this space, where it is stricter than the plant's"), euroclassForm)
	SpaceTemperature = space.temperature("temperature", Paper, "highest temperature in normal use")
	SpaceNoise       = space.word("noise", Paper, "electromagnetic class of MICE, ISO/IEC 11801-1: office, light industry, industry", "E1", "E2", "E3")
	SpaceBuilt       = space.count("built", Paper, "year in which the space was built, where it differs from the plant's")
	SpaceFormer      = space.text("former", Relabelling, "the identifier it had before")
	_                = space.text("note", Paper, "anything else worth keeping")
)

var pathway = &Kind{
	Name: KindPathway, Plural: "pathways", Doc: "what cable lies in between two places: conduit, tray, hooks, raceway, sleeve or duct",
	Blocks: []*Kind{power, crossing, near},
}

// The fields of a pathway.
var (
	PathwayKind      = required(pathway.word("kind", Replace, "what the cable lies in", "conduit", "tray", "ladder", "basket", "hooks", "raceway", "sleeve", "duct", "surface"))
	PathwayThrough   = required(pathway.refs("through", Relocate, "the spaces it passes, from one end to the other", KindSpace))
	PathwayLength    = required(pathway.length("length", Paper, "length along the pathway"))
	PathwayEnclosure = pathway.word("enclosure", Replace, "how it encloses the cable for the fire code", Enclosures()...)
	PathwayMaterial  = pathway.word("material", Replace, "what it is made of", "metal", "non-metal")
	PathwayDiameter  = pathway.length("diameter", Replace, "inside diameter of a conduit, sleeve or duct")
	PathwayWidth     = pathway.length("width", Replace, "inside width of a tray, ladder, basket or raceway")
	PathwayDepth     = pathway.length("depth", Replace, "usable depth of a tray, ladder, basket or raceway")
	PathwayBends     = pathway.angle("bends", Replace, "sum of the bends between two pull points")
	PathwayPull      = pathway.length("pull", Paper, "longest distance between two pull points")
	PathwayRadius    = pathway.length("bend_radius", Replace, "tightest bend in the pathway")
	PathwaySupports  = pathway.length("supports", Replace, "distance between supports")
	PathwayFormer    = pathway.text("former", Relabelling, "the identifier it had before")
	_                = pathway.text("note", Paper, "anything else worth keeping")
)

var power = &Kind{Name: KindPower, Plural: "power circuits", Unlabelled: true, Doc: "power cable that runs beside the pathway"}

// The fields of the power circuits beside a pathway.
var (
	PowerCircuits = required(power.count("circuits", Relocate, "how many power circuits"))
	PowerPhases   = power.count("phases", Relocate, "1 or 3; three phases count as three circuits")
	PowerCurrent  = power.current("current", Relocate, "rated current of each circuit, where it is above 20 A")
	PowerGap      = power.length("gap", Relocate, "clear distance between power and data cable")
	PowerBarrier  = power.word("barrier", Replace, "what stands between them", "none", "open-metal", "perforated-metal", "solid-metal")
	PowerEnclosed = power.word("power_in", Replace, "what the power cable itself is in", "open", "raceway", "metal-sheath")
	_             = power.text("note", Paper, "anything else worth keeping")
)

var crossing = &Kind{Name: KindCrossing, Plural: "crossings", Doc: "a rated wall or floor that the pathway goes through"}

// The fields of a crossing.
var (
	CrossingRating   = crossing.period("rating", Paper, "fire rating of the wall or floor")
	CrossingFirestop = crossing.text("firestop", Rebond, "identifier of the fire-stop that closes the opening")
	CrossingStopped  = crossing.period("firestop_rating", Rebond, "rating of that fire-stop")
	CrossingBetween  = crossing.refs("between", Paper, "the two spaces that it separates", KindSpace)
	_                = crossing.text("note", Paper, "anything else worth keeping")
)

var near = &Kind{Name: KindNear, Plural: "sources of interference", Refers: []string{KindInterference}, Doc: "a lamp or machine close to the pathway"}

// The fields of a nearby source of interference.
var (
	NearGap = required(near.length("gap", Relocate, "distance between it and the pathway"))
	_       = near.text("note", Paper, "anything else worth keeping")
)

var interference = &Kind{Name: KindInterference, Plural: "sources of interference", Doc: "a lamp or machine that disturbs unscreened pairs"}

// The fields of a source of interference.
var (
	InterferenceKind = required(interference.word("kind", Paper, "what it is", "fluorescent-lamp", "discharge-lamp", "motor", "transformer",
		"frequency-converter", "arc-welder", "induction-heater", "radio-transmitter"))
	InterferenceSpace = required(interference.ref("space", Paper, "where it stands", KindSpace))
	_                 = interference.text("note", Paper, "anything else worth keeping")
)

var cable = &Kind{Name: KindCable, Plural: "cable types", Paper: true, Doc: "a type of cable or cord, as the jacket and the data sheet state it"}

// The fields of a cable type.
var (
	CableCategory   = cable.word("category", Repull, "category of twisted-pair cable", Categories()...)
	CableFibre      = cable.word("fibre", Repull, "class of optical fibre", Fibres()...)
	CableSeries     = cable.word("series", Repull, "series of 75 ohm coaxial cable", "6", "11", "59")
	CableScreen     = cable.word("screen", Repull, "construction code of ISO/IEC 11801: overall screen / element screen", Screens()...)
	CablePairs      = cable.count("pairs", Repull, "number of pairs, where it is not four")
	CableStrands    = cable.count("strands", Repull, "number of fibres")
	CableListing    = of(cable.text("listing", Repull, "fire listing printed on the jacket, such as CMP"), listingForm)
	CableClass      = of(cable.text("euroclass", Repull, "reaction to fire, such as B2ca-s1a,d1,a1"), euroclassForm)
	CableConductors = cable.conductors("conductors", Repull, "gauge and make of the conductors")
	CableSkew       = cable.count("skew", Paper, "greatest difference of delay between its pairs in whole ns over 100 m, from the data sheet")
	CablePolarity   = cable.word("polarity", Repull, "type of an array cable, ANSI/TIA-568.3: how it leads its fibres from position to position", "A", "B", "C")
	CableDuplex     = cable.word("duplex", Repull, "make of a duplex fibre cord, ANSI/TIA-568.3: crossed or straight", "A-to-B", "A-to-A")
	CableDiameter   = cable.length("diameter", Paper, "outside diameter")
	CableBend       = cable.length("bend_radius", Paper, "smallest bend radius at rest")
	CableRated      = cable.temperature("rated", Paper, "temperature rating of the jacket")
	CableSegregate  = cable.word("segregation", Paper, "segregation class of EN 50174-2, from the data sheet", "a", "b", "c", "d")
	_               = cable.text("note", Paper, "anything else worth keeping")
)

var rack = &Kind{Name: KindRack, Plural: "racks", Doc: "a rack, frame or cabinet"}

// The fields of a rack.
var (
	RackSpace  = required(rack.ref("space", Relocate, "where it stands", KindSpace))
	RackUnits  = rack.count("units", Replace, "height in rack units")
	RackBond   = rack.ref("bond", Rebond, "the busbar it is bonded to", KindBusbar)
	RackFormer = rack.text("former", Relabelling, "the identifier it had before")
	_          = rack.text("note", Paper, "anything else worth keeping")
)

var panel = &Kind{Name: KindPanel, Plural: "panels", Doc: "a patch panel: each port takes one run at the rear and one cord at the front"}

// The fields of a panel.
var (
	PanelSpace    = required(panel.ref("space", Relocate, "where it is", KindSpace))
	PanelRack     = panel.ref("rack", Relocate, "the rack it is in", KindRack)
	PanelUnit     = panel.count("unit", Relocate, "its place in the rack, counted from below")
	PanelPorts    = required(panel.count("ports", Replace, "number of ports"))
	PanelCategory = panel.word("category", Replace, "category of its twisted-pair jacks", Categories()...)
	PanelFibre    = panel.word("fibre", Replace, "class of fibre it is made for", Fibres()...)
	PanelSeries   = panel.word("series", Replace, "series of coaxial cable it is made for", "6", "11", "59")
	PanelAdapter  = panel.word("connector", Replace, "connector of its fibre adapters", Connectors()...)
	PanelScreen   = panel.word("screen", Replace, "whether its jacks carry the screen through", "screened", "unscreened")
	PanelPinout   = panel.word("pinout", Reterminate, "wiring of the jacks", "T568A", "T568B")
	PanelBond     = panel.ref("bond", Rebond, "the busbar it is bonded to, where it is not bonded through its rack", KindBusbar)
	PanelFormer   = panel.text("former", Relabelling, "the identifier it had before")
	_             = panel.text("note", Paper, "anything else worth keeping")
)

var outlet = &Kind{Name: KindOutlet, Plural: "outlets", Doc: "a telecommunications outlet: each port takes one run at the rear and one cord at the front"}

// The fields of an outlet.
var (
	OutletSpace    = required(outlet.ref("space", Relocate, "where it is", KindSpace))
	OutletKind     = outlet.word("kind", Replace, "a plain outlet, or one that serves several work areas", "plain", "multi-user")
	OutletPorts    = required(outlet.count("ports", Replace, "number of ports"))
	OutletCategory = outlet.word("category", Replace, "category of its twisted-pair jacks", Categories()...)
	OutletFibre    = outlet.word("fibre", Replace, "class of fibre it is made for", Fibres()...)
	OutletSeries   = outlet.word("series", Replace, "series of coaxial cable it is made for", "6", "11", "59")
	OutletAdapter  = outlet.word("connector", Replace, "connector of its fibre adapters", Connectors()...)
	OutletScreen   = outlet.word("screen", Replace, "whether its jacks carry the screen through", "screened", "unscreened")
	OutletPinout   = outlet.word("pinout", Reterminate, "wiring of the jacks", "T568A", "T568B")
	OutletFormer   = outlet.text("former", Relabelling, "the identifier it had before")
	_              = outlet.text("note", Paper, "anything else worth keeping")
)

var consolidation = &Kind{
	Name: KindConsolidation, Plural: "consolidation points",
	Doc: "a point where horizontal cable is continued: a run that ends here takes the port's rear, one that starts here its front",
}

// The fields of a consolidation point.
var (
	ConsolidationSpace    = required(consolidation.ref("space", Relocate, "where it is", KindSpace))
	ConsolidationPorts    = required(consolidation.count("ports", Replace, "number of ports"))
	ConsolidationCategory = consolidation.word("category", Replace, "category of its connecting hardware", Categories()...)
	ConsolidationScreen   = consolidation.word("screen", Replace, "whether it carries the screen through", "screened", "unscreened")
	ConsolidationFormer   = consolidation.text("former", Relabelling, "the identifier it had before")
	_                     = consolidation.text("note", Paper, "anything else worth keeping")
)

var closure = &Kind{Name: KindClosure, Plural: "splice closures", Doc: "a closure in which fibres are spliced: a run that ends here is spliced to the run that starts at the same port"}

// The fields of a splice closure.
var (
	ClosureSpace  = required(closure.ref("space", Relocate, "where it is", KindSpace))
	ClosurePorts  = required(closure.count("ports", Replace, "number of splices it holds"))
	ClosureKind   = closure.word("kind", Replace, "how the fibres are joined", "fusion", "mechanical")
	ClosureLoss   = closure.loss("loss", Paper, "measured loss of a splice, where it is known")
	ClosureFormer = closure.text("former", Relabelling, "the identifier it had before")
	_             = closure.text("note", Paper, "anything else worth keeping")
)

var equipment = &Kind{Name: KindEquipment, Plural: "pieces of equipment", Doc: "what the cabling serves: each port takes one cord, or a run that ends in a plug"}

// The fields of a piece of equipment.
var (
	EquipmentKind = required(equipment.word("kind", Replace, "what it is", "switch", "router", "server", "access-point", "camera", "telephone", "display", "controller",
		"reader", "amplifier", "splitter", "head-end", "antenna", "media-converter", "workstation", "other"))
	EquipmentSpace    = required(equipment.ref("space", Relocate, "where it is", KindSpace))
	EquipmentRack     = equipment.ref("rack", Relocate, "the rack it is in", KindRack)
	EquipmentUnit     = equipment.count("unit", Relocate, "its place in the rack, counted from below")
	EquipmentPorts    = required(equipment.count("ports", Replace, "number of ports"))
	EquipmentSupplies = equipment.word("supplies", Replace, "type of power over Ethernet it supplies, IEEE 802.3", PowerTypes()...)
	EquipmentClass    = equipment.count("power_class", Replace, "class of power over Ethernet it asks for, 0 to 8, IEEE 802.3")
	EquipmentNeeds    = equipment.watts("needs", Replace, "power it needs at its port")
	EquipmentLevel    = equipment.level("level", Retest, "signal level it puts out, on coaxial cable")
	EquipmentWants    = equipment.level("wants", Retest, "lowest signal level it works with, on coaxial cable")
	EquipmentTop      = equipment.frequency("top_frequency", Retest, "highest frequency it carries, on coaxial cable")
	EquipmentLoss     = equipment.loss("loss", Retest, "loss from its input to each output, for a splitter")
	EquipmentInput    = equipment.count("input", Paper, "number of the port at which its signal comes in, for a splitter or amplifier on coaxial cable")
	EquipmentFormer   = equipment.text("former", Relabelling, "the identifier it had before")
	_                 = equipment.text("note", Paper, "anything else worth keeping")
)

var busbar = &Kind{Name: KindBusbar, Plural: "busbars", Doc: "a bonding busbar of ANSI/TIA-607: the primary one at the entrance, secondary ones in the rooms"}

// The fields of a busbar.
var (
	BusbarKind   = required(busbar.word("kind", Replace, "which busbar it is", "primary", "secondary"))
	BusbarSpace  = required(busbar.ref("space", Relocate, "where it is", KindSpace))
	BusbarBond   = busbar.ref("bond", Rebond, "the busbar it is bonded to, on the way to the primary one", KindBusbar)
	BusbarFormer = busbar.text("former", Relabelling, "the identifier it had before")
	_            = busbar.text("note", Paper, "anything else worth keeping")
)

var bundle = &Kind{
	Name: KindBundle, Plural: "bundles", Blocks: []*Kind{run},
	Doc: "cables pulled together along one route: its runs stand inside it and take cable and route from it",
}

// The fields of a bundle.
var (
	BundleCable  = bundle.ref("cable", Repull, "type of cable of its runs", KindCable)
	BundleRoute  = bundle.refs("route", Reroute, "pathways from the room to the outlets, in order", KindPathway)
	BundlePower  = bundle.word("power", Paper, "type of power over Ethernet that it carries, IEEE 802.3", PowerTypes()...)
	BundleFormer = bundle.text("former", Relabelling, "the identifier it had before")
	_            = bundle.text("note", Paper, "anything else worth keeping")
)

var run = &Kind{Name: KindRun, Plural: "runs", Doc: "a cable from one termination to another without a splice"}

// The fields of a run.
var (
	RunFrom   = run.port("from", Reterminate, "the port at the room end", KindPanel, KindConsolidation, KindClosure, KindOutlet, KindEquipment)
	RunTo     = run.port("to", Reterminate, "the port at the far end", KindOutlet, KindConsolidation, KindClosure, KindPanel, KindEquipment)
	RunLength = run.length("length", Repull, "length of the cable")
	RunCable  = inherited(run.ref("cable", Repull, "type of cable", KindCable))
	RunRoute  = inherited(run.refs("route", Reroute, "pathways from end to end, in order", KindPathway))
	RunServes = run.word("serves", Paper, "the application it is there for", Applications()...)
	RunState  = run.word("state", Reterminate, "where it is in its life", States()...)
	RunSpare  = run.length("slack", Paper, "coil kept at the ends, part of the length")
	RunYear   = run.count("installed", Paper, "year in which it was pulled")
	RunFormer = run.text("former", Relabelling, "the identifier it had before")
	_         = run.text("note", Paper, "anything else worth keeping")
)

var cord = &Kind{Name: KindCord, Plural: "cords", Doc: "a patch, equipment or work-area cord between two fronts"}

// The fields of a cord.
var (
	CordFrom   = required(cord.port("from", Repatch, "the port at one end", KindPanel, KindEquipment, KindOutlet))
	CordTo     = required(cord.port("to", Repatch, "the port at the other end", KindEquipment, KindPanel, KindOutlet))
	CordLength = cord.length("length", Replace, "length of the cord")
	CordCable  = cord.ref("cable", Replace, "type of cord", KindCable)
	CordServes = cord.text("serves", Paper, "the service that it carries, in the owner's words")
	CordFormer = cord.text("former", Relabelling, "the identifier it had before")
	_          = cord.text("note", Paper, "anything else worth keeping")
)

var test = &Kind{Name: KindTest, Plural: "tests", Paper: true, Doc: "one measurement of a run or of the link it is part of"}

// The fields of a test.
var (
	TestRun    = required(test.ref("run", Paper, "the run that was measured", KindRun))
	TestLimit  = required(test.text("limit", Paper, "the limit that the tester applied, such as TIA permanent link, Category 6A"))
	TestResult = required(test.word("result", Paper, "what the tester said", "pass", "marginal-pass", "marginal-fail", "fail"))
	TestLength = test.length("length", Paper, "length that the tester measured")
	TestMargin = test.loss("margin", Paper, "worst margin")
	TestLoss   = test.loss("loss", Paper, "measured loss, for fibre and coaxial cable")
	TestWindow = test.word("wavelength", Paper, "wavelength of the measurement, for fibre", Wavelengths()...)
	TestDate   = required(test.date("date", Paper, "day of the measurement"))
	_          = test.text("tester", Paper, "serial number of the instrument")
	_          = test.text("note", Paper, "anything else worth keeping")
)

var policy = &Kind{Name: KindPolicy, Plural: "policies", Paper: true, Doc: "the owner's own decision about a rule: a stricter limit or another severity"}

// The fields of a policy.
var (
	PolicyRule     = required(policy.text("rule", Paper, "the rule, as explain lists it"))
	PolicySeverity = policy.word("severity", Paper, "how findings of the rule count", "nonconformity", "observation", "off")
	PolicyLimit    = policy.text("limit", Paper, "the owner's limit, in the rule's unit; it may only be stricter")
	PolicyReason   = required(policy.text("reason", Paper, "why"))
	_              = policy.text("note", Paper, "anything else worth keeping")
)

var waiver = &Kind{Name: KindWaiver, Plural: "waivers", Paper: true, Doc: "leave to depart from a rule for named records until a date"}

// The fields of a waiver.
var (
	WaiverRule    = required(waiver.text("rule", Paper, "the rule, as explain lists it"))
	WaiverRecords = required(waiver.texts("records", Paper, "identifiers of the records it holds for"))
	WaiverReason  = required(waiver.text("reason", Paper, "why the departure is acceptable"))
	WaiverGranted = required(waiver.text("granted", Paper, "who granted it, and under which reference"))
	WaiverExpires = required(waiver.date("expires", Paper, "last day on which it holds"))
	_             = waiver.text("note", Paper, "anything else worth keeping")
)
