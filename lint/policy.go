package lint

import (
	"errors"
	"fmt"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// A Policy is the owner's own decision about one rule.
type Policy struct {
	schema.Entry
	// Severity is how the rule's findings count; zero leaves it.
	Severity Severity
	// Off is set where the owner does not want the rule at all.
	Off bool
	// Length is the owner's limit, where HasLength is set.
	Length    unit.Length
	HasLength bool
	// Share is the owner's limit in per cent, where HasShare is set.
	Share    Share
	HasShare bool
}

// A PolicyFault is a policy that can not be followed, and why.
type PolicyFault struct {
	schema.Entry
	Field         *schema.Field
	Message, Next string
}

// policies are the owner's decisions by rule.
type policies struct {
	byRule map[string]*Policy
	faults []PolicyFault
}

func readPolicies(p *plant.Plant, rules []*Rule) *policies {
	all := &policies{}
	if len(p.Policies) > 0 {
		all.byRule = make(map[string]*Policy)
	}
	for _, e := range p.Policies {
		name, ok := schema.PolicyRule.In(e.Record)
		if !ok {
			continue // the record family names the missing field
		}
		for _, r := range rules {
			if r.Name == name {
				all.add(r, e)
			}
		}
	}
	return all
}

func (ps *policies) add(r *Rule, e schema.Entry) {
	if first := ps.byRule[r.Name]; first != nil {
		ps.fault(e, schema.PolicyRule.Field, fmt.Sprintf("%s: policy %s already decides about %s", schema.Printable(e.Label), schema.Printable(first.Label), r.Name), "keep one policy for a rule")
		return
	}
	policy := &Policy{Entry: e}
	ps.severity(r, policy)
	ps.limit(r, policy)
	ps.byRule[r.Name] = policy
}

func (ps *policies) severity(r *Rule, policy *Policy) {
	word, ok := schema.PolicySeverity.In(policy.Record)
	if !ok {
		return
	}
	lowers := word == "off" || word == Observation.String() && r.Severity == Nonconformity
	switch {
	case r.Safety && lowers:
		ps.fault(policy.Entry, schema.PolicySeverity.Field, fmt.Sprintf("%s: %s is a safety rule and stays a nonconformity", schema.Printable(policy.Label), r.Name),
			"where a departure is acceptable, write a waiver with a reason and an expiry")
	case word == "off":
		policy.Off = true
	case word == Observation.String():
		policy.Severity = Observation
	default:
		policy.Severity = Nonconformity
	}
}

func (ps *policies) limit(r *Rule, policy *Policy) {
	text, ok := schema.PolicyLimit.In(policy.Record)
	if !ok {
		return
	}
	if r.Limit == NoLimit {
		ps.fault(policy.Entry, schema.PolicyLimit.Field, fmt.Sprintf("%s: %s has no limit that an owner can set", schema.Printable(policy.Label), r.Name), "take the limit out")
		return
	}
	if r.Limit == GreatestShare {
		ps.share(policy, text)
		return
	}
	length, err := unit.ParseLength(text)
	if mistake, ok := errors.AsType[*unit.Error](err); ok {
		ps.fault(policy.Entry, schema.PolicyLimit.Field, fmt.Sprintf("%s: limit: %s", schema.Printable(policy.Label), mistake.Message), mistake.Next)
		return
	}
	policy.Length, policy.HasLength = length, true
}

func (ps *policies) share(policy *Policy, text string) {
	share, ok := parseShare(text)
	if !ok {
		ps.fault(policy.Entry, schema.PolicyLimit.Field, fmt.Sprintf("%s: limit: %s is no share in whole per cent from 1 to 100", policy.Label, schema.Quote(text)), `write "40 %"`)
		return
	}
	policy.Share, policy.HasShare = share, true
}

func (ps *policies) fault(e schema.Entry, f *schema.Field, message, next string) {
	ps.faults = append(ps.faults, PolicyFault{Entry: e, Field: f, Message: message, Next: next})
}

func (ps *policies) of(r *Rule) *Policy { return ps.byRule[r.Name] }

// apply gives findings the severity that the owner wants. What rests on an
// unconfirmed figure is an observation and stays one. All of them are left, or none.
func (ps *policies) apply(r *Rule, found []Finding) []Finding {
	policy := ps.byRule[r.Name]
	if policy == nil {
		return found
	}
	if policy.Off {
		return nil
	}
	for i := range found {
		if policy.Severity != 0 && found[i].Severity == r.Severity {
			found[i].Severity = policy.Severity
		}
	}
	return found
}
