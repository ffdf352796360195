package table

import (
	"cmp"
	"fmt"
	"slices"

	"homerun/schema"
)

// A Batch is the claims of one table.
type Batch struct {
	Form   Form
	Claims []Claim
}

// Options say how tables are entered.
type Options struct {
	// Dir is the plant's folder, below which new files stand.
	Dir string
	// Into is the file for new records, empty for one of each kind.
	Into string
	// Clear takes out what the cell of an existing record leaves empty.
	Clear bool
}

// An Outcome is what became of one table.
type Outcome struct {
	Form Form
	// Added are records that were not there, in the files of Into.
	Added int
	Into  []string
	// Changed are records with other fields than before, Fields how often each field.
	Changed int
	Fields  []FieldCount
	// Same are records that stated all of it, Absent those of the kind that the table
	// does not name: they stay.
	Same, Absent int
}

// A FieldCount is in how many records a field changed.
type FieldCount struct {
	Name  string
	Count int
}

// mostMistakes is how many mistakes are told, mostRemembered how many bytes of rows
// that were read by themselves are kept.
const (
	mostMistakes   = 100
	mostRemembered = 1 << 20
)

// Enter brings tables into the files of a plant. It returns the files with a new
// text, in the order of their paths, and what became of each table. Where there is
// any mistake there is no new text: the tables are entered wholly or not at all.
// Every text has been read again, and states what the tables do and for the rest
// what it did before.
func Enter(rd *schema.Reader, docs []schema.Document, batches []Batch, o Options) (fresh []schema.Document, outcomes []Outcome, mistakes []Mistake) {
	s := newShelf(rd, docs)
	e := entering{shelf: s, Options: o, before: s.byName, rows: schema.NewReader(), touched: make(map[*schema.Record]bool)}
	e.rows.Bound(mostRemembered)
	for _, f := range Forms() {
		for i := range batches {
			if batches[i].Form.Kind == f.Kind {
				outcomes = append(outcomes, e.batch(&batches[i]))
			}
		}
	}
	if len(e.mistakes) == 0 {
		e.prove()
	}
	if n := len(e.mistakes); n > mostMistakes {
		e.mistakes = append(e.mistakes[:mostMistakes], Mistake{Message: fmt.Sprintf("and %d more", n-mostMistakes), Next: "correct these first"})
	}
	if len(e.mistakes) > 0 {
		return nil, outcomes, e.mistakes
	}
	for _, d := range e.docs {
		if d.fresh {
			fresh = append(fresh, schema.Document{Path: d.path, Text: d.text})
		}
	}
	slices.SortFunc(fresh, func(a, b schema.Document) int { return cmp.Compare(a.Path, b.Path) })
	return fresh, outcomes, nil
}

// entering is tables on their way into the records.
type entering struct {
	*shelf
	Options
	// before are the records as they were, by name.
	before   map[string][]found
	mistakes []Mistake
	// rows reads each row by itself.
	rows *schema.Reader
	// entered are the claims that were taken, with the records that they are by
	// themselves; touched the top-level records that any of them changed.
	entered []enteredClaim
	touched map[*schema.Record]bool
}

type enteredClaim struct {
	form  *Form
	claim *Claim
	alone *schema.Record
	nth   int
}

func (e *entering) object(place, message, next string) {
	e.mistakes = append(e.mistakes, Mistake{place, message, next})
}

