package history

import (
	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// A Stand is what was asked as it stood at one commit.
type Stand struct {
	// Revision is the commit, Day the day that was asked for.
	Revision Revision
	Day      string
	// Asked is the label that was asked for, Port the port on it, 0 without one.
	Asked string
	Port  int64
	// Records are what bore the label, or the label that the thing had then. A
	// port shows its holder and the cables on it, a space also what was in it.
	Records []Stated
	Units   unit.System
}

// A Stated is a record with all that it stated.
type Stated struct {
	Kind, Label, Path string
	Line              int
	// Place and End say where and by which field it lay at the port or in the
	// space; both are empty for the record itself.
	Place, End string
	// Fields are named with their values, in the order of the record language,
	// those of a run with what its bundle states; inner blocks stand behind.
	Fields [][2]string
}

// Standing finds in the plant of a day what a history, told with that day as
// Asked.On, is about. The plant may be nil.
func Standing(h History, p *plant.Plant) Stand {
	s := Stand{Asked: h.Record, Port: h.Port, Units: unitsOf(p)}
	asked := Asked{Label: h.Record, Port: h.Port, Contents: h.Kind == schema.KindSpace}
	if p == nil {
		return s
	}
	for _, label := range h.On {
		if e, ok := entryOf(p, label); ok {
			s.Records = append(s.Records, statedOf(e, s.Units))
		}
		if asked.interest() == Itself {
			continue
		}
		changes := diffreport.Compare(nil, p, diffreport.Options{})
		for i := range changes {
			c := &changes[i]
			if field := asked.tied(c.After.Record, label); field != "" {
				one := statedOf(c.After, s.Units)
				one.Place, one.End = label, field
				s.Records = append(s.Records, one)
			}
		}
	}
	return s
}

func entryOf(p *plant.Plant, label string) (schema.Entry, bool) {
	if it, ok := p.Find(label); ok {
		return it.Place(), true
	}
	if p.Entry.Record != nil && p.Entry.Label == label {
		return p.Entry, true
	}
	for _, list := range [][]schema.Entry{p.Waivers, p.Policies} {
		for _, e := range list {
			if e.Label == label {
				return e, true
			}
		}
	}
	return schema.Entry{}, false
}

func statedOf(e schema.Entry, units unit.System) Stated {
	s := Stated{Kind: e.Kind.Name, Label: e.Label, Path: e.Path, Line: e.Start().Line}
	s.Fields = fieldsOf(nil, "", e.Record, units)
	return s
}

// fieldsOf lists what a record states, and what the blocks in it do, but for
// those with labels of their own.
func fieldsOf(all [][2]string, prefix string, r *schema.Record, units unit.System) [][2]string {
	for _, f := range r.Kind.Fields {
		if v := r.Lookup(f); v != nil {
			all = append(all, [2]string{prefix + f.Name, v.Show(units)})
		}
	}
	if r.Parent != nil && prefix == "" && r.Label != "" {
		all = append(all, [2]string{r.Parent.Kind.Name, r.Parent.Label})
	}
	for _, in := range r.Inner {
		if in.Label == "" {
			all = fieldsOf(all, prefix+in.Kind.Name+" ", in, units)
		}
	}
	return all
}
