package table

import (
	"slices"
	"strings"

	"homerun/schema"
	"homerun/schema/block"
)

// A shelf is the texts of a plant's files with their records, to be found by what
// tables call them.
type shelf struct {
	reader *schema.Reader
	docs   []*document
	byName map[string][]found
}

// A document is one file.
type document struct {
	path, text string
	fresh      bool
	edits      []edit
	newline    string
}

// A found is a record with where its top-level block begins in its document.
type found struct {
	doc      *document
	start    int
	entry    schema.Entry
	record   *schema.Record
	literals map[int]*block.Value
}

func newShelf(rd *schema.Reader, docs []schema.Document) *shelf {
	s := &shelf{reader: rd}
	for _, d := range docs {
		s.docs = append(s.docs, newDocument(d))
	}
	s.find()
	return s
}

func newDocument(d schema.Document) *document {
	doc := &document{path: d.Path, text: d.Text, newline: "\n"}
	if strings.Contains(d.Text, "\r\n") {
		doc.newline = "\r\n"
	}
	return doc
}

// find reads all texts and indexes their records.
func (s *shelf) find() {
	s.byName = make(map[string][]found)
	for _, d := range s.docs {
		for _, c := range schema.Blocks(d.text) {
			for _, e := range s.reader.ReadBlocks(d.path, []schema.Block{c}).Entries {
				f := found{doc: d, start: c.Offset, entry: e, record: e.Record, literals: literalsOf(e.Text())}
				s.enter(f)
				for _, in := range e.Inner {
					f.record = in
					if slices.Contains(schema.Kinds(), in.Kind) {
						s.enter(f)
					}
				}
			}
		}
	}
}

func (s *shelf) enter(f found) {
	name := called(f.record.Label)
	s.byName[name] = append(s.byName[name], f)
}

// called is a label as a cell holds it.
func called(label string) string { return strings.TrimSpace(schema.Printable(label)) }

// named finds the records that bear a claim's label, of whatever kind; inside another
// it is the one of the form's kind that bears it, or without labels the nth.
func (s *shelf) named(f *Form, c *Claim, nth int) []found {
	if !f.inner() {
		return s.byName[called(c.Label)]
	}
	if around := s.byName[called(c.Around)]; len(around) == 1 {
		if at, there := around[0].inner(f.Kind, c.Label, nth); there {
			return []found{at}
		}
	}
	return nil
}

// inner finds a record inside another: by its label, or the nth without one.
func (f found) inner(k *schema.Kind, label string, n int) (found, bool) {
	for _, in := range f.record.Blocks(k.Name) {
		if k.Unlabelled && n == 0 || !k.Unlabelled && called(in.Label) == called(label) {
			f.record = in
			return f, true
		}
		n--
	}
	return found{}, false
}

// states says whether the record states what a cell does, which a record by itself has
// read from it.
func (f found) states(s *Stated, alone *schema.Record) bool {
	v := f.record.Own(s.Field.Name)
	return v != nil && (f.written(v) == s.Text || v.Same(alone.Own(s.Field.Name)))
}

// written is what a field of the record states, as a cell holds it.
func (f found) written(v *schema.Value) string {
	return called(written(f.literals[v.At.Start]))
}