// batch enters one table.
func (e *entering) batch(b *Batch) Outcome {
	out := Outcome{Form: b.Form}
	counts, nths, there := make(map[*schema.Field]int), make(map[string]int), 0
	for i := range b.Claims {
		c := &b.Claims[i]
		nth := nths[c.Around]
		nths[c.Around]++
		at, known, fits := e.locate(&b.Form, c, nth)
		if !fits {
			continue
		}
		if known && e.agrees(at, c) {
			there++
			out.Same++
			continue
		}
		var forgiven []schema.Code
		if known {
			forgiven = append(forgiven, schema.MissingField)
		}
		alone, wrong := b.Form.check(e.rows, c, forgiven...)
		if alone == nil {
			e.mistakes = append(e.mistakes, wrong...)
			continue
		}
		e.entered = append(e.entered, enteredClaim{&b.Form, c, alone, nth})
		switch {
		case !known:
			if path := e.add(&b.Form, c); path != "" {
				out.Added++
				out.Into = append(out.Into, path)
			}
		default:
			there++
			if changed := e.change(at, c, alone); len(changed) > 0 {
				out.Changed++
				for _, f := range changed {
					counts[f]++
				}
			} else {
				out.Same++
			}
		}
	}
	out.Absent = max(0, e.count(&b.Form)-there)
	slices.Sort(out.Into)
	out.Into = slices.Compact(out.Into)
	for _, f := range b.Form.Kind.Fields {
		if counts[f] > 0 {
			out.Fields = append(out.Fields, FieldCount{f.Name, counts[f]})
		}
	}
	e.settle()
	return out
}

// settle carries out what a table asked for, so that the next one finds it.
func (e *entering) settle() {
	changed := false
	for _, d := range e.docs {
		changed = changed || len(d.edits) > 0
		d.settle()
	}
	if changed {
		e.find()
	}
}

// count is how many records there are of a kind.
func (e *entering) count(f *Form) (n int) {
	for _, all := range e.byName {
		for _, at := range all {
			switch {
			case at.record.Kind == f.Kind:
				n++
			case f.inner() && at.record.Kind == f.Within:
				n += len(at.record.Blocks(f.Kind.Name))
			}
		}
	}
	return n
}

// locate finds the record that a claim is about. It does not fit where something else
// is in its place.
func (e *entering) locate(f *Form, c *Claim, nth int) (at found, known, fits bool) {
	if f.inner() {
		if _, ok := e.parent(f, c); !ok {
			return found{}, false, false
		}
	}
	all := e.named(f, c, nth)
	switch {
	case len(all) == 0 && f.Kind.Name == schema.KindPlant:
		e.object(c.Place, "the plant is not "+schema.Quote(c.Label), "give the row the plant's label, or begin another plant in a folder of its own: git homerun init")
		return found{}, false, false
	case len(all) == 0:
		return found{}, false, true
	case len(all) > 1:
		e.object(c.Place, called(c.Label)+" is the label of several records", "git homerun lint says where: give all but one another label")
		return found{}, false, false
	}
	at = all[0]
	if at.record.Kind != f.Kind {
		e.object(c.Place, fmt.Sprintf("%s is %s in %s", called(c.Label), schema.OneOf([]string{at.record.Kind.Name}), at.place()), "write the label of "+schema.OneOf([]string{f.Kind.Name}))
		return found{}, false, false
	}
	if around := at.around(); !f.inner() && c.Around != "" && called(c.Around) != around {
		e.object(c.Place, fmt.Sprintf("%s stands %s in %s, and the table has it in the %s %s", called(c.Label), inOrAlone(around), at.place(), f.Within.Name, called(c.Around)),
			"move its block there by hand: git homerun order knows it by its label")
		return found{}, false, false
	}
	return at, true, e.sound(at, c)
}

func inOrAlone(around string) string {
	if around == "" {
		return "by itself"
	}
	return "in " + around
}

// parent finds the record that a claim's record stands in.
func (e *entering) parent(f *Form, c *Claim) (found, bool) {
	all := e.byName[called(c.Around)]
	if len(all) != 1 || all[0].record.Kind != f.Within {
		e.object(c.Place, "there is no "+f.Within.Name+" "+schema.Quote(c.Around), "add it first, or correct its label")
		return found{}, false
	}
	return all[0], e.sound(all[0], c)
}

// sound says whether a record could be read, so that it can be changed.
func (e *entering) sound(at found, c *Claim) bool {
	if !at.entry.Damaged && !at.record.Damaged {
		return true
	}
	e.object(c.Place, called(c.Label)+" could not be read whole in "+at.place(), "correct it there first: git homerun lint says what is wrong")
	return false
}

func (f found) place() string {
	start := f.entry.In(f.record).Start()
	return fmt.Sprintf("%s:%d", start.Path, start.Line)
}

func (f found) around() string {
	if f.record.Parent == nil {
		return ""
	}
	return called(f.record.Parent.Label)
}
