package table

import (
	"fmt"
	"slices"

	"homerun/schema"
)

// prove reads the new texts again. Each record that a table names has to state what
// the table does, and every other record what it did: else nothing is written. It
// finds what an edit met that nobody thought of.
func (e *entering) prove() {
	fresh := slices.DeleteFunc(slices.Clone(e.docs), func(d *document) bool { return !d.fresh })
	if len(fresh) == 0 {
		return
	}
	for _, d := range fresh {
		for _, p := range e.reader.ReadFile(d.path, d.text).Problems {
			if p.Code == schema.Unreadable {
				e.object(d.path, fmt.Sprintf("line %d of its new text can not be read: %s", p.At.Line, p.Message), "correct what is wrong there first: git homerun lint says where")
			}
		}
	}
	for _, c := range e.entered {
		if !e.states(c) {
			e.object(c.claim.Place, called(c.claim.Label)+" could not be entered without changing something else", "enter it by hand")
		}
	}
	for name, all := range e.before {
		for _, was := range all {
			if e.touched[was.entry.Record] {
				continue
			}
			if !slices.ContainsFunc(e.byName[name], func(is found) bool { return schema.SameRecord(was.record, is.record) }) {
				e.object(was.place(), name+" would not state any more what it does", "enter the table's rows by hand")
			}
		}
	}
}

// states says whether a record states what a claim does.
func (e *entering) states(c enteredClaim) bool {
	all := e.named(c.form, c.claim, c.nth)
	if len(all) != 1 || all[0].record.Kind != c.form.Kind {
		return false
	}
	return !slices.ContainsFunc(c.claim.Stated, func(s Stated) bool { return s.Text != "" && !all[0].states(&s, c.alone) })
}
