package diffreport

import (
	"fmt"
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
)

// A disturbance says which cables come off a holder that is worked on.
type disturbance uint8

const (
	runsOff disturbance = 1 << iota
	cordsOff
)

// hardware makes the tasks of everything that is not a cable.
func (p *planner) hardware() {
	for i := range p.changes {
		c := &p.changes[i]
		switch {
		case !c.onSite(), c.Kind == schema.KindRun, c.Kind == schema.KindCord, c.Kind == schema.KindBundle:
			continue
		case c.Class == ClassRemoval:
			p.takeDown(c)
		case c.Class == ClassAdd:
			p.putUp(c, "")
		case c.Class == ClassMove, c.Class == ClassChange:
			p.rework(c)
		}
	}
}

func phasesOf(kind string) (down, up phase) {
	switch kind {
	case schema.KindPathway:
		return toRemovePathway, toInstallPathway
	case schema.KindRack, schema.KindBusbar:
		return toRemoveRack, toInstallRack
	}
	return toRemoveHolder, toInstallHolder
}

// takeDown makes the task that takes hardware out, and the one before it that
// switches off what carries power.
func (p *planner) takeDown(c *Change) *task {
	down, _ := phasesOf(c.Kind)
	e := c.Before
	label := p.same(c.was())
	t := &task{phase: down, urge: building, undo: back("put ", c.Kind+" "+c.was()+" back"+placeWords(e, " in"), ""), Step: Step{
		Action: Remove, Class: c.Class, Space: p.roomNow(roomOf(c.before)), Records: []string{c.Label},
		Text: fmt.Sprintf("take %s %s out%s", c.Kind, c.was(), placeWords(e, " of")), Cautions: p.roomCautions(p.base, c.before),
	}}
	t.deeds = []deed{{what: goes, change: c}}
	if c.Kind == schema.KindEquipment {
		off := p.add(&task{phase: toIsolate, urge: building, undo: back("switch ", c.was(), " on again"), Step: Step{
			Action: Isolate, Class: c.Class, Space: t.Space, Records: []string{c.Label}, Text: "switch " + c.was() + " off and secure it against being switched on",
		}})
		p.switchedOff[label] = off
		t.wait(off)
	}
	if h := c.before.holder(); h != nil {
		p.touched[label] = true
		p.leaving = append(p.leaving, leaving{t, h})
		if h.Rack != nil {
			p.inRack[p.same(h.Rack.Label)] = append(p.inRack[p.same(h.Rack.Label)], t)
		}
	}
	if at := p.unitOf(earlier, e); at != "" {
		p.vacated[at] = append(p.vacated[at], t)
	}
	p.down[label] = t
	return p.add(t)
}

// leaving is a task that takes out hardware, which the cables on it have to
// leave first.
type leaving struct {
	task   *task
	holder *plant.Holder
}

// putUp makes the task that puts hardware in place.
func (p *planner) putUp(c *Change, how string) *task {
	_, up := phasesOf(c.Kind)
	t := &task{phase: up, urge: building, holder: c.Label, undo: back("take ", c.Kind+" "+c.Label+" out again", ""), Step: Step{
		Action: Install, Class: c.Class, Space: roomOf(c.after), Records: []string{c.Label},
		Text: fmt.Sprintf("install %s %s%s%s%s", c.Kind, c.Label, how, placeWords(c.After, " in"), p.makeWords(c.After)), Cautions: p.roomCautions(p.head, c.after),
	}}
	t.deeds = []deed{{what: comes, change: c}}
	if c.Class == ClassAdd {
		p.used.pieces(c.Kind+p.makeWords(c.After), c.Label, 1)
		p.toPrint(c.Kind, c.Label)
	}
	if h := c.after.holder(); h != nil {
		p.touched[h.Label] = true
	}
	p.up = append(p.up, rise{t, c})
	p.ready[c.Label] = p.add(t)
	return t
}

// rise is a task that puts hardware in place, and the change that asks for it.
type rise struct {
	task   *task
	change *Change
}

// rework makes the tasks of hardware that is moved, exchanged, bonded or
// measured again. What is moved or exchanged is taken out first, since another
// piece may be waiting for its place.
func (p *planner) rework(c *Change) {
	top := topMeaning(c)
	switch {
	case c.Class == ClassMove && (c.before.holder() != nil || c.Kind == schema.KindRack || c.Kind == schema.KindBusbar), top == schema.Replace && c.Kind != schema.KindPathway:
		p.disturb(c, top)
		down := p.takeDown(c)
		how := " again"
		if top == schema.Replace {
			how = " in exchange"
			p.used.pieces(c.Kind+p.makeWords(c.After), c.Label, 1)
			if c.Former == "" { // another label is printed anyhow
				p.toPrint(c.Kind, c.Label)
			}
		}
		p.putUp(c, how).wait(down)
	case c.Meaning == schema.Rebond:
		p.bonds[c.Label] = p.plain(c, Bond, toBond, "bond or fire-stop at "+c.Label+": "+c.fieldWords())
	case c.Meaning == schema.Retest:
		p.plain(c, Measure, toMeasure, "measure again what "+c.Label+" is connected to: "+c.fieldWords())
	case c.Meaning == schema.Reterminate:
		p.disturb(c, schema.Reterminate)
	default:
		p.ready[c.Label] = p.plain(c, Install, toInstallPathway, "alter "+c.Kind+" "+c.Label+": "+c.fieldWords())
	}
}

