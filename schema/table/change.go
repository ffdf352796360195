package table

import (
	"path"
	"slices"
	"strings"

	"homerun/schema"
)

// agrees says whether a record states a claim word for word, as most do in a table
// that went out from it.
func (e *entering) agrees(at found, c *Claim) bool {
	for i := range c.Stated {
		s := &c.Stated[i]
		v := at.record.Own(s.Field.Name)
		if s.Text == "" && (v == nil || !e.Clear) {
			continue
		}
		if v == nil || at.written(v) != s.Text {
			return false
		}
	}
	return true
}

// change writes what a claim states otherwise than the record, and returns the fields.
func (e *entering) change(at found, c *Claim, alone *schema.Record) (changed []*schema.Field) {
	for i := range c.Stated {
		s := &c.Stated[i]
		v := at.record.Own(s.Field.Name)
		switch {
		case s.Text == "" && (v == nil || !e.Clear), s.Text != "" && at.states(s, alone):
			continue
		case s.Text == "" && s.Field.Required && !s.Field.Inherited:
			e.object(s.Place, called(c.Label)+": "+s.Field.Name+" has to be stated", "write it into the cell")
			continue
		case s.Text == "":
			at.remove(v)
		case v != nil:
			at.replace(v, literal(s.Field, s.Text))
		case !at.spread():
			e.object(c.Place, called(c.Label)+" is written on one line in "+at.place()+", where no field can be added", "set its closing brace on a line of its own")
			continue
		default:
			at.insert(s.Field, literal(s.Field, s.Text))
		}
		e.touched[at.entry.Record] = true
		changed = append(changed, s.Field)
	}
	return changed
}

// add writes a record that is not there yet, and returns the file; empty where it
// could not.
func (e *entering) add(f *Form, c *Claim) string {
	if f.Within != nil && c.Around != "" {
		at, ok := e.parent(f, c)
		if !ok {
			return ""
		}
		if !at.spread() {
			e.object(c.Place, called(c.Around)+" is written on one line in "+at.place()+", where no record can be added", "set its closing brace on a line of its own")
			return ""
		}
		at.add(c, f.Kind)
		e.touched[at.entry.Record] = true
		return at.doc.path
	}
	d := e.into(f)
	d.append(c, f.Kind)
	return d.path
}

// into is the file for new records of a kind.
func (e *entering) into(f *Form) *document {
	name := e.Into
	if name == "" {
		name = path.Join(e.Dir, FileFor(f.Kind))
	}
	i := slices.IndexFunc(e.docs, func(d *document) bool { return d.path == name })
	if i < 0 {
		i = len(e.docs)
		e.docs = append(e.docs, newDocument(schema.Document{Path: name}))
	}
	return e.docs[i]
}

// FileFor is the name of the file that takes new records of a kind.
func FileFor(k *schema.Kind) string {
	if strings.Contains(k.Plural, " ") {
		return k.Name + ".hcl"
	}
	return k.Plural + ".hcl"
}
