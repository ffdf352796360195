package rules

import (
	"fmt"
	"math"
	"slices"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// CategoryCoaxLoss follows a signal over coaxial cable and through splitters, and
// holds what arrives against what the equipment at the end wants.
var CategoryCoaxLoss = &lint.Rule{
	Name: "category-coax-loss", Title: "Checks that enough of a signal on coaxial cable arrives where it is wanted, at its highest frequency",
	Severity: lint.Observation, Reach: lint.Along, Wakes: []func(*schema.Record) bool{wants, coaxial}, Check: categoryCoaxLoss,
}

// budgetSource is where levels and the loss of a splitter come from: the records.
const budgetSource = "the levels and losses of the equipment, as recorded"

func categoryCoaxLoss(p *lint.Pass) {
	if !anyCoax(p.Plant) || !anyWants(p.Plant) {
		return
	}
	t := grow(p.Plant, coaxOf(p))
	check := coaxCheck{pass: p, told: make(map[*plant.Holder]bool)}
	for _, h := range t.arrived {
		check.judge(h)
	}
	for _, h := range t.astray {
		check.wrongPort(h)
	}
	for _, h := range p.Plant.Holders {
		check.noSuchInput(h)
	}
	for _, h := range t.noLoss {
		check.unstated(h, schema.EquipmentLoss.Field, "what is behind this splitter is not judged")
	}
	for _, h := range t.noLevel {
		check.unstated(h, schema.EquipmentLevel.Field, "what it feeds is not judged")
	}
}

// anyWants says whether any equipment states a level that it wants.
func anyWants(p *plant.Plant) bool {
	return slices.ContainsFunc(p.Holders, func(h *plant.Holder) bool { return wants(h.Record()) })
}

// anyCoax says whether any cable type is coaxial.
func anyCoax(p *plant.Plant) bool {
	return slices.ContainsFunc(p.Cables, func(c *plant.Cable) bool { return coaxial(c.Record()) })
}

func wants(r *schema.Record) bool {
	_, stated := schema.EquipmentWants.In(r)
	return stated
}

func coaxial(r *schema.Record) bool {
	word, stated := schema.CableSeries.In(r)
	if !stated {
		return false
	}
	_, err := standard.ParseSeries(word)
	return err == nil && r.Own(schema.CableCategory.Name) == nil && r.Own(schema.CableFibre.Name) == nil
}

type coaxCheck struct {
	pass *lint.Pass
	told map[*plant.Holder]bool
}

// unstated names what a source or splitter does not say, once.
func (c *coaxCheck) unstated(h *plant.Holder, field *schema.Field, what string) {
	if c.told[h] || lost(h.Entry, field) {
		return
	}
	c.told[h] = true
	f := lint.AboutField(h.Entry, field)
	f.Message = fmt.Sprintf("%s: %s not stated; %s", schema.Printable(h.Label), field.Name, what)
	f.Next = fmt.Sprintf("state %s: %s", field.Name, field.Doc)
	f.Source, f.Key = budgetSource, []string{field.Name}
	c.pass.Report(f)
}

// judge adds up what a signal loses on its way.
func (c *coaxCheck) judge(h *coaxHop) {
	at := h.port.Holder
	top, known := topFrequency(h.source, at)
	if !known {
		c.unstated(h.source, schema.EquipmentTop.Field, "what it feeds is not judged")
		return
	}
	level, _ := schema.EquipmentLevel.In(h.source.Record())
	wants, _ := schema.EquipmentWants.In(at.Record())
	sum := level.DBmV()
	terms := []lint.Term{term(h.source.Kind.Name+" "+schema.Printable(h.source.Label)+" puts out", level.Text(c.pass.Units())), term("highest frequency", top.String())}
	src := ""
	for _, hop := range h.way() {
		lost, value, from, ok := hop.lost(top, c.pass.Units())
		if !ok {
			c.beyondTable(h.source, top)
			return
		}
		sum -= lost
		if from.Confidence != 0 {
			src = from.String()
		}
		terms = append(terms, term(hop.cable.Kind.Name+" "+schema.Printable(hop.cable.Name()), value))
	}
	left := levelOf(sum)
	if left >= wants {
		return
	}
	shown, limit := left.Beside(wants, c.pass.Units())
	f := lint.About(at.Entry)
	f.Message = fmt.Sprintf("%s: %s at %s from %s, wants %s", schema.Printable(at.Label), shown, top, schema.Printable(h.source.Label), limit)
	terms = append(terms, term("level at "+schema.Printable(at.Label), shown))
	f.Working = terms
	f.Result, f.Limit, f.Source = shown, limit, src
	if src == "" {
		f.Source = budgetSource
	}
	f.Next = "put an amplifier before the splitters, use a thicker series on the long way, or split less"
	f.Excess = (wants - left).DBmV()
	f.Key = []string{h.source.Label}
	f.Related = hopNotes(h)
	c.pass.Report(f)
}

// levelOf is a sum in dBmV as a record would state it: what is finer is the
// rounding of the sum itself. Records may state levels beyond all sense.
func levelOf(dbmv float64) unit.Level {
	const absurd = 1e9
	return unit.Level(math.Round(min(absurd, max(-absurd, dbmv)) * float64(unit.DBmV)))
}

// beyondTable says that the table of losses has nothing for a frequency.
func (c *coaxCheck) beyondTable(h *plant.Holder, top unit.Frequency) {
	if c.told[h] {
		return
	}
	c.told[h] = true
	_, src, _ := standard.CoaxLoss(standard.Series6, 100*unit.Megahertz)
	f := lint.AboutField(h.Entry, schema.EquipmentTop.Field)
	f.Message = fmt.Sprintf("%s: no loss of coaxial cable is known at %s, what it feeds is not judged", schema.Printable(h.Label), top)
	f.Working = []lint.Term{term("highest frequency", top.String()), term("the table goes", "from 5 MHz to 1000 MHz")}
	f.Result, f.Limit, f.Source = top.String(), "5 MHz to 1000 MHz", src.String()
	f.Next = "take the loss from the cable's data sheet, and measure the level at the outlets"
	f.Key = []string{"table"}
	c.pass.Report(f)
}

// topFrequency is the highest frequency that a source puts out and a device
// wants: the lower of the two where both are stated.
func topFrequency(source, at *plant.Holder) (top unit.Frequency, known bool) {
	top, known = schema.EquipmentTop.In(source.Record())
	own, stated := schema.EquipmentTop.In(at.Record())
	if stated && (!known || own < top) {
		return own, true
	}
	return top, known
}

// lost is what one hop takes from a signal, with its numbers put in.
func (h *coaxHop) lost(top unit.Frequency, in unit.System) (db float64, value string, src standard.Source, ok bool) {
	switch {
	case h.cable.Kind.Name == schema.KindEquipment:
		return h.loss.Decibels(), h.loss.Text(in) + " (stated)", src, true
	case h.series == 0 || h.length == 0:
		return 0, "length or series not stated, not counted", src, true
	}
	per, src, ok := standard.CoaxLoss(h.series, top)
	if !ok {
		return 0, "", src, false
	}
	db, _, _ = standard.CoaxLossOver(h.series, h.length, top)
	feet := float64(h.length) / float64(unit.Foot)
	value = fmt.Sprintf("series %s, %s ft/100 ft x %s dB = %s dB", h.series, decimals(feet, 2), decimals(per, 4), decimals(db, 3))
	if in == unit.Metric {
		value = h.length.Text(in) + ": " + value
	}
	return db, value, src, true
}

// hopNotes are the other records on the way of a signal.
func hopNotes(h *coaxHop) []schema.Note {
	notes := []schema.Note{note(h.source.Entry, "puts the signal out")}
	for _, hop := range h.way() {
		notes = append(notes, note(hop.cable, "is on its way"))
	}
	return notes
}
