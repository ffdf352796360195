package table

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"homerun/schema"
)

// A Claim is what the rows of a table state about one record.
type Claim struct {
	// Label is the record's, empty for a kind without labels; Around is the label of
	// the record that it stands in, empty where it stands by itself.
	Label, Around string
	// Place is where the table names it.
	Place string
	// Stated are what it states by field, in the order of the form; a cell may be empty.
	Stated []Stated
}

// A Stated is the cell of one field.
type Stated struct {
	Field *schema.Field
	Cell
}

// A source says where the cell of a column comes from.
type source struct {
	Column
	parts []fillPart
	// from are the places in a row of the columns that parts name.
	from []int
}

// Claims reads the rows of one kind: first the headings, then a row for each record.
// Rows with one label are one record, as long as they agree. With fills only these
// are taken, and left names the headings of the columns that nothing is taken of.
// What is wrong is a mistake, and the reading goes on.
func (f *Form) Claims(rows [][]Cell, fills []Fill) (claims []Claim, left []string, mistakes []Mistake) {
	if len(rows) == 0 {
		return nil, nil, nil
	}
	g := gathering{form: f, byKey: make(map[string]int)}
	g.head(rows[0], fills)
	if len(g.mistakes) > 0 {
		return nil, g.left, g.mistakes
	}
	for _, row := range rows[1:] {
		g.row(row)
	}
	return g.claims, g.left, g.mistakes
}

// A gathering is claims in the making.
type gathering struct {
	form     *Form
	sources  []source
	left     []string
	claims   []Claim
	byKey    map[string]int
	mistakes []Mistake
}

func (g *gathering) object(place, message, next string) {
	g.mistakes = append(g.mistakes, Mistake{place, message, next})
}

// head finds what each column of the form is taken from.
func (g *gathering) head(row []Cell, fills []Fill) {
	at := make(map[string]int)
	for i, c := range row {
		switch plain := plainHeading(c.Text); {
		case plain == "":
		case contains(at, plain) && len(fills) == 0:
			g.object(c.Place, "the heading "+schema.Quote(c.Text)+" stands here again", "give each column a heading of its own")
		default:
			at[plain] = i
		}
	}
	if len(fills) == 0 {
		g.ownHeadings(row)
	} else {
		g.filled(row, at, fills)
	}
	if len(g.mistakes) > 0 {
		return
	}
	// A new record has its fields in the order of the language.
	slices.SortFunc(g.sources, func(a, b source) int { return cmp.Compare(g.form.place(a.Heading), g.form.place(b.Heading)) })
	for _, key := range g.form.keys() {
		if !slices.ContainsFunc(g.sources, func(s source) bool { return s.Heading == key }) {
			g.object(row[0].Place, "no column is "+key+", which says which "+g.form.Kind.Name+" a row is of",
				fmt.Sprintf("name the column %s, or fill it: --fill '%s={%s}'", key, key, schema.Printable(row[0].Text)))
		}
	}
}

func contains(at map[string]int, heading string) bool {
	_, there := at[heading]
	return there
}

// keys are the headings without which a row is of no record.
func (f *Form) keys() (keys []string) {
	if !f.Kind.Unlabelled {
		keys = append(keys, HeadingLabel)
	}
	if f.inner() {
		keys = append(keys, f.Within.Name)
	}
	return keys
}

// ownHeadings takes a table whose headings are those of the form. One that has more of
// others is a list of somebody's own.
func (g *gathering) ownHeadings(row []Cell) {
	var foreign []Cell
	for i, c := range row {
		if c.empty() {
			continue
		}
		n := g.form.place(c.Text)
		if n < 0 {
			foreign = append(foreign, c)
			continue
		}
		g.sources = append(g.sources, source{Column: g.form.Columns[n], parts: []fillPart{{heading: c.Text}}, from: []int{i}})
	}
	if len(foreign) > len(g.sources) {
		g.object(foreign[0].Place, "the columns are not the fields of a "+g.form.Kind.Name+": "+schema.Printable(strings.Join(texts(foreign), ", ")),
			"say what goes into each field, as in --fill '"+g.form.Columns[0].Heading+"={"+schema.Printable(foreign[0].Text)+"}'; git homerun explain "+g.form.Kind.Name+" lists the fields")
		return
	}
	for _, c := range foreign {
		next := "leave the column out: git homerun explain " + g.form.Kind.Name + " lists the fields"
		if near := schema.Nearest(c.Text, g.form.headings()); near != "" {
			next = "did you mean " + near + "?"
		}
		g.object(c.Place, "a "+g.form.Kind.Name+" has no field "+schema.Quote(c.Text), next)
	}
}

// place is where the column of a heading stands in the form, -1 where there is none.
func (f *Form) place(heading string) int {
	return slices.IndexFunc(f.Columns, func(own Column) bool { return plainHeading(own.Heading) == plainHeading(heading) })
}

func (f *Form) headings() []string {
	all := make([]string, len(f.Columns))
	for i, c := range f.Columns {
		all[i] = c.Heading
	}
	return all
}

