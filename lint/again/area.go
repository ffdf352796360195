package again

import (
	"slices"

	"homerun/lint"
	"homerun/schema"
)

// An area is the part of a standing that a step can touch, as one view shows it.
type area struct {
	*Standing
	// read are the pieces that are read, whole those of which every piece that bears
	// on them is too.
	read, whole group
	// ways are the pathways to judge with all that lies in them.
	ways map[*piece]bool
	// spread are the labels of which all that names them was taken.
	spread map[string]bool
	// most is how many pieces are worth it; over is set where there are more.
	most int
	over bool
}

func (s *Standing) newArea(v view) *area {
	read, whole := readBefore, wholeBefore
	if v == after {
		read, whole = readAfter, wholeAfter
	}
	return &area{
		Standing: s, read: s.newGroup(read), whole: s.newGroup(whole), ways: make(map[*piece]bool), spread: make(map[string]bool),
		most: max(fewPieces, s.pieces/2),
	}
}

// fewPieces is how many pieces are always worth an excerpt.
const fewPieces = 40

// stir takes what a piece that stirs can touch in the state at hand.
func (a *area) stir(at stir) {
	p, r := at.piece, at.now.record
	if at.laid || at.named && a.notedBy(p) {
		a.lay(p)
	}
	a.take(p)
	if w := a.countedWith(at); w != nil {
		for _, in := range w.inner {
			a.take(in)
		}
	}
	if at.turned { // what is found about the bundle may name the first of its runs
		for _, in := range p.inner {
			a.take(in)
		}
	}
	if at.named {
		a.firsts(p)
	}
	if former := r.Own(schema.RunFormer.Name); former != nil {
		a.markLabel(former.Text)
		if len(a.of(former.Text).bearers) > 0 { // which of the two it is decides what its namers name
			a.reach(former.Text, "")
		}
	}
	if at.loud {
		a.name(p)
	}
}

// countedWith is the bundle about which something stands that counts or names a run
// that comes, goes or is called otherwise, or of which a test does: to look at this
// run alone would be to look twice.
func (a *area) countedWith(at stir) *piece {
	if at.before != nil && at.after != nil && at.before.Label == at.after.Label {
		return nil
	}
	p := at.piece
	if p.now.record.Kind.Name == schema.KindTest {
		label, _ := schema.TestRun.In(p.now.record)
		if p = a.first(label); p == nil {
			return nil
		}
	}
	if p.top == nil || len(a.of(p.top.now.record.Label).noted) == 0 {
		return nil
	}
	return p.top
}

// firsts takes all that a finding may name the first of, where a piece stands
// elsewhere among it: by itself the piece would be the first on both sides.
func (a *area) firsts(p *piece) {
	if a.headNoted() {
		a.over = true // the plant record is named by everything
		return
	}
	for _, label := range a.notes(p) {
		if !a.onlyWays(label) {
			a.reach(label, "")
			a.widen(label)
		}
	}
}

// onlyWays says whether a label is that of a pathway, with findings only about what
// lies in it: that is judged with all of it anyway.
func (a *area) onlyWays(label string) bool {
	pathway := func(p *piece) bool { return p.now.record.Kind.Name == schema.KindPathway }
	along := func(rule string) bool { return !a.lies(rule) }
	return slices.ContainsFunc(a.of(label).bearers, pathway) && !slices.ContainsFunc(a.of(label).noted, along)
}

// label takes what a label can touch that comes, goes, or has another bearer: what
// names it, and the labels that are taken for it.
func (a *area) label(label string) {
	if label == "" {
		return
	}
	a.alikes(label)
	a.markLabel(label)
	a.reach(label, "")
}

// alikes takes the labels that are taken for a label.
func (a *area) alikes(label string) {
	if label == "" || len(a.of(label).bearers) > 0 && a.kin.crowded[label] == 0 {
		return
	}
	for _, key := range a.alike(label) {
		a.kin.each(key, a.markLabel)
	}
}

// mark takes a piece to be read, with all that it names.
func (a *area) mark(p *piece) {
	if a.over || !a.read.add(p) {
		return
	}
	if len(a.read.list) > a.most {
		a.over = true
		return
	}
	if p.top != nil {
		a.mark(p.top)
	}
	if len(p.inner) > 0 {
		a.bundle(p)
	}
	if p.now.record.Kind.Name == schema.KindWaiver {
		return // what it names matters only to the review
	}
	for _, at := range p.refs {
		a.markAll(at.bearers)
	}
	if p.now.record.Kind.Name == schema.KindRun {
		a.markLink(p)
	}
}

// bundle takes of a bundle the runs that some rule reads together, and those by which
// what stands about it is known again.
func (a *area) bundle(p *piece) {
	if a.gathers(p.now.record) {
		a.markAll(p.inner)
		return
	}
	if p.bears == nil {
		return
	}
	for _, rule := range p.bears.noted {
		for _, f := range a.found[spot{rule, p.now.record.Label}] {
			for _, n := range f.Related {
				for _, q := range a.of(n.Label).bearers {
					if q.top == p {
						a.mark(q)
					}
				}
			}
		}
	}
}

// gathers says whether some rule reads all runs of a bundle together.
func (s *Standing) gathers(bundle *schema.Record) bool {
	return slices.ContainsFunc(s.along, func(r *lint.Rule) bool { return r.Gathers != nil && r.Gathers(bundle) })
}

