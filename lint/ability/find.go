package ability

import (
	"fmt"
	"slices"

	"homerun/schema"
	"homerun/schema/plant"
)

// mostPortsTraced bounds how many channels one label may stand for.
const mostPortsTraced = 8

// A LostError says that a text names nothing that can be traced.
type LostError struct {
	// Message is the sentence, Next what to write instead.
	Message, Next string
}

// Error is the sentence.
func (e *LostError) Error() string { return e.Message }

// Find returns the channels that a port ("1A-A:07") or a label stands for: that
// of a run, cord, test or single port, or each of those of an outlet. The error
// is a *LostError where it names nothing, or something that is no part of a
// channel. A port that nothing is plugged into has no channel.
func Find(p *plant.Plant, name string) ([]*plant.Channel, error) {
	if port, ok := p.FindPort(name); ok {
		return compact(ofPort(port)), nil
	}
	item, ok := p.Find(name)
	if !ok {
		return nil, unknown(p, name)
	}
	switch it := item.(type) {
	case *plant.Run:
		return compact(it.Link.Channel), nil
	case *plant.Cord:
		return compact(ofCord(it)), nil
	case *plant.Test:
		if it.Run != nil {
			return compact(it.Run.Link.Channel), nil
		}
	case *plant.Holder:
		return ofHolder(it)
	}
	e := item.Place()
	return nil, &LostError{
		fmt.Sprintf("%s is a %s: it is part of no channel by itself", schema.Printable(name), e.Kind.Name),
		"name a port, such as 1A-A:07, or a run or a cord",
	}
}

func unknown(p *plant.Plant, name string) error {
	next := "name a port, such as 1A-A:07, or the label of a run or a cord"
	if near := p.Nearest(name); near != "" {
		next = "did you mean " + schema.Printable(near) + "?"
	}
	return &LostError{fmt.Sprintf("there is no port and no record %s", schema.Quote(name)), next}
}

func compact(c *plant.Channel) []*plant.Channel {
	if c == nil {
		return nil
	}
	return []*plant.Channel{c}
}

// ofPort is the channel of whatever is on a port.
func ofPort(port *plant.Port) *plant.Channel {
	switch {
	case port.Rear != nil:
		return port.Rear.Link.Channel
	case port.Onward != nil:
		return port.Onward.Link.Channel
	case port.Front != nil:
		return ofCord(port.Front)
	}
	return nil
}

// ofCord is the channel of a cord: that of a run behind one of its ends, or the
// cord by itself between two pieces of equipment.
func ofCord(cord *plant.Cord) *plant.Channel {
	for _, port := range []*plant.Port{cord.From, cord.To} {
		if port != nil && port.Rear != nil {
			return port.Rear.Link.Channel
		}
	}
	return &plant.Channel{Parts: []plant.Part{{Cord: cord}}, Cords: []*plant.Cord{cord}, Start: cord.From, End: cord.To}
}

func ofHolder(h *plant.Holder) ([]*plant.Channel, error) {
	var all []*plant.Channel
	for i := range h.Ports {
		if c := ofPort(&h.Ports[i]); c != nil && !slices.Contains(all, c) {
			all = append(all, c)
		}
		if len(all) > mostPortsTraced {
			return nil, &LostError{
				fmt.Sprintf("%s has more than %d ports in use", schema.Printable(h.Label), mostPortsTraced),
				"name one of its ports, such as " + h.Ports[0].String(),
			}
		}
	}
	return all, nil
}
