package takeoff

import (
	"cmp"
	"slices"

	"homerun/schema/plant"
	"homerun/schema/unit"
)

// Reels are how many reels a type of cable needs.
type Reels struct {
	// Size is what one reel holds.
	Size unit.Length
	// Least is what the metres alone would need, Whole what it takes when no
	// run is spliced: each is cut in one piece, the longest first, from the
	// first reel that still has enough.
	Least, Whole int
	// TooLong are the runs that no reel holds; they are in neither number.
	TooLong []string
}

// reel adds the waste to a type of cable and counts its reels.
func (c *counter) reel(it *Item) {
	pieces := c.lengths[it.Name]
	gross := make([]unit.Length, 0, len(pieces))
	var tooLong []string
	for _, p := range pieces {
		length := withWaste(p.length, c.options.Waste)
		it.Gross = it.Gross.Plus(length)
		if c.options.Reel > 0 && length > c.options.Reel {
			tooLong = append(tooLong, p.run)
			continue
		}
		gross = append(gross, length)
	}
	if c.options.Reel <= 0 || len(pieces) == 0 || !c.onReels(it.Name) {
		return
	}
	it.Reels = &Reels{Size: c.options.Reel, TooLong: tooLong}
	var sum unit.Length
	for _, l := range gross {
		sum = sum.Plus(l)
	}
	it.Reels.Least = int((sum + c.options.Reel - 1) / c.options.Reel)
	it.Reels.Whole = reelsOf(gross, c.options.Reel)
}

// onReels says whether a type of cable comes on reels of one size.
func (c *counter) onReels(label string) bool {
	item, _ := c.plant.Find(label)
	cable, _ := item.(*plant.Cable)
	return cable.Medium() == plant.TwistedPair || cable.Medium() == plant.Coax
}

// withWaste adds a percentage, rounded up to the nanometre.
func withWaste(l unit.Length, percent int) unit.Length {
	if l > (1<<63-1)/1000 {
		return l
	}
	return l + (l*unit.Length(percent)+99)/100
}

// reelsOf cuts lengths from reels, the longest first, each from the first reel
// that still has enough. A tree over the reels finds that one: its nodes hold
// the most that any reel below them has left.
func reelsOf(lengths []unit.Length, size unit.Length) int {
	lengths = slices.Clone(lengths)
	slices.SortFunc(lengths, func(a, b unit.Length) int { return cmp.Compare(b, a) })
	leaves := 1
	for leaves < len(lengths) {
		leaves *= 2
	}
	tree := make([]unit.Length, 2*leaves)
	for i := range tree {
		tree[i] = size
	}
	used := 0
	for _, l := range lengths {
		at := 1
		for at < leaves {
			at *= 2
			if tree[at] < l {
				at++
			}
		}
		used = max(used, at-leaves+1)
		tree[at] -= l
		for at /= 2; at >= 1; at /= 2 {
			tree[at] = max(tree[2*at], tree[2*at+1])
		}
	}
	return used
}
