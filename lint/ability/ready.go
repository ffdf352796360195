package ability

import (
	"slices"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// A Survey is the answer of every channel of a plant, or of one of its spaces,
// to one application.
type Survey struct {
	Application string
	// Space is the label of the space it is about; empty for the whole plant.
	Space string
	// Results are the channels in the order of the records.
	Results []Result
	// Other are the channels in use that are of another medium.
	Other int
}

// A Result is one channel's answer.
type Result struct {
	// Run is the label by which the channel is known, Far its outlet or other
	// far end.
	Run, Far string
	Answer
}

// Ready asks every channel in use whether it carries an application. Space is
// nil for the whole plant; a channel is in a space where one of its links ends
// there, or in a space inside it.
func Ready(p *plant.Plant, application string, space *plant.Space) Survey {
	s := Survey{Application: application}
	if space != nil {
		s.Space = space.Label
	}
	for _, c := range every(p) {
		if space != nil && !endsIn(c, space) || !live(c) {
			continue
		}
		a, asked := Judge(p, c, application)
		if !asked {
			s.Other++
			continue
		}
		s.Results = append(s.Results, Result{Run: c.Links[0].Lead().Label, Far: farEnd(c), Answer: a})
	}
	return s
}

// every lists the channels of a plant in the order of the records. A fibre link
// stands for each of the channels that its fibres are part of, those alike once.
func every(p *plant.Plant) []*plant.Channel {
	all := make([]*plant.Channel, 0, len(p.Channels))
	fibres := make(map[*plant.Link][]*plant.Channel)
	p.Strands(isFibre).Each(func(l *plant.Link, channels []*plant.Channel) { fibres[l] = slices.Clone(channels) })
	taken := make(map[*plant.Channel]bool, len(p.Channels))
	for _, l := range p.Links {
		if isFibre(l) {
			all = append(all, fibres[l]...)
			continue
		}
		if !taken[l.Channel] {
			taken[l.Channel] = true
			all = append(all, l.Channel)
		}
	}
	return all
}

// Of returns the results with a verdict; zero those that can not be told.
func (s *Survey) Of(v standard.Verdict) []Result {
	var some []Result
	for i := range s.Results {
		if s.Results[i].Verdict == v {
			some = append(some, s.Results[i])
		}
	}
	return some
}

// farEnd is where the last link of a channel ends.
func farEnd(c *plant.Channel) string {
	for _, part := range slices.Backward(c.Parts) {
		if part.Link != nil && part.To != nil {
			return part.To.String()
		}
	}
	return ""
}

func endsIn(c *plant.Channel, space *plant.Space) bool {
	for _, l := range c.Links {
		for _, port := range []*plant.Port{l.From, l.To} {
			if port != nil && port.Holder.Space.Within(space) {
				return true
			}
		}
	}
	return false
}

// MediumOf is what an application goes over: "twisted pair" or "fibre"; empty
// for what no channel can be asked for.
func MediumOf(application string) string {
	if _, err := standard.ParseApplication(application); err == nil {
		return "twisted pair"
	}
	if _, err := standard.ParseOpticalApplication(application); err == nil {
		return "fibre"
	}
	return ""
}

// SpaceNamed finds a space. The error is a *LostError.
func SpaceNamed(p *plant.Plant, label string) (*plant.Space, error) {
	item, ok := p.Find(label)
	if s, is := item.(*plant.Space); ok && is {
		return s, nil
	}
	next := "name a space of the records"
	if near := p.Nearest(label, schema.KindSpace); near != "" {
		next = "did you mean " + schema.Printable(near) + "?"
	}
	return nil, &LostError{"there is no space " + schema.Quote(label), next}
}
