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
	t := &task{phase: down, Step: Step{
		Action: Remove, Class: c.Class, Space: roomOf(c.before), Records: []string{c.Label},
		Text: fmt.Sprintf("take %s %s out%s", c.Kind, c.was(), placeWords(e, " of")), Cautions: p.roomCautions(p.base, c.before),
	}}
	if c.Kind == schema.KindEquipment {
		off := p.add("", &task{phase: toIsolate, Step: Step{
			Action: Isolate, Class: c.Class, Space: t.Space, Records: []string{c.Label}, Text: "switch " + c.was() + " off and secure it against being switched on",
		}})
		t.after = append(t.after, off)
	}
	if h := c.before.holder(); h != nil {
		p.touched[p.same(h.Label)] = true
		p.leaving = append(p.leaving, leaving{t, h})
	}
	return p.add("", t)
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
	t := &task{phase: up, Step: Step{
		Action: Install, Class: c.Class, Space: roomOf(c.after), Records: []string{c.Label},
		Text: fmt.Sprintf("install %s %s%s%s%s", c.Kind, c.Label, how, placeWords(c.After, " in"), p.makeWords(c.After)), Cautions: p.roomCautions(p.head, c.after),
	}}
	if v := c.After.Own("rack"); v != nil && p.ready[v.Text] != nil {
		t.after = append(t.after, p.ready[v.Text])
	}
	if c.Class == ClassAdd {
		p.used.pieces(c.Kind+p.makeWords(c.After), c.Label, 1)
		p.labels = append(p.labels, c.Label)
	}
	if h := c.after.holder(); h != nil {
		p.touched[h.Label] = true
	}
	p.ready[c.Label] = p.add("", t)
	return t
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
		}
		up := p.putUp(c, how)
		up.after = append(up.after, down)
	case c.Meaning == schema.Rebond:
		p.plain(c, Bond, toBond, "bond or fire-stop at "+c.Label+": "+c.fieldWords())
	case c.Meaning == schema.Retest:
		p.plain(c, Measure, toMeasure, "measure again what "+c.Label+" is connected to: "+c.fieldWords())
	case c.Meaning == schema.Reterminate:
		p.disturb(c, schema.Reterminate)
	default:
		p.ready[c.Label] = p.plain(c, Install, toInstallPathway, "alter "+c.Kind+" "+c.Label+": "+c.fieldWords())
	}
}

func (p *planner) plain(c *Change, action Action, at phase, text string) *task {
	return p.add("", &task{phase: at, Step: Step{
		Action: action, Class: c.Class, Space: roomOf(c.after), Records: []string{c.Label}, Text: text, Cautions: p.roomCautions(p.head, c.after),
	}})
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
	var all []string
	for _, f := range c.Fields {
		if f.Meaning > schema.Relabelling {
			all = append(all, fmt.Sprintf("%s from %s to %s", f.Name, f.Before, f.After))
		}
	}
	return strings.Join(all, ", ")
}

// relabelled makes the tasks that put another label on hardware.
func (p *planner) relabelled() {
	for i := range p.changes {
		c := &p.changes[i]
		if c.Former == "" || !c.onSite() || c.Kind == schema.KindRun || c.Kind == schema.KindCord {
			continue
		}
		p.labels = append(p.labels, c.Label)
		p.add(fmt.Sprintf("label %d %s", c.Class, roomOf(c.after)), &task{phase: toLabel, items: []string{fmt.Sprintf("%s %s (until now %s)", c.Kind, c.Label, c.Former)}, Step: Step{
			Action: Affix, Class: c.Class, Space: roomOf(c.after), Records: []string{c.Label}, Text: "label",
		}})
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
