package ability

import "homerun/schema/plant"

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
	out = append(out, Station{Port: c.Start})
	for _, part := range c.Parts {
		if part.Cord != nil {
			out = append(out, Station{Cord: part.Cord}, Station{Port: part.To})
			continue
		}
		ports := append(part.Joints(), part.To)
		for i, r := range part.Runs() {
			out = append(out, Station{Run: r}, Station{Port: ports[min(i, len(ports)-1)]})
		}
	}
	if c.OpenEnd {
		out = append(out, Station{})
	}
	return out
}
