package diffreport_test

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"homerun/diffreport"
)

// The steps are carried out here a second time, from nothing but their text, on
// a bench of port sides that knows the made-up site and not the planner.

type bench map[string]string

// wired is what is on each port side of a site, by the number of the thing.
func wired(w world) bench {
	on := make(bench)
	for _, id := range w.of("run", "cord") {
		for _, end := range []string{"from", "to"} {
			on[w[id].kind+" side of "+w[id].fields[end]] = fmt.Sprint(id)
		}
	}
	return on
}

// byLabel finds the thing with a label.
func (w world) byLabel(label string) string {
	for id, t := range w {
		if t.label == label {
			return fmt.Sprint(id)
		}
	}
	return ""
}

var (
	off = regexp.MustCompile(`^(?:disconnect|unplug) (\S+)(?: \(to be \S+\))? from (\S+)(?: and (\S+))?(?: and take it away)?$`)
	on  = regexp.MustCompile(`^(?:terminate|plug) (\S+) (?:on|into) (\S+)(?: and (\S+))?$`)
)

func carryOut(t *rapid.T, before, after world, steps []diffreport.Step, sides bench) {
	for _, step := range steps {
		apply := func(w world, found []string, do func(side, cable string)) {
			cable := w.byLabel(found[1])
			kind := "run"
			if strings.Contains(step.Text, "plug") {
				kind = "cord"
			}
			for _, port := range found[2:] {
				if port == "" {
					continue
				}
				holder, number, _ := strings.Cut(port, ":")
				if cable == "" || w.byLabel(holder) == "" {
					t.Fatalf("step %d names what is not there: %s", step.Number, step.Text)
				}
				do(fmt.Sprintf("%s side of @%s:%s", kind, w.byLabel(holder), number), cable)
			}
		}
		switch step.Action {
		case diffreport.Disconnect:
			apply(before, match(t, off, step), func(side, cable string) {
				if sides[side] != cable {
					t.Fatalf("step %d: %s: nothing of the kind is on %s", step.Number, step.Text, side)
				}
				delete(sides, side)
			})
		case diffreport.Terminate, diffreport.Patch:
			apply(after, match(t, on, step), func(side, cable string) {
				if sides[side] != "" {
					t.Fatalf("step %d: %s: %s is taken", step.Number, step.Text, side)
				}
				sides[side] = cable
			})
		case diffreport.Isolate, diffreport.Remove, diffreport.Tag, diffreport.Install, diffreport.Bond, diffreport.Pull, diffreport.Affix, diffreport.Measure:
		}
	}
}

func match(t *rapid.T, form *regexp.Regexp, step diffreport.Step) []string {
	found := form.FindStringSubmatch(step.Text)
	if found == nil {
		t.Fatalf("step %d is not in the form that a crew can follow: %s", step.Number, step.Text)
	}
	return found
}

// shuffled puts the steps in another order that their dependencies allow.
func shuffled(t *rapid.T, steps []diffreport.Step) []diffreport.Step {
	done := make(map[int]bool)
	left := slices.Clone(steps)
	var order []diffreport.Step
	for len(left) > 0 {
		var can []int
		for i, s := range left {
			if !slices.ContainsFunc(s.After, func(n int) bool { return !done[n] }) {
				can = append(can, i)
			}
		}
		if len(can) == 0 {
			t.Fatalf("the steps wait for each other: %+v", left)
		}
		i := rapid.SampledFrom(can).Draw(t, "next")
		done[left[i].Number] = true
		order = append(order, left[i])
		left = slices.Delete(left, i, i+1)
	}
	return order
}

func TestCarryingOutTheStepsGivesTheLaterPlant(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		before := site(t)
		after := edit(t, before)
		base, head := sound(t, before.write(plain(before))), sound(t, after.write(plain(after)))
		order := diffreport.Plan(base, head, diffreport.Compare(base, head, diffreport.Options{}), diffreport.PlanOptions{})
		if !order.Executable {
			t.Fatalf("a sound plant can be reached: %v", order.Clashes)
		}
		for i, s := range order.Steps {
			if s.Number != i+1 || len(s.Records) == 0 || s.Text == "" || slices.ContainsFunc(s.After, func(n int) bool { return n >= s.Number }) {
				t.Fatalf("step %d of %d: %+v", i+1, len(order.Steps), s)
			}
		}
		for _, steps := range [][]diffreport.Step{order.Steps, shuffled(t, order.Steps)} {
			sides := maps.Clone(wired(before))
			carryOut(t, before, after, steps, sides)
			if diff := cmp.Diff(wired(after), sides); diff != "" {
				t.Fatalf("the records, and where the steps end:\n%s", diff)
			}
		}
	})
}

func TestAnOrderDoesNotDependOnTheLayoutOfTheRecords(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		before := site(t)
		after := edit(t, before)
		made := func(b, h layout) string {
			base, head := sound(t, before.write(b)), sound(t, after.write(h))
			o := diffreport.Plan(base, head, diffreport.Compare(base, head, diffreport.Options{}), diffreport.PlanOptions{})
			o.Changes = nil // their places in the files are meant to differ
			steps := ""
			for _, s := range o.Steps {
				steps += fmt.Sprintln(s.Number, s.Action, s.Class, s.Space, s.Records, s.Text, s.After, s.Outage, s.Cautions)
			}
			o.Steps = nil
			return steps + fmt.Sprint(o)
		}
		if diff := cmp.Diff(made(plain(before), plain(after)), made(drawLayout(t, before), drawLayout(t, after))); diff != "" {
			t.Fatalf("one layout, and another:\n%s", diff)
		}
	})
}

func TestOneSideTwiceIsNoOrder(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		before := site(t)
		if len(before.of("cord")) == 0 {
			t.Skip("nothing to claim a side twice")
		}
		after := before.clone()
		taken := rapid.SampledFrom(after.of("cord")).Draw(t, "cord")
		second := after.put(1<<20, "cord", "1A-D01", maps.Clone(after[taken].fields))
		free := after.free("cord", "equipment")
		if len(free) == 0 {
			t.Skip("no port is left")
		}
		after[second].fields["to"] = free[0]
		base, head := sound(t, before.write(plain(before))), after.write(plain(after))
		order := diffreport.Plan(base, head, diffreport.Compare(base, head, diffreport.Options{}), diffreport.PlanOptions{})
		if order.Executable {
			t.Fatalf("two cords in one port were called executable")
		}
		if all := strings.Join(order.Clashes, "\n"); !strings.Contains(all, after[taken].label) || !strings.Contains(all, after[second].label) {
			t.Fatalf("the clash does not name both records: %s", all)
		}
	})
}
