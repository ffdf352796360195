package ability

import (
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// A Channel is a channel with what can be said about it.
type Channel struct {
	*plant.Channel
	Plant  *plant.Plant
	Medium plant.Medium
	// Stations are its cables and ports in order.
	Stations []Station
	// Fixed and Patched are the sums of the recorded runs and cords; Assumed
	// is what stands in for cords that are not recorded. Known is set where
	// every run states its length.
	Fixed, Patched, Assumed unit.Length
	Known                   bool
	// Margins are what is left to each limit of its medium.
	Margins []Margin
	// Answers are all applications over its medium, slowest first.
	Answers []Answer
	// Gaps are what keeps something from being worked out.
	Gaps []Gap
}

// Total is the length with what is assumed.
func (c *Channel) Total() unit.Length { return c.Fixed.Plus(c.Patched).Plus(c.Assumed) }

// Of works out everything about a channel.
func Of(p *plant.Plant, c *plant.Channel) *Channel {
	out := &Channel{Channel: c, Plant: p, Medium: mediumOf(c), Stations: stations(c)}
	out.Fixed, out.Known = c.LinkLength()
	out.Patched, _ = c.Corded(0)
	out.lengthGaps()
	switch out.Medium {
	case plant.TwistedPair:
		out.twistedPair()
	case plant.Fibre:
		out.fibre()
	case plant.Coax:
		out.coax()
	case plant.Unstated:
		out.Gaps = append(out.Gaps, mediumGap(c))
	}
	return out
}

// Judge says whether a channel carries one application. Asked is false where
// the channel is of another medium than the application, or out of use.
func Judge(p *plant.Plant, c *plant.Channel, application string) (a Answer, asked bool) {
	if !live(c) {
		return Answer{}, false
	}
	medium := mediumOf(c)
	if twisted, err := standard.ParseApplication(application); err == nil && medium == plant.TwistedPair {
		k, gap := copperOf(p, c)
		if gap.What != "" {
			return unanswered(application, gap), true
		}
		return k.judge(twisted), true
	}
	if optical, err := standard.ParseOpticalApplication(application); err == nil && medium == plant.Fibre {
		l, gap := lightOf(p, c)
		if gap.What != "" {
			return unanswered(application, gap), true
		}
		return l.judge(optical), true
	}
	return Answer{}, false
}

// Applications are the names that Judge knows: those over twisted pair, then
// those over fibre, each slowest first.
func Applications() []string {
	var names []string
	for _, a := range standard.Applications() {
		names = append(names, a.String())
	}
	for _, a := range standard.OpticalApplications() {
		names = append(names, a.String())
	}
	return names
}

// live says whether every link of a channel is planned, in service or spare.
func live(c *plant.Channel) bool {
	for _, l := range c.Links {
		if !l.Live() {
			return false
		}
	}
	return true
}

// mediumOf is what all links of a channel are; a channel of cords alone is what
// its cords are.
func mediumOf(c *plant.Channel) plant.Medium {
	var m plant.Medium
	for i, l := range c.Links {
		if i > 0 && l.Medium() != m {
			return plant.Unstated
		}
		m = l.Medium()
	}
	if len(c.Links) == 0 && len(c.Cords) > 0 {
		m = c.Cords[0].Cable.Medium()
	}
	return m
}

// mediumGap says why nobody can tell what the channel is made of.
func mediumGap(c *plant.Channel) Gap {
	for _, l := range c.Links {
		for _, r := range l.Runs {
			switch {
			case r.Cable == nil:
				return Gap{schema.Printable(r.Label), "names no type of cable"}
			case r.Cable.Medium() == plant.Unstated:
				return Gap{schema.Printable(r.Cable.Label), "states neither category, fibre nor series"}
			}
		}
	}
	if len(c.Links) == 0 {
		return Gap{schema.Printable(c.Cords[0].Label), "names no type of cable"}
	}
	return Gap{schema.Printable(c.Links[0].Lead().Label), "its channel is of several media"}
}

// lengthGaps names the cables that do not state their length.
func (c *Channel) lengthGaps() {
	for _, l := range c.Links {
		for _, r := range l.Runs {
			if _, stated := r.Length(); !stated {
				c.Gaps = append(c.Gaps, lengthGap(r))
			}
		}
	}
	for _, cord := range c.Cords {
		if _, stated := cord.CordLength(); !stated {
			c.Gaps = append(c.Gaps, Gap{schema.Printable(cord.Label), "states no length"})
		}
	}
}

func lengthGap(r *plant.Run) Gap {
	return Gap{schema.Printable(r.Label), "states no length"}
}
