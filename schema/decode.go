package schema

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"homerun/schema/block"
	"homerun/schema/unit"
)

// A fault is a problem whose place still counts from the start of its block.
type fault struct {
	code          Code
	record        *Record
	at            block.Range
	also          block.Range
	message, next string
}

// A reading is what one top-level block of text holds. It is immutable and
// depends on the text alone.
type reading struct {
	text string
	// lines counts the ends of lines in the text.
	lines  int
	record *Record
	faults []fault
}

// decoder turns one parsed block into records.
type decoder struct {
	text   string
	faults []fault
	// meant are the fields that mistyped names were probably meant for, in
	// the record being read: they are not told a second time as missing.
	meant []string
}

// read reads one top-level block of text.
func read(text string) *reading {
	parsed, problems := block.Parse(text)
	d := &decoder{text: text}
	var record *Record
	if parsed != nil {
		record = d.top(parsed)
	}
	for _, p := range problems {
		if d.labelled(p.At) {
			continue
		}
		d.faults = append(d.faults, fault{code: codeOf(p.Code), record: record, at: p.At, also: p.Also, message: p.Message, next: p.Next})
	}
	slices.SortStableFunc(d.faults, func(a, b fault) int { return a.at.Start - b.at.Start })
	return &reading{text: text, lines: strings.Count(text, "\n"), record: record, faults: d.faults}
}

// labelled says whether a label that was already named as a mistake holds the
// place of another problem, which would then be told twice.
func (d *decoder) labelled(at block.Range) bool {
	return slices.ContainsFunc(d.faults, func(f fault) bool {
		return f.code == BadLabel && f.at.Start <= at.Start && at.End <= f.at.End
	})
}

func (d *decoder) top(b *block.Block) *Record {
	for _, k := range Kinds() {
		if k.Name == b.Kind.Text {
			return d.record(k, b, nil)
		}
	}
	next := "the records are " + list(kindNames(Kinds()))
	if near := nearest(b.Kind.Text, kindNames(Kinds())); near != "" {
		next = "did you mean " + near + "?"
	} else if inner, ok := KindNamed(b.Kind.Text); ok {
		next = inner.Name + " stands inside another record: see explain " + inner.Name
	}
	d.fault(UnknownBlock, nil, b.Kind.At, fmt.Sprintf("%s is not a kind of record", Quote(b.Kind.Text)), next)
	return nil
}

func (d *decoder) record(k *Kind, b *block.Block, parent *Record) *Record {
	r := &Record{Kind: k, Parent: parent, At: b.At, Head: b.Head, Damaged: b.Bad, text: d.text}
	d.label(r, b)
	r.Values = make([]Value, 0, len(b.Fields))
	d.meant = d.meant[:0]
	for i := range b.Fields {
		d.field(r, &b.Fields[i])
	}
	if !r.Damaged {
		d.missing(r)
	}
	for _, in := range b.Blocks {
		d.inner(r, in)
	}
	return r
}

func (d *decoder) label(r *Record, b *block.Block) {
	want := 1
	if r.Kind.Unlabelled {
		want = 0
	}
	switch {
	case len(b.Labels) > want:
		d.fault(BadLabel, r, b.Labels[want].At, fmt.Sprintf("%s takes %s", OneOf([]string{r.Kind.Name}), labels(want)), "take this word out")
	case len(b.Labels) < want:
		d.fault(BadLabel, r, b.Head, fmt.Sprintf("this %s has no label", r.Kind.Name), fmt.Sprintf("write the identifier on the wall after the word: %s \"1A\" {", r.Kind.Name))
	}
	if want == 0 || len(b.Labels) == 0 {
		return
	}
	r.Label, r.LabelAt = b.Labels[0].Text, b.Labels[0].At
	if why := labelFault(r.Label); why != "" {
		d.fault(BadLabel, r, r.LabelAt, fmt.Sprintf("label %s %s", Quote(r.Label), why), "write it as it is printed on the wall")
	}
}

