package rules

import (
	"homerun/lint"
	"homerun/schema/unit"
)

// Standards print some limits twice, in round metres and in round feet, and the
// two are not quite the same length. Who keeps either keeps the standard, so
// what lies between the two is an observation.

// The lengths in feet that stand beside 15 m, 30 m and 1.5 m.
const (
	feetOfEntrance = 50 * unit.Foot
	feetOfPull     = 100 * unit.Foot
	feetOfSupports = 5 * unit.Foot
)

// between lowers a finding about a value over the metric figure that is within
// the one in feet. An owner's limit stands in one form alone.
func (l law) between(value, feet unit.Length, own string) law {
	if own != "" || value > feet {
		return l
	}
	l.severity = lint.Observation
	l.source += "; within the " + feet.Text(unit.US) + " printed beside it"
	return l
}
