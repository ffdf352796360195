package rules

import (
	"fmt"
	"strconv"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
)

// RecordPortRange finds references to ports that a holder does not have.
var RecordPortRange = &lint.Rule{
	Name: "record-port-range", Title: "Checks that every port that a cable takes is one that the panel, outlet or equipment has",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: portRange,
}

func portRange(p *lint.Pass) {
	for _, r := range p.Plant.Runs {
		// A row that was found is within range: only the others are looked at.
		if len(r.From) == 0 {
			portBeyond(p, r.Entry, schema.RunFrom)
		}
		if len(r.To) == 0 {
			portBeyond(p, r.Entry, schema.RunTo)
		}
	}
	for _, c := range p.Plant.Cords {
		if c.From == nil {
			portBeyond(p, c.Entry, schema.CordFrom)
		}
		if c.To == nil {
			portBeyond(p, c.Entry, schema.CordTo)
		}
	}
}

func portBeyond(p *lint.Pass, e schema.Entry, field schema.Handle[schema.Port]) {
	ref, stated := field.In(e.Record)
	if !stated {
		return
	}
	item, found := p.Plant.Find(ref.Label)
	holder, is := item.(*plant.Holder)
	if !found || !is || len(holder.Ports) == 0 || ref.Last <= len(holder.Ports) {
		return
	}
	f := lint.AboutField(e, field.Field)
	f.Message = fmt.Sprintf("%s: %s: port %s does not exist, %s has %s", schema.Printable(e.Name()), field.Name,
		schema.Printable(ref.String()), schema.Printable(holder.Label), counted(len(holder.Ports), "port", "ports"))
	f.Working = []lint.Term{
		{Term: "port named", Value: strconv.Itoa(ref.Last)},
		{Term: "ports of " + schema.Printable(holder.Label), Value: strconv.Itoa(len(holder.Ports))},
	}
	f.Result, f.Limit, f.Source = strconv.Itoa(ref.Last), strconv.Itoa(len(holder.Ports)), "the record of "+schema.Printable(holder.Label)
	f.Next = "correct the port, or the number of ports of " + schema.Printable(holder.Label)
	f.Key, f.Excess = []string{field.Name, holder.Label}, float64(ref.Last-len(holder.Ports))
	f.Related = []schema.Note{note(holder.Entry, "its ports are counted here")}
	p.Report(f)
}

// RecordPortTwice finds port sides that two cables take.
var RecordPortTwice = &lint.Rule{
	Name: "record-port-twice", Title: "Checks that no two cables take the same side of a port",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: portTwice,
}

func portTwice(p *lint.Pass) {
	for _, c := range p.Plant.Clashes {
		second, first := c.Second.Place(), c.First.Place()
		f := lint.AboutField(second, c.Field)
		f.Message = fmt.Sprintf("%s: the %s of port %s is already taken by %s", schema.Printable(second.Name()), c.Side,
			schema.Printable(c.Port.String()), schema.Printable(first.Name()))
		f.Working = []lint.Term{
			{Term: "cables on the " + c.Side, Value: schema.Printable(first.Name()) + ", " + schema.Printable(second.Name())},
			{Term: "one side of a port takes", Value: "1 cable"},
		}
		f.Result, f.Limit, f.Source = "2", "1", "common practice"
		f.Next = "correct one of the two, or take out the one that is no longer there"
		f.Key = []string{c.Side, c.Port.Holder.Label, first.Name()}
		f.Related = []schema.Note{note(first, "takes the "+c.Side+" too")}
		p.Report(f)
	}
}

// RecordEndMissing finds runs that are in use and do not say where they end.
var RecordEndMissing = &lint.Rule{
	Name: "record-end-missing", Title: "Checks that a run in service says where both of its ends are terminated",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: endMissing,
}

func endMissing(p *lint.Pass) {
	for _, r := range p.Plant.Runs {
		if len(r.From) > 0 && len(r.To) > 0 || r.Damaged || !r.Live() {
			continue
		}
		for _, end := range []struct {
			field schema.Handle[schema.Port]
			words string
		}{{schema.RunFrom, "room end"}, {schema.RunTo, "far end"}} {
			if r.Record().Lookup(end.field.Field) == nil {
				p.Report(endMissingFinding(r, end.field.Name, end.words))
			}
		}
	}
}

func endMissingFinding(r *plant.Run, field, words string) lint.Finding {
	f := lint.About(r.Entry)
	state, _ := r.State()
	if state != schema.StateInService {
		f.Severity = lint.Observation // it may not be terminated yet
	}
	f.Message = fmt.Sprintf("%s: the %s is not recorded, and the run is %s", schema.Printable(r.Label), words, state)
	f.Working = []lint.Term{{Term: "state", Value: state}, {Term: field, Value: "not stated"}}
	f.Result, f.Limit, f.Source = "1 end", "2 ends", "ANSI/TIA-606-B, record of a horizontal link; unconfirmed: check the printed standard"
	f.Next = "state " + field + `, or the run's state where it is not in use: state = "tagged"`
	f.Key = []string{field}
	return f
}
