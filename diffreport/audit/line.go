package audit

import (
	"cmp"
	"maps"
	"slices"
	"strings"
	"time"

	"homerun/diffreport/history"
)

// A Point is what stood at one commit of the line of first parents.
type Point struct {
	// Name is a tag or a month such as "2026-03".
	Name string
	history.Revision
	Nonconformities, Observations, Waived int
	// ByRule counts the nonconformities by rule, in the order of rule names.
	ByRule []RuleCount
	// Opened and Cleared count the nonconformities that came and went since the
	// point before, those under a waiver too.
	Opened, Cleared int

	// place counts the commits of the line before it.
	place int
}

// A RuleCount is how many nonconformities of one rule there are.
type RuleCount struct {
	Rule  string
	Count int
}

// A Sample is what stood after one commit of the line.
type Sample struct {
	Time                    time.Time
	Nonconformities, Waived int
}

// line is the line of first parents, as far as it was walked.
type line struct {
	begin, end history.Revision
	opening    *Point
	samples    []Sample
	// months are the last commits of months, tagged those with a tag.
	months, tagged []*Point
	// clock is the latest time met: a clock that runs backwards opens no month.
	clock time.Time
}

func pointOf(step *Step, s *state) *Point {
	p := &Point{Revision: step.Revision, Nonconformities: s.nonconformities, Observations: s.observations, Waived: s.waived}
	for _, rule := range slices.Sorted(maps.Keys(s.byRule)) {
		p.ByRule = append(p.ByRule, RuleCount{rule, s.byRule[rule]})
	}
	return p
}

func month(t time.Time) string { return t.UTC().Format("2006-01") }

func (l *line) take(step *Step, s *state) {
	if l.begin.ID == "" {
		l.begin = step.Revision
	}
	l.samples = append(l.samples, Sample{step.Time, s.nonconformities, s.waived})
	if step.Time.After(l.clock) {
		l.clock = step.Time
	}
	l.end = step.Revision
	name := month(l.clock)
	if n := len(l.months); n == 0 || l.months[n-1].Name != name {
		l.months = append(l.months, nil)
	}
	// The state goes on changing, so every commit of a month is looked at until
	// its last.
	p := pointOf(step, s)
	p.Name, p.place = name, len(l.samples)-1
	l.months[len(l.months)-1] = p
	if len(step.Tags) > 0 {
		tagged := *p
		tagged.Name = strings.Join(step.Tags, ", ")
		l.tagged = append(l.tagged, &tagged)
	}
}

// points are where conformity is counted; the end of the period is always one.
func (l *line) points(choice Points, standing []*Standing) []Point {
	chosen := l.months
	if choice == PointsTags || choice == PointsAuto && len(l.tagged) > 0 {
		chosen = slices.Clone(l.tagged)
		if n := len(l.months); n > 0 && (len(chosen) == 0 || chosen[len(chosen)-1].ID != l.end.ID) {
			last := *l.months[n-1]
			last.Name = "end"
			chosen = append(chosen, &last)
		}
	}
	points := make([]Point, 0, len(chosen)+1)
	if l.opening != nil {
		opening := *l.opening
		opening.Name = "before"
		points = append(points, opening)
	}
	for _, p := range chosen {
		points = append(points, *p)
	}
	l.movements(points, standing)
	return points
}

// movements counts what came and went between points, by the order of commits
// on the line and not by their clocks.
func (l *line) movements(points []Point, standing []*Standing) {
	first := 0
	if l.opening != nil {
		first = 1
	}
	at := func(place int) *Point {
		i, _ := slices.BinarySearchFunc(points[first:], place, func(p Point, place int) int { return cmp.Compare(p.place, place) })
		return &points[first+i]
	}
	for _, s := range standing {
		if s.Opened.ID != "" {
			at(s.openedAt).Opened++
		}
		if !s.Stands() {
			at(s.clearedAt).Cleared++
		}
	}
}

// sorted puts findings in the order in which they opened, then by rule and record.
func sorted(all []*Standing) []*Standing {
	var met []*Standing
	for _, s := range all {
		if s.met {
			met = append(met, s)
		}
	}
	slices.SortStableFunc(met, func(a, b *Standing) int {
		return cmp.Or(cmp.Compare(a.openedAt, b.openedAt), cmp.Compare(a.Rule, b.Rule), cmp.Compare(a.Record, b.Record), cmp.Compare(a.Message, b.Message))
	})
	return met
}
