package weave_test

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/schema"
	"homerun/schema/block"
	"homerun/schema/weave"
)

// The laws of a three-way merge hold for any texts and are no invention of this
// package: what only one side changed is that side's, what both changed alike
// is so once, and the sides may be exchanged. Beside them stands a merge of
// records as a table of labels and fields, which knows no text at all.

// table is records by label, their fields by name.
type table map[string]map[string]string

func (tb table) clone() table {
	fresh := table{}
	for label, fields := range tb {
		fresh[label] = maps.Clone(fields)
	}
	return fresh
}

// text writes the records in an order and layout of the writer's choosing.
func (tb table) text(r *rand.Rand, order []string) string {
	var b strings.Builder
	for _, label := range order {
		if tb[label] == nil {
			continue
		}
		if r.IntN(4) == 0 {
			fmt.Fprintf(&b, "# About %s, %d.\n", label, r.IntN(100))
		}
		if len(tb[label]) == 1 && r.IntN(2) == 0 {
			for name, value := range tb[label] {
				fmt.Fprintf(&b, "run %q { %s = %q }\n\n", label, name, value)
			}
			continue
		}
		fmt.Fprintf(&b, "run %q {\n", label)
		names := slices.Sorted(maps.Keys(tb[label]))
		if r.IntN(5) == 0 {
			slices.Reverse(names)
		}
		for _, name := range names {
			fmt.Fprintf(&b, "%s%s%s = %q\n", strings.Repeat(" ", r.IntN(3)), name, strings.Repeat(" ", r.IntN(3)), tb[label][name])
		}
		b.WriteString("}\n" + strings.Repeat("\n", r.IntN(3)))
	}
	return b.String()
}

var fieldNames = []string{"application", "cable", "former", "length", "note", "state"}

func newTable(r *rand.Rand) table {
	tb := table{}
	for i := range 2 + r.IntN(8) {
		fields := map[string]string{}
		for _, name := range fieldNames {
			if r.IntN(2) == 0 && name != "former" {
				fields[name] = value(r)
			}
		}
		tb[fmt.Sprintf("1A-A%02d", i)] = fields
	}
	return tb
}

func value(r *rand.Rand) string { return string(rune('p' + r.IntN(5))) }

// edit changes a copy here and there.
func (tb table) edit(r *rand.Rand) table {
	fresh := tb.clone()
	for range r.IntN(6) {
		label := fmt.Sprintf("1A-A%02d", r.IntN(14))
		name := fieldNames[r.IntN(len(fieldNames))]
		switch fields := fresh[label]; {
		case fields == nil:
			fresh[label] = map[string]string{"length": value(r), name: value(r)}
		case r.IntN(6) == 0:
			delete(fresh, label)
		case r.IntN(4) == 0:
			delete(fields, name)
		case name != "former":
			fields[name] = value(r)
		}
		if fields := fresh[label]; fields != nil {
			delete(fields, "former")
		}
	}
	return fresh
}

// join merges tables; clash says that a person has to decide.
func join(base, ours, theirs table) (result table, clash bool) {
	result = table{}
	labels := map[string]bool{}
	for _, tb := range []table{base, ours, theirs} {
		for label := range tb {
			labels[label] = true
		}
	}
	for label := range labels {
		b, o, w := base[label], ours[label], theirs[label]
		switch {
		case o == nil && w == nil:
		case o == nil && b != nil:
			clash = clash || !maps.Equal(b, w)
		case w == nil && b != nil:
			clash = clash || !maps.Equal(b, o)
		default:
			fields := map[string]string{}
			for _, name := range fieldNames {
				was, x, y := b[name], o[name], w[name]
				switch {
				case x == y || y == was:
				case x == was:
					x = y
				default:
					clash = true
				}
				if x != "" {
					fields[name] = x
				}
			}
			result[label] = fields
		}
	}
	return result, clash
}

// read reads a text with the reader of the language, not with that of weave.
func read(t *testing.T, text string) table {
	t.Helper()
	chunks, problems := block.Split(text)
	if len(problems) > 0 {
		t.Fatalf("the result can not be read: %+v\n%s", problems, text)
	}
	tb := table{}
	for _, c := range chunks {
		b, problems := block.Parse(c.Text)
		if len(problems) > 0 {
			t.Fatalf("the result can not be read: %+v\n%s", problems, c.Text)
		}
		if tb[b.Labels[0].Text] != nil {
			t.Fatalf("%s stands twice:\n%s", b.Labels[0].Text, text)
		}
		tb[b.Labels[0].Text] = map[string]string{}
		for _, f := range b.Fields {
			tb[b.Labels[0].Text][f.Name.Text] = f.Value.Text
		}
	}
	return tb
}

