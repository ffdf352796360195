package cli

import (
	"slices"
	"time"

	"homerun/diffreport/history"
	"homerun/schema"
)

// historyFilter says which events are told. Days are those that the commits
// wrote down, as they are printed.
type historyFilter struct{ since, until, field string }

func (o *historyFlags) filter() (historyFilter, error) {
	f := historyFilter{since: o.since, until: o.until, field: o.field}
	for _, day := range []string{o.since, o.until} {
		if _, err := time.Parse(time.DateOnly, day); day != "" && err != nil {
			return f, &usageError{schema.Quote(day) + " is not a date", "write the year, the month and the day, such as 2019-03-03"}
		}
	}
	if o.since != "" && o.until != "" && o.since > o.until {
		return f, &usageError{"--since " + o.since + " is after --until " + o.until, "put the earlier day behind --since"}
	}
	if o.on != "" && (o.since != "" || o.until != "" || o.field != "") {
		return f, &usageError{"--on shows one day", "leave --since, --until and --field out"}
	}
	return f, nil
}

// apply leaves out of a life what is not asked for.
func (f *historyFilter) apply(h *history.History) error {
	if f.field != "" {
		if err := f.known(h); err != nil {
			return err
		}
	}
	all := len(h.Events)
	h.Events = slices.DeleteFunc(h.Events, func(e history.Event) bool {
		day := e.Time.Format(time.DateOnly)
		return f.since != "" && day < f.since || f.until != "" && day > f.until || f.field != "" && !states(&e, f.field)
	})
	h.LeftOut = all - len(h.Events)
	if f.field == "" {
		return nil
	}
	for i := range h.Events {
		e := &h.Events[i]
		e.Fields = slices.DeleteFunc(slices.Clone(e.Fields), func(c history.FieldChange) bool { return c.Name != f.field })
	}
	return nil
}

func states(e *history.Event, field string) bool {
	return e.Part == history.Own && slices.ContainsFunc(e.Fields, func(c history.FieldChange) bool { return c.Name == field })
}

// known says whether any record of the life can have the field.
func (f *historyFilter) known(h *history.History) error {
	var names []string
	for i := range h.Events {
		e := &h.Events[i]
		if e.Part != history.Own {
			continue
		}
		for _, c := range e.Fields {
			names = append(names, c.Name)
		}
		if k, ok := schema.KindNamed(e.Kind); ok {
			for _, field := range k.Fields {
				names = append(names, field.Name)
			}
		}
	}
	slices.Sort(names)
	names = slices.Compact(names)
	if slices.Contains(names, f.field) {
		return nil
	}
	next := "see git homerun explain " + h.Kind
	if near := schema.Nearest(f.field, names); near != "" {
		next = "did you mean " + schema.Printable(near) + "?"
	}
	return &usageError{h.Record + ": " + h.Kind + " has no field " + schema.Quote(f.field), next}
}
