package again

import (
	"errors"
	"maps"
	"slices"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// A Step is what one change of the files did.
type Step struct {
	// Gone and Come are the findings that stood before and stand no more, and the
	// other way round, under the waivers that cover them on either day. A finding
	// that says something else now has gone and come.
	Gone, Come []lint.Finding
	// Base and Head are the records that differ, before and after, with all that
	// tells what was done to them, and all that rules about a change read; nil on a
	// side without any files. They are the whole plant where Whole is set.
	Base, Head *plant.Plant
	Whole      bool
	// Size is how many records were looked at.
	Size int
}

// Step changes files and judges what that can touch. Each path may be changed
// once. Today is the day by which waivers hold. The error names a rule that
// panicked: then the standing is not to be used any more.
func (s *Standing) Step(changes []Change, today unit.Date) (*Step, error) {
	if len(s.names)+len(s.kin.by) == 0 {
		s.reserve(changes)
	}
	s.round++
	p := s.match(changes)
	s.settleDown(p)
	w := &work{
		Standing: s, plan: p, stirs: make(map[*piece]bool, len(p.stirs)),
		laidBefore: s.newGroup(laidBefore), laidAfter: s.newGroup(laidAfter), laid: s.newGroup(laidEver), in: s.newGroup(inExcerpt),
	}
	for _, at := range p.stirs {
		w.stirs[at.piece] = true
	}
	w.entire = s.pieces == 0 || s.entangled() || w.governs() || w.damaged()
	awake := s.awake()
	astray := slices.ContainsFunc(p.stirs, func(at stir) bool { return s.astray[at.piece] })
	w.was = w.collect(before)
	if len(w.was.ways) > 0 && !w.was.over {
		w.was.lays(&w.laidBefore, w.was.ways, w.stirs, after)
	}
	s.apply(p)
	astray = s.findAstray(p) || astray
	w.is = w.collect(after)
	w.entire = w.entire || s.pieces == 0 || s.entangled() || !slices.Equal(awake, s.awake()) || astray
	if err := w.judge(); err != nil {
		return nil, err
	}
	if !w.entire && !s.stood(w.gone) { // a rule looks further than it says: only the whole is sure
		if err := w.everything(); err != nil {
			return nil, err
		}
	}
	step := &Step{Base: w.base, Head: w.head, Whole: w.entire, Size: len(w.in.list)}
	if err := s.settleFindings(w, step, today); err != nil {
		return nil, err
	}
	return step, nil
}

// entangled says whether labels are given twice or files are taken for each other:
// then what leads where depends on everything.
func (s *Standing) entangled() bool { return s.twice > 0 || len(s.heads) > 1 || s.likePaths > 0 }

// awake says for each waker whether there is what it waits for.
func (s *Standing) awake() []bool {
	all := make([]bool, len(s.wakers))
	for i, w := range s.wakers {
		all[i] = len(w.pieces) > 0
	}
	return all
}

// work is what one step does.
type work struct {
	*Standing
	*plan
	stirs   map[*piece]bool
	was, is *area
	// laidBefore are the pieces that the pathways of the first are judged by, laidAfter
	// those that the pathways of both are, laid all of them.
	laidBefore, laidAfter, laid group
	// in are the pieces of the excerpts, entire is set where they are everything.
	in     group
	entire bool
	// base and head are as stated.
	base, head *plant.Plant
	// gone and come differ by what they say.
	gone, come []lint.Finding
	// stands is what was found in the excerpt before.
	stands []lint.Finding
}

// governs says whether the plant record or a policy stirs; of several policies for a
// rule the order decides which one holds.
func (w *work) governs() bool {
	return slices.ContainsFunc(w.plan.stirs, func(at stir) bool {
		return slices.ContainsFunc([]*schema.Record{at.before, at.after}, func(r *schema.Record) bool {
			return r != nil && (at.loud && r.Kind.Name == schema.KindPlant || (at.loud || at.named && len(w.policies) > 1) && r.Kind.Name == schema.KindPolicy)
		})
	})
}

// damaged says whether a record without a label stirs: nothing finds it again.
func (w *work) damaged() bool {
	return slices.ContainsFunc(w.plan.stirs, func(at stir) bool {
		return at.before != nil && at.before.Label == "" || at.after != nil && at.after.Label == ""
	})
}

// collect finds what the step can touch in the state at hand.
func (w *work) collect(v view) *area {
	a := w.newArea(v)
	if w.entire {
		return a
	}
	for _, at := range w.plan.stirs {
		if at.now.record != nil {
			a.stir(at)
		}
		other := at.before == nil || at.after == nil || at.before.Label != at.after.Label
		for _, r := range []*schema.Record{at.before, at.after} {
			switch {
			case r != nil && other:
				a.label(r.Label)
			case r != nil:
				a.alikes(r.Label)
			}
		}
	}
	a.always(w.stirs)
	return a
}

// mostWidened is how often an excerpt is widened before everything is taken.
const mostWidened = 3

// judge holds the excerpts before and after against the rules, and widens them
// until what differs can be relied on.
func (w *work) judge() error {
	for range mostWidened {
		if w.entire = w.entire || w.was.over || w.is.over; w.entire {
			break
		}
		if err := w.excerpts(); err != nil {
			return err
		}
		open := w.open()
		if len(open) == 0 {
			w.problems += problemsOf(w.head) - problemsOf(w.base)
			return nil
		}
		for _, label := range open {
			w.is.widen(label)
		}
	}
	return w.everything()
}

func problemsOf(p *plant.Plant) int {
	if p == nil {
		return 0
	}
	return len(p.Problems)
}

// excerpts judges the excerpts as they are.
func (w *work) excerpts() error {
	w.in.addAll(w.was.read.list)
	w.in.addAll(w.is.read.list)
	if len(w.was.ways)+len(w.is.ways) > 0 {
		maps.Copy(w.is.ways, w.was.ways)
		w.is.lays(&w.laidAfter, w.is.ways, w.stirs, before, after)
		w.laid.addAll(w.laidBefore.list)
		w.laid.addAll(w.laidAfter.list)
	}
	was, is, pathways := w.side(before), w.side(after), w.pathways()
	w.base, w.head, w.stands = was.plant, is.plant, was.found
	gone, come := differ(was.found, is.found)
	w.gone, w.come = slices.Concat(gone, pathways.gone), slices.Concat(come, pathways.found)
	return errors.Join(was.err, is.err, pathways.err)
}

// A side is an excerpt and what was found in it; of pathways what has come, and
// what has gone.
type side struct {
	plant       *plant.Plant
	found, gone []lint.Finding
	err         error
}

// side judges the excerpt of one view.
func (w *work) side(v view) side {
	p := w.excerpt(v, w.in.list, w.plan, asStated)
	at := side{plant: p}
	if w.options.Head != nil {
		p = w.excerpt(v, w.in.list, w.plan, judged)
	}
	at.found, at.err = check(p, w.along)
	return at
}

// pathways judges what lies in pathways. What was found about them before is
// remembered; where anything else has a finding of these rules it is found again.
func (w *work) pathways() (at side) {
	if len(w.is.ways) == 0 {
		return at
	}
	about := w.about()
	is, err := check(w.layOut(after, w.is.ways, w.laid.list), w.within)
	if err != nil {
		return side{err: err}
	}
	if w.plain(is, about) {
		var was []lint.Finding
		for _, r := range w.within {
			for label := range about {
				was = append(was, w.found[spot{r.Name, label}]...)
			}
		}
		at.gone, at.found = subtract(was, is, identity)
		return at
	}
	was, err := check(w.layOut(before, w.is.ways, w.laid.list), w.within)
	at.gone, at.found = differ(was, is)
	at.err = err
	return at
}

// about are the labels of the pathways that are judged.
func (w *work) about() map[string]bool {
	labels := make(map[string]bool, len(w.is.ways))
	for way := range w.is.ways {
		for _, v := range []view{before, after} {
			if r := w.Standing.in(v, way).record; r != nil {
				labels[r.Label] = true
			}
		}
	}
	return labels
}

// plain says whether all findings, before and after, are about those pathways.
func (w *work) plain(is []lint.Finding, about map[string]bool) bool {
	if slices.ContainsFunc(is, func(f lint.Finding) bool { return f.Kind != schema.KindPathway || !about[f.Record] }) {
		return false
	}
	for _, p := range w.laid.list {
		r := w.Standing.in(before, p).record
		if r != nil && !about[r.Label] && slices.ContainsFunc(w.of(r.Label).noted, w.lies) {
			return false
		}
	}
	return true
}

func check(p *plant.Plant, rules []*lint.Rule) ([]lint.Finding, error) {
	if p == nil {
		return nil, nil
	}
	return lint.Check(p, rules, lint.Options{})
}

// open are the labels about which the excerpts differ although not all that bears
// on them was looked at.
func (w *work) open() []string {
	labels := w.unseen()
	for _, list := range [][]lint.Finding{w.gone, w.come} {
		for i := range list {
			f := &list[i]
			reach := lint.Along
			if w.lies(f.Rule) {
				reach = lint.Within
			}
			if w.stirsNow(f.Record) || w.is.complete(reach, f.Kind, f.Record) {
				continue
			}
			if f.Kind == schema.KindPlant {
				w.entire = true // what the plant record is judged by is everything
			}
			if !slices.Contains(labels, f.Record) {
				labels = append(labels, f.Record)
			}
		}
	}
	return labels
}

// unseen are the bundles about which something stands that the excerpt before does not
// show: what the runs in it add to that would not be seen either.
func (w *work) unseen() []string {
	var labels []string
	for _, p := range w.in.list {
		r := w.Standing.in(before, p).record
		if len(p.inner) == 0 || r == nil || len(w.of(r.Label).noted) == 0 || !slices.ContainsFunc(p.inner, func(in *piece) bool { return !w.in.has(in) }) {
			continue
		}
		if slices.ContainsFunc(w.of(r.Label).noted, func(rule string) bool { return w.hides(spot{rule, r.Label}) }) {
			labels = append(labels, r.Label)
		}
	}
	return labels
}

// hides says whether the excerpt before lacks something that stands.
func (w *work) hides(at spot) bool {
	return slices.ContainsFunc(w.found[at], func(f lint.Finding) bool {
		return !slices.ContainsFunc(w.stands, func(g lint.Finding) bool { return spotOf(&g) == at && slices.Equal(f.Key, g.Key) })
	})
}

// stirsNow says whether a label is gone with the step.
func (w *work) stirsNow(label string) bool {
	return len(w.of(label).bearers) == 0 && w.is.spread[label]
}

// everything judges the whole plant. What was found before is remembered.
func (w *work) everything() error {
	w.entire = true
	w.base, w.head = w.Standing.entire(before, w.plan, asStated), w.Standing.entire(after, w.plan, asStated)
	w.in.list = nil
	p := w.head
	if w.options.Head != nil {
		p = w.Standing.entire(after, w.plan, judged)
	}
	found, err := check(p, slices.Concat(w.along, w.within))
	if err != nil {
		return err
	}
	var stood []lint.Finding
	for _, list := range w.found {
		stood = append(stood, list...)
	}
	w.gone, w.come = subtract(stood, found, identity)
	w.problems = problemsOf(w.head)
	return nil
}