func (p *planner) plain(c *Change, action Action, at phase, text string) *task {
	t := &task{phase: at, urge: building, Step: Step{
		Action: action, Class: c.Class, Space: roomOf(c.after), Records: []string{c.Label}, Text: text, Cautions: p.roomCautions(p.head, c.after),
	}}
	t.deeds = []deed{{what: comes, change: c}}
	if at != toMeasure {
		t.undo = back("set "+c.Kind+" ", c.Label, " back: "+c.formerWords())
	}
	return p.add(t)
}

// topMeaning is the greatest meaning of the record's own fields, those of
// blocks inside it left out.
func topMeaning(c *Change) schema.Meaning {
	top := schema.Paper
	for _, f := range c.Fields {
		if !strings.Contains(f.Name, " ") {
			top = max(top, f.Meaning)
		}
	}
	return top
}

// disturb notes which cables come off a holder. Hardware that only changes its
// place in the same room keeps its runs; its cords are plugged in again.
func (p *planner) disturb(c *Change, top schema.Meaning) {
	if c.after.holder() == nil {
		return
	}
	switch {
	case top == schema.Reterminate:
		p.disturbed[c.Label] = runsOff
	case top == schema.Relocate && p.same(roomOf(c.before)) == roomOf(c.after):
		p.disturbed[c.Label] = cordsOff
	default:
		p.disturbed[c.Label] = runsOff | cordsOff
	}
}

func (c *Change) fieldWords() string {
	return c.eachField(func(f *FieldChange) string { return fmt.Sprintf("%s from %s to %s", f.Name, f.Before, f.After) })
}

// formerWords are the values to go back to.
func (c *Change) formerWords() string {
	return c.eachField(func(f *FieldChange) string { return f.Name + " " + f.Before })
}

func (c *Change) eachField(words func(f *FieldChange) string) string {
	var all []string
	for i := range c.Fields {
		if c.Fields[i].Meaning > schema.Relabelling {
			all = append(all, words(&c.Fields[i]))
		}
	}
	return strings.Join(all, ", ")
}

// relabelled makes the tasks that put another label on hardware: where it stays
// in its place before anything is done at it, otherwise when it is in its new
// place.
func (p *planner) relabelled() {
	for i := range p.changes {
		c := &p.changes[i]
		if c.Former == "" || !c.onSite() || c.Kind == schema.KindRun || c.Kind == schema.KindCord {
			continue
		}
		p.toPrint(c.Kind, c.Label)
		t := &task{phase: toRelabel, urge: building, group: fmt.Sprintf("label %d", c.Class), items: []string{fmt.Sprintf("%s %s (until now %s)", c.Kind, c.Label, c.Former)}, Step: Step{
			Action: Affix, Class: c.Class, Space: roomOf(c.after), Records: []string{c.Label}, Text: "label",
		}}
		t.undo = back("put the former labels back: ", c.Kind+" "+c.Former, "")
		if up := p.ready[c.Label]; up != nil {
			t.phase = toRelabelAgain
			t.wait(up)
		}
		p.relabel[c.Label] = p.add(t)
	}
}

// placeWords says where hardware is, or what it is taken out of.
func placeWords(e schema.Entry, preposition string) string {
	var parts []string
	if v := e.Own("rack"); v != nil && !v.Bad {
		rack := "rack " + v.Text
		if u := e.Own("unit"); u != nil && !u.Bad {
			rack += fmt.Sprintf(" unit %d", u.Number)
		}
		parts = append(parts, rack)
	}
	if v := e.Own("space"); v != nil && !v.Bad {
		parts = append(parts, v.Text)
	}
	if len(parts) == 0 {
		return ""
	}
	return preposition + " " + strings.Join(parts, " in ")
}

// makeWords says what hardware is, as far as a crew has to bring it.
func (p *planner) makeWords(e schema.Entry) string {
	var all []string
	for _, f := range e.Kind.Fields {
		v := e.Own(f.Name)
		if v == nil || v.Bad || f.Site != schema.Replace {
			continue
		}
		if f.Name == "ports" {
			all = append(all, counted(int(v.Number), "port"))
			continue
		}
		all = append(all, f.Name+" "+v.Show(p.head.Units))
	}
	if len(all) == 0 {
		return ""
	}
	return ": " + strings.Join(all, ", ")
}

// roomsOf are the spaces that a record names.
func roomsOf(s subject) []string {
	switch it := s.item.(type) {
	case *plant.Space:
		return []string{it.Label}
	case *plant.Pathway:
		rooms := make([]string, len(it.Through))
		for i, through := range it.Through {
			rooms[i] = through.Label
		}
		return rooms
	}
	if s.Record == nil {
		return nil
	}
	if v := s.Own("space"); v != nil && !v.Bad {
		return []string{v.Text}
	}
	return nil
}

func roomOf(s subject) string {
	if rooms := roomsOf(s); len(rooms) > 0 {
		return rooms[0]
	}
	return ""
}
