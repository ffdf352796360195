package weave_test

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/schema/block"
	"homerun/schema/weave"
)

// placed says for each run in which bundle it stands, "" for none.
type placed map[string]string

// nested writes records, some of them inside of bundles that are always there.
func (tb table) nested(where placed, r *rand.Rand) string {
	var b strings.Builder
	for _, bundle := range []string{"", "B1", "B2"} {
		var inside strings.Builder
		for _, label := range slices.Sorted(maps.Keys(tb)) {
			if where[label] == bundle {
				inside.WriteString(table{label: tb[label]}.text(r, []string{label}))
			}
		}
		if bundle == "" {
			b.WriteString(inside.String())
			continue
		}
		fmt.Fprintf(&b, "bundle %q {\n  cable = \"c6a\"\n\n%s}\n\n", bundle, inside.String())
	}
	return b.String()
}

// readNested reads with the reader of the language what nested wrote.
func readNested(t *testing.T, text string) (table, placed) {
	t.Helper()
	tb, where := table{}, placed{}
	enter := func(b *block.Block, bundle string) {
		label := b.Labels[0].Text
		if tb[label] != nil {
			t.Fatalf("%s stands twice:\n%s", label, text)
		}
		tb[label], where[label] = map[string]string{}, bundle
		for _, f := range b.Fields {
			tb[label][f.Name.Text] = f.Value.Text
		}
	}
	chunks, problems := block.Split(text)
	if len(problems) > 0 {
		t.Fatalf("the result can not be read: %+v\n%s", problems, text)
	}
	for _, c := range chunks {
		b, problems := block.Parse(c.Text)
		if len(problems) > 0 {
			t.Fatalf("the result can not be read: %+v\n%s", problems, c.Text)
		}
		if b.Kind.Text != "bundle" {
			enter(b, "")
			continue
		}
		for _, in := range b.Blocks {
			enter(in, b.Labels[0].Text)
		}
	}
	return tb, where
}

// refit changes fields of what is there, and nothing else.
func (tb table) refit(r *rand.Rand) table {
	fresh := tb.clone()
	for _, label := range slices.Sorted(maps.Keys(fresh)) {
		if r.IntN(3) == 0 {
			name := []string{"length", "note", "state", "application"}[r.IntN(4)]
			fresh[label][name] = value(r)
		}
	}
	return fresh
}

// TestMovedRecordsAreMerged holds what is moved on one side and changed on the other
// to a merge of tables: fields by field, the place by who moved it.
func TestMovedRecordsAreMerged(t *testing.T) {
	t.Parallel()
	clashes, carried := 0, 0
	for seed := range uint64(800) {
		r := rand.New(rand.NewPCG(seed, 8))
		base := newTable(r)
		ours, theirs := base.refit(r), base.refit(r)
		was, here, there, want := placed{}, placed{}, placed{}, placed{}
		for _, label := range slices.Sorted(maps.Keys(base)) {
			bundles := []string{"", "B1", "B2"}
			was[label] = bundles[r.IntN(3)]
			here[label], there[label], want[label] = was[label], was[label], was[label]
			if r.IntN(3) == 0 {
				want[label] = bundles[r.IntN(3)]
				[]placed{here, there}[r.IntN(2)][label] = want[label]
			}
		}
		texts := weave.Texts{Base: base.nested(was, r), Ours: ours.nested(here, r), Theirs: theirs.nested(there, r)}
		wanted, clash := join(base, ours, theirs)
		for _, one := range []weave.Texts{texts, {Base: texts.Base, Ours: texts.Theirs, Theirs: texts.Ours}} {
			got, err := weave.Merge(one, weave.Options{})
			if err != nil {
				t.Fatalf("seed %d: %v", seed, err)
			}
			if clash != (len(got.Conflicts) > 0) {
				t.Fatalf("seed %d: clash %v, but conflicts %v\n%s", seed, clash, got.Conflicts, got.Text)
			}
			if clash {
				clashes++
				continue
			}
			carried++
			records, where := readNested(t, got.Text)
			if diff := cmp.Diff(wanted, records) + cmp.Diff(want, where); diff != "" {
				t.Fatalf("seed %d (-want +got):\n%s\nbase:\n%s\nours:\n%s\ntheirs:\n%s\nresult:\n%s", seed, diff, one.Base, one.Ours, one.Theirs, got.Text)
			}
		}
	}
	if clashes < 100 || carried < 100 {
		t.Errorf("%d merges with conflicts and %d without prove little", clashes, carried)
	}
}
