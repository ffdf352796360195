package takeoff

import (
	"cmp"
	"slices"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// What is assumed where nobody says otherwise, both common practice.
const (
	DefaultWaste = 10
	DefaultReel  = 1000 * unit.Foot
)

// Options are the assumptions of a count.
type Options struct {
	// Base and Head name what was compared; Base is empty for a whole plant.
	Base, Head string
	// Waste is what is cut off and thrown away, in per cent of each run.
	Waste int
	// Reel is what twisted pair and coaxial cable comes in; fibre is cut to
	// length. 0 counts no reels.
	Reel unit.Length
}

// A Takeoff is a list of materials.
type Takeoff struct {
	Plant string
	Units unit.System
	Options
	// Items by group, then name.
	Items []Item
	// Left are runs that are not counted, since they are withdrawn.
	Left []string
}

// The groups, in the order in which they are listed.
const (
	GroupCable       = "cable"
	GroupTermination = "terminations"
	GroupCord        = "cords"
	GroupHardware    = "hardware"
	GroupPathway     = "pathways"
	GroupFirestop    = "fire-stops"
	GroupLabel       = "labels"
)

// Groups returns the groups in their order.
func Groups() []string {
	return []string{GroupCable, GroupTermination, GroupCord, GroupHardware, GroupPathway, GroupFirestop, GroupLabel}
}

// An Item is one material with the sum that gives its quantity.
type Item struct {
	Group, Name string
	// Count are pieces; Length is set where metres are counted.
	Count  int
	Length unit.Length
	// Parts are what the sum is made of, in the order of the records.
	Parts []Part
	// Unknown are the records that do not state what the sum needs.
	Unknown []string
	// Reels is set for cable that comes on reels.
	Reels *Reels
	// Gross is the length with waste, for cable.
	Gross unit.Length
}

// A Part is one share of a sum: a bundle, a panel, a record.
type Part struct {
	Record string
	Count  int
	Length unit.Length
}

// Whole counts all that a plant is made of.
func Whole(p *plant.Plant, o Options) Takeoff {
	return Of(p, diffreport.Compare(nil, p, diffreport.Options{}), o)
}

// Of counts what the changes need that led to a plant: what is new, planned
// work included, and what is pulled or exchanged anew.
func Of(p *plant.Plant, changes []diffreport.Change, o Options) Takeoff {
	c := counter{plant: p, options: o, items: make(map[[2]string]*Item), parts: make(map[[3]string]int), lengths: make(map[string][]piece), stops: make(map[stop]bool), fresh: make(map[*schema.Record]bool)}
	for i := range changes {
		if ch := &changes[i]; ch.Before.Record == nil && ch.After.Record != nil {
			c.fresh[ch.After.Record] = true
		}
	}
	for _, ch := range inOrder(changes) {
		c.change(ch)
	}
	return c.finish()
}

// inOrder are the changes that leave something, in the order of their records.
func inOrder(changes []diffreport.Change) []*diffreport.Change {
	var some []*diffreport.Change
	for i := range changes {
		if changes[i].After.Record != nil {
			some = append(some, &changes[i])
		}
	}
	slices.SortStableFunc(some, func(a, b *diffreport.Change) int {
		return cmp.Or(cmp.Compare(a.After.Path, b.After.Path), cmp.Compare(a.After.Line, b.After.Line), cmp.Compare(a.After.At.Start, b.After.At.Start))
	})
	return some
}

type counter struct {
	plant   *plant.Plant
	options Options
	items   map[[2]string]*Item
	parts   map[[3]string]int
	lengths map[string][]piece
	stops   map[stop]bool
	fresh   map[*schema.Record]bool
	left    []string
}

// piece is one run to be cut from a reel.
type piece struct {
	run    string
	length unit.Length
}

func (c *counter) item(group, name string) *Item {
	key := [2]string{group, name}
	if c.items[key] == nil {
		c.items[key] = &Item{Group: group, Name: name}
	}
	return c.items[key]
}

// pieces adds a number of pieces.
func (c *counter) pieces(group, name, record string, n int) {
	it := c.item(group, name)
	it.Count += n
	c.part(it, record).Count += n
}

// part is the share that a record has in an item.
func (c *counter) part(it *Item, record string) *Part {
	key := [3]string{it.Group, it.Name, record}
	i, known := c.parts[key]
	if !known {
		i = len(it.Parts)
		c.parts[key] = i
		it.Parts = append(it.Parts, Part{Record: record})
	}
	return &it.Parts[i]
}

// metres adds a length.
func (c *counter) metres(group, name, record string, length unit.Length) {
	it := c.item(group, name)
	it.Length = it.Length.Plus(length)
	share := c.part(it, record)
	share.Count++
	share.Length = share.Length.Plus(length)
}

func (c *counter) finish() Takeoff {
	t := Takeoff{Plant: c.plant.Name(), Units: c.plant.Units, Options: c.options, Left: c.left}
	for _, it := range c.items {
		if it.Group == GroupCable {
			c.reel(it)
		}
		t.Items = append(t.Items, *it)
	}
	order := Groups()
	slices.SortFunc(t.Items, func(a, b Item) int {
		return cmp.Or(cmp.Compare(slices.Index(order, a.Group), slices.Index(order, b.Group)), cmp.Compare(a.Name, b.Name))
	})
	return t
}
