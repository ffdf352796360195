package diffreport

import (
	"fmt"
	"slices"

	"homerun/schema"
	"homerun/schema/plant"
)

// A scene is what stands on site while the steps are carried out, as records
// under the labels of the later plant: every cable and every piece of hardware
// as the earlier plant has it, as the later, both or not at all, and a run
// without the ends that hang loose. What nobody works on stands as the later
// plant records it: a correction was true all along.
type scene struct {
	*planner
	progress map[*cableWork]*cableProgress
	byID     map[string]*cableWork
	// stands says of hardware that is worked on which plant's it is, if any.
	stands map[*Change]standing
	// wired are the holders whose jacks are wired anew when runs come back.
	wired map[string]*Change
	// slots are the files of what changes, by their path; at says in which file a
	// piece of work is.
	slots map[string]*slot
	at    map[any][]string
}

// standing says whose a piece of hardware is at the moment.
type standing uint8

const (
	nowhere standing = iota
	asBefore
	asAfter
)

// A slot is a file of a scene: one record, or a bundle with its runs.
type slot struct {
	path string
	// bundle is the record that the runs stand in, nil without one; of says whose
	// plant it is and label what it is called.
	bundle schema.Entry
	of     side
	label  string
	// works are the runs worked on, quiet those that nobody touches.
	works  []*cableWork
	quiet  []*schema.Record
	change *Change
}

func (p *planner) newScene() *scene {
	x := &scene{
		planner: p, progress: make(map[*cableWork]*cableProgress), byID: make(map[string]*cableWork), stands: make(map[*Change]standing),
		wired: make(map[string]*Change), slots: make(map[string]*slot), at: make(map[any][]string),
	}
	for _, w := range p.works {
		x.progress[w], x.byID[w.id] = &cableProgress{}, w
	}
	for _, t := range p.tasks {
		for _, d := range t.deeds {
			if d.change != nil {
				x.hardware(d.change)
			}
		}
	}
	for i := range p.changes {
		if c := &p.changes[i]; c.onSite() && c.after.holder() != nil && p.disturbed[c.Label] != 0 && x.at[c] == nil {
			x.hardware(c)
			x.wired[c.Label] = c
		}
	}
	for _, w := range p.works {
		x.home(w)
	}
	return x
}

// hardware makes the file of a piece of hardware.
func (x *scene) hardware(c *Change) {
	if x.at[c] != nil {
		return
	}
	s := x.slot(fmt.Sprintf("hardware %s %s %s", c.Kind, c.Label, c.Former))
	s.change = c
	x.at[c] = []string{s.path}
	if c.Before.Record != nil {
		x.stands[c] = asBefore
	}
}

func (x *scene) slot(path string) *slot {
	if x.slots[path] == nil {
		x.slots[path] = &slot{path: path}
	}
	return x.slots[path]
}

// home finds the files in which a cable stands: that of its bundle in the later
// plant, and where it leaves or is exchanged, that of its bundle in the earlier,
// unless it takes the same from either.
func (x *scene) home(w *cableWork) {
	for _, s := range []side{later, earlier} {
		r := w.run.after
		if s == earlier {
			r = w.run.before
		}
		var in *slot
		switch {
		case r == nil && w.cord.before == nil && w.cord.after == nil:
			continue
		case r == nil || r.Bundle == nil:
			in = x.slot("cable " + w.id)
		case s == earlier && x.sameBundle(r.Bundle):
			in = x.bundleSlot(later, x.headBundle(r.Bundle))
		default:
			in = x.bundleSlot(s, r.Bundle)
		}
		if !slices.Contains(in.works, w) {
			in.works = append(in.works, w)
			x.at[w] = append(x.at[w], in.path)
		}
	}
}

// headBundle is the later plant's bundle of the earlier's, nil when there is none.
func (x *scene) headBundle(b *plant.Bundle) *plant.Bundle {
	it, _ := x.head.Find(x.same(b.Label))
	now, _ := it.(*plant.Bundle)
	return now
}

// sameBundle says whether runs take the same from a bundle in either plant.
func (x *scene) sameBundle(b *plant.Bundle) bool {
	now := x.headBundle(b)
	if now == nil {
		return false
	}
	for _, f := range []*schema.Field{schema.BundleCable.Field, schema.BundleRoute.Field} {
		was, is := x.carried(b.Record(), b.Label, nil).Own(f.Name), now.Own(f.Name)
		if (was == nil) != (is == nil) || was != nil && !was.Same(is) {
			return false
		}
	}
	return true
}

