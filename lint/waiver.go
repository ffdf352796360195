package lint

import (
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// A Waiver is leave to depart from one rule for named records until a date.
type Waiver struct {
	schema.Entry
	Rule    string
	Records []string
	Expires unit.Date
	// Expired is set when its last day is before today.
	Expired bool
	// Unusable is set when a field that it needs is missing or can not be
	// read: it then covers nothing.
	Unusable bool
	// Matched tells for each of Records whether the rule found anything there.
	Matched []bool
}

func readWaivers(p *plant.Plant, today unit.Date) []*Waiver {
	waivers := make([]*Waiver, 0, len(p.Waivers))
	for _, e := range p.Waivers {
		w := &Waiver{Entry: e, Unusable: e.Damaged}
		for _, f := range e.Kind.Fields {
			if v := e.Own(f.Name); f.Required && (v == nil || v.Bad || v.Field.Type == schema.Text && strings.TrimSpace(v.Text) == "") {
				w.Unusable = true
			}
		}
		w.Rule, _ = schema.WaiverRule.In(e.Record)
		w.Records, _ = schema.WaiverRecords.In(e.Record)
		w.Matched = make([]bool, len(w.Records))
		if date, ok := schema.WaiverExpires.In(e.Record); ok {
			w.Expires = date
			w.Expired = date.Before(today)
		}
		waivers = append(waivers, w)
	}
	return waivers
}

// A Review is what a rule about waivers and policies sees, once every other
// rule has been checked.
type Review struct {
	Plant    *plant.Plant
	Today    unit.Date
	Waivers  []*Waiver
	Policies *policies
	// Known are the names of all rules.
	Known []string
	// Changes are the rules that judge a change: a waiver for one of them
	// matches only while that change is made.
	Changes []string
	found   []Finding
}

// Report adds a finding.
func (r *Review) Report(f Finding) { r.found = append(r.found, f) }

// Faults returns what is wrong with the policies.
func (r *Review) Faults() []PolicyFault { return r.Policies.faults }

func (r *Review) take(rule *Rule) []Finding {
	found := r.found
	r.found = nil
	for i := range found {
		found[i].Rule = rule.Name
		if found[i].Severity == 0 {
			found[i].Severity = rule.Severity
		}
	}
	return found
}
