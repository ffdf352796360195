package diffreport_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
)

// A watcher keeps the states that a site goes through, as plants.
type watcher struct {
	files  map[string]*schema.File
	states []*plant.Plant
	object func(*plant.Plant) []diffreport.Objection
}

func (w *watcher) follow() diffreport.Follower {
	w.files, w.states = make(map[string]*schema.File), nil
	return func(changed []*schema.File) ([]diffreport.Objection, int) {
		for _, f := range changed {
			w.files[f.Path] = f
		}
		w.states = append(w.states, plant.Build(".", slices.Collect(maps.Values(w.files))))
		if w.object == nil || len(w.states) == 1 {
			return nil, 1
		}
		return w.object(w.states[len(w.states)-1]), 1
	}
}

// TestTheSiteGoesFromOnePlantToTheOther holds the states of the site against the
// comparison of plants: nothing but paper differs between the earlier plant and
// the site when the work begins, nothing between its end and the later plant,
// and no state in between has a label twice or two cables on one side.
func TestTheSiteGoesFromOnePlantToTheOther(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		before := site(t)
		after := edit(t, before)
		base, head := sound(t, before.write(plain(before))), sound(t, after.write(plain(after)))
		changes := diffreport.Compare(base, head, diffreport.Options{})
		var w watcher
		order := diffreport.Plan(base, head, changes, diffreport.PlanOptions{Follow: w.follow})
		if !order.Executable {
			t.Fatalf("not executable: %v", order.Clashes)
		}
		if len(w.states) == 0 {
			return
		}
		// The site has new labels from the start, and nothing says what was what.
		relabelled := make(map[string]bool)
		for _, c := range changes {
			relabelled[c.Label] = c.Former != ""
		}
		worked := make(map[string]bool) // what does not lie with a change is left out
		for _, c := range changes {
			worked[c.Label] = c.Class != diffreport.ClassRelabel && c.Class != diffreport.ClassRecordsOnly && c.Kind != "bundle"
		}
		for _, c := range diffreport.Compare(base, w.states[0], diffreport.Options{}) {
			if worked[c.Label] && !relabelled[c.Label] && c.Class != diffreport.ClassRelabel && c.Class != diffreport.ClassRecordsOnly {
				t.Fatalf("before the first step: %s", full([]diffreport.Change{c}))
			}
		}
		for i, p := range w.states {
			for _, pr := range p.Problems {
				if worked[pr.Label] || pr.Code != schema.UnknownReference {
					t.Fatalf("state %d: %v\n%s", i, pr, strings.Join(sentences(order), "\n"))
				}
			}
			if len(p.Clashes) > 0 {
				t.Fatalf("state %d: %v\n%s", i, p.Clashes, strings.Join(sentences(order), "\n"))
			}
		}
		for _, c := range diffreport.Compare(w.states[len(w.states)-1], head, diffreport.Options{}) {
			if worked[c.Label] || c.After.Record == nil {
				t.Fatalf("after the last step the site is not the later plant: %s\n%s", full([]diffreport.Change{c}), strings.Join(sentences(order), "\n"))
			}
		}
	})
}

// TestABreachInPassingIsAvoidedOrNoOrder plants a rule that allows so many cables
// in a conduit, and one that no order keeps.
func TestABreachInPassingIsAvoidedOrNoOrder(t *testing.T) {
	t.Parallel()
	base := siteText
	head := edited(t, base, `"41 m"`, `"52.5 m"`)
	most := func(n int) func(*plant.Plant) []diffreport.Objection {
		return func(p *plant.Plant) []diffreport.Objection {
			for _, w := range p.Pathways {
				if len(w.Runs) > n {
					return []diffreport.Objection{{Rule: "pathway-fill", Record: w.Label, Text: fmt.Sprintf("%s: %d cables, limit %d", w.Label, len(w.Runs), n)}}
				}
			}
			return nil
		}
	}
	w := watcher{object: most(1)}
	order := orderOf(t, base, head, diffreport.PlanOptions{Follow: w.follow})
	inOrder(t, order, "take the old cable of 1A-A07 out", "make sure that everything is out that goes: 1A-A07", "pull 1A-A07")
	w = watcher{object: most(0)}
	b, h := plantOf(t, base), plantOf(t, head)
	order = diffreport.Plan(b, h, diffreport.Compare(b, h, diffreport.Options{}), diffreport.PlanOptions{Follow: w.follow})
	if all := strings.Join(order.Clashes, "\n"); order.Executable || !strings.Contains(all, "1-T-01: 1 cables, limit 0 (pathway-fill)") || !strings.HasPrefix(all, "step ") || order.Proven != nil {
		t.Fatalf("no order keeps this rule: %v %v", order.Clashes, order.Proven)
	}
}

// TestNotEveryStateOfALargeChangeIsJudged says how many were, and keeps the sum
// of what is looked at within bounds.
func TestNotEveryStateOfALargeChangeIsJudged(t *testing.T) {
	t.Parallel()
	var text strings.Builder
	for i := range 300 {
		fmt.Fprintf(&text, "cord \"C%03d\" {\n from = \"P:%d\"\n to = \"S:%d\"\n}\n", i, i+1, i+1)
	}
	room := "space \"R\" {\n kind = \"equipment-room\"\n}\n"
	stands := room + "panel \"P\" {\n space = \"R\"\n ports = 300\n}\nequipment \"S\" {\n kind = \"switch\"\n space = \"R\"\n ports = 300\n}\n"
	asked, looked := 0, 0
	follow := func() diffreport.Follower {
		return func([]*schema.File) ([]diffreport.Objection, int) {
			asked++
			if asked == 1 {
				return nil, 0
			}
			looked += 100
			return nil, 100
		}
	}
	order := orderOf(t, stands, stands+text.String(), diffreport.PlanOptions{Follow: follow})
	if looked > 7000 || asked < 50 || !slices.ContainsFunc(order.Proven, func(s string) bool {
		return strings.Contains(s, fmt.Sprintf("The site changes 300 times: after %d of them, evenly spread,", asked-1))
	}) {
		t.Fatalf("asked %d times, %d records looked at: %q", asked, looked, order.Proven)
	}
}
