package schedule

import (
	"slices"

	"homerun/schema"
	"homerun/schema/plant"
)

// A Schedule is one of the lists.
type Schedule struct {
	// Name is the list's name, Doc what it holds.
	Name, Doc string
	headings  []string
	// prose are the columns whose texts are long.
	prose []string
	// blanks are columns behind them that are filled in by hand.
	blanks []string
	rows   func(s *survey) [][]any
}

// All are the schedules, in the order in which they are named.
func All() []Schedule { return []Schedule{cables(), panels(), tests()} }

// Named finds a schedule by its name.
func Named(name string) (Schedule, bool) {
	all := All()
	i := slices.IndexFunc(all, func(s Schedule) bool { return s.Name == name })
	if i < 0 {
		return Schedule{}, false
	}
	return all[i], true
}

// A Table is a schedule of one plant: rows of texts and whole numbers, sorted by
// label as people read them. What the records do not state is empty.
type Table struct {
	Headings []string
	Rows     [][]any
	// Prose are the headings whose texts are long; Blanks those of columns behind the
	// others that are filled in by hand.
	Prose, Blanks []string
}

// Of makes the schedule of a plant, or of a space and those inside it: of what ends
// there, or stands there. A nil space is the whole plant.
func (s Schedule) Of(p *plant.Plant, in *plant.Space) Table {
	return Table{Headings: s.headings, Rows: s.rows(&survey{p, in}), Prose: s.prose, Blanks: s.blanks}
}

// A survey is a plant, and the space that is asked for.
type survey struct {
	*plant.Plant
	in *plant.Space
}

func (s *survey) asked(space *plant.Space) bool { return s.in == nil || space.Within(s.in) }

// runs are those that end in the space, by label.
func (s *survey) runs() []*plant.Run {
	runs := slices.DeleteFunc(slices.Clone(s.Runs), func(r *plant.Run) bool { return !s.asked(r.From.Space()) && !s.asked(r.To.Space()) })
	slices.SortStableFunc(runs, func(a, b *plant.Run) int { return schema.Natural(a.Label, b.Label) })
	return runs
}

// show is what a record states in a field, or inherits, in the plant's units.
func (s *survey) show(r *schema.Record, f *schema.Field) string {
	if r == nil {
		return ""
	}
	if v := r.Lookup(f); v != nil {
		return schema.Printable(v.Show(s.Units))
	}
	return ""
}

func label(it plant.Item) string { return schema.Printable(it.Record().Label) }

func spaceOf(s *plant.Space) string {
	if s == nil {
		return ""
	}
	return label(s)
}

// state is where a run is in its life.
func (s *survey) state(r *plant.Run) string {
	if state, known := r.State(); known {
		return state
	}
	return s.show(r.Record(), schema.RunState.Field)
}
