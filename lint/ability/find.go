package ability

import (
	"fmt"
	"slices"
	"strings"

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
// of a run, cord, test or single port, or each of those of an outlet; the
// fibres of one cable may be part of several. The error is a *LostError where it
// names nothing, or something that is no part of a channel. A port that nothing
// is plugged into has no channel.
func Find(p *plant.Plant, name string) ([]*plant.Channel, error) {
	f := finder{strands: p.Strands(isFibre)}
	if port, ok := p.FindPort(name); ok {
		return f.ofPort(port), nil
	}
	item, ok := p.Find(name)
	if !ok {
		return nil, unknown(p, name)
	}
	var all []*plant.Channel
	switch it := item.(type) {
	case *plant.Run:
		return f.few(name, f.ofLink(it.Link), it.From)
	case *plant.Cord:
		return f.ofCord(it), nil
	case *plant.Holder:
		for i := range it.Ports {
			all = f.with(all, f.ofPort(&it.Ports[i]))
		}
		return f.few(name, all, it.Ports)
	case *plant.Test:
		if it.Run != nil {
			return f.few(name, f.ofLink(it.Run.Link), it.Run.From)
		}
	}
	e := item.Place()
	return nil, &LostError{
		fmt.Sprintf("%s is a %s: it is part of no channel by itself", schema.Printable(name), e.Kind.Name),
		"name a port, such as 1A-A:07, or a run or a cord",
	}
}

func unknown(p *plant.Plant, name string) error {
	next := "name a port, such as 1A-A:07, or the label of a run or a cord"
	holder, number, isPort := cutPort(name)
	if h, ok := p.Find(holder); ok && isPort {
		if h, ok := h.(*plant.Holder); ok && len(h.Ports) > 0 {
			return &LostError{
				fmt.Sprintf("%s has no port %s", schema.Printable(holder), schema.Quote(number)),
				"its ports are " + h.Ports[0].String() + " to " + h.Ports[len(h.Ports)-1].String(),
			}
		}
	}
	if near := p.Nearest(holder); near != "" && isPort {
		next = "did you mean " + schema.Printable(near+":"+number) + "?"
	} else if near := p.Nearest(name); near != "" {
		next = "did you mean " + schema.Printable(near) + "?"
	}
	return &LostError{fmt.Sprintf("there is no port and no record %s", schema.Quote(name)), next}
}

// cutPort divides the name of a port into its holder's label and its number.
func cutPort(name string) (holder, number string, ok bool) {
	cut := strings.LastIndexByte(name, ':')
	if cut < 1 {
		return name, "", false
	}
	return name[:cut], name[cut+1:], true
}

// isFibre says whether the fibres of a link can be followed one by one.
func isFibre(l *plant.Link) bool { return l.Medium() == plant.Fibre }

// A finder looks for channels; those of fibre it follows fibre by fibre.
type finder struct{ strands *plant.Strands }

// few refuses more channels than a reader can take in at once.
func (f finder) few(name string, all []*plant.Channel, ports plant.Row) ([]*plant.Channel, error) {
	if len(all) <= mostPortsTraced {
		return all, nil
	}
	next := "name one of its ports"
	if first := ports.First(); first != nil {
		next += ", such as " + first.String()
	}
	return nil, &LostError{fmt.Sprintf("%s is part of more than %d channels", schema.Printable(name), mostPortsTraced), next}
}

// with adds the channels that are not among those found.
func (f finder) with(all, more []*plant.Channel) []*plant.Channel {
	for _, c := range more {
		if !slices.ContainsFunc(all, c.Alike) {
			all = append(all, c)
		}
	}
	return all
}

func (f finder) ofLink(l *plant.Link) []*plant.Channel {
	if f.strands.Takes(l) {
		return f.strands.Of(l)
	}
	return []*plant.Channel{l.Channel}
}

// ofPort is the channel of whatever is on a port.
func (f finder) ofPort(port *plant.Port) []*plant.Channel {
	switch {
	case port.Rear != nil || port.Onward != nil:
		if some := f.strands.Through(port); len(some) > 0 {
			return some
		}
		if port.Rear != nil {
			return f.ofLink(port.Rear.Link)
		}
		return f.ofLink(port.Onward.Link)
	case port.Front != nil:
		return f.ofCord(port.Front)
	}
	return nil
}

// ofCord are the channels of a cord: those behind its ends, or the cord by itself
// between two pieces of equipment.
func (f finder) ofCord(cord *plant.Cord) []*plant.Channel {
	var all []*plant.Channel
	for _, row := range []plant.Row{cord.FromRow, cord.ToRow} {
		for i := range row {
			if row[i].Front == cord && row[i].Rear != nil {
				all = f.with(all, f.ofPort(&row[i]))
			}
		}
	}
	if len(all) > 0 {
		return all
	}
	return []*plant.Channel{{
		Parts: []plant.Part{{Cord: cord, From: cord.From, To: cord.To}}, Cords: []*plant.Cord{cord}, Start: cord.From, End: cord.To,
	}}
}
