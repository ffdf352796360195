package render

import (
	"slices"

	"homerun/diffreport"
	"homerun/schema"
)

// A classPart is what changes in one way.
type classPart struct {
	Title string
	Items []changePart
}

// A changePart is one record that changes, with the fields that tell how.
type changePart struct {
	Name, Kind, Why string
	Fields          []fact
}

// A changeGroup is neighbouring records of one kind that change for the same
// reason, which a document then says once.
type changeGroup struct {
	Kind, Why string
	Rows      []changeRow
}

// A changeRow is records whose fields say the same.
type changeRow struct {
	Names  []string
	Fields []fact
}

func (p *paper) classes(o *diffreport.Order) {
	for _, class := range diffreport.Classes() {
		part := classPart{Title: titleOf(class)}
		for i := range o.Changes {
			if c := &o.Changes[i]; c.Class == class {
				part.Items = append(part.Items, changeOf(o, c))
			}
		}
		if len(part.Items) > 0 {
			p.Classes = append(p.Classes, part)
		}
	}
}

func titleOf(c diffreport.Class) string {
	switch c {
	case diffreport.ClassMove:
		return "Moves"
	case diffreport.ClassAdd:
		return "Adds"
	case diffreport.ClassChange:
		return "Changes"
	case diffreport.ClassRemoval:
		return "Removals"
	case diffreport.ClassRelabel:
		return "Relabels"
	case diffreport.ClassRecordsOnly:
		return "Records only: nobody goes to site"
	}
	return "Other"
}

func changeOf(o *diffreport.Order, c *diffreport.Change) changePart {
	part := changePart{Name: schema.Printable(c.Label), Kind: c.Kind, Why: schema.Printable(c.Why)}
	if c.Label == "" {
		part.Name = "without a label"
	}
	if c.Former != "" {
		part.Name = schema.Printable(c.Former) + ", now " + part.Name
	}
	for _, f := range c.AllFields(o.Units) {
		if tells(c, &f) {
			part.Fields = append(part.Fields, fact{f.Name, schema.Printable(transition(f.Before, f.After))})
		}
	}
	return part
}

// tells says whether a field is worth a line: every one that differs, and of
// records that came or went those that somebody on site acts on.
func tells(c *diffreport.Change, f *diffreport.FieldChange) bool {
	if c.Before.Record != nil && c.After.Record != nil {
		return true
	}
	return c.Class != diffreport.ClassRecordsOnly && f.Meaning > schema.Relabelling
}

// Groups draws together what would be said again and again.
func (c classPart) Groups() []changeGroup {
	alike := func(a, b changePart) bool { return a.Kind == b.Kind && a.Why == b.Why }
	same := func(a, b changePart) bool { return slices.Equal(a.Fields, b.Fields) }
	return each(neighbours(c.Items, alike), func(group []changePart) changeGroup {
		return changeGroup{group[0].Kind, group[0].Why, each(neighbours(group, same), func(row []changePart) changeRow {
			return changeRow{each(row, func(c changePart) string { return c.Name }), row[0].Fields}
		})}
	})
}

// Single is the only record of a group, or empty where there are several.
func (g changeGroup) Single() string {
	if len(g.Rows) == 1 && len(g.Rows[0].Names) == 1 {
		return g.Rows[0].Names[0]
	}
	return ""
}
