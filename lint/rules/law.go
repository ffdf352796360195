package rules

import (
	"homerun/lint"
	"homerun/schema/standard"
)

// A law is what a finding rests on: how it counts, and where the limit stands.
type law struct {
	severity lint.Severity
	source   string
}

// lawOf is the standard's limit, or the owner's where own names a policy: an
// owner's own limit is sure, whoever else is not.
func lawOf(src standard.Source, own string) law {
	if own != "" {
		return law{source: own}
	}
	return law{severity: degree(src), source: src.String()}
}

// limitsOf are the lengths of a category in the plant's family of standards.
func (k *copper) limitsOf(c standard.Category) (standard.LengthLimits, bool) {
	return standard.Lengths(k.pass.Plant.Regime, c)
}
