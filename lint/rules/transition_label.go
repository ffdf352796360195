package rules

import (
	"fmt"
	"strings"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// TransitionLabelReused finds labels that one change takes from one record and
// gives to another.
var TransitionLabelReused = &lint.Rule{
	Name: "transition-label-reused", Title: "Checks that no label is given to something else in the change that frees it",
	Severity: lint.Observation, Change: true, Check: transitionLabelReused,
}

func transitionLabelReused(p *lint.Pass) {
	var h *heirs
	for _, kind := range schema.Kinds() {
		for _, label := range p.Plant.Labels(kind.Name) {
			is, _ := p.Plant.Find(label)
			was, stood := p.Base.Find(label)
			if !stood || is.Record() == was.Record() || arrived(is.Record(), was.Record()) {
				continue
			}
			if h == nil {
				h = findHeirs(p)
			}
			if r := h.reused(p, is, was); r.fact != "" {
				p.Report(r.finding())
			}
		}
	}
}

// arrived says whether the record states for the first time that it had another
// label: then label and record come from a relabelling that the history follows.
func arrived(is, was *schema.Record) bool {
	now := is.Own("former")
	return now != nil && !now.Bad && !now.Same(was.Own("former"))
}

// heirs are the records under new labels that are what bore another before.
type heirs struct {
	stated map[string]plant.Item
	ends   map[[2]string]plant.Item
}

// findHeirs looks at every label that was not there before: at the former one
// that its record states, and for a run at the ports where it ends.
func findHeirs(p *lint.Pass) *heirs {
	h := &heirs{stated: make(map[string]plant.Item), ends: make(map[[2]string]plant.Item)}
	for _, kind := range schema.Kinds() {
		for _, label := range p.Plant.Labels(kind.Name) {
			if _, stood := p.Base.Find(label); stood {
				continue
			}
			is, _ := p.Plant.Find(label)
			if v := is.Record().Own("former"); v != nil && !v.Bad {
				h.stated[v.Text] = is
			}
			if r, ok := is.(*plant.Run); ok && len(r.From) > 0 && len(r.To) > 0 {
				h.ends[[2]string{p.Former(r.From.String()), p.Former(r.To.String())}] = is
			}
		}
	}
	return h
}

// A reuse is a label with its two bearers, and what shows that they are two.
type reuse struct {
	is, was plant.Item
	// heir is what the earlier bearer is called now; nil where it is gone.
	heir      plant.Item
	fact, how string
}

// reused tells two bearers of a label from one that changed.
func (h *heirs) reused(p *lint.Pass, is, was plant.Item) reuse {
	r := reuse{is: is, was: was}
	old := was.Place().Kind.Name
	before, _ := was.(*plant.Run)
	now, _ := is.(*plant.Run)
	switch {
	case h.stated[was.Record().Label] != nil:
		r.heir = h.stated[was.Record().Label]
		r.how = "it states that it had this label"
	case is.Place().Kind != was.Place().Kind:
		r.fact, r.how = fmt.Sprintf("was a %s and is a %s", old, is.Place().Kind.Name), "the kind of record is another"
	case before == nil || now == nil:
	case len(h.ends) > 0 && len(before.From) > 0 && len(before.To) > 0 && h.ends[[2]string{before.From.String(), before.To.String()}] != nil:
		r.heir = h.ends[[2]string{before.From.String(), before.To.String()}]
		r.how = "it ends where this one ended"
	case otherCable(p, before, now):
		r.fact, r.how = "the cable that had this label is gone", "cable type and both ends are others"
	}
	if r.heir != nil {
		r.fact = fmt.Sprintf("the %s that had this label is now %s", old, schema.Printable(r.heir.Record().Label))
	}
	return r
}

// otherCable says whether two runs under one label can not be one cable: it is
// of another type and both of its ends are elsewhere.
func otherCable(p *lint.Pass, before, now *plant.Run) bool {
	if before.Cable == nil || now.Cable == nil || p.Former(now.Cable.Label) == before.Cable.Label {
		return false
	}
	return elsewhere(p, before.From, now.From) && elsewhere(p, before.To, now.To)
}

func elsewhere(p *lint.Pass, before, now plant.Row) bool {
	return len(before) > 0 && len(now) > 0 && (p.Former(now[0].Holder.Label) != before[0].Holder.Label || now[0].Number != before[0].Number)
}

func (r *reuse) finding() lint.Finding {
	is, was := r.is.Place(), r.was.Place()
	f := lint.About(is)
	f.Message = fmt.Sprintf("%s: %s, its label is given away at once", schema.Printable(is.Label), r.fact)
	f.Working = []lint.Term{term("before", bearer(was)), term("now", bearer(is)), term("what shows it", r.how)}
	f.Result, f.Limit = "given again in the change that freed it", "a label that was free before"
	f.Source = "common practice: while the work goes on two things bear one label, and its history leads to both"
	f.Next = "take a label that was not in use, or free this one in a commit before"
	f.Related = []schema.Note{note(was, "had the label before")}
	if r.heir != nil {
		f.Related = append(f.Related, note(r.heir.Place(), "what it is called now"))
	}
	return f
}

// bearer says what a record is.
func bearer(e schema.Entry) string {
	if e.Kind.Name != schema.KindRun {
		return e.Kind.Name
	}
	parts := []string{"run"}
	for _, field := range []*schema.Field{schema.RunFrom.Field, schema.RunTo.Field, schema.RunCable.Field} {
		if v := e.Lookup(field); v != nil && !v.Bad {
			parts = append(parts, field.Name+" "+schema.Printable(v.Show(unit.Metric)))
		}
	}
	return strings.Join(parts, ", ")
}
