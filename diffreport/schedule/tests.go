package schedule

import (
	"slices"
	"strings"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// tests is the test schedule: every link that is to carry something, the limit to
// test it to and how its latest test ended, with room for the next. A link is
// tested once for all its runs, by the label of the first.
func tests() Schedule {
	return Schedule{
		Name: "test-schedule", Doc: "every link: its limit, its latest test, what is due",
		headings: []string{
			"Link", "With", "From", "To", "Limit", "Length", "State", "Latest test", "Tested to", "Result", "Measured length", "Worst margin", "Loss", "Due",
		},
		blanks: []string{"New result", "Date", "By"},
		prose:  []string{"Limit", "Tested to", "Due"},
		rows: func(s *survey) [][]any {
			var rows [][]any
			for _, l := range s.links() {
				rows = append(rows, s.test(l))
			}
			return rows
		},
	}
}

// links are those in use, or meant to be, that end in the space, by label.
func (s *survey) links() []*plant.Link {
	links := slices.DeleteFunc(slices.Clone(s.Links), func(l *plant.Link) bool {
		return !l.Live() || !s.asked(spaceAt(l.From)) && !s.asked(spaceAt(l.To))
	})
	slices.SortStableFunc(links, func(a, b *plant.Link) int { return schema.Natural(a.Lead().Label, b.Lead().Label) })
	return links
}

func spaceAt(p *plant.Port) *plant.Space {
	if p == nil {
		return nil
	}
	return p.Holder.Space
}

func (s *survey) test(l *plant.Link) []any {
	lead := l.Lead()
	var with []string
	for _, r := range l.Runs[1:] {
		with = append(with, label(r))
	}
	length := ""
	if sum, known := l.Length(); known {
		length = sum.Text(s.Units)
	}
	t := s.latest(l)
	return []any{
		label(lead), strings.Join(with, ", "), portOf(l.From), portOf(l.To), schema.Printable(diffreport.TestLimit(lead.Cable, s.Regime)), length, s.state(lead),
		t.day, t.limit, t.result, t.length, t.margin, t.loss, t.due,
	}
}

// A tested is what the latest test of a link says, and what is to be measured.
type tested struct{ day, limit, result, length, margin, loss, due string }

// latest is the latest test of any of a link's runs, with what the rules
// tests-missing, tests-failed and tests-stale ask for.
func (s *survey) latest(l *plant.Link) tested {
	t, sure := latestOf(l)
	switch {
	case !sure:
		return tested{due: "a test can not be read: correct its record"}
	case t == nil:
		return tested{due: "not measured"}
	}
	r := t.Record()
	out := tested{
		day: s.show(r, schema.TestDate.Field), limit: s.show(r, schema.TestLimit.Field), result: s.show(r, schema.TestResult.Field),
		length: s.show(r, schema.TestLength.Field), margin: s.show(r, schema.TestMargin.Field),
		loss: s.show(r, schema.TestLoss.Field),
	}
	switch {
	case out.result != "pass" && out.result != "marginal-pass":
		out.due = "failed: mend and measure again"
	case slices.ContainsFunc(l.Runs, func(run *plant.Run) bool {
		pulled, stated := schema.RunYear.In(run.Record())
		return stated && day(t).Year() < pulled
	}):
		out.due = "pulled after its latest test"
	}
	return out
}

func day(t *plant.Test) unit.Date {
	when, _ := schema.TestDate.In(t.Record())
	return when
}

func latestOf(l *plant.Link) (last *plant.Test, sure bool) {
	for _, r := range l.Runs {
		t, known := r.Latest()
		if !known {
			return nil, false
		}
		if t != nil && (last == nil || !day(t).Before(day(last))) {
			last = t
		}
	}
	return last, true
}
