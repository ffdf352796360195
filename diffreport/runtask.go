package diffreport

import (
	"fmt"
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
)

// runTasks makes the tasks of one run: off its ports, out of its pathways, laid
// anew, terminated, labelled and tested, as far as the change asks for it. The
// cable that replaces one in service is pulled while that one still works.
func (p *planner) runTasks(w *cableWork) {
	w.renew = w.changed(schema.RunCable.Name, schema.RunRoute.Name, schema.RunLength.Name)
	was, is := physical(w.run.before), physical(w.run.after)
	off, on := w.plan(p)
	p.works = append(p.works, w)
	p.takeOff(w, off, "disconnect", "terminate")
	var out, pull *task
	if was != nil && (is == nil || w.renew) {
		out = p.takeOut(w)
	}
	if is == nil {
		return
	}
	if was == nil || w.renew {
		pull = p.lay(w)
		if out != nil && len(p.loses(w)) == 0 {
			pull.wait(out)
		}
	}
	p.putOn(w, on, Step{Action: Terminate, Text: "terminate"}, toTerminate, []*task{pull})
	for i, e := range w.after {
		if on[i] {
			p.used.jacks(w.label, e)
		}
	}
	p.withdrawn(w)
	done := append([]*task{pull}, append(w.on, w.off...)...)
	if pull != nil || w.relabelled() {
		p.toPrint(schema.KindRun, w.label)
		p.labelRun(w, pull, done)
	}
	if pull != nil || len(w.on) > 0 || w.restored() {
		p.measure(w, done)
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
func (p *planner) takeOut(w *cableWork) *task {
	r := w.run.before
	name := w.name()
	if physical(w.run.after) != nil {
		name = "the old cable of " + name
	}
	where := ""
	if r.Way != nil && len(r.Way.Pathways) > 0 {
		where = " of " + pathNames(r.Way)
	}
	what := ""
	if length, ok := r.Length(); ok {
		what = ", " + length.Text(p.head.Units)
	}
	t := &task{phase: toRemoveCable, urge: building, Step: Step{
		Action: Remove, Class: w.class, Space: p.roomNow(firstRoom(r)), Records: []string{w.label}, Text: "take " + name + " out" + where + what,
		Cautions: p.wayCautions(p.base, r),
	}}
	t.deeds = []deed{{what: cableOut, work: w}}
	t.undo = back("pull cable again for ", name+what, " and measure it once it is terminated")
	t.wait(w.off...)
	if r.Way != nil {
		for _, path := range r.Way.Pathways {
			label := p.same(path.Label)
			p.outOf[label] = append(p.outOf[label], t)
			p.opening(path)
		}
	}
	return p.add(t)
}

// lay makes the task that pulls a run. Runs of one bundle that share cable and
// route are pulled together.
func (p *planner) lay(w *cableWork) *task {
	r := w.run.after
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
	t := &task{phase: toPull, urge: building, items: []string{item}, tail: tail, undo: back("take ", w.label, " out again"), Step: Step{
		Action: Pull, Class: w.class, Space: firstRoom(r), Records: []string{w.label}, Text: "pull",
		Cautions: p.wayCautions(p.head, r),
	}}
	t.deeds = []deed{{what: cableIn, work: w}}
	t.group = fmt.Sprintf("pull %d %s", w.class, tail)
	if r.Way != nil {
		for _, path := range r.Way.Pathways {
			t.wait(p.ready[path.Label])
			p.through[path.Label] = append(p.through[path.Label], t)
			p.opening(path)
		}
	}
	p.used.cable(r)
	return p.add(t)
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
func (p *planner) withdrawn(w *cableWork) {
	if w.run.before == nil || w.run.after == nil || !w.changed(schema.RunState.Name) && !p.tagTouched(w) {
		return
	}
	state, _ := w.run.after.State()
	t := &task{phase: toTag, urge: building, Step: Step{Action: Tag, Class: w.class, Space: firstRoom(w.run.after), Records: []string{w.label}, Cautions: []string{abandonedDuty}}}
	switch state {
	case schema.StateTagged:
		t.Text = fmt.Sprintf("take %s out of use and tag it at both ends for future use", w.name())
		t.undo = back("take the tags off ", w.name(), " and bring it back into use")
	case schema.StateAbandoned:
		t.Text = fmt.Sprintf("take %s out of use; the records leave it in place without a tag", w.name())
		t.undo = back("bring ", w.name(), " back into use")
	default:
		return
	}
	t.deeds, w.tagging = []deed{{what: tagged, work: w}}, true
	t.wait(w.off...)
	if stageOfRun(w.run.before) == inUse {
		if t.Outage = p.loses(w); len(t.Outage) > 0 {
			t.urge = severing
		}
		t.Cautions = append(t.Cautions, p.isolate(w, t, w.before[:])...)
	}
	p.add(t)
}

// tagTouched says whether only the tag of a withdrawn run differs.
func (p *planner) tagTouched(w *cableWork) bool {
	return w.change != nil && w.change.Meaning == schema.Relabelling && stageOfRun(w.run.before) == outOfUse && !w.relabelled()
}

// labelRun makes the tasks that label a run at both ends. An end of a new cable
// is labelled when it is terminated, so that nobody has to come again for it; a
// cable with another label keeps the old one as long as steps call it by that.
func (p *planner) labelRun(w *cableWork, pull *task, done []*task) {
	for i, e := range w.after {
		space := e.space()
		where := e.row.String()
		if len(e.row) == 0 {
			space, where = firstRoom(w.run.after), "its other end"
		}
		t := &task{phase: toLabel, urge: building, group: fmt.Sprintf("label %d", w.class), items: []string{w.label + " at " + where}, Step: Step{
			Action: Affix, Class: w.class, Space: space, Records: []string{w.label}, Text: "label",
		}}
		if !w.renew && physical(w.run.before) != nil {
			t.items = []string{w.label + " (until now " + w.was + ") at " + where}
			t.undo = back("put the former labels back: ", w.was+" at "+where, "")
		}
		if w.relabelled() {
			t.wait(done...)
		} else {
			t.wait(pull, w.onAt[i])
		}
		p.add(t)
	}
}

// measure makes the task that tests the link which a run is part of, once for
// all its runs.
func (p *planner) measure(w *cableWork, after []*task) {
	r := w.run.after
	if !r.Live() {
		return
	}
	lead, limit := r.Label, TestLimit(r.Cable, p.head.Regime)
	if r.Link != nil {
		lead = r.Link.Lead().Label
	}
	t := p.tested[lead]
	if t == nil {
		t = p.add(&task{phase: toMeasure, urge: building, group: fmt.Sprintf("test %d %s", w.class, limit), items: []string{lead}, tail: ": " + limit, Step: Step{
			Action: Measure, Class: w.class, Space: firstRoom(r), Records: []string{lead}, Text: "test",
			Cautions: p.lightCautions(r.Cable.Medium()),
		}})
		p.tests = append(p.tests, Test{Record: lead, Limit: limit, Reason: w.reason()})
	}
	if len(w.off) > 0 {
		t.urge = mending
	}
	t.wait(after...)
	t.Records = append(t.Records, r.Label)
	p.tested[lead], p.tested[r.Label] = t, t
}

// reason says why a run is tested.
func (w *cableWork) reason() string {
	switch {
	case w.class == ClassAdd:
		return "new run"
	case w.renew:
		return "a new cable in place of the old one"
	case w.restored():
		return "brought back into use"
	case w.change == nil:
		return "re-terminated on hardware that was exchanged or moved"
	}
	return "re-terminated"
}
