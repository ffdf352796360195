package diffreport

import (
	"fmt"
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
)

// The cautions below are common practice and name a danger, not a procedure:
// how it is met is decided by those whom the law and the site make responsible.

// asbestosYear is the year before which a building's materials have to be
// suspected. Common practice; the year differs from country to country, so the
// records state the year and the caution repeats it.
const asbestosYear = 1990

// abandonedDuty follows from the rule that accessible cable which is neither
// terminated nor tagged for future use has to be removed: NFPA 70, 800.25 and
// its fellows, from memory.
const abandonedDuty = "cable taken out of use has to be removed or tagged for future use where the local code asks for it: the authority having jurisdiction decides"

// endCautions are the dangers at the ports where a cable is connected.
func (p *planner) endCautions(medium plant.Medium, ends []end) []string {
	cautions := p.lightCautions(medium)
	for _, e := range ends {
		if h := e.holder(); h != nil && h.Medium() == plant.Fibre {
			cautions = append(cautions, lightCaution)
		}
		if s := e.row.Space(); s != nil {
			cautions = append(cautions, p.heightCautions(s)...)
		}
	}
	return cautions
}

// supply is the port of the equipment that feeds a port with power: its own, or
// the one that cords and runs lead to. It is nil where there is none.
func supply(port *plant.Port) *plant.Port {
	supplies := func(at *plant.Port) bool {
		return at != nil && at.Holder.IsEquipment() && at.Holder.Own(schema.EquipmentSupplies.Name) != nil
	}
	if supplies(port) {
		return port
	}
	run := port.Rear
	if run == nil {
		run = port.Onward
	}
	for _, ch := range channelsOf(run, port.Front) {
		for _, at := range []*plant.Port{ch.Start, ch.End} {
			if supplies(at) {
				return at
			}
		}
	}
	return nil
}

const lightCaution = "fibre may carry light that can not be seen: never look into an end, measure first"

func (p *planner) lightCautions(medium plant.Medium) []string {
	if medium != plant.Fibre {
		return nil
	}
	return []string{lightCaution}
}

func (p *planner) heightCautions(s *plant.Space) []string {
	kind, _ := schema.SpaceKind.In(s.Record())
	switch kind {
	case "ceiling-void":
		return []string{danger("", s.Label, " is above a ceiling: ladder or platform, and nobody below", " are above ceilings: ladder or platform, and nobody below")}
	case "riser-shaft":
		return []string{danger("", s.Label, " is a shaft: secure people and tools against falling", " are shafts: secure people and tools against falling")}
	case "floor-void":
		return []string{danger("", s.Label, " is below a floor: fence the open floor off", " are below floors: fence the open floors off")}
	case "plant-room":
		return []string{danger("", s.Label, " is a plant room: machines may start by themselves", " are plant rooms: machines may start by themselves")}
	case "outdoor":
		return []string{danger("", s.Label, " is outdoors: not in a thunderstorm", " are outdoors: not in a thunderstorm")}
	}
	return nil
}

// ageCautions warn of a space whose stated year, its own or the plant's, is
// before the year from which such materials were no longer common.
func (p *planner) ageCautions(s *plant.Space) []string {
	year, known := schema.SpaceBuilt.In(s.Record())
	if !known && p.head.Entry.Record != nil {
		year, known = schema.PlantBuilt.In(p.head.Entry.Record)
	}
	if !known || year >= asbestosYear {
		return nil
	}
	return []string{danger("", s.Label, fmt.Sprintf(" was built in %d: its materials may hold asbestos, nothing is drilled or lifted before it is surveyed", year),
		fmt.Sprintf(" were built in %d: their materials may hold asbestos, nothing is drilled or lifted before they are surveyed", year))}
}

// wayCautions are the dangers along the route of a run.
func (p *planner) wayCautions(in *plant.Plant, r *plant.Run) []string {
	cautions := p.lightCautions(r.Cable.Medium())
	for _, s := range r.Spaces() {
		cautions = append(cautions, p.heightCautions(s)...)
		cautions = append(cautions, p.ageCautions(s)...)
	}
	if r.Way == nil {
		return cautions
	}
	for _, path := range r.Way.Pathways {
		cautions = append(cautions, pathCautions(in, path)...)
	}
	return cautions
}

// pathCautions are the dangers of working in a pathway: power beside it, and
// openings in rated walls that have to be closed again.
func pathCautions(in *plant.Plant, path *plant.Pathway) []string {
	var cautions []string
	for _, c := range path.Blocks(schema.KindPower) {
		circuits, _ := schema.PowerCircuits.In(c)
		text := path.Label + " (" + counted(circuits, "circuit")
		if gap, ok := schema.PowerGap.In(c); ok {
			text += ", " + gap.Text(in.Units) + " away"
		}
		const end = ": a licensed electrician decides what is switched off"
		cautions = append(cautions, danger("power runs beside ", text+")", end, end))
	}
	for _, c := range path.Blocks(schema.KindCrossing) {
		stop, stated := schema.CrossingFirestop.In(c)
		rating, rated := schema.CrossingRating.In(c)
		if !stated && !rated {
			continue
		}
		text := path.Label + " passes " + c.Label
		if rated {
			text += ", rated " + rating.Text(in.Units)
		}
		if stated {
			cautions = append(cautions, danger("close again the same day: ", "fire-stop "+stop+" where "+text, "", ""))
		} else {
			cautions = append(cautions, danger("close with a listed fire-stop the same day: the opening where ", text, "", ""))
		}
	}
	return cautions
}

// roomCautions are the dangers of working on hardware where it is. Equipment
// and what goes into a rack needs no drill.
func (p *planner) roomCautions(in *plant.Plant, hardware subject) []string {
	var cautions []string
	for _, label := range roomsOf(hardware) {
		it, _ := in.Find(label)
		s, ok := it.(*plant.Space)
		if !ok {
			continue
		}
		cautions = append(cautions, p.heightCautions(s)...)
		if hardware.Own("rack") == nil && hardware.Kind.Name != schema.KindEquipment {
			cautions = append(cautions, p.ageCautions(s)...)
		}
	}
	return cautions
}

// Deciders are the sentences with which every order says what it does not
// decide.
func Deciders() []string {
	return []string{
		"this order is worked out from the records alone and decides nothing about safety or law",
		"the authority having jurisdiction and the local code decide what may be installed, left and removed",
		"work on or beside power circuits is for a licensed electrician, work on fire-stops for whom the building names",
		strings.Join([]string{"where the site differs from the records, stop", "correct the records first"}, " and "),
	}
}
