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

const (
	cableForm = `(\S+)(?: \(to be \S+\))?`
	portForm  = `(\S+?)(?: \(until now \S+\))?`
	endsForm  = portForm + `(?: and ` + portForm + `)?`
)

var (
	off  = regexp.MustCompile(`^(?:disconnect|unplug) ` + cableForm + ` from ` + endsForm + `(?: and take it away)?(?: for a moment: it makes room for ` + cableForm + `)?$`)
	on   = regexp.MustCompile(`^(?:terminate|plug) ` + cableForm + ` (?:on|into) ` + endsForm + `$`)
	over = regexp.MustCompile(`^change over \S+(?: \(to be \S+\))? and [^:]+: ` + cableForm + ` from ` + endsForm + ` to ` + endsForm + `, ` + cableForm + ` from ` + endsForm + ` to ` + endsForm + `$`)
)

// A crew knows the things of both plants by either label.
type crew struct {
	t             *rapid.T
	before, after world
	sides         bench
	// version tells a cable that was exchanged from its forerunner.
	version map[string]string
}

func newCrew(t *rapid.T, before, after world, sides bench) *crew {
	return &crew{t, before, after, sides, make(map[string]string)}
}

// exchanged lists the cables of which both worlds have another.
func exchanged(before, after world) map[string]string {
	all := make(map[string]string)
	for _, id := range after.of("run", "cord") {
		if before[id] == nil {
			continue
		}
		for _, name := range differing(before, after, id) {
			if name == "length" || name == "cable" || name == "route" {
				all[fmt.Sprint(id)] = " new"
			}
		}
	}
	return all
}

func (c *crew) thing(label string) string {
	if id := c.after.byLabel(label); id != "" {
		return id
	}
	return c.before.byLabel(label)
}

func (c *crew) side(kind, port string) string {
	holder, number, _ := strings.Cut(port, ":")
	if c.thing(holder) == "" {
		c.t.Fatalf("nothing is called %s", holder)
	}
	return fmt.Sprintf("%s side of @%s:%s", kind, c.thing(holder), strings.TrimLeft(number, "0"))
}

func (c *crew) takeOff(text, kind, cable string, ports ...string) {
	for _, port := range ports {
		if port == "" {
			continue
		}
		side := c.side(kind, port)
		if id := c.thing(cable); id == "" || c.sides[side] != id {
			c.t.Fatalf("%s: nothing of the kind is on %s", text, side)
		}
		delete(c.sides, side)
	}
}

func (c *crew) putOn(text, kind, cable string, ports ...string) {
	for _, port := range ports {
		if port == "" {
			continue
		}
		side := c.side(kind, port)
		if c.sides[side] != "" || c.thing(cable) == "" {
			c.t.Fatalf("%s: %s is taken", text, side)
		}
		c.sides[side] = c.thing(cable)
		c.version[c.sides[side]] = exchanged(c.before, c.after)[c.sides[side]]
	}
}

// do carries out one sentence, whether of a step or of its way back.
func (c *crew) do(text string) {
	kind := "run"
	if strings.HasPrefix(text, "plug") || strings.HasPrefix(text, "unplug") || strings.HasPrefix(text, "change over") {
		kind = "cord"
	}
	if f := off.FindStringSubmatch(text); f != nil {
		c.takeOff(text, kind, f[1], f[2], f[3])
		return
	}
	if f := on.FindStringSubmatch(text); f != nil {
		c.putOn(text, kind, f[1], f[2], f[3])
		return
	}
	f := over.FindStringSubmatch(text)
	if f == nil {
		c.t.Fatalf("not in a form that a crew can follow: %s", text)
	}
	c.takeOff(text, kind, f[1], f[2], f[3])
	c.takeOff(text, kind, f[6], f[7], f[8])
	c.putOn(text, kind, f[1], f[4], f[5])
	c.putOn(text, kind, f[6], f[9], f[10])
}

