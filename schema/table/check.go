package table

import (
	"slices"
	"strings"

	"homerun/schema"
)

// check reads a claim as a record by itself, so that what is wrong with a cell is
// said of that cell. What is forgiven is not said: of a record that is there already
// a table may leave fields out.
func (f *Form) check(rd *schema.Reader, c *Claim, forgiven ...schema.Code) (*schema.Record, []Mistake) {
	lines := c.lines(f.Kind, "")
	first := 2 // the line of the first field
	text := strings.Join(lines, "\n") + "\n"
	if f.inner() {
		text = f.Within.Name + " " + schema.Literal("around") + " {\n" + text + "}\n"
		first++
	}
	file := rd.ReadFile("", text)
	var stated []*Stated
	for i := range c.Stated {
		if c.Stated[i].Text != "" {
			stated = append(stated, &c.Stated[i])
		}
	}
	var mistakes []Mistake
	for _, p := range file.Problems {
		if p.Kind != "" && p.Kind != f.Kind.Name || slices.Contains(forgiven, p.Code) {
			continue
		}
		m := Mistake{c.Place, p.Message, p.Next}
		if n := p.At.Line - first; n >= 0 && n < len(stated) {
			m.Place = stated[n].Place
			if stated[n].Number && stated[n].Field.Type != schema.Count {
				m.Next += "; where a column holds bare numbers, say their unit: --fill '" + stated[n].Field.Name + "={HEADING} UNIT'"
			}
		}
		mistakes = append(mistakes, m)
	}
	if len(mistakes) > 0 || len(file.Entries) == 0 {
		return nil, mistakes
	}
	r := file.Entries[0].Record
	if f.inner() {
		if len(r.Inner) == 0 {
			return nil, mistakes
		}
		r = r.Inner[0]
	}
	return r, nil
}
