package weave

import (
	"slices"
	"strconv"
	"strings"

	"homerun/schema"
	"homerun/schema/block"
)

// sort is what an item is.
type sort uint8

const (
	note   sort = iota // a comment that stands by itself
	field              // name = value
	record             // a block
	opaque             // a block that can not be read wholly: taken as it is written
)

// An item is one element of a file or of a record's body, with the comments and
// the layout that belong to it. Its parts joined are its text, byte for byte.
type item struct {
	sort sort
	// key finds the same item in another text: kind and label, name, or the
	// words of a comment.
	key string
	// blanks are the blank lines above it, lead the comment right above it,
	// indent what stands before it on its line, core the element itself and
	// trail the rest of its last line. A note is all lead.
	blanks, lead, indent, core, trail string
	// block and field are what core states; ranges in block count from core,
	// the field's from the start of name.
	block *block.Block
	value *block.Value
	// name is a field's name, pre its text up to the value.
	name, pre string
}

// text is the item without the blank lines above it.
func (it *item) text() string {
	if it.sort == note {
		return it.lead
	}
	return it.lead + it.indent + it.core + it.trail + "\n"
}

// state is what the item states, in a form that is equal for items that state
// the same in the same words, whatever the layout. A note states nothing.
func (it *item) state() string {
	switch it.sort {
	case note:
		return ""
	case field:
		return fieldState(it.name, it.value)
	case record:
		return stateOf(it.block)
	case opaque:
	}
	return "?" + it.core
}

func fieldState(name string, v *block.Value) string {
	var b strings.Builder
	b.WriteString("=" + strconv.Quote(name) + strconv.Itoa(int(v.Shape)) + strconv.Quote(v.Text))
	for _, one := range v.Items {
		b.WriteString(strconv.Quote(one.Text))
	}
	return b.String()
}

func stateOf(b *block.Block) string {
	parts := make([]string, 0, len(b.Fields)+len(b.Blocks))
	for i := range b.Fields {
		parts = append(parts, fieldState(b.Fields[i].Name.Text, &b.Fields[i].Value))
	}
	for _, in := range b.Blocks {
		parts = append(parts, stateOf(in))
	}
	return blockState(b, parts)
}

// blockState joins what the parts of a block state. Their order is layout.
func blockState(head *block.Block, parts []string) string {
	slices.Sort(parts)
	return strconv.Quote(head.Kind.Text) + labels(head) + "{" + strings.Join(parts, ";") + "}"
}

func labels(b *block.Block) string {
	var all strings.Builder
	for _, l := range b.Labels {
		all.WriteString(strconv.Quote(l.Text))
	}
	return all.String()
}

// keyOf is what a block is known by: its kind and its labels.
func keyOf(b *block.Block) string { return strconv.Quote(b.Kind.Text) + labels(b) }

// same says whether two items state the same. Quantities may be written in
// different units; kind is the kind of record that the item stands in, or for a
// record its own; nil where it is unknown.
func same(kind *schema.Kind, x, y *item) bool {
	switch {
	case x == y || x.text() == y.text():
		return true
	case x.sort != y.sort:
		return false
	case x.sort == field:
		return x.name == y.name && sameValue(kind, x.name, x.value, y.value)
	case x.sort == record:
		return sameBlock(kind, x.block, y.block)
	}
	return x.state() == y.state()
}

func sameValue(kind *schema.Kind, name string, v, w *block.Value) bool {
	if kind != nil {
		if f, ok := kind.Field(name); ok && schema.SameValue(f, v, w) {
			return true
		}
	}
	return fieldState("", v) == fieldState("", w)
}

func sameBlock(kind *schema.Kind, x, y *block.Block) bool {
	if keyOf(x) != keyOf(y) || len(x.Fields) != len(y.Fields) || len(x.Blocks) != len(y.Blocks) {
		return false
	}
	for i := range x.Fields {
		f := &x.Fields[i]
		n := slices.IndexFunc(y.Fields, func(g block.Field) bool { return g.Name.Text == f.Name.Text })
		if n < 0 || !sameValue(kind, f.Name.Text, &f.Value, &y.Fields[n].Value) {
			return false
		}
	}
	for i := range x.Blocks {
		if !sameBlock(inside(kind, x.Blocks[i]), x.Blocks[i], y.Blocks[i]) {
			return false
		}
	}
	return true
}

// topKind is the kind of a top-level block, nil for one that the record
// language does not have.
func topKind(b *block.Block) *schema.Kind {
	for _, k := range schema.Kinds() {
		if k.Name == b.Kind.Text {
			return k
		}
	}
	return nil
}

// inside is the kind of a block within a record of the kind.
func inside(kind *schema.Kind, b *block.Block) *schema.Kind {
	if kind == nil {
		return nil
	}
	in, _ := kind.Block(b.Kind.Text)
	return in
}