// moves says whether a step touches port sides.
func moves(step diffreport.Step) bool {
	switch step.Action {
	case diffreport.Disconnect, diffreport.Terminate, diffreport.Patch, diffreport.Swap:
		return true
	case diffreport.Isolate, diffreport.Remove, diffreport.Tag, diffreport.Install, diffreport.Bond, diffreport.Pull, diffreport.Affix,
		diffreport.Measure, diffreport.Restore, diffreport.HandOver:
	}
	return false
}

func carryOut(t *rapid.T, before, after world, steps []diffreport.Step, sides bench) {
	c := newCrew(t, before, after, sides)
	was, will := newCrew(t, before, after, wired(before)).cables(), (&crew{t, before, after, wired(after), exchanged(before, after)}).cables()
	for _, step := range steps {
		if !moves(step) {
			continue
		}
		c.do(step.Text)
		for _, channel := range c.channels() {
			if !within(channel, was) && !within(channel, will) {
				t.Fatalf("step %d: %s: the channel %q is in neither plant", step.Number, step.Text, channel)
			}
		}
	}
}

// channels lists what is connected from end to end: the cables of each channel
// that have both their ends on a port, by their ends and version.
func (c *crew) channels() [][]string {
	ends := make(map[string][]string)
	for _, side := range slices.Sorted(maps.Keys(c.sides)) {
		ends[c.sides[side]] = append(ends[c.sides[side]], side)
	}
	var all [][]string
	met := make(map[string]bool)
	for _, first := range slices.Sorted(maps.Keys(ends)) {
		var channel []string
		for next := []string{first}; len(next) > 0; {
			id := next[0]
			next = next[1:]
			if met[id] || len(ends[id]) != 2 {
				continue
			}
			met[id] = true
			channel = append(channel, id+c.version[id]+fmt.Sprint(ends[id]))
			for _, side := range ends[id] {
				next = append(next, c.sides[opposite(side)])
			}
		}
		all = append(all, channel)
	}
	return all
}

// opposite is the other side of the same port.
func opposite(side string) string {
	if port, ok := strings.CutPrefix(side, "run"); ok {
		return "cord" + port
	}
	return "run" + strings.TrimPrefix(side, "cord")
}

// cables are those of all channels.
func (c *crew) cables() []string { return slices.Concat(c.channels()...) }

// within says whether a channel is part of one of a plant's: since a cable tells
// its ends, those that meet here meet there as well.
func within(channel, cables []string) bool {
	return !slices.ContainsFunc(channel, func(cable string) bool { return !slices.Contains(cables, cable) })
}

// undone takes the steps back, from the last of those done to the first.
func undone(t *rapid.T, before, after world, order diffreport.Order, done int, sides bench) {
	c := newCrew(t, before, after, sides)
	for _, b := range order.BackOut {
		if b.Step <= done && moves(order.Steps[b.Step-1]) {
			c.do(b.Text)
		}
	}
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
			if i == 0 && s.Visit != 1 || i > 0 && (s.Visit != order.Steps[i-1].Visit) != (s.Space != order.Steps[i-1].Space) {
				t.Fatalf("step %d is in visit %d to %s: %+v", i+1, s.Visit, s.Space, order.Steps)
			}
		}
		for _, steps := range [][]diffreport.Step{order.Steps, shuffled(t, order.Steps)} {
			sides := maps.Clone(wired(before))
			carryOut(t, before, after, steps, sides)
			if diff := cmp.Diff(wired(after), sides); diff != "" {
				t.Fatalf("the records, and where the steps end:\n%s", diff)
			}
		}
		done := rapid.IntRange(0, len(order.Steps)).Draw(t, "steps done")
		sides := maps.Clone(wired(before))
		carryOut(t, before, after, order.Steps[:done], sides)
		undone(t, before, after, order, done, sides)
		if diff := cmp.Diff(wired(before), sides); diff != "" {
			t.Fatalf("%d steps done and taken back, and where the work began:\n%s", done, diff)
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
				steps += fmt.Sprintln(s.Number, s.Visit, s.Action, s.Class, s.Space, s.Records, s.Text, s.After, s.Outage, s.Cautions, s.RoomFor, s.Undo)
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
