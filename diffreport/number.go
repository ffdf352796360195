package diffreport

import "slices"

// number makes steps of tasks in their order: neighbours that are one piece of
// work become one step.
func number(order []*task) []Step {
	var kept []*task
	for _, t := range order {
		if n := len(kept); n > 0 && t.group != "" && t.group == kept[n-1].group && t.Space == kept[n-1].Space && t.Action == kept[n-1].Action && !slices.ContainsFunc(t.waiting, func(o *task) bool { return o.final() == kept[n-1] }) {
			kept[n-1].join(t)
			continue
		}
		kept = append(kept, t)
	}
	visit := 0
	for i, t := range kept {
		if i == 0 || t.Space != kept[i-1].Space {
			visit++
		}
		t.Number, t.Visit = i+1, visit
		t.words()
	}
	steps := make([]Step, len(kept))
	lost := make(map[string]bool)
	for i, t := range kept {
		for _, before := range t.waiting {
			t.After = append(t.After, before.final().Number)
		}
		t.After = tidy(t.After)
		t.Records, t.Outage, t.Cautions = tidy(t.Records), tidy(t.Outage), tidy(t.Cautions)
		// What is down already does not go down again.
		t.Outage = slices.DeleteFunc(slices.Clone(t.Outage), func(port string) bool { return lost[port] })
		for _, port := range t.Outage {
			lost[port] = true
		}
		steps[i] = t.Step
	}
	return steps
}

// backOut lists the ways back, the last step's first: undoing from any step on
// leads to where the work began.
func backOut(steps []Step) []Back {
	var all []Back
	for _, s := range slices.Backward(steps) {
		if s.Undo != "" {
			all = append(all, Back{Step: s.Number, Visit: s.Visit, Space: s.Space, Text: s.Undo})
		}
	}
	return all
}