func labels(n int) string {
	if n == 0 {
		return "no label"
	}
	return "one label"
}

func (d *decoder) field(r *Record, bf *block.Field) {
	f, ok := r.Kind.Field(bf.Name.Text)
	if !ok {
		d.unknownField(r, bf)
		return
	}
	v := Value{Field: f, Name: bf.Name.At, At: bf.Value.At, Bad: bf.Bad}
	if !bf.Bad {
		if message, next := decode(f, &bf.Value, &v); message != "" {
			v.Bad = true
			if !strings.HasPrefix(message, f.Name+" ") {
				message = f.Name + ": " + message
			}
			d.fault(BadValue, r, bf.Value.At, message, next)
		}
	}
	r.Values = append(r.Values, v)
}

func (d *decoder) unknownField(r *Record, bf *block.Field) {
	names := make([]string, 0, len(r.Kind.Fields))
	for _, f := range r.Kind.Fields {
		names = append(names, f.Name)
	}
	message := fmt.Sprintf("%s has no field %s", OneOf([]string{r.Kind.Name}), Quote(bf.Name.Text))
	next := "its fields are " + list(names)
	if near := nearest(bf.Name.Text, names); near != "" {
		next = "did you mean " + near + "?"
		d.meant = append(d.meant, near)
	} else if in, ok := r.Kind.Block(bf.Name.Text); ok {
		next = fmt.Sprintf("%s is a block: write %s {", in.Name, in.Name)
	}
	d.fault(UnknownField, r, bf.Name.At, message, next)
}

func (d *decoder) inner(r *Record, b *block.Block) {
	if k, ok := r.Kind.Block(b.Kind.Text); ok {
		r.Inner = append(r.Inner, d.record(k, b, r))
		return
	}
	message := fmt.Sprintf("%s holds no %s", OneOf([]string{r.Kind.Name}), Quote(b.Kind.Text))
	var next string
	names := kindNames(r.Kind.Blocks)
	switch near := nearest(b.Kind.Text, names); {
	case near != "":
		next = "did you mean " + near + "?"
	case isTop(b.Kind.Text):
		next = "close the " + r.Kind.Name + " first: " + OneOf([]string{b.Kind.Text}) + " stands by itself"
	case len(names) > 0:
		next = "inside it stand " + list(names)
	default:
		next = "take the block out"
	}
	d.fault(UnknownBlock, r, b.Head, message, next)
}

func isTop(name string) bool {
	return slices.Contains(kindNames(Kinds()), name)
}

func (d *decoder) missing(r *Record) {
	for _, f := range r.Kind.Fields {
		if f.Required && r.Lookup(f) == nil && !slices.Contains(d.meant, f.Name) {
			d.fault(MissingField, r, r.Head, fmt.Sprintf("%s: %s is missing", Printable(r.Name()), f.Name), fmt.Sprintf("add %s: %s", f.Name, f.Doc))
		}
	}
}

func (d *decoder) fault(code Code, r *Record, at block.Range, message, next string) {
	d.faults = append(d.faults, fault{code: code, record: r, at: at, message: message, next: next})
}

// decode reads a literal as the field's type. The message is empty when it
// could.
func decode(f *Field, from *block.Value, v *Value) (message, next string) {
	switch f.Type {
	case Count:
		return decodeCount(from, v)
	case References, Texts:
		if from.Shape != block.List {
			return "a list is meant here", fmt.Sprintf("write %s = [%q]", f.Name, plain(from))
		}
		v.List = make([]string, len(from.Items))
		for i, item := range from.Items {
			v.List[i] = item.Text
		}
		return "", ""
	case Text, Word, Reference, PortReference, Date, Conductors,
		Length, Temperature, Power, Period, Frequency, Loss, Current, Angle, Level:
		if from.Shape != block.Text {
			return notText(f, from)
		}
		return decodeText(f, from.Text, v)
	}
	panic("schema: field " + f.Name + " has no type")
}

