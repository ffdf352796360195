package diffreport

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
)

// loses lists the ports that lose service when a cable comes off: the outlets
// of its channel, or its far end where the channel has no outlet. A channel
// without a cord carries nothing that could be lost.
func (p *planner) loses(w *cableWork) []string {
	var ports []string
	for _, ch := range w.channels() {
		ports = append(ports, servedPorts(ch)...)
	}
	if c := w.cord.before; c != nil && len(w.channels()) == 0 && c.From != nil && c.To != nil && c.From.Holder.IsEquipment() && c.To.Holder.IsEquipment() {
		ports = append(ports, c.To.String())
	}
	return tidy(ports)
}

// channels are the channels that the cable was part of.
func (w *cableWork) channels() []*plant.Channel {
	return channelsOf(w.run.before, w.cord.before)
}

func channelsOf(r *plant.Run, c *plant.Cord) []*plant.Channel {
	var all []*plant.Channel
	add := func(run *plant.Run) {
		if run != nil && run.Link != nil && run.Link.Channel != nil && !slices.Contains(all, run.Link.Channel) {
			all = append(all, run.Link.Channel)
		}
	}
	add(r)
	if c != nil {
		for _, row := range []plant.Row{c.FromRow, c.ToRow} {
			for i := range row {
				add(row[i].Rear)
				add(row[i].Onward)
			}
		}
	}
	return all
}

func servedPorts(ch *plant.Channel) []string {
	if len(ch.Cords) == 0 {
		return nil
	}
	var ports []string
	for _, l := range ch.Links {
		for _, r := range l.Runs {
			if state, known := r.State(); known && state != schema.StateInService {
				return nil
			}
		}
		for _, at := range []*plant.Port{l.From, l.To} {
			if at != nil && at.Holder.Kind.Name == schema.KindOutlet {
				ports = append(ports, at.String())
			}
		}
	}
	if far := farEnd(ch); len(ports) == 0 && far != nil {
		ports = append(ports, far.String())
	}
	return ports
}

// farEnd is the end of a channel that its runs lead to, nil where it is not
// recorded. A channel has no direction of its own: where its runs lead to both
// ends or to none, the first by label is taken, wherever the records stand.
func farEnd(ch *plant.Channel) *plant.Port {
	if len(ch.Links) == 1 {
		return ch.Links[0].To
	}
	var to, from, ring []*plant.Port
	for _, l := range ch.Links {
		if l.To != nil {
			ring = append(ring, l.To)
		}
		if l.To != nil && outermost(ch, l.To) {
			to = append(to, l.To)
		}
		if l.From != nil && outermost(ch, l.From) {
			from = append(from, l.From)
		}
	}
	for _, ends := range [][]*plant.Port{to, from, ring} {
		if len(ends) > 0 {
			return slices.MinFunc(ends, func(a, b *plant.Port) int {
				return cmp.Or(cmp.Compare(a.Holder.Label, b.Holder.Label), cmp.Compare(a.Number, b.Number))
			})
		}
	}
	return nil
}

// outermost says whether no cord leads from a port to another link of its
// channel. In a ring no port is outermost.
func outermost(ch *plant.Channel, at *plant.Port) bool {
	if at.Front == nil {
		return true
	}
	next := at.Front.Other(at)
	return next == nil || next.Rear == nil || next.Rear.Link == nil || next.Rear.Link.Channel != ch
}

// outages says for each port that loses service from which step to which.
func (p *planner) outages(steps []Step) []Outage {
	last := lastConnections(steps)
	var all []Outage
	from := make(map[string]bool)
	for _, step := range steps {
		for _, name := range step.Outage {
			if from[name] {
				continue
			}
			from[name] = true
			out := Outage{Port: name, From: step.Number}
			if port, ok := p.base.FindPort(name); ok {
				out.Service = services(port)
			}
			var cables []string
			cables, out.At = p.regained(name)
			for _, cable := range cables {
				out.To = max(out.To, last[cable])
			}
			if out.To < out.From {
				out.To, out.At = 0, nil
			}
			all = append(all, out)
		}
	}
	return all
}

// When says in words from which step to which the port is without service, and
// where it goes on.
func (o *Outage) When() string {
	switch {
	case o.To == 0:
		return fmt.Sprintf("from step %d on, and not restored", o.From)
	case len(o.At) > 0:
		return fmt.Sprintf("from step %d to step %d, then at %s", o.From, o.To, inWords(o.At))
	}
	return fmt.Sprintf("from step %d to step %d", o.From, o.To)
}

// lastConnections finds for each cable the last step that connects, tests or feeds it.
func lastConnections(steps []Step) map[string]int {
	last := make(map[string]int)
	for _, step := range steps {
		switch step.Action {
		case Terminate, Measure, Patch, Swap, Restore:
			for _, r := range step.Records {
				last[r] = step.Number
			}
		case Isolate, Disconnect, Remove, Tag, Install, Bond, Pull, Affix, HandOver:
		}
	}
	return last
}

// cablesBehind lists the cables of the channel that the later plant has at a port,
// nothing where that channel carries no service.
func (p *planner) cablesBehind(port string) []string {
	cut := strings.LastIndexByte(port, ':')
	at, ok := p.head.FindPort(p.same(port[:cut]) + port[cut:])
	if !ok {
		return nil
	}
	run := at.Rear
	if run == nil {
		run = at.Onward
	}
	var cables []string
	for _, ch := range channelsOf(run, at.Front) {
		if len(servedPorts(ch)) > 0 {
			cables = append(cables, cablesOf(ch)...)
		}
	}
	return cables
}

// cablesOf are the labels of the cables that make a channel.
func cablesOf(ch *plant.Channel) []string {
	var cables []string
	for _, l := range ch.Links {
		for _, r := range l.Runs {
			cables = append(cables, r.Label)
		}
	}
	for _, c := range ch.Cords {
		cables = append(cables, c.Label)
	}
	return cables
}

// services are what the cords of a port's channel are recorded to carry.
func services(port *plant.Port) string {
	var all []string
	for _, c := range cordsBehind(port) {
		if text, ok := schema.CordServes.In(c.Record()); ok {
			all = append(all, text)
		}
	}
	return strings.Join(tidy(all), ", ")
}

// cordsBehind are the cords of a port's channel.
func cordsBehind(port *plant.Port) []*plant.Cord {
	run := port.Rear
	if run == nil {
		run = port.Onward
	}
	var all []*plant.Cord
	for _, ch := range channelsOf(run, port.Front) {
		all = append(all, ch.Cords...)
	}
	return all
}