// bundleSlot is the file of a bundle, with the runs that nobody works on.
func (x *scene) bundleSlot(s side, b *plant.Bundle) *slot {
	label := x.labelNow(s, b.Label)
	if s == earlier {
		if _, taken := x.head.Find(label); taken {
			label += oldMark
		}
	}
	path := "bundle " + label
	if x.slots[path] != nil {
		return x.slots[path]
	}
	in := x.slot(path)
	in.bundle, in.of, in.label = b.Place(), s, label
	if s == later {
		for _, r := range b.Record().Blocks(schema.KindRun) {
			if x.byID[r.Label] == nil {
				in.quiet = append(in.quiet, r)
			}
		}
	}
	return in
}

// entries are the records of a file as they stand now.
func (x *scene) entries(s *slot) []schema.Entry {
	if s.change != nil {
		return x.hardwareNow(s.change)
	}
	if s.bundle.Record == nil {
		var all []schema.Entry
		for _, w := range s.works {
			for _, r := range x.cableNow(w, s) {
				all = append(all, schema.Entry{Record: r, Path: s.path, Line: len(all) + 1})
			}
		}
		return all
	}
	now := *x.ofSide(s.of, s.bundle.Record, s.label)
	now.Inner = nil
	for _, r := range s.quiet {
		now.Inner = append(now.Inner, within(r, &now))
	}
	for _, w := range s.works {
		for _, r := range x.cableNow(w, s) {
			now.Inner = append(now.Inner, within(r, &now))
		}
	}
	if len(now.Inner) == 0 && s.of == earlier {
		return nil
	}
	return []schema.Entry{{Record: &now, Path: s.path, Line: 1}}
}

// within is a run in another copy of its bundle.
func within(r, bundle *schema.Record) *schema.Record {
	now := *r
	now.Parent = bundle
	return &now
}

func (x *scene) hardwareNow(c *Change) []schema.Entry {
	path := x.at[c][0]
	switch x.stands[c] {
	case asBefore:
		return []schema.Entry{{Record: x.carried(c.Before.Record, x.labelOf(c), nil), Path: path, Line: 1}}
	case asAfter:
		return []schema.Entry{{Record: c.After.Record, Path: path, Line: 1}}
	case nowhere:
	}
	return nil
}

// labelOf is the label of hardware of the earlier plant: that of the later, or
// its own, marked where something else bears it by now.
func (x *scene) labelOf(c *Change) string {
	if c.After.Record == nil {
		return x.goneLabel(c.was())
	}
	return c.Label
}

// goneLabel is the label of what the later plant does not have.
func (x *scene) goneLabel(label string) string {
	if _, taken := x.head.Find(label); taken {
		return label + oldMark
	}
	return label
}

// do carries out what a step does, and lists the files that it changes.
func (x *scene) do(step *Step) []string {
	var changed []string
	for _, f := range step.frees {
		if w := x.byID[f.cable]; w != nil {
			mark(x.progress[w].off[:], func(i int) bool { return slices.Contains(x.sides(earlier, w.before[i]), f.side) })
			changed = append(changed, x.at[w]...)
		}
	}
	for _, t := range step.takes {
		if c := x.wired[t.side.holder]; c != nil {
			x.stands[c] = asAfter
			changed = append(changed, x.at[c]...)
		}
		if w := x.byID[t.cable]; w != nil {
			mark(x.progress[w].on[:], func(i int) bool { return slices.Contains(x.sides(later, w.after[i]), t.side) })
			changed = append(changed, x.at[w]...)
		}
	}
	for _, d := range step.deeds {
		switch d.what {
		case cableOut:
			x.progress[d.work].out = true
		case cableIn:
			x.progress[d.work].in = true
		case tagged:
			x.progress[d.work].tagged = true
		case goes:
			if !x.inHand(d.change) {
				x.stands[d.change] = nowhere
			}
		case comes:
			x.stands[d.change] = asAfter
		}
		if d.work != nil {
			changed = append(changed, x.at[d.work]...)
		} else {
			changed = append(changed, x.at[d.change]...)
		}
	}
	return tidy(changed)
}

// inHand says whether hardware that is taken out comes back with what is on it: a
// panel that changes its place in the room keeps its runs, a rack what is in it.
func (x *scene) inHand(c *Change) bool {
	return c.After.Record != nil && x.disturbed[c.Label]&runsOff == 0
}

func mark(ends []bool, is func(i int) bool) {
	for i := range ends {
		ends[i] = ends[i] || is(i)
	}
}