func decodeCount(from *block.Value, v *Value) (message, next string) {
	if from.Shape != block.Number {
		if n, err := strconv.Atoi(from.Text); err == nil && from.Shape == block.Text {
			return "a whole number is meant here, not a text", fmt.Sprintf("write %d without the quotes", n)
		}
		return "a whole number is meant here", "write a number without quotes, such as 48"
	}
	n, err := strconv.ParseInt(from.Text, 10, 32)
	if err != nil || n < 0 {
		return from.Text + " is not a whole number that fits here", "write a whole number from 0 to 2147483647"
	}
	v.Number = n
	return "", ""
}

func notText(f *Field, from *block.Value) (message, next string) {
	switch {
	case from.Shape == block.List:
		return "one value is meant here, not a list", "write a single value in quotes"
	case f.Type >= Length && f.Type <= Level:
		return fmt.Sprintf("%s has no unit", from.Text), "write " + f.Type.Example()
	case f.Type == Word:
		return fmt.Sprintf("%s is not in quotes", from.Text), fmt.Sprintf("write \"%s\"", from.Text)
	}
	return fmt.Sprintf("%s is not a text", from.Text), "write it in quotes: " + strconv.Quote(from.Text)
}

func decodeText(f *Field, text string, v *Value) (message, next string) {
	v.Text = text
	switch f.Type {
	case Word:
		if slices.Contains(f.Words, text) {
			return "", ""
		}
		message = fmt.Sprintf("%s is not a word for this field", Quote(text))
		if near := nearest(text, f.Words); near != "" {
			return message, fmt.Sprintf("did you mean %q?", near)
		}
		return message, "the words are " + list(f.Words)
	case Text, Reference:
		if f.form == nil {
			return "", ""
		}
		if next, ok := f.form(text); !ok {
			return fmt.Sprintf("%s can not be read", Quote(text)), next
		}
		return "", ""
	case PortReference:
		return decodePort(text, v)
	case Count, References, Texts, Date, Conductors, Length, Temperature, Power, Period, Frequency, Loss, Current, Angle, Level:
		v.Text = ""
		err := readQuantity(f.Type, text, v)
		if mistake, ok := errors.AsType[*unit.Error](err); ok {
			return mistake.Message, mistake.Next
		}
		if v.Number < 0 && !f.Type.signed() {
			return fmt.Sprintf("%s is below zero", Quote(text)), "write it without the minus"
		}
	}
	return "", ""
}

// mostDigits is how many digits of a port are printed at most.
const mostDigits = 10

// decodePort reads "1A-A:07" and "1A-F:1-12". The last colon divides, since a
// label may hold colons of its own.
func decodePort(text string, v *Value) (message, next string) {
	const how = `write the label, a colon and the port number: "1A-A:07"`
	cut := strings.LastIndexByte(text, ':')
	if cut < 1 {
		return fmt.Sprintf("%s names no port", Quote(text)), how
	}
	first, last, isRange := strings.Cut(text[cut+1:], "-")
	a, errA := strconv.ParseUint(first, 10, 31)
	b := a
	var errB error
	if isRange {
		b, errB = strconv.ParseUint(last, 10, 31)
	}
	if errA != nil || errB != nil || a == 0 {
		return fmt.Sprintf("%s is not a port number", Quote(text[cut+1:])), how + `, or a row of ports: "1A-F:1-12"`
	}
	if b < a {
		return fmt.Sprintf("the row of ports %s runs backwards", text[cut+1:]), fmt.Sprintf("write %d-%d", b, a)
	}
	v.Text, v.Number, v.Last = text[:cut], int64(a), int64(b)
	v.Digits = uint8(min(len(first), mostDigits))
	return "", ""
}

func plain(v *block.Value) string {
	if v.Shape == block.List {
		return ""
	}
	return v.Text
}

func codeOf(block.Code) Code { return Unreadable }
