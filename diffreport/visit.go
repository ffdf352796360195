package diffreport

// A Visit is a row of steps in one space: what the crew does there before it
// goes elsewhere.
type Visit struct {
	// Number counts from 1.
	Number int
	// Space is empty where the records do not say where the steps are done.
	Space string
	// Steps are the steps of the visit, part of the order's own.
	Steps []Step
}

// Visits divides the steps into visits, in their order.
func (o *Order) Visits() []Visit {
	var all []Visit
	for from := 0; from < len(o.Steps); {
		to := from + 1
		for to < len(o.Steps) && o.Steps[to].Space == o.Steps[from].Space && o.Steps[to].Visit == o.Steps[from].Visit {
			to++
		}
		all = append(all, Visit{Number: len(all) + 1, Space: o.Steps[from].Space, Steps: o.Steps[from:to:to]})
		from = to
	}
	return all
}