// filled takes what the fills say.
func (g *gathering) filled(row []Cell, at map[string]int, fills []Fill) {
	used := make(map[int]bool)
	for _, fill := range fills {
		n := g.form.place(fill.Column)
		if n < 0 {
			g.object("--fill "+fill.Column, "a "+g.form.Kind.Name+" has no field "+schema.Quote(fill.Column), suggest(fill.Column, g.form.headings()))
			continue
		}
		if slices.ContainsFunc(g.sources, func(s source) bool { return s.Heading == g.form.Columns[n].Heading }) {
			g.object("--fill "+fill.Column, "it is filled twice", "say once what goes there")
			continue
		}
		s := source{Column: g.form.Columns[n], parts: fill.parts}
		for _, p := range fill.parts {
			i := -1
			if p.heading != "" {
				var there bool
				if i, there = at[plainHeading(p.heading)]; !there {
					g.object("--fill "+fill.Column, "the table has no column "+schema.Quote(p.heading), suggest(p.heading, texts(row)))
				}
				used[i] = true
			}
			s.from = append(s.from, i)
		}
		g.sources = append(g.sources, s)
	}
	for i, c := range row {
		if !used[i] && !c.empty() {
			g.left = append(g.left, c.Text)
		}
	}
}

func texts(row []Cell) (all []string) {
	for _, c := range row {
		if c.Text != "" {
			all = append(all, c.Text)
		}
	}
	return all
}

func suggest(word string, known []string) string {
	if near := schema.Nearest(word, known); near != "" {
		return "did you mean " + schema.Printable(near) + "?"
	}
	return "there are " + schema.Printable(strings.Join(known, ", "))
}

// row reads one row.
func (g *gathering) row(row []Cell) {
	claim, anything := Claim{}, false
	for i := range g.sources {
		s := &g.sources[i]
		c, written := s.cell(row)
		anything = anything || written
		if c.Broken != "" {
			g.object(c.Place, c.Broken, "write the value itself into the cell")
		}
		if s.names() && c.Number && strings.Contains(c.Text, ".") {
			g.object(c.Place, "the cell holds the number "+c.Text+", and a number loses zeros: 1.10 is 1.1 there", "give the column the format text, and write the label again")
		}
		switch {
		case s.Field != nil:
			claim.Stated = append(claim.Stated, Stated{s.Field, c})
		case s.Heading == HeadingLabel:
			claim.Label, claim.Place = c.Text, c.Place
		default:
			claim.Around = c.Text
			if g.form.Kind.Unlabelled {
				claim.Place = c.Place
			}
		}
	}
	if !anything {
		return // nothing but what every row has
	}
	if claim.Place == "" && len(row) > 0 {
		claim.Place = row[0].Place
	}
	g.take(claim)
}

// names says whether the column holds labels.
func (s *source) names() bool {
	return s.Field == nil || s.Field.Type == schema.Reference || s.Field.Type == schema.References || s.Field.Type == schema.PortReference
}

// cell is what a row has for a column, and whether any cell of it is written. Where
// one that is named is empty, the whole is.
func (s *source) cell(row []Cell) (c Cell, written bool) {
	var text strings.Builder
	whole := true
	for i, p := range s.parts {
		if p.heading == "" {
			text.WriteString(p.text)
			continue
		}
		if s.from[i] >= len(row) {
			whole = false
			continue
		}
		part := row[s.from[i]]
		if c.Place == "" {
			c.Place = part.Place
		}
		if part.Broken != "" {
			c.Broken = part.Broken
		}
		c.Number = c.Number || part.Number
		written = written || !part.empty()
		whole = whole && part.Text != ""
		text.WriteString(part.Text)
	}
	if c.Place == "" && len(row) > 0 {
		c.Place = row[0].Place
	}
	if whole {
		c.Text = text.String()
	}
	return c, written
}

// take adds a claim, or joins it to the one of the same record.
func (g *gathering) take(claim Claim) {
	switch {
	case claim.Label == "" && !g.form.Kind.Unlabelled:
		g.object(claim.Place, "the row states something, and no label", "write the label of the "+g.form.Kind.Name+", or empty the row")
		return
	case claim.Around == "" && g.form.inner():
		g.object(claim.Place, "the row does not say which "+g.form.Within.Name+" it is of", "write its label into the column "+g.form.Within.Name)
		return
	case g.form.Kind.Unlabelled:
		g.claims = append(g.claims, claim)
		return
	}
	key := claim.Label
	if g.form.inner() {
		key = claim.Around + "\x00" + key
	}
	n, again := g.byKey[key]
	if !again {
		g.byKey[key] = len(g.claims)
		g.claims = append(g.claims, claim)
		return
	}
	first := &g.claims[n]
	for i := range first.Stated {
		switch a, b := &first.Stated[i], claim.Stated[i]; {
		case a.Text == "":
			a.Cell = b.Cell
		case b.Text != "" && a.Text != b.Text:
			g.object(b.Place, fmt.Sprintf("%s: %s is %s here, and %s in %s", schema.Printable(claim.Label), a.Field.Name, schema.Quote(b.Text), schema.Quote(a.Text), a.Place),
				"let the rows of one record agree")
		}
	}
	if first.Around == "" {
		first.Around = claim.Around
	}
}
