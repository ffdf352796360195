package audit_test

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"homerun/diffreport/audit"
	"homerun/diffreport/history"
)

// A made history is commits of which each has a set of findings, so what stood
// when follows from the sets alone.
type made struct {
	parents [][]int
	sets    []map[string]bool
	main    []bool
}

func (m *made) add(set map[string]bool, parents ...int) int {
	m.parents, m.sets = append(m.parents, parents), append(m.sets, set)
	return len(m.sets) - 1
}

// line marks the first parents of the last commit, and lists them oldest first.
func (m *made) line() []int {
	m.main = make([]bool, len(m.sets))
	var list []int
	for at := len(m.sets) - 1; ; at = m.parents[at][0] {
		m.main[at] = true
		list = append(list, at)
		if len(m.parents[at]) == 0 {
			break
		}
	}
	slices.Reverse(list)
	return list
}

func id(n int) string { return fmt.Sprintf("%04d", n) }

func finding(key string) audit.Finding {
	return audit.Finding{Rule: "length-channel", Kind: "run", Record: key, Message: key + ": too long", Nonconformity: true}
}

func (m *made) audit(o audit.Options) *audit.Report {
	a := audit.New(o)
	m.line()
	for n, set := range m.sets {
		step := audit.Step{
			Revision: history.Revision{ID: id(n), Author: "Ada Moor", Time: time.Unix(int64(n)*86400, 0).UTC()},
			Main:     m.main[n], Merge: len(m.parents[n]) > 1, Root: len(m.parents[n]) == 0, Records: true,
		}
		before := map[string]bool{}
		for i, p := range m.parents[n] {
			step.Parents = append(step.Parents, id(p))
			if i == 0 {
				before = m.sets[p]
			}
		}
		for _, key := range keys {
			switch {
			case before[key] && !set[key]:
				step.Gone = append(step.Gone, finding(key))
			case !before[key] && set[key]:
				step.Come = append(step.Come, finding(key))
			}
		}
		a.Take(&step)
	}
	return a.Report(audit.About{Plant: "mole-end", To: id(len(m.sets) - 1)}, nil)
}

var keys = []string{"A", "B", "C", "D"}

// makers are the commits that may have introduced a finding that a commit has: on
// some way back over commits that have it, the ones none of whose parents has it.
func (m *made) makers(at int, key string, seen map[int]bool) []int {
	if seen[at] {
		return nil
	}
	seen[at] = true
	var list []int
	first := true
	for _, p := range m.parents[at] {
		if m.sets[p][key] {
			first = false
			list = append(list, m.makers(p, key, seen)...)
		}
	}
	if first {
		list = append(list, at)
	}
	return list
}

func drawMade(t *rapid.T) *made {
	m := &made{}
	set := func(base map[string]bool) map[string]bool {
		next := map[string]bool{}
		for _, k := range keys {
			next[k] = base[k] != (rapid.IntRange(0, 3).Draw(t, "turn") == 0)
		}
		return next
	}
	at := m.add(set(nil))
	for range rapid.IntRange(1, 12).Draw(t, "commits") {
		if rapid.IntRange(0, 2).Draw(t, "branch") > 0 {
			at = m.add(set(m.sets[at]), at)
			continue
		}
		side, main := at, at
		for range rapid.IntRange(1, 3).Draw(t, "on the side") {
			side = m.add(set(m.sets[side]), side)
		}
		for range rapid.IntRange(0, 2).Draw(t, "on the line") {
			main = m.add(set(m.sets[main]), main)
		}
		merged := map[string]bool{}
		for _, k := range keys {
			merged[k] = m.sets[rapid.SampledFrom([]int{main, side}).Draw(t, "side taken")][k]
		}
		at = m.add(merged, main, side)
	}
	return m
}

func TestWhatStoodFollowsFromTheSets(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		m := drawMade(t)
		r := m.audit(audit.Options{Points: audit.PointsMonths})
		line := m.line()
		for _, key := range keys {
			var got []*audit.Standing
			for _, s := range r.Standing {
				if s.Record == key {
					got = append(got, s)
				}
			}
			for i := 0; i < len(line); i++ {
				if !m.sets[line[i]][key] {
					continue
				}
				open := i
				for i < len(line) && m.sets[line[i]][key] {
					i++
				}
				if len(got) == 0 {
					t.Fatalf("%s stood from %d on, and is not told", key, line[open])
				}
				m.check(t, got[0], key, line, open, i)
				got = got[1:]
			}
			if len(got) > 0 {
				t.Fatalf("%s: invented %+v", key, got[0])
			}
		}
		for i, s := range r.Samples {
			if n := count(m.sets[line[i]]); s.Nonconformities != n {
				t.Fatalf("commit %d: %d stand, told %d", line[i], n, s.Nonconformities)
			}
		}
		m.checkPoints(t, r, line)
	})
}

