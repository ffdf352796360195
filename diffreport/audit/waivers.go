package audit

import (
	"cmp"
	"slices"

	"homerun/diffreport/history"
	"homerun/schema/unit"
)

// A WaiverLife is one waiver over the period, on the line of first parents.
type WaiverLife struct {
	Waiver
	// Entered is the commit that brought it into the records; zero where it was
	// there before the period.
	Entered history.Revision
	// Changes are the commits that changed it afterwards, with what they changed.
	Changes []WaiverChange
	// Withdrawn is the commit that took it out of the records, zero while it is there.
	Withdrawn history.Revision
	// Findings is how many different nonconformities it covered at some time,
	// Covers how many at the end of the period.
	Findings, Covers int
	// Expired is set where its last day is before the day of the report.
	Expired bool
}

// A WaiverChange is a commit that changed a waiver: its last day, or what it covers.
type WaiverChange struct {
	history.Revision
	Before, After unit.Date
	// Added are records that it covers since, Dropped those that it does not any more.
	Added, Dropped []string
	// Reworded is set where rule, reason or grant differ.
	Reworded bool
}

// waiverBook follows the waivers along the line.
type waiverBook struct {
	lives []*WaiverLife
	now   map[string]*WaiverLife
}

func (b *waiverBook) take(step *Step) {
	if !step.HasWaivers {
		return
	}
	next := make(map[string]*WaiverLife, len(step.Waivers))
	for _, w := range step.Waivers {
		life := b.now[w.Label]
		if life == nil {
			life = &WaiverLife{Waiver: w}
			if !step.Before {
				life.Entered = step.Revision
			}
			b.lives = append(b.lives, life)
		} else {
			if c, differs := waiverChange(life.Waiver, w, step.Former); differs {
				c.Revision = step.Revision
				life.Changes = append(life.Changes, c)
			}
			life.Waiver = w
		}
		next[w.Label] = life
	}
	for label, life := range b.now {
		if next[label] == nil {
			life.Withdrawn = step.Revision
		}
	}
	b.now = next
}

// waiverChange compares two states of a waiver. A record that only has a new label
// was covered before, and another record under an old label was not; former tells
// what each was called.
func waiverChange(was, is Waiver, former func(label string) string) (c WaiverChange, differs bool) {
	c = WaiverChange{Before: was.Expires, After: is.Expires, Reworded: was.Rule != is.Rule || was.Reason != is.Reason || was.Granted != is.Granted}
	if former == nil {
		former = same
	}
	left := slices.Clone(was.Records)
	for _, record := range is.Records {
		at := slices.Index(left, former(record))
		if at < 0 {
			c.Added = append(c.Added, record)
			continue
		}
		left = slices.Delete(left, at, at+1)
	}
	c.Dropped = left
	return c, c.Before != c.After || c.Reworded || len(c.Added)+len(c.Dropped) > 0
}

// report counts what the waivers covered, and says which are over.
func (b *waiverBook) report(standing []*Standing, today unit.Date) []WaiverLife {
	covered := make(map[string]map[*Standing]bool)
	covers := make(map[string]int)
	for _, s := range standing {
		for _, p := range s.Spells {
			if covered[p.Waiver] == nil {
				covered[p.Waiver] = make(map[*Standing]bool)
			}
			covered[p.Waiver][s] = true
		}
		if w := s.Covered(); w != "" {
			covers[w]++
		}
	}
	lives := make([]WaiverLife, len(b.lives))
	for i, l := range b.lives {
		lives[i] = *l
		lives[i].Findings = len(covered[l.Label])
		lives[i].Expired = !l.Expires.IsZero() && l.Expires.Before(today)
		if l.Withdrawn.ID == "" {
			lives[i].Covers = covers[l.Label]
		}
	}
	slices.SortStableFunc(lives, func(a, b WaiverLife) int {
		return cmp.Or(cmp.Compare(a.Label, b.Label), a.Entered.Time.Compare(b.Entered.Time))
	})
	return lives
}
