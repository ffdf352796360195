package diffreport_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"homerun/diffreport"
)

// The laws of comparison are those of any difference of two sets of records;
// what is the same record is known here because the site was made up with it.

func TestSameRecordsDoNotDiffer(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		w := site(t)
		a := sound(t, w.write(drawLayout(t, w)))
		b := sound(t, w.write(drawLayout(t, w)))
		if changes := diffreport.Compare(a, b, diffreport.Options{}); len(changes) > 0 {
			t.Fatalf("order, file and formatting made a change: %s", listed(changes))
		}
	})
}

func TestEveryDifferenceIsFoundAndNoneInvented(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		before := site(t)
		after := edit(t, before)
		base, head := sound(t, before.write(plain(before))), sound(t, after.write(drawLayout(t, after)))
		got := listed(diffreport.Compare(base, head, diffreport.Options{}))
		if diff := cmp.Diff(expected(before, after), got); diff != "" {
			t.Fatalf("differences, by construction and as found:\n%s", diff)
		}
	})
}

func TestComparingBackwardsMirrors(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		before := site(t)
		after := edit(t, before)
		if !recognisable(before, after) {
			t.Skip("a relabelling is taken back only for what still shares an end or a place")
		}
		base, head := sound(t, before.write(plain(before))), sound(t, after.write(plain(after)))
		forth := diffreport.Compare(base, head, diffreport.Options{})
		back := diffreport.Compare(head, base, diffreport.Options{})
		if diff := cmp.Diff(asSeen(forth, asIs), asSeen(back, turnedRound)); diff != "" {
			t.Fatalf("forwards, and backwards turned round:\n%s", diff)
		}
		was, will := diffreport.Former(forth), diffreport.Latter(forth)
		again := diffreport.Former(back)
		for i := range forth {
			c := &forth[i]
			if c.Former == "" {
				continue
			}
			if was(c.Label) != c.Former || will(c.Former) != c.Label || again(c.Former) != c.Label {
				t.Fatalf("%s was %q, %s will be %q", c.Label, was(c.Label), c.Former, will(c.Former))
			}
			if got := was(c.Label + ":3"); got != c.Former+":3" {
				t.Fatalf("port 3 of %s was %q", c.Label, got)
			}
		}
	})
}

func TestSameInputSameOutput(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		before := site(t)
		after := edit(t, before)
		base, head := sound(t, before.write(plain(before))), sound(t, after.write(plain(after)))
		first := fmt.Sprint(full(diffreport.Compare(base, head, diffreport.Options{})))
		again := fmt.Sprint(full(diffreport.Compare(sound(t, before.write(drawLayout(t, before))), sound(t, after.write(drawLayout(t, after))), diffreport.Options{})))
		if first != again {
			t.Fatalf("once\n%s\nand again\n%s", first, again)
		}
	})
}

// recognisable says whether every relabelled thing still has an end or, where
// it has none, a reference that it had.
func recognisable(before, after world) bool {
	for id, t := range after {
		if before[id] == nil || before[id].label == t.label {
			continue
		}
		known, stated := false, false
		for name, value := range before[id].fields {
			if !strings.HasPrefix(value, "@") || t.kind == "run" && name != "from" && name != "to" {
				continue
			}
			stated = true
			known = known || t.fields[name] == value
		}
		if stated && !known {
			return false
		}
	}
	return true
}

// listed writes changes as the made-up site does.
func listed(changes []diffreport.Change) []string {
	var all []string
	for i := range changes {
		c := &changes[i]
		switch {
		case c.Before.Record == nil:
			all = append(all, fmt.Sprintf("%s >%s", c.Kind, c.Label))
		case c.After.Record == nil:
			all = append(all, fmt.Sprintf("%s %s>", c.Kind, c.Label))
		default:
			former := c.Former
			if former == "" {
				former = c.Label
			}
			var names []string
			for _, f := range c.Fields {
				if f.Name != "former" {
					names = append(names, f.Name)
				}
			}
			slices.Sort(names)
			all = append(all, fmt.Sprintf("%s %s>%s: %s", c.Kind, former, c.Label, strings.Join(names, " ")))
		}
	}
	slices.Sort(all)
	return all
}

type view int

const (
	asIs view = iota
	turnedRound
)

// asSeen lists the changes by class, as they are or turned round: what is added
// one way is removed the other. A length alone tells its direction (a
// shorter one is a correction, a longer one another cable), so it has no mirror.
func asSeen(changes []diffreport.Change, v view) []string {
	var all []string
	for i := range changes {
		c := &changes[i]
		before, after, class := c.Before, c.After, c.Class
		if v == turnedRound {
			before, after = after, before
			switch class {
			case diffreport.ClassAdd:
				class = diffreport.ClassRemoval
			case diffreport.ClassRemoval:
				class = diffreport.ClassAdd
			case diffreport.ClassMove, diffreport.ClassChange, diffreport.ClassRelabel, diffreport.ClassRecordsOnly:
			}
		}
		word := class.String()
		if slices.ContainsFunc(c.Fields, func(f diffreport.FieldChange) bool { return f.Name == "length" }) && class != diffreport.ClassMove {
			word = "length"
		}
		label := func(r interface{ Name() string }, exists bool) string {
			if !exists {
				return ""
			}
			return r.Name()
		}
		all = append(all, fmt.Sprintf("%s %s %s>%s", word, c.Kind, label(before, before.Record != nil), label(after, after.Record != nil)))
	}
	slices.Sort(all)
	return all
}

func full(changes []diffreport.Change) []string {
	var all []string
	for i := range changes {
		c := &changes[i]
		line := fmt.Sprintf("%s %s %s %s %s %s", c.Class, c.Kind, c.Label, c.Former, c.Meaning, c.Why)
		for _, f := range c.Fields {
			line += fmt.Sprintf(" [%s: %s > %s, %s]", f.Name, f.Before, f.After, f.Meaning)
		}
		all = append(all, line)
	}
	return all
}