func (m *made) check(t *rapid.T, s *audit.Standing, key string, line []int, open, end int) {
	if s.Opened.ID != id(line[open]) {
		t.Fatalf("%s opened at %s, not at %d", key, s.Opened.ID, line[open])
	}
	makers := m.makers(line[open], key, map[int]bool{})
	if !slices.ContainsFunc(makers, func(n int) bool { return id(n) == s.Introduced.ID }) {
		t.Fatalf("%s at %d introduced by %s, not by one of %v", key, line[open], s.Introduced.ID, makers)
	}
	last := line[len(line)-1]
	if end < len(line) {
		last = line[end]
		if s.Cleared.ID != id(last) {
			t.Fatalf("%s cleared at %q, not at %d", key, s.Cleared.ID, last)
		}
		if s.ClearedBy.ID > s.Cleared.ID || !m.clears(s.ClearedBy.ID, key) {
			t.Fatalf("%s cleared by %s, which has it or whose parents have not", key, s.ClearedBy.ID)
		}
	} else if !s.Stands() {
		t.Fatalf("%s stands, told cleared at %s", key, s.Cleared.ID)
	}
	if want := last - line[open]; s.Days != want {
		t.Fatalf("%s stood %d days, told %d", key, want, s.Days)
	}
}

// clears says whether a commit lacks a finding that one of its parents has.
func (m *made) clears(commit, key string) bool {
	for n, parents := range m.parents {
		if id(n) == commit {
			return !m.sets[n][key] && slices.ContainsFunc(parents, func(p int) bool { return m.sets[p][key] })
		}
	}
	return false
}

func (m *made) checkPoints(t *rapid.T, r *audit.Report, line []int) {
	opened, cleared := 0, 0
	for _, p := range r.Points {
		opened, cleared = opened+p.Opened, cleared+p.Cleared
		if p.Nonconformities != opened-cleared {
			t.Fatalf("at %s %d stand, but %d opened and %d cleared", p.ID, p.Nonconformities, opened, cleared)
		}
		sum := 0
		for _, c := range p.ByRule {
			sum += c.Count
		}
		if sum != p.Nonconformities {
			t.Fatalf("at %s the rules add up to %d, not %d", p.ID, sum, p.Nonconformities)
		}
	}
	if last := r.Points[len(r.Points)-1]; last.ID != id(line[len(line)-1]) {
		t.Fatalf("the last point is %s", last.ID)
	}
}

func count(set map[string]bool) int {
	n := 0
	for _, there := range set {
		if there {
			n++
		}
	}
	return n
}

func TestARelabelledRecordKeepsItsFindings(t *testing.T) {
	t.Parallel()
	a := audit.New(audit.Options{})
	day := func(n int) history.Revision {
		return history.Revision{ID: id(n), Time: time.Unix(int64(n)*86400, 0).UTC()}
	}
	a.Take(&audit.Step{Revision: day(0), Main: true, Root: true, Come: []audit.Finding{finding("A")}})
	waived := finding("B")
	waived.Waiver = "W-1"
	a.Take(&audit.Step{
		Revision: day(3), Parents: []string{id(0)}, Main: true, Gone: []audit.Finding{finding("A")}, Come: []audit.Finding{waived},
		Former: func(label string) string { return map[string]string{"B": "A"}[label] },
	})
	a.Take(&audit.Step{Revision: day(10), Parents: []string{id(3)}, Main: true, Gone: []audit.Finding{waived}, Come: []audit.Finding{finding("B")}})
	r := a.Report(audit.About{To: id(10)}, nil)
	if len(r.Standing) != 1 {
		t.Fatalf("one finding, told %d", len(r.Standing))
	}
	s := r.Standing[0]
	if s.Record != "B" || s.Introduced.ID != id(0) || s.Days != 10 || s.Waived != 7 || s.Covered() != "" {
		t.Errorf("%+v", s)
	}
	if p := r.Points[len(r.Points)-1]; p.Nonconformities != 1 || p.Opened != 1 || p.Cleared != 0 {
		t.Errorf("%+v", p)
	}
}

func TestWhatStoodBeforeThePeriod(t *testing.T) {
	t.Parallel()
	a := audit.New(audit.Options{})
	day := func(n int) history.Revision {
		return history.Revision{ID: id(n), Time: time.Unix(int64(n)*86400, 0).UTC()}
	}
	a.Take(&audit.Step{Revision: day(1), Main: true, Before: true, Come: []audit.Finding{finding("A"), finding("B")}})
	a.Take(&audit.Step{Revision: day(0), Before: true, Come: []audit.Finding{finding("A"), finding("C")}})
	a.Take(&audit.Step{Revision: day(2), Parents: []string{id(1), id(0)}, Main: true, Merge: true, Gone: []audit.Finding{finding("B")}, Come: []audit.Finding{finding("C")}})
	r := a.Report(audit.About{From: id(1), To: id(2)}, nil)
	if r.Commits != 1 || len(r.Points) != 2 || r.Points[0].Nonconformities != 2 || r.Points[1].Nonconformities != 2 {
		t.Fatalf("%d commits, points %+v", r.Commits, r.Points)
	}
	if p := r.Points[1]; p.Opened != 1 || p.Cleared != 1 {
		t.Errorf("A stays, B goes, C comes: %+v", p)
	}
	var told []string
	for _, s := range r.Standing {
		told = append(told, fmt.Sprint(s.Record, s.Carried, s.Introduced.ID, s.Stands()))
	}
	slices.Sort(told)
	if want := []string{"Atruetrue", "Btruefalse", "Ctruetrue"}; !slices.Equal(told, want) {
		t.Errorf("got %v, want %v", told, want)
	}
}
