package again

import (
	"slices"

	"homerun/schema"
)

// What moves to another file, or to another place in one, states the same and is
// judged the same, but for what depends on the order of records: which of several
// links a channel is known by, which of two cables came first to a port, which of
// several tests of one day counts, and which run is named as the first of many.

// settleDown leaves out what has only moved, where nothing depends on the order.
func (s *Standing) settleDown(p *plan) {
	c := &settling{Standing: s, headNoted: s.headNoted(), clean: s.newGroup(clean)}
	p.stirs = slices.DeleteFunc(p.stirs, func(at stir) bool { return at.moved && !c.headNoted && c.calm(at.piece) })
}

// A settling is that of one step, in which neighbours lead to the same records.
type settling struct {
	*Standing
	headNoted bool
	// clean are pieces from which nothing is reached about which anything was found.
	clean group
}

// calm says whether nothing that is judged depends on where a piece stands in the
// order of records.
func (s *settling) calm(p *piece) bool {
	r := p.now.record
	if s.kin.crowded[r.Label] > 0 {
		return false
	}
	switch r.Kind.Name {
	case schema.KindRun, schema.KindCord:
		if r.Label == "" || p.meetsOthers() {
			return false
		}
	case schema.KindTest:
		label, _ := schema.TestRun.In(r)
		if s.tests(label) > 1 || s.astray[p] {
			return false
		}
	case schema.KindPanel, schema.KindOutlet, schema.KindConsolidation, schema.KindClosure, schema.KindEquipment:
		if passesSignal(r) {
			return false
		}
	case schema.KindBundle:
	default:
		return false
	}
	return !s.meetsNoted(p)
}

// meetsNoted is notedBy, but for the plant record, and looks at nothing twice.
func (s *settling) meetsNoted(p *piece) bool {
	known := len(s.clean.list)
	if s.lead(p, s.clean.add, func(string) bool { return false }) {
		return false
	}
	s.clean.cut(known)
	return true
}

// meetsOthers says whether a run shares a port or a channel with another run, or a
// cord a port with another cord.
func (p *piece) meetsOthers() bool {
	for _, at := range p.refs {
		if !at.ports() {
			continue
		}
		if slices.ContainsFunc(at.bearers, func(h *piece) bool { return passesSignal(h.now.record) }) {
			return true
		}
		for _, q := range at.meeting() {
			if q == p || !isCable(q.now.record.Kind.Name) {
				continue
			}
			if q.now.record.Kind == p.now.record.Kind || p.now.record.Kind.Name == schema.KindRun && q.meetsRuns(p) {
				return true
			}
		}
	}
	return false
}

// meetsRuns says whether a cord shares a port with any cable but one.
func (p *piece) meetsRuns(but *piece) bool {
	for _, at := range p.refs {
		if !at.ports() {
			continue
		}
		for _, q := range at.meeting() {
			if q != p && q != but && isCable(q.now.record.Kind.Name) {
				return true
			}
		}
	}
	return false
}

// tests counts the tests of a run.
func (s *Standing) tests(label string) int {
	n := 0
	for _, q := range s.of(label).namers {
		if q.now.record.Kind.Name == schema.KindTest {
			n++
		}
	}
	return n
}

// notedBy says whether anything was found about what a piece names, and what that
// names in turn: such a finding may say which piece was the first of several.
func (s *Standing) notedBy(p *piece) bool {
	return s.headNoted() || len(s.notes(p)) > 0
}

// headNoted says whether anything was found about the plant record.
func (s *Standing) headNoted() bool {
	return slices.ContainsFunc(s.heads, func(h *piece) bool { return len(s.of(h.now.record.Label).noted) > 0 })
}

// notes are the labels about which anything was found, among those that a piece
// names, or what it names in turn; a cable goes on with the cables that a signal
// reaches from it, since what is found about a cord may name the first trunk.
func (s *Standing) notes(p *piece) []string {
	var labels []string
	seen := make(map[*piece]bool)
	s.lead(p, func(q *piece) bool {
		fresh := !seen[q]
		seen[q] = true
		return fresh
	}, func(label string) bool {
		if !slices.Contains(labels, label) {
			labels = append(labels, label)
		}
		return true
	})
	return labels
}

// lead goes from a piece to all that it leads to, into each piece that enter lets it,
// and tells the labels on the way about which anything was found, until told says
// that it is enough; it returns whether it came to the end.
func (s *Standing) lead(p *piece, enter func(*piece) bool, told func(label string) bool) bool {
	if !enter(p) {
		return true
	}
	if p.top != nil && !s.lead(p.top, enter, told) {
		return false
	}
	for _, at := range p.refs {
		if len(at.noted) > 0 && !told(at.label) {
			return false
		}
		for _, q := range at.bearers {
			if !s.lead(q, enter, told) {
				return false
			}
		}
		if !at.ports() || !isCable(p.now.record.Kind.Name) {
			continue
		}
		for _, q := range at.reached() {
			if !s.lead(q, enter, told) {
				return false
			}
		}
	}
	return true
}

// reached are the cables at some ports: at a splitter or amplifier those at every
// port of it.
func (r ref) reached() []*piece {
	near := r.meeting()
	if slices.ContainsFunc(r.bearers, func(h *piece) bool { return passesSignal(h.now.record) }) {
		near = r.namers
	}
	if !slices.ContainsFunc(near, func(q *piece) bool { return !isCable(q.now.record.Kind.Name) }) {
		return near
	}
	return slices.DeleteFunc(slices.Clone(near), func(q *piece) bool { return !isCable(q.now.record.Kind.Name) })
}
