package history

import (
	"strings"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/unit"
)

// summary says in one sentence what a change did.
func summary(c *diffreport.Change, units unit.System) string {
	switch {
	case c.Before.Record == nil && c.Class == diffreport.ClassAdd:
		return "installed" + stated(c.After, units)
	case c.Before.Record == nil:
		return "recorded" + stated(c.After, units)
	case c.After.Record == nil && c.Class == diffreport.ClassRemoval:
		return "taken out"
	case c.After.Record == nil:
		return "taken out of the records"
	}
	var parts []string
	if c.Former != "" {
		parts = append(parts, "relabelled from "+c.Former+" to "+c.Label)
	}
	for _, f := range c.Fields {
		parts = append(parts, f.Name+" from "+f.Before+" to "+f.After)
	}
	return strings.Join(parts, ", ")
}

// stated lists what a cable is recorded with, which is what people ask first.
func stated(e schema.Entry, units unit.System) string {
	var parts []string
	for _, name := range []string{"from", "to", "space", "length", "cable", "state"} {
		if f, ok := e.Kind.Field(name); ok {
			if v := e.Lookup(f); v != nil {
				parts = append(parts, name+" "+v.Show(units))
			}
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return ": " + strings.Join(parts, ", ")
}
