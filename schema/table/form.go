package table

import (
	"slices"

	"homerun/schema"
)

// HeadingLabel is the heading of the column that holds each record's label.
const HeadingLabel = "label"

// A Form is what the table of one kind of record looks like.
type Form struct {
	Kind *schema.Kind
	// Within is the kind of the record that this one stands inside, nil where it
	// stands by itself. A run may do both.
	Within  *schema.Kind
	Columns []Column
}

// A Column holds one thing of each record: the label and the record around it,
// where Field is nil, or what a field states.
type Column struct {
	Heading string
	Field   *schema.Field
}

// inner says whether records of the kind stand only inside another.
func (f *Form) inner() bool { return f.Within != nil && !slices.Contains(schema.Kinds(), f.Kind) }

// Forms are those of all kinds of record, in the order in which the language page
// explains them, kinds that stand inside others after those.
func Forms() []Form {
	var forms []Form
	for _, k := range schema.Kinds() {
		if !slices.ContainsFunc(forms, func(f Form) bool { return f.Kind == k }) {
			forms = append(forms, formOf(k, nil))
		}
		for _, in := range k.Blocks {
			forms = append(forms, formOf(in, k))
		}
	}
	return forms
}

// FormOf is the form of a kind by its name.
func FormOf(kind string) (Form, bool) {
	forms := Forms()
	i := slices.IndexFunc(forms, func(f Form) bool { return f.Kind.Name == kind })
	if i < 0 {
		return Form{}, false
	}
	return forms[i], true
}

// formOf lays out a kind: its label, the record around it, and its fields in the
// order of the language.
func formOf(k, within *schema.Kind) Form {
	f := Form{Kind: k, Within: within}
	if !k.Unlabelled {
		f.Columns = append(f.Columns, Column{Heading: HeadingLabel})
	}
	if within != nil {
		f.Columns = append(f.Columns, Column{Heading: within.Name})
	}
	for _, field := range k.Fields {
		f.Columns = append(f.Columns, Column{Heading: field.Name, Field: field})
	}
	return f
}
