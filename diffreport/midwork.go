package diffreport

import (
	"slices"
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
)

// In the middle of the work every record stands as the earlier plant has it or
// as the later, or not at all, and a channel that is whole is one of theirs. What
// neither of them ever held is old and new cables together in a pathway. That is
// what the linter is asked about: in its fullest state, with all of both.

// mixed are the pathways that hold old and new cables at once: something is
// pulled into them before everything that leaves is out.
func (p *planner) mixed() []string {
	var all []string
	for label, in := range p.through {
		last := 0
		for _, out := range p.outOf[label] {
			last = max(last, out.final().Number)
		}
		if slices.ContainsFunc(in, func(pull *task) bool { return pull.final().Number < last }) {
			all = append(all, label)
		}
	}
	slices.Sort(all)
	return all
}

// judge asks the linter about the pathways that hold old and new cables at
// once, and notes them where it objects to what neither plant has. It returns
// those that were judged.
func (p *planner) judge(ask func(*plant.Plant) []Objection) []string {
	mixed := p.mixed()
	if ask == nil || len(mixed) == 0 {
		return nil
	}
	known := make(map[string]float64)
	for _, s := range []side{earlier, later} {
		for _, o := range ask(p.middle(mixed, s)) {
			key := o.Identity()
			if stood, met := known[key]; !met || o.Excess > stood {
				known[key] = o.Excess
			}
		}
	}
	for _, o := range ask(p.middle(mixed, earlier, later)) {
		if stood, met := known[o.Identity()]; !met || o.Excess > stood {
			p.full = mixed
			return mixed
		}
	}
	return mixed
}

// takenOut are the runs of the earlier plant whose cable comes out.
func (p *planner) takenOut() map[string]bool {
	all := make(map[string]bool)
	for _, w := range p.works {
		if physical(w.run.before) != nil && (physical(w.run.after) == nil || w.renew) {
			all[w.was] = true
		}
	}
	return all
}

// oldMark marks the label of a cable that is to be taken out, where another
// bears its label already.
const oldMark = " (old)"

// Identity is equal for what one rule has against one record in two states of the
// site. The old cable of a run counts as the run.
func (o *Objection) Identity() string {
	parts := append([]string{o.Rule, o.Record}, o.Key...)
	return strings.ReplaceAll(strings.Join(parts, gone), oldMark, "")
}

// middle makes a plant of some pathways with the runs that one plant has in
// them, or of both.
func (p *planner) middle(paths []string, sides ...side) *plant.Plant {
	x := &excerpt{planner: p, has: make(map[string]bool)}
	for _, s := range slices.Backward(sides) {
		x.frame(s, paths)
		if len(sides) > 1 && s == earlier {
			x.cables(s, paths, p.takenOut())
			continue
		}
		x.cables(s, paths, nil)
	}
	return plant.Build(p.head.Dir, []*schema.File{{Path: schema.PlantFile, Entries: x.entries}})
}