// markLink takes what a run goes on into, and its tests: a link of which a part was
// missing would count among those that lack something.
func (a *area) markLink(p *piece) {
	for _, at := range p.refs {
		if !at.ports() || !slices.ContainsFunc(at.bearers, joins) {
			continue
		}
		a.markAll(at.meeting())
	}
	if p.bears == nil {
		return
	}
	for _, q := range p.bears.namers {
		if q.now.record.Kind.Name == schema.KindTest {
			a.mark(q)
		}
	}
}

// joins says whether a piece joins runs end to end.
func joins(p *piece) bool {
	kind := p.now.record.Kind.Name
	return kind == schema.KindConsolidation || kind == schema.KindClosure
}

func (a *area) markLabel(label string) { a.markAll(a.of(label).bearers) }

func (a *area) markAll(all []*piece) {
	for _, p := range all {
		a.mark(p)
	}
}

// take takes a piece whose findings can differ: a cable with all that a signal
// goes through.
func (a *area) take(p *piece) {
	if a.over || !a.whole.add(p) {
		return
	}
	a.mark(p)
	r := p.now.record
	switch {
	case r.Kind.Name == schema.KindTest:
		for _, at := range p.refs {
			for _, run := range at.bearers {
				a.take(run) // a test is of its run, and says nothing by itself
			}
		}
		return
	case !isCable(r.Kind.Name):
		return
	}
	for _, at := range p.refs {
		if !at.ports() {
			continue
		}
		for _, q := range at.reached() {
			a.take(q)
		}
	}
}

// passesSignal says whether equipment may pass a signal on from port to port, or
// puts one out at several.
func passesSignal(r *schema.Record) bool {
	if r.Kind.Name != schema.KindEquipment {
		return false
	}
	kind, _ := schema.EquipmentKind.In(r)
	switch kind {
	case "antenna", "head-end", "amplifier", "splitter":
		return true
	}
	return r.Own(schema.EquipmentLevel.Name) != nil || r.Own(schema.EquipmentWants.Name) != nil || r.Own(schema.EquipmentInput.Name) != nil
}

// name takes everything that names a piece, and what names that.
func (a *area) name(p *piece) {
	r := p.now.record
	if r.Kind.Name == schema.KindPathway {
		a.ways[p] = true
	}
	for _, in := range p.inner {
		a.take(in)
		a.name(in)
	}
	if r.Label != "" {
		a.reach(r.Label, r.Kind.Name)
	}
}

// reach takes what names a label, borne by a record of a kind.
func (a *area) reach(label, kind string) {
	if a.spread[label] || a.over {
		return
	}
	a.spread[label] = true
	for _, q := range a.of(label).namers {
		if kind == schema.KindCable || kind == "" {
			a.lay(q)
		}
		a.take(q)
		a.name(q)
	}
}

// lay takes the pathways that a cable lies in, or the cables of a bundle, or the
// pathway itself.
func (a *area) lay(p *piece) {
	r := p.now.record
	switch r.Kind.Name {
	case schema.KindPathway:
		a.ways[p] = true
	case schema.KindBundle:
		a.route(r)
		for _, in := range p.inner {
			a.route(in.now.record)
		}
	case schema.KindRun:
		a.route(r)
	}
}

func (a *area) route(r *schema.Record) {
	labels, _ := schema.RunRoute.In(r)
	if r.Kind.Name == schema.KindBundle {
		labels, _ = schema.BundleRoute.In(r)
	}
	for _, label := range labels {
		for _, w := range a.of(label).bearers {
			if w.now.record.Kind.Name == schema.KindPathway {
				a.ways[w] = true
			}
		}
	}
}

// always takes what every excerpt needs: the plant record, what the owner decided,
// the tests that may be of any run, and one of each record that a rule waits for.
func (a *area) always(stirs map[*piece]bool) {
	for _, list := range [][]*piece{a.heads, a.policies, a.waivers} {
		for _, p := range list {
			a.mark(p)
		}
	}
	for p := range a.astray {
		a.mark(p)
	}
	for _, w := range a.wakers {
		if p := w.still(stirs); p != nil {
			a.mark(p)
		}
	}
}

// still is one of the pieces that do not stir, nil without one.
func (w *waker) still(stirs map[*piece]bool) *piece {
	for _, p := range w.pieces {
		if !stirs[p] {
			return p
		}
	}
	return nil
}

// complete says whether a finding about a record can be relied on in an excerpt.
func (a *area) complete(reach lint.Reach, kind, label string) bool {
	if label == "" || kind == "" || kind == schema.KindPlant {
		return kind != schema.KindPlant
	}
	bearers := a.of(label).bearers
	for _, p := range bearers {
		switch p.now.record.Kind.Name {
		case schema.KindRun, schema.KindCord, schema.KindTest:
			if !a.whole.has(p) {
				return false
			}
		case schema.KindBundle:
			if slices.ContainsFunc(p.inner, func(in *piece) bool { return !a.whole.has(in) }) {
				return false
			}
		case schema.KindPathway:
			if reach == lint.Within && !a.ways[p] || reach == lint.Along && !a.spread[label] {
				return false
			}
		default:
			if !a.spread[label] {
				return false
			}
		}
	}
	return len(bearers) > 0 || a.spread[label]
}

// widen takes all that bears on a record.
func (a *area) widen(label string) {
	for _, p := range a.of(label).bearers {
		a.take(p)
		for _, in := range p.inner {
			a.take(in)
		}
		if !isCable(p.now.record.Kind.Name) {
			a.name(p)
		}
	}
	a.label(label)
}
