package diffreport

import (
	"fmt"
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
)

// runTasks makes the tasks of one run: off its ports, out of its pathways, laid
// anew, terminated, labelled and tested, as far as the change asks for it.
func (p *planner) runTasks(w *cableWork) {
	w.renew = w.changed(schema.RunCable.Name, schema.RunRoute.Name, schema.RunLength.Name)
	was, is := physical(w.run.before), physical(w.run.after)
	off, on := w.plan(p)
	var before []*task
	before = append(before, p.takeOff(w, off, "disconnect")...)
	if was != nil && (is == nil || w.renew) {
		before = append(before, p.takeOut(w, before))
	}
	if is == nil {
		return
	}
	if was == nil || w.renew {
		before = []*task{p.lay(w, before)}
	}
	ended := p.putOn(w, on, Step{Action: Terminate, Text: "terminate %s on %s"}, toTerminate, before)
	for i, e := range w.after {
		if on[i] {
			p.used.jacks(w.label, e)
		}
	}
	p.withdrawn(w, before)
	fresh := was == nil || w.renew
	if fresh || w.relabelled() {
		p.labelRun(w, append(ended, before...))
	}
	if fresh || len(ended) > 0 || w.restored() {
		p.measure(w, append(ended, before...))
	}
}

// physical is the run where there is a cable: a planned run is none.
func physical(r *plant.Run) *plant.Run {
	if r == nil || (subject{Entry: r.Place(), item: r}).stage() == onPaper {
		return nil
	}
	return r
}

func (w *cableWork) relabelled() bool { return w.was != w.label }

// restored says whether a withdrawn run comes back into use.
func (w *cableWork) restored() bool {
	return w.run.before != nil && w.run.after != nil && stageOfRun(w.run.before) == outOfUse && stageOfRun(w.run.after) == inUse
}

func stageOfRun(r *plant.Run) stage { return subject{Entry: r.Place(), item: r}.stage() }

// takeOut makes the task that takes a run out of its pathways.
func (p *planner) takeOut(w *cableWork, after []*task) *task {
	r := w.run.before
	text := "take " + w.name() + " out"
	if r.Way != nil && len(r.Way.Pathways) > 0 {
		text += " of " + pathNames(r.Way)
	}
	if length, ok := r.Length(); ok {
		text += ", " + length.Text(p.head.Units)
	}
	return p.add("", &task{phase: toRemoveCable, after: after, Step: Step{
		Action: Remove, Class: w.class, Space: firstRoom(r), Records: []string{w.label}, Text: text,
		Cautions: p.wayCautions(p.base, r),
	}})
}

// lay makes the task that pulls a run. Runs of one bundle that share cable and
// route are pulled together.
func (p *planner) lay(w *cableWork, after []*task) *task {
	r := w.run.after
	group := ""
	if r.Bundle != nil && r.Record().Own(schema.RunCable.Name) == nil && r.Record().Own(schema.RunRoute.Name) == nil {
		group = fmt.Sprintf("pull %d %s %s", w.class, r.Bundle.Label, firstRoom(r))
	}
	item := w.label
	if length, ok := r.Length(); ok {
		item += " (" + length.Text(p.head.Units) + ")"
	}
	tail := ""
	if r.Cable != nil {
		tail += " of " + r.Cable.Label
	}
	if r.Way != nil && len(r.Way.Pathways) > 0 {
		tail += " through " + pathNames(r.Way)
	}
	t := &task{phase: toPull, after: append([]*task(nil), after...), items: []string{item}, tail: tail, Step: Step{
		Action: Pull, Class: w.class, Space: firstRoom(r), Records: []string{w.label}, Text: "pull",
		Cautions: p.wayCautions(p.head, r),
	}}
	if r.Way != nil {
		for _, path := range r.Way.Pathways {
			if ready := p.ready[path.Label]; ready != nil {
				t.after = append(t.after, ready)
			}
		}
	}
	p.used.cable(r)
	return p.add(group, t)
}

func pathNames(w *plant.Way) string {
	names := make([]string, len(w.Pathways))
	for i, path := range w.Pathways {
		names[i] = path.Label
	}
	return strings.Join(names, ", ")
}

func firstRoom(r *plant.Run) string {
	if s := r.From.Space(); s != nil {
		return s.Label
	}
	if s := r.To.Space(); s != nil {
		return s.Label
	}
	return ""
}

// withdrawn makes the task of a run that is taken out of use and stays.
func (p *planner) withdrawn(w *cableWork, after []*task) {
	if w.run.before == nil || w.run.after == nil || !w.changed(schema.RunState.Name) && !p.tagTouched(w) {
		return
	}
	state, _ := w.run.after.State()
	step := Step{Class: w.class, Space: firstRoom(w.run.after), Records: []string{w.label}, Cautions: []string{abandonedDuty}}
	if stageOfRun(w.run.before) == inUse {
		step.Outage = p.loses(w)
		step.Cautions = append(step.Cautions, p.loadCautions(w.before[:])...)
	}
	switch state {
	case schema.StateTagged:
		step.Action, step.Text = Tag, fmt.Sprintf("take %s out of use and tag it at both ends for future use", w.name())
	case schema.StateAbandoned:
		step.Action, step.Text = Tag, fmt.Sprintf("take %s out of use; the records leave it in place without a tag", w.name())
	default:
		return
	}
	p.add("", &task{phase: toTag, after: after, Step: step})
}

// tagTouched says whether only the tag of a withdrawn run differs.
func (p *planner) tagTouched(w *cableWork) bool {
	return w.change != nil && w.change.Meaning == schema.Relabelling && stageOfRun(w.run.before) == outOfUse && !w.relabelled()
}

// labelRun makes the tasks that label a run at both ends.
func (p *planner) labelRun(w *cableWork, after []*task) {
	for _, e := range w.after {
		space := e.space()
		where := e.row.String()
		if len(e.row) == 0 {
			space, where = firstRoom(w.run.after), "its other end"
		}
		p.labels = append(p.labels, w.label)
		p.add(fmt.Sprintf("label %d %s", w.class, space), &task{phase: toLabel, after: after, items: []string{w.label + " at " + where}, Step: Step{
			Action: Affix, Class: w.class, Space: space, Records: []string{w.label}, Text: "label",
		}})
	}
}

// measure makes the task that tests the link which a run is part of, once for
// all its runs.
func (p *planner) measure(w *cableWork, after []*task) {
	r := w.run.after
	if !r.Live() {
		return
	}
	lead, limit := r.Label, p.limit(r)
	if r.Link != nil {
		lead = r.Link.Lead().Label
	}
	t := p.tested[lead]
	if t == nil {
		t = p.add(fmt.Sprintf("test %d %s %s", w.class, firstRoom(r), limit), &task{phase: toMeasure, items: []string{lead}, tail: ": " + limit, Step: Step{
			Action: Measure, Class: w.class, Space: firstRoom(r), Records: []string{lead}, Text: "test",
			Cautions: p.lightCautions(r.Cable.Medium()),
		}})
		p.tests = append(p.tests, Test{Record: lead, Limit: limit, Reason: w.reason()})
	}
	t.after = append(t.after, after...)
	t.Records = append(t.Records, r.Label)
	p.tested[lead], p.tested[r.Label] = t, t
}

// reason says why a run is tested.
func (w *cableWork) reason() string {
	switch {
	case w.class == ClassAdd:
		return "new run"
	case w.renew:
		return "another cable or route: " + w.change.Meaning.String()
	case w.restored():
		return "brought back into use"
	case w.change == nil:
		return "re-terminated on hardware that was exchanged or moved"
	}
	return "re-terminated"
}