func TestRecordsAreMergedByRecord(t *testing.T) {
	t.Parallel()
	clashes, clean := 0, 0
	for seed := range uint64(1200) {
		r := rand.New(rand.NewPCG(seed, 5))
		base := newTable(r)
		ours, theirs := base.edit(r), base.edit(r)
		var texts weave.Texts
		for i, side := range []table{base, ours, theirs} {
			order := slices.Sorted(maps.Keys(side))
			if i > 0 && r.IntN(6) == 0 {
				r.Shuffle(len(order), func(a, b int) { order[a], order[b] = order[b], order[a] })
			}
			text := side.text(r, order)
			switch i {
			case 0:
				texts.Base = text
			case 1:
				texts.Ours = text
			case 2:
				texts.Theirs = text
			}
		}
		want, clash := join(base, ours, theirs)
		got, err := weave.Merge(texts, weave.Options{})
		back, backErr := weave.Merge(weave.Texts{Base: texts.Base, Ours: texts.Theirs, Theirs: texts.Ours}, weave.Options{})
		if err != nil || backErr != nil {
			t.Fatalf("seed %d: %v, %v", seed, err, backErr)
		}
		if clash != (len(got.Conflicts) > 0) || len(got.Conflicts) != len(back.Conflicts) {
			t.Fatalf("seed %d: clash %v, but conflicts %v and, exchanged, %v\n%s", seed, clash, got.Conflicts, back.Conflicts, got.Text)
		}
		if clash {
			clashes++
			continue
		}
		clean++
		if diff := cmp.Diff(want, read(t, got.Text)); diff != "" {
			t.Fatalf("seed %d (-want +got):\n%s\nbase:\n%s\nours:\n%s\ntheirs:\n%s\nresult:\n%s", seed, diff, texts.Base, texts.Ours, texts.Theirs, got.Text)
		}
		if diff := cmp.Diff(want, read(t, back.Text)); diff != "" {
			t.Fatalf("seed %d, sides exchanged (-want +got):\n%s", seed, diff)
		}
	}
	if clashes < 100 || clean < 100 {
		t.Errorf("%d merges with conflicts and %d without prove little", clashes, clean)
	}
}

func TestOneSideAlone(t *testing.T) {
	t.Parallel()
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 6))
		base := newTable(r)
		o := base.text(r, slices.Sorted(maps.Keys(base)))
		x := base.edit(r).text(r, slices.Sorted(maps.Keys(base)))
		for _, c := range []struct {
			law   string
			texts weave.Texts
			want  string
		}{
			{"merge(o, a, o) = a", weave.Texts{Base: o, Ours: x, Theirs: o}, x},
			{"merge(o, o, b) = b", weave.Texts{Base: o, Ours: o, Theirs: x}, x},
			{"merge(o, a, a) = a", weave.Texts{Base: o, Ours: x, Theirs: x}, x},
		} {
			got, err := weave.Merge(c.texts, weave.Options{})
			if err != nil || got.Text != c.want || len(got.Conflicts) > 0 {
				t.Errorf("seed %d: %s does not hold: %v %v\n%s", seed, c.law, got.Conflicts, err, cmp.Diff(c.want, got.Text))
			}
		}
	}
}

// FuzzMerge merges arbitrary texts: nothing panics, the laws hold, and a result
// without conflicts that could be read before can be read after.
func FuzzMerge(f *testing.F) {
	f.Add("", "a \"b\" {\n  c = 1\n}\n", "a \"b\" {\n  c = 2\n}\n")
	f.Add("a \"b\" { c = 1 }\n", "a \"b\" {\n  c = 1\n  d \"e\" {}\n}\n", "\ufeffa \"b\" {\r\n  /* x\n y */ c = 2 # z\r\n}")
	f.Add("# x\n\na \"b\" {\n}\nc {\n}\n", "c {\n}\na \"b\" {\n}\n", "a \"b\" {\n}\n# y\nc {\n d = [\"e\",\n# f\n]\n}\n")
	f.Add("<<<<<<< x\n||||||| y\na {}\n=======\n>>>>>>> z\n", "a {\n b = 1\n}\n", "a {\n b = \n}\n")
	f.Add("a \"b\" {\n c = 1\n}\n", "a \"b\" /* x */ {\n c = 3 /* y */\n}\n", "a \"d\" {\n former = \"b\"\n c = 2\n}\n")
	f.Fuzz(func(t *testing.T, base, ours, theirs string) {
		if len(base)+len(ours)+len(theirs) > 1<<14 {
			t.Skip("small texts hold every mistake that large ones do")
		}
		if got, err := weave.Merge(weave.Texts{Base: base, Ours: ours, Theirs: base}, weave.Options{}); err != nil || got.Text != ours {
			t.Fatalf("merge(o, a, o) = %q, %v", got.Text, err)
		}
		got, err := weave.Merge(weave.Texts{Base: base, Ours: ours, Theirs: theirs}, weave.Options{Style: weave.WithBase})
		if err != nil {
			return
		}
		for _, c := range got.Conflicts {
			if schema.Printable(c.String()) != c.String() {
				t.Errorf("conflict %q can not be printed", c)
			}
		}
		readable := func(text string) bool { _, problems := block.Split(text); return len(problems) == 0 }
		if len(got.Conflicts) == 0 && readable(ours) && readable(theirs) && !readable(got.Text) {
			t.Errorf("the result can not be read:\n%s", got.Text)
		}
		back, err := weave.Merge(weave.Texts{Base: base, Ours: theirs, Theirs: ours}, weave.Options{})
		if err != nil || len(back.Conflicts) != len(got.Conflicts) {
			t.Errorf("conflicts %v, with the sides exchanged %v, %v", got.Conflicts, back.Conflicts, err)
		}
	})
}
