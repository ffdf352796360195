package plant

import (
	"slices"

	"homerun/schema"
	"homerun/schema/unit"
)

// A Link is a permanent link: the cable between two fronts, through a
// consolidation point or splices if there are any.
type Link struct {
	// Runs are its cables, from the room to the far end.
	Runs []*Run
	// From and To are its outer ports; nil where that end is not recorded.
	From, To *Port
	// Joints are the ports at which one run passes to the next.
	Joints []*Port
	// Channel is what the link is part of.
	Channel *Channel
}

// Length is the sum of the runs' lengths, known when each states its own.
func (l *Link) Length() (unit.Length, bool) {
	var sum unit.Length
	for _, r := range l.Runs {
		length, ok := r.Length()
		if !ok {
			return 0, false
		}
		sum = addLength(sum, length)
	}
	return sum, true
}

// Medium is what the link's cable is, where all its runs agree.
func (l *Link) Medium() Medium {
	m := l.Runs[0].Cable.Medium()
	for _, r := range l.Runs[1:] {
		if r.Cable.Medium() != m {
			return Unstated
		}
	}
	return m
}

// Live says whether every run of the link is planned, in service or spare.
func (l *Link) Live() bool {
	for _, r := range l.Runs {
		if !r.Live() {
			return false
		}
	}
	return true
}

// Lead is the run by whose label the link is known: the first from the room.
func (l *Link) Lead() *Run { return l.Runs[0] }

// Connections counts the connections of the link itself: a jack at each
// recorded end that is not equipment, and each point where runs join.
func (l *Link) Connections() int {
	n := len(l.Joints)
	for _, end := range []*Port{l.From, l.To} {
		if end != nil && !end.Holder.IsEquipment() {
			n++
		}
	}
	return n
}

// findLinks starts at every run that does not go on from another and follows
// it through consolidation points and closures. One that leaves from several ports
// may have been come to by a port that is not the first.
func (p *builder) findLinks() {
	links := make([]Link, 0, len(p.Runs))
	p.Links = make([]*Link, 0, len(p.Runs))
	for i, r := range p.Runs {
		if r.Link == nil && r.before() == nil {
			p.follow(put(&links, Link{}), i)
		}
	}
	// What is left stands in a ring of joints: a mistake of the records, but
	// each run still needs a link to be judged by.
	for i, r := range p.Runs {
		if r.Link == nil {
			p.follow(put(&links, Link{}), i)
		}
	}
}

// follow makes a link of a run and all that goes on from it. Most links are one run,
// which needs no list of its own.
func (p *builder) follow(link *Link, first int) {
	r := p.Runs[first]
	link.From = r.From.First()
	link.Runs = slices.Clip(p.Runs[first : first+1])
	for {
		r.Link = link
		link.To = r.To.First()
		if r = r.after(); r == nil || r.Link != nil {
			break
		}
		link.Runs = append(link.Runs, r)
		link.Joints = append(link.Joints, link.To)
	}
	p.Links = append(p.Links, link)
}

// before is the run that this one goes on from.
func (r *Run) before() *Run {
	port := r.From.First()
	if port == nil || !port.Holder.Joins() || port.Onward != r {
		return nil
	}
	return port.Rear
}

// after is the run that goes on where this one ends.
func (r *Run) after() *Run {
	port := r.To.First()
	if port == nil || !port.Holder.Joins() || port.Rear != r {
		return nil
	}
	return port.Onward
}

// Consolidation returns the consolidation point of the link, nil without one.
func (l *Link) Consolidation() *Port {
	for _, j := range l.Joints {
		if j.Holder.Kind.Name == schema.KindConsolidation {
			return j
		}
	}
	return nil
}
