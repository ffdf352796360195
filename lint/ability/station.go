package ability

import (
	"slices"

	"homerun/schema/plant"
)

// A Station is one thing on the way from end to end: a port, a run or a cord.
// An end that is not recorded is a station with none of them.
type Station struct {
	Port *plant.Port
	Run  *plant.Run
	Cord *plant.Cord
}

// stations lists the way of a channel from its start.
func stations(c *plant.Channel) []Station {
	out := make([]Station, 0, 2*len(c.Parts)+3)
	if c.OpenStart {
		out = append(out, Station{})
	}
	at := c.Start
	out = append(out, Station{Port: at})
	for _, part := range c.Parts {
		if part.Cord != nil {
			at = part.Cord.Other(at)
			out = append(out, Station{Cord: part.Cord}, Station{Port: at})
			continue
		}
		runs, ports := along(part.Link, at)
		for i, r := range runs {
			out = append(out, Station{Run: r}, Station{Port: ports[i]})
		}
		at = ports[len(ports)-1]
	}
	if c.OpenEnd {
		out = append(out, Station{})
	}
	return out
}

// along lists the runs of a link with the port behind each, from the end that a
// port stands at.
func along(l *plant.Link, at *plant.Port) (runs []*plant.Run, behind []*plant.Port) {
	runs = slices.Clone(l.Runs)
	ports := append(append([]*plant.Port{l.From}, l.Joints...), l.To)
	if at != nil && at == l.To && at != l.From {
		slices.Reverse(runs)
		slices.Reverse(ports)
	}
	return runs, ports[1:]
}
