package audit

import "homerun/diffreport/history"

// A Standing is one nonconformity from the commit that introduced it to the one
// that cleared it.
type Standing struct {
	// Finding is as it was last seen; Waiver is empty, see Spells.
	Finding
	// Introduced is the commit that introduced it, on whatever branch. It is
	// zero for what stood before the period.
	Introduced history.Revision
	// Opened is the commit that brought it to the line of first parents: the
	// commit itself, or a merge; zero where it stood on the line before the period.
	// Carried is set where it stood before the period on whatever branch.
	Opened  history.Revision
	Carried bool
	// ClearedBy is the commit that cleared it, Cleared the one that brought that
	// to the line of first parents; both are zero while it stands.
	ClearedBy, Cleared history.Revision
	// Days is how long it has stood on the line, in days of the committers'
	// clocks; Waived is how many of them a waiver covered it.
	Days, Waived int
	// Spells are when which waiver covered it, on the line.
	Spells []Spell

	// onLine is set while it stands on the line of first parents, met once it has.
	onLine, met bool
	// openedAt and clearedAt count the commits of the line before.
	openedAt, clearedAt int
	// removed is the last commit on a branch that took it away.
	removed history.Revision
}

// A Spell is a time during which a waiver covered a finding. To is zero while it
// still does.
type Spell struct {
	Waiver   string
	From, To history.Revision
}

// Stands says whether the finding still stood at the end of the period.
func (s *Standing) Stands() bool { return s.Cleared.ID == "" }

// Covered says which waiver covers it at the end of the period, if any.
func (s *Standing) Covered() string {
	if n := len(s.Spells); n > 0 && s.Stands() && s.Spells[n-1].To.ID == "" {
		return s.Spells[n-1].Waiver
	}
	return ""
}

// cover follows which waiver covers the finding on the line.
func (s *Standing) cover(waiver string, at history.Revision) {
	if n := len(s.Spells); n > 0 && s.Spells[n-1].To.ID == "" {
		if s.Spells[n-1].Waiver == waiver {
			return
		}
		s.Spells[n-1].To = at
	}
	if waiver != "" {
		s.Spells = append(s.Spells, Spell{Waiver: waiver, From: at})
	}
}

// close works out the days, up to the end of the period for what still stands.
func (s *Standing) close(begin, end history.Revision) {
	from, to := s.Opened, s.Cleared
	if from.ID == "" {
		from = begin
	}
	if s.Stands() {
		to = end
	}
	s.Days = days(from, to)
	for _, p := range s.Spells {
		until := p.To
		if until.ID == "" {
			until = to
		}
		s.Waived += days(p.From, until)
	}
}

// days counts whole days between two commits; clocks that run backwards count as none.
func days(from, to history.Revision) int {
	const day = 24 * 60 * 60
	return int(max(to.Time.Unix()-from.Time.Unix(), 0) / day)
}
