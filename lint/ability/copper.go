package ability

import (
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// copper is a channel of twisted pair as the published figures want it.
type copper struct {
	*plant.Channel
	plant *plant.Plant
	// cables is the lowest category of the cables; low that of every part
	// that states one, weakest the part that has it.
	cables, low standard.Category
	weakest     schema.Entry
	shield      standard.Shield
	limits      standard.LengthLimits
	// known is unset where a run states no length, which missing says.
	known                 bool
	missing               Gap
	links, cords, assumed unit.Length
	hot                   *plant.Space
	high                  unit.Temperature
}

// copperOf looks at a channel; the gap says what keeps it from being judged at
// all. A length that is not stated is none yet: some applications fail over
// any length.
func copperOf(p *plant.Plant, c *plant.Channel) (*copper, Gap) {
	k := &copper{Channel: c, plant: p, shield: standard.Screened, known: true}
	for _, l := range c.Links {
		for _, r := range l.Runs {
			if gap := k.run(r); gap.What != "" {
				return nil, gap
			}
		}
	}
	k.cables = k.low
	for _, l := range c.Links {
		for _, port := range append([]*plant.Port{l.From, l.To}, l.Joints...) {
			if port != nil {
				word, _ := port.Holder.Category()
				k.part(word, port.Holder.Entry)
			}
		}
	}
	for _, cord := range c.Cords {
		word, _ := cord.Cable.Category()
		k.part(word, cord.Entry)
	}
	if k.cables == 0 {
		k.cables = k.low
	}
	if k.low == 0 {
		return nil, Gap{schema.Printable(c.Cords[0].Label), "its type of cable states no category"}
	}
	var ok bool
	if k.limits, ok = standard.Lengths(p.Regime, k.cables); !ok {
		return nil, Gap{schema.Printable(p.Name()), "its standard has no lengths for category " + k.cables.String()}
	}
	k.cords, k.assumed = c.Corded(k.limits.Cords)
	return k, Gap{}
}

// run takes in one run of the fixed cable.
func (k *copper) run(r *plant.Run) Gap {
	word, stated := r.Cable.Category()
	category, err := standard.ParseCategory(word)
	if !stated || err != nil {
		return Gap{schema.Printable(r.Label), "its type of cable states no category"}
	}
	k.part(category.String(), r.Entry)
	code, _ := r.Cable.Screen()
	if shield, _ := standard.ShieldOf(code); shield == standard.Unscreened {
		k.shield = shield
	}
	length, stated := r.Length()
	if !stated && k.known {
		k.known, k.missing = false, lengthGap(r)
	}
	k.links = k.links.Plus(length)
	k.warm(r)
	return Gap{}
}

// part lowers the category to that of a part; a part that states none is of the
// category of the rest.
func (k *copper) part(word string, e schema.Entry) {
	category, err := standard.ParseCategory(word)
	if err == nil && (k.low == 0 || category.Weaker(k.low)) {
		k.low, k.weakest = category, e
	}
}

// warm looks for the hottest space of a run. Spaces that state no temperature
// are left out.
func (k *copper) warm(r *plant.Run) {
	for _, s := range r.Spaces() {
		t, known := schema.SpaceTemperature.In(s.Record())
		if known && (k.hot == nil || t > k.high) {
			k.hot, k.high = s, t
		}
	}
}

// recorded is the length of what is recorded, total with what is assumed.
func (k *copper) recorded() unit.Length { return k.links.Plus(k.cords) }
func (k *copper) total() unit.Length    { return k.recorded().Plus(k.assumed) }

// lengthTerms are the lengths that make up the channel, and their sum.
func (k *copper) lengthTerms() []Term {
	in := k.plant.Units
	var terms []Term
	sum := ""
	add := func(what string, length unit.Length, remark string) {
		terms = append(terms, Term{what, length.Text(in) + remark})
		if sum != "" {
			sum += " + "
		}
		sum += length.Text(in)
	}
	for _, l := range k.Links {
		for _, r := range l.Runs {
			length, _ := r.Length()
			add("run "+schema.Printable(r.Label), length, "")
		}
	}
	for _, cord := range k.Cords {
		if length, stated := cord.CordLength(); stated {
			add("cord "+schema.Printable(cord.Label), length, "")
		}
	}
	if k.assumed > 0 {
		add("cords not recorded", k.assumed, " assumed, of "+k.limits.Cords.Text(in)+" in all")
	}
	return append(terms, Term{"channel", sum + " = " + k.total().Text(in)})
}
