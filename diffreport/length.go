package diffreport

import (
	"fmt"

	"homerun/schema"
	"homerun/schema/unit"
)

// lengthMeaning tells a corrected length from another cable. A length by itself
// does not say: it is paper where a tester measured it, where it was not stated
// on one side, where it is shorter, or where the growth is no more than the coil
// kept at the ends; where ends, cable or route differ too, those decide.
func (c *comparison) lengthMeaning(was, is subject, b, h *schema.Value) (schema.Meaning, string) {
	if b == nil || h == nil {
		return schema.Paper, firstWords(schema.RunLength.Field, b)
	}
	before, after := unit.Length(b.Number), unit.Length(h.Number)
	if is.stage() != inUse || was.stage() != inUse {
		return schema.Paper, "the cable itself stays as it is"
	}
	if label, found, ok := c.measured(is, after); ok {
		if found == after {
			return schema.Paper, fmt.Sprintf("test %s measured the length that is recorded now", label)
		}
		return schema.Paper, fmt.Sprintf("test %s measured %s, within %d %% of the length that is recorded now", label, found.Text(c.units), c.options.tolerance())
	}
	if after < before {
		return schema.Paper, "a shorter length is a correction of the records"
	}
	if slack := max(spare(was), spare(is)); after-before <= slack {
		return schema.Paper, fmt.Sprintf("the length differs by no more than the coil kept at the ends, %s", slack.Text(c.units))
	}
	if c.sameValue(was.Record, was.Lookup(schema.RunCable.Field), is.Record, is.Lookup(schema.RunCable.Field)) {
		return schema.Repull, "the cable is longer than the one that is there, and no test measured it so"
	}
	return schema.Repull, "the other cable is longer than the one that is there"
}

func spare(s subject) unit.Length {
	length, _ := schema.RunSpare.In(s.Record)
	return length
}

// measured finds a test of the run that measured the length within the
// tolerance, and what it found. A test of a link of several runs measured them all, and tells
// nothing about one.
func (c *comparison) measured(is subject, length unit.Length) (label string, found unit.Length, ok bool) {
	r := is.run()
	if r == nil || r.Link == nil || len(r.Link.Runs) > 1 {
		return "", 0, false
	}
	for _, t := range r.Tests {
		told, known := schema.TestLength.In(t.Record())
		if !known {
			continue
		}
		off := max(told-length, length-told)
		if off <= length/100*unit.Length(c.options.tolerance()) && (!ok || t.Label < label) {
			label, found, ok = t.Label, told, true
		}
	}
	return label, found, ok
}
