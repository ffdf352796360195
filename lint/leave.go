package lint

import (
	"slices"

	"homerun/schema/plant"
	"homerun/schema/unit"
)

// Leave is all leave to depart from rules that a plant states: its waivers as they
// hold on one day, and which of them matched anything so far.
type Leave struct {
	waivers []*Waiver
	byRule  map[string][]*Waiver
	today   unit.Date
}

// LeaveOf reads the waivers of a plant as they hold on a day.
func LeaveOf(p *plant.Plant, today unit.Date) *Leave {
	l := &Leave{waivers: readWaivers(p, today), today: today}
	if len(l.waivers) > 0 {
		l.byRule = make(map[string][]*Waiver)
	}
	for _, w := range l.waivers {
		l.byRule[w.Rule] = append(l.byRule[w.Rule], w)
	}
	return l
}

// Cover marks every waiver that names the record for the rule as matched, and
// returns the label of the first that still holds.
func (l *Leave) Cover(rule, record string) (label string, covered bool) {
	for _, w := range l.byRule[rule] {
		i := slices.Index(w.Records, record)
		if i < 0 {
			continue
		}
		w.Matched[i] = true
		if !w.Expired && !w.Unusable && !covered {
			label, covered = w.Label, true
		}
	}
	return label, covered
}

// Waivers are the waivers, in the order of the records.
func (l *Leave) Waivers() []*Waiver { return l.waivers }

// Review lets the rules about waivers and policies judge them, once every finding
// has been through Cover. The error names a rule that panicked.
func (l *Leave) Review(p *plant.Plant, rules []*Rule, o Options) ([]Finding, error) {
	return l.review(p, rules, readPolicies(p, rules), o)
}

func (l *Leave) review(p *plant.Plant, rules []*Rule, policies *policies, o Options) ([]Finding, error) {
	if len(l.waivers) == 0 && len(p.Policies) == 0 {
		return nil, nil
	}
	known := o.Known
	if known == nil {
		for _, r := range rules {
			known = append(known, r.Name)
		}
	}
	review := &Review{Plant: p, Today: l.today, Waivers: l.waivers, Policies: policies, Known: known, Changes: changes(rules)}
	var found []Finding
	for _, r := range rules {
		if r.Review == nil {
			continue
		}
		if err := review.run(r); err != nil {
			return nil, err
		}
		found = append(found, policies.apply(r, review.take(r))...)
	}
	return found, nil
}

// run lets one rule judge. A panic of the rule becomes an error that names it.
func (r *Review) run(rule *Rule) (err error) {
	defer rescue(rule, &err)
	rule.Review(r)
	return nil
}
