package lint

import (
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// A Pass is what one rule sees of one run: the plant, the owner's limit and a
// place for findings.
type Pass struct {
	Plant *plant.Plant
	// Base is the plant before the change, nil where there is nothing to
	// compare with. A rule that judges a change always has one.
	Base *plant.Plant
	// Former tells what a record is called in Base; empty where its label is
	// that of another record there.
	Former func(label string) string
	rule   *Rule
	policy *Policy
	found  []Finding
}

// Report adds a finding. Rule and, where the check set none, severity are the
// rule's.
func (p *Pass) Report(f Finding) {
	f.Rule = p.rule.Name
	if f.Severity == 0 {
		f.Severity = p.rule.Severity
	}
	p.found = append(p.found, f)
}

// Most returns the limit to hold a greatest length against: the owner's where
// it is stricter, otherwise the standard's. Own is empty, or names the policy.
func (p *Pass) Most(limit unit.Length) (most unit.Length, own string) {
	if p.policy != nil && p.policy.HasLength && p.policy.Length < limit {
		return p.policy.Length, "owner's policy " + p.policy.Label
	}
	return limit, ""
}

// Least returns the limit to hold a smallest length against: the owner's where
// it is stricter, otherwise the standard's. Own is empty, or names the policy.
func (p *Pass) Least(limit unit.Length) (least unit.Length, own string) {
	if p.policy != nil && p.policy.HasLength && p.policy.Length > limit {
		return p.policy.Length, "owner's policy " + p.policy.Label
	}
	return limit, ""
}

// Units is the system in which the plant wants quantities printed.
func (p *Pass) Units() unit.System { return p.Plant.Units }
