package diffreport

import (
	"fmt"
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
)

// duties are what the code asks for because of this work.
func (p *planner) duties() []string {
	var bare, tagged, out []string
	for _, w := range p.works {
		r := w.run.after
		if w.run.before == nil {
			continue
		}
		if physical(r) == nil {
			if physical(w.run.before) != nil {
				out = append(out, w.was)
			}
			continue
		}
		switch state, _ := r.State(); {
		case !w.changed(schema.RunState.Name) && !p.tagTouched(w):
		case state == schema.StateAbandoned:
			bare = append(bare, r.Label)
		case state == schema.StateTagged:
			tagged = append(tagged, r.Label)
		}
	}
	var all []string
	if len(out) > 0 {
		all = append(all, fmt.Sprintf("%s: take the whole cable out, not only its ends; %s", strings.Join(tidy(out), ", "), abandonedDuty))
	}
	if len(tagged) > 0 {
		all = append(all, fmt.Sprintf("%s: a tag that lasts where the cable is, at both ends; %s", strings.Join(tidy(tagged), ", "), abandonedDuty))
	}
	if len(bare) > 0 {
		all = append(all, fmt.Sprintf("%s: left in place without a tag; %s", strings.Join(tidy(bare), ", "), abandonedDuty))
	}
	if stops := tidy(p.opened); len(stops) > 0 {
		all = append(all, strings.Join(stops, ", ")+": a fire-stop that is opened is closed with a listed system before the crew leaves")
	}
	return all
}

// opening notes the crossings of rated walls and floors of a pathway that cable
// is pulled through or taken out of.
func (p *planner) opening(path *plant.Pathway) {
	for _, c := range path.Blocks(schema.KindCrossing) {
		_, rated := schema.CrossingRating.In(c)
		if _, stopped := schema.CrossingFirestop.In(c); rated || stopped {
			p.opened = append(p.opened, path.Label+" at "+c.Label)
		}
	}
}
